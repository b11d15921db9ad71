using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Settling;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Safety;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>How a reading gets into the record: read back where it is doubtful or corrects another, entered, and everything that follows from it.</summary>
sealed class Entry(StartupState state, DateTimeOffset now)
{
    readonly Meaning _meaning = new(state);

    /// <summary>What was heard, under the current step.</summary>
    public IReadOnlyList<StartupEvent> Hear(Phrase.Reading reading)
    {
        Step step = state.Step;
        PlateQuestion? plate = PlateQuestion.Of(state);
        ReadingDemand? demand = step.Readings.FirstOrDefault(demand => demand.FieldId == reading.Field.Id);
        if (plate is not null && !plate.Bounds.Any(bound => bound.Id == reading.Field.Id))
        {
            return Refuse(reading.Evidence.Words, plate.Text);
        }

        if (plate is null && demand is null)
        {
            return Refuse(reading.Evidence.Words, $"This step does not ask for {reading.Field.Label.ToLowerInvariant()}.");
        }

        string? scope = plate?.Name ?? step.Scope;
        EnteredReading entered = plate is null ? _meaning.Judge(reading, demand!, scope) : Meaning.Unjudged(reading, scope!);
        bool isRepeated = plate is null && MayRepeat(demand!);
        decimal? before = state.Counts(reading.Field.Id, scope) ? state.Reading(reading.Field.Id, scope)!.Reading.Value : null;
        if (before == reading.Value && !isRepeated)
        {
            return Refuse(reading.Evidence.Words, $"{reading.Field.Label} {Numbers.Text(reading.Value)} {reading.Field.Unit.Symbol} is entered already.");
        }

        // A different value for what is entered already is a correction: it is read back, never overwritten unasked.
        bool corrects = before is not null && !isRepeated;
        return reading.Evidence.Certainty == Certainty.Green && !corrects
            ? Enter(entered)
            : [new ConfirmationAsked(now, step.Id, corrects && entered.Evidence.Why.Length == 0
                ? entered with { Evidence = entered.Evidence with { Why = $"it was {Numbers.Text(before!.Value)} before" } }
                : entered)];
    }

    /// <summary>The reading is in the record, with what it means, voids and asks for.</summary>
    public IReadOnlyList<StartupEvent> Enter(EnteredReading entered)
    {
        if (PlateQuestion.IsBound(entered.Key))
        {
            return [new ReadingEntered(now, state.Step.Id, entered)];
        }

        ImmutableArray<CalculatedResult> results = _meaning.Results(entered);
        return
        [
            new ReadingEntered(now, state.Step.Id, entered),
            .. results.IsEmpty ? [] : new StartupEvent[] { new ResultsComputed(now, state.Step.Id, entered.Key.Scope, results) },
            .. Corrected(entered),
            .. Series(entered),
            .. Monoxide(entered, results),
        ];
    }

    /// <summary>A value of an adjustment, or of a series, is said again and again.</summary>
    bool MayRepeat(ReadingDemand demand) => state.Step.Kind == StepKind.Adjust || demand.Settles is not null;

    /// <summary>A corrected reading voids what depends on it.</summary>
    IEnumerable<StartupEvent> Corrected(EnteredReading entered)
    {
        bool corrects = state.Step.Kind != StepKind.Adjust && state.Reading(entered.Key.FieldId, entered.Key.Scope) is { Counts: true } before
            && before.Reading.Value != entered.Value;
        return corrects ? new Voids(state, now).Of(state.Step, $"{Fields.Find(entered.Key.FieldId)!.Label.ToLowerInvariant()} was corrected") : [];
    }

    IEnumerable<StartupEvent> Series(EnteredReading entered)
    {
        if (entered.IsEarly || state.Step.Readings.First(demand => demand.FieldId == entered.Key.FieldId).Settles is not { } settles)
        {
            return [];
        }

        ImmutableArray<Sample> samples = state.Samples(entered.Key).Add(StartupState.SampleOf(now, entered.Value));
        if (samples.Length < 2)
        {
            return [];
        }

        Unit own = Fields.Find(entered.Key.FieldId)!.Unit;
        double Scaled(decimal value) => (double)own.Convert(value, Unit.Find(entered.UnitSymbol) ?? own, isDifference: true);
        Settled settled = new SettlingRule(settles.Window, Scaled(settles.Drift), Scaled(settles.Scatter)).Judge(samples.AsSpan()).Settled;
        double? mean = WindowMean.Of(samples.AsSpan(), settles.Window)?.Value;
        return [new SeriesJudged(now, state.Step.Id, entered.Key, samples.Length, settled, mean, entered.Value)];
    }

    IEnumerable<StartupEvent> Monoxide(EnteredReading entered, ImmutableArray<CalculatedResult> results)
    {
        if (entered.Key.FieldId == "room_co")
        {
            return Judge(MonoxidePlace.Room, entered.Key, (double)entered.Value, (double)(entered.ExpandedUncertainty ?? 0), entered.Evidence);
        }

        return results.FirstOrDefault(result => result.Id == "co_air_free") is { Value: { } airFree } result
            ? Judge(MonoxidePlace.Flue, entered.Key, airFree, result.ExpandedUncertainty ?? 0, entered.Evidence)
            : [];
    }

    IEnumerable<StartupEvent> Judge(MonoxidePlace place, ReadingKey key, double ppm, double expanded, Evidence evidence)
    {
        CarbonMonoxideTier tier = CarbonMonoxideTier.Of(place, ppm, expanded);
        if (tier.Action == MonoxideAction.CarryOn)
        {
            return [];
        }

        bool counts = ppm >= tier.From;
        MonoxideJudged judged = new(now, state.Step.Id, key, place, tier.Action, tier.Do, tier.Source, counts);
        if (tier.Action == MonoxideAction.Evacuate)
        {
            return [judged, .. new Halt(state, now).Stop(StopCause.CarbonMonoxide, evidence)];
        }

        int number = key.FieldId == "oxygen" ? state.MonoxideNumber(place, key.Scope) : 0;
        bool ends = counts && tier.UnsafeAfter <= state.Excesses(place, key.Scope, number) + 1;
        return ends
            ? [judged, new UnsafeAsked(now, state.Step.Id, $"CO {(place == MonoxidePlace.Room ? "in the room" : "in the flue, air-free,")} is {Numbers.Text(ppm, 0)} ppm again, {Numbers.Text(tier.From, 0)} ppm or more", key)]
            : [judged];
    }

    IReadOnlyList<StartupEvent> Refuse(string said, string reason) => [new CommandRefused(now, said, reason)];
}
