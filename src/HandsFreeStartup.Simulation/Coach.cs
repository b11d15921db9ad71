using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Simulation;

/// <summary>Helps a trainee: one hint after the other, each says a little more than the one before.</summary>
/// <param name="bench">With the furnace.</param>
public sealed class Coach(Bench bench)
{
    string _step = "";
    int _given;

    /// <summary>The next hint for where the trainee stands: the reason first, then what good looks like, then what the displays suggest, at last the next thing to do.</summary>
    /// <param name="view">What the tool shows.</param>
    /// <param name="isReasonShown">Whether the reason stands on the screen; then the hints begin after it.</param>
    public Message Next(StartupView view, bool isReasonShown = false)
    {
        _given = _step == bench.Step.Id ? _given + 1 : 0;
        _step = bench.Step.Id;
        ImmutableArray<Message> hints = [.. Hints(view).Skip(isReasonShown ? 1 : 0).Where(hint => !hint.IsEmpty)];
        return hints[Math.Min(_given, hints.Length - 1)];
    }

    IEnumerable<Message> Hints(StartupView view)
    {
        Step step = bench.Step;
        yield return step.Why is { } why ? (Message)$"Why: {why}" : "";
        yield return Good(step);
        yield return Suggests(step);
        yield return new IdealTechnician(bench).Next(view) switch
        {
            Deed.ByHand hand => (Message)$"Next: {new MessagePart.Name(hand.Words)}.",
            Deed.BySpeech speech => step.Kind is StepKind.Read or StepKind.Adjust or StepKind.Ask ? $"Next: {Ways(step)}" : $"Next: say {speech.Words}.",
            _ => "Next: wait. A ~ beside a number says that it still moves.",
        };
    }

    /// <summary>What a value or an answer should be.</summary>
    Message Good(Step step)
    {
        Message[] limits = [.. step.Readings.Select(demand => (demand, bench.Furnace.Plan.Limit(demand.LimitName, step.Scope))).Where(one => one.Item2 is not null)
            .Select(one => (Message)$"{bench.Furnace.Plan.FieldOf(one.demand.FieldId)} {one.Item2!}")];
        return step.Question is { Choices.IsEmpty: true } question ? (Message)$"Good: {(question.Proper ? "yes" : "no")}. Otherwise: {question.Otherwise}"
            : limits.Length > 0 ? (Message)$"Good: {Message.Join("; ", limits)}." : "";
    }

    static string Ways(Step step) => step.Kind == StepKind.Ask ? "look, then answer what you see." : "say what the display shows.";

    /// <summary>What a display outside of its limit usually means (common practice, no source).</summary>
    string Suggests(Step step)
    {
        foreach (ReadingDemand demand in step.Readings)
        {
            if (bench.DisplayOf(demand.FieldId) is { Value: { } value } display && bench.Furnace.Plan.Limit(demand.LimitName, step.Scope)?.In(display.Field.Unit) is { } limit && Meaning(demand.FieldId, value > limit.Upper, value < limit.Lower) is { } meaning)
            {
                return $"{display.Label} suggests: {meaning}";
            }
        }

        return "";
    }

    static string? Meaning(string fieldId, bool isHigh, bool isLow) => (fieldId, isHigh, isLow) switch
    {
        (FieldId.Oxygen, true, _) => "more air than it should have, or air that gets into the sample. Press the hose onto the probe and look again.",
        (FieldId.Oxygen, _, true) => "too little air or too much gas. Compare with the input of the meter and with the air openings.",
        (FieldId.ManifoldPressure, true, _) or (FieldId.ManifoldPressure, _, true) => "the regulator must be adjusted, if the maker lets you.",
        (FieldId.InletPressure, _, true) => "the supply is too weak for this load; the regulator of the furnace cannot help.",
        (FieldId.Draft, true, _) => "the vent does not draw, or it is pushed back. Do not leave it so.",
        (FieldId.FlueTemperature, true, _) => "too much gas, or too little air over the exchanger.",
        (FieldId.SupplyTemperature, true, _) => "too little air: filter, registers, ducts, blower speed.",
        (FieldId.FlameCurrent, _, true) => "a dirty sensor, a bad ground, or hot and neutral exchanged.",
        (FieldId.RoomCo, true, _) => "flue gas comes into the room. Stop the furnace and find where.",
        (FieldId.RoomCo, _, true) => "less than none cannot be: the analyzer was zeroed in bad air.",
        _ => null,
    };
}
