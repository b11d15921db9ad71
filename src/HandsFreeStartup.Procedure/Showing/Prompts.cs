using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Deciding;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Showing;

/// <summary>The prompt of the current step. All of it stands on the screen; said is the one thing to do and what to say, unless the technician wants everything.</summary>
static class Prompts
{
    /// <summary>So many letters take four seconds at the usual rate of the voice.</summary>
    const int MostLetters = 54;

    /// <summary>The prompt, and the caution, which is said when the step is come to.</summary>
    /// <param name="state">With the step.</param>
    /// <param name="arrival">How it was come to; null where it is only said again.</param>
    public static IEnumerable<Announcement> Of(StartupState state, Arrival? arrival)
    {
        Step step = state.Step;
        string back = arrival == Arrival.Return ? "Back to this step. " : "";
        Message full = $"{back}{Title(step)}. {Views.Do(state)}{Question(step)}";
        yield return new Announcement(full) { Said = state.SaysFull ? full : Short(state) };
        if (step.Caution is { } caution)
        {
            Message text = $"Caution: {caution}";
            yield return new Announcement(text) { Said = state.SaysFull || arrival == Arrival.Forward ? text : "" };
        }
    }

    /// <summary>Everything that the screen shows of the step: what to do, caution, reason, and the limits of what was measured.</summary>
    public static Announcement More(StartupState state)
    {
        Step step = state.Step;
        Message caution = step.Caution is null ? (Message)"" : $" Caution: {step.Caution}";
        Message why = step.Why is null ? (Message)"The checklist gives no reason for this step." : $"Why: {step.Why}";
        Message limits = Message.Join("", step.Readings
            .Select(demand => state.Reading(demand.FieldId, step.Scope)?.Reading.Limit)
            .OfType<DeclaredLimit>()
            .Select(limit => (Message)$" Limit: {limit}, {Message.Written(limit.Source)}."));
        return new Announcement($"{why}{limits}") { Said = $"{Title(step)}. {Views.Do(state)}{Question(step)}{caution} {why}{limits}" };
    }

    static MessagePart Title(Step step) => new MessagePart.Name(step.Title);

    static Message Question(Step step) => step.Question is null ? (Message)"" : $" {step.Question.Text}";

    static Message Short(StartupState state) =>
        PlateQuestion.Of(state) is not null ? (Message)"From the plate: say lowest, highest, then next." : state.Step.Prompt ?? Made(state.Step, state.Plan);

    static Message Made(Step step, StartupPlan plan)
    {
        Message say = step.Question?.Text ?? step.Kind switch
        {
            StepKind.Read or StepKind.Adjust => (Message)$"Say {new MessagePart.Form(string.Join(", ", step.Readings.Select(demand => step.Also.GetValueOrDefault(demand.FieldId, plan.FieldOf(demand.FieldId).SpokenNames)[0])))}.",
            StepKind.Wait => "",
            StepKind.Sign => "Say finish.",
            _ => "Say done.",
        };
        Message prompt = say.IsEmpty ? (Message)$"{Title(step)}." : $"{Title(step)}. {say}";
        return prompt.Shown.Length <= MostLetters ? prompt : $"{Title(step)}. The screen {(step.Question is null ? "says what" : "asks")}.";
    }
}
