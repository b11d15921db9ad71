using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Settling;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Safety;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>How a reading gets into the record: read back where it is doubtful or corrects another, entered, and everything that follows from it.</summary>
sealed class Entry(StartupState state, Now now)
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
            return Refuse(reading.Evidence.Words, $"This step does not ask for {Labels.Within(reading.Field.Label)}.");
        }

        string? scope = plate?.Name ?? step.Scope;
        EnteredReading entered = plate is null ? _meaning.Judge(reading, demand!, scope) : Meaning.Unjudged(reading, scope!);
        bool isRepeated = plate is null && MayRepeat(demand!);
        decimal? before = state.Counts(reading.Field.Id, scope) ? state.Reading(reading.Field.Id, scope)!.Reading.Value : null;
        if (before == reading.Value && !isRepeated)
        {
            return Refuse(reading.Evidence.Words, $"{reading.Field.Label} {ShownValue.Alone(reading.Value, reading.Field.Unit.Symbol)} is entered already.");
        }

        // A different value for what is entered already is a correction: it is read back, never overwritten unasked. Only danger waits for nothing.
        bool corrects = before is not null && !isRepeated;
        bool isGreen = reading.Evidence.Certainty == Certainty.Green;
        return isGreen && (!corrects || Tier(entered)?.Action >= MonoxideAction.ShutOff)
            ? Enter(entered)
            : ReadBack(corrects && entered.Evidence.Why.Length == 0
                ? entered with { Evidence = entered.Evidence with { Why = $"it was {Numbers.Text(before!.Value)} before" } }
                : entered);
    }

    /// <summary>A doubtful value is read back; what is dangerous in it is told at once.</summary>
    public IReadOnlyList<StartupEvent> ReadBack(EnteredReading doubtful) => [new ConfirmationAsked(now, state.Step.Id, doubtful), .. Feared(doubtful)];

    /// <summary>
    /// The value that was read back was heard again. An ear that mishears a voice mishears it the same way every time, so what is doubtful twice proves nothing
    /// and still takes "confirm"; only danger is believed the second time.
    /// </summary>
    public IReadOnlyList<StartupEvent> HearAlike(Phrase.Reading again, EnteredReading doubtful) =>
        again.Evidence is { Certainty: Certainty.Green } or { Channel: Channel.Keys } || Tier(doubtful)?.Action >= MonoxideAction.ShutOff
            ? Enter(doubtful)
            : Refuse(again.Evidence.Words, $"Still not clear. {EvidenceWords.ReadBack(doubtful)}");

    /// <summary>A room that is measured before a stopped start-up goes on; it belongs to no step. Air that is not clear is waited for again.</summary>
    IReadOnlyList<StartupEvent> EnterOnTheWayBack(EnteredReading entered)
    {
        ImmutableArray<StartupEvent> judged = [.. Monoxide(entered, [])];
        MonoxideAction least = state.Causes.Contains(StopCause.CarbonMonoxide) ? MonoxideAction.FindSource : MonoxideAction.ShutOff;
        bool isBadAir = judged.OfType<MonoxideJudged>().Any(one => one is { Counts: true, Action: not MonoxideAction.Evacuate } && one.Action >= least);
        return
        [
            new ReadingEntered(now, state.Step.Id, entered),
            .. judged,
            .. isBadAir ? [new Halt(state, now).StartOf(SafetyWait.After(StopCause.CarbonMonoxide)!)] : Array.Empty<StartupEvent>(),
        ];
    }

    /// <summary>Carbon monoxide in the room where a stopped start-up stands.</summary>
    /// <param name="reading">As heard.</param>
    /// <param name="isEarly">Whether the air was not waited for yet.</param>
    public EnteredReading OnTheWayBack(Phrase.Reading reading, bool isEarly) => InTheRoom(reading, AfterTheAlarm) with { IsEarly = isEarly };

    /// <summary>Carbon monoxide in the room, said where nothing asks for it. Only what proves nothing yet is early.</summary>
    public EnteredReading BetweenSteps(Phrase.Reading reading)
    {
        EnteredReading entered = InTheRoom(reading, ReadingKey.BetweenSteps);
        return entered with { IsEarly = state.AirAwaited is not null && CarbonMonoxideTier.IsClear(entered) };
    }

    EnteredReading InTheRoom(Phrase.Reading reading, string scope) => _meaning.Judge(reading, new ReadingDemand(FieldId.RoomCo, null), scope);

    /// <summary>The scope of a reading that is taken before a stopped start-up goes on.</summary>
    const string AfterTheAlarm = "after the alarm";

    /// <summary>The reading is in the record, with what it means, voids and asks for.</summary>
    public IReadOnlyList<StartupEvent> Enter(EnteredReading entered) => entered.Key.Scope switch
    {
        _ when PlateQuestion.IsBound(entered.Key) => [new ReadingEntered(now, state.Step.Id, entered)],
        AfterTheAlarm => EnterOnTheWayBack(entered),
        ReadingKey.BetweenSteps => [new ReadingEntered(now, state.Step.Id, entered), .. Monoxide(entered, [])],
        _ => EnterInStep(entered),
    };

    IReadOnlyList<StartupEvent> EnterInStep(EnteredReading entered)
    {
        ImmutableArray<CalculatedResult> results = _meaning.Results(entered);
        return
        [
            new ReadingEntered(now, state.Step.Id, entered),
            .. results.IsEmpty ? [] : new StartupEvent[] { new ResultsComputed(now, state.Step.Id, entered.Key.Scope, results) },
            .. Corrected(entered),
            .. Series(entered),
            .. Pair(entered),
            .. Monoxide(entered, entered.IsEarly ? _meaning.Results(entered with { IsEarly = false }) : results),
        ];
    }

    /// <summary>The time between two sets begins when the first is complete, and begins anew when its values change.</summary>
    IEnumerable<StartupEvent> Pair(EnteredReading entered)
    {
        Step step = state.Step;
        if (entered.IsEarly || state.PairOf(step.Id, entered.Key.FieldId) is not { } settles || state.IsSecond(step.Id, entered, settles))
        {
            return [];
        }

        bool isComplete = step.Readings.Where(demand => demand.Settles is { Twice: true })
            .Select(demand => new ReadingKey(demand.FieldId, step.Scope ?? "")).All(key => key == entered.Key || state.FirstSet.ContainsKey(key));
        bool isSame = state.FirstSet.TryGetValue(entered.Key, out decimal first) && first == entered.Value && state.Timers.GetValueOrDefault(SecondSet.IdOf(step.Id)) is { IsEnded: false };
        return isComplete && !isSame ? [new TimerStarted(now, SecondSet.IdOf(step.Id), settles.Window, now.Steady)] : [];
    }

    /// <summary>A value of an adjustment, or of a series, is said again and again.</summary>
    bool MayRepeat(ReadingDemand demand) => state.Step.Kind == StepKind.Adjust || demand.Settles is not null;

    /// <summary>A corrected reading voids what depends on it.</summary>
    IEnumerable<StartupEvent> Corrected(EnteredReading entered)
    {
        bool corrects = state.Step.Kind != StepKind.Adjust && state.Reading(entered.Key.FieldId, entered.Key.Scope) is { Counts: true } before
            && before.Reading.Value != entered.Value;
        return corrects ? new Voids(state, now).Of(state.Step, $"{Labels.Within(Fields.Find(entered.Key.FieldId)!.Label)} was corrected") : [];
    }

    IEnumerable<StartupEvent> Series(EnteredReading entered)
    {
        if (entered.IsEarly || state.Step.Readings.First(demand => demand.FieldId == entered.Key.FieldId).Settles is not { } settles)
        {
            return [];
        }

        ImmutableArray<Sample> samples = state.Samples(entered.Key, state.Step.Id).Add(StartupState.SampleOf(now, entered.Value));
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

    /// <summary>The tier of a value of carbon monoxide as it was read, whatever else is missing; null for other fields.</summary>
    static CarbonMonoxideTier? Tier(EnteredReading entered) => entered.Key.FieldId switch
    {
        FieldId.RoomCo => CarbonMonoxideTier.Of(MonoxidePlace.Room, entered),
        FieldId.FlueCo => CarbonMonoxideTier.Of(MonoxidePlace.Flue, entered),
        _ => null,
    };

    /// <summary>A dangerous value is told at once, though it waits for its confirmation.</summary>
    public IEnumerable<StartupEvent> Feared(EnteredReading entered) => Tier(entered) is { Action: >= MonoxideAction.ShutOff } tier
        ? [Judged(tier, entered.Key, (double)entered.Value, isAirFree: false, entered.IsOver) with { IsDoubtful = true, Counts = false }]
        : [];

    IEnumerable<StartupEvent> Monoxide(EnteredReading entered, ImmutableArray<CalculatedResult> results)
    {
        CarbonMonoxideTier? asRead = Tier(entered);
        CalculatedResult? airFree = results.FirstOrDefault(result => result is { Id: ResultId.CoAirFree, Value: not null });
        CarbonMonoxideTier? free = airFree is null ? null : CarbonMonoxideTier.Of(MonoxidePlace.Flue, airFree.Value!.Value, airFree.ExpandedUncertainty ?? 0);
        // Of two tiers the graver one is told; of the same one the air-free value, which is what the tiers are about.
        return free is not null && free.From >= (asRead?.From ?? 0) && !entered.IsOver
            ? Judge(free, entered, airFree!.Value!.Value, isAirFree: true, airFree.IsOver)
            : asRead is null ? [] : Judge(asRead, entered, (double)entered.Value, isAirFree: false, entered.IsOver);
    }

    IEnumerable<StartupEvent> Judge(CarbonMonoxideTier tier, EnteredReading entered, double ppm, bool isAirFree, bool isOver)
    {
        if (tier.Action == MonoxideAction.CarryOn)
        {
            return [];
        }

        MonoxideJudged judged = Judged(tier, entered.Key, ppm, isAirFree, isOver);
        if (tier.Action == MonoxideAction.Evacuate)
        {
            return [judged, .. new Halt(state, now).Stop(StopCause.CarbonMonoxide, entered.Evidence)];
        }

        int number = entered.Key.FieldId == FieldId.Oxygen ? state.MonoxideNumber(tier.Place, entered.Key.Scope) : 0;
        bool ends = state is { IsStopped: false, Phase: not Phase.Condemning, End: null } && judged.Counts && tier.UnsafeAfter <= state.Excesses(tier.Place, entered.Key.Scope, number) + 1;
        TimerStarted[] again = tier.Action == MonoxideAction.ShutOff && judged.Counts && !state.IsStopped
            ? [new TimerStarted(now, MonoxideAgain.IdOf(state.Step.Id), MonoxideAgain.Duration * state.Plan.TimerFactor, now.Steady)] : [];
        return ends
            ? [judged, .. again, new UnsafeAsked(now, state.Step.Id, $"CO {(tier.Place == MonoxidePlace.Room ? "in the room" : isAirFree ? "in the flue, air-free," : "in the flue")} is {Ppm(ppm, isOver)} again, {Ppm(tier.From, false)} or more", entered.Key)]
            : [judged, .. again];
    }

    MonoxideJudged Judged(CarbonMonoxideTier tier, ReadingKey key, double ppm, bool isAirFree, bool isOver) =>
        new(now, state.Step.Id, key)
        {
            Place = tier.Place,
            Action = tier.Action,
            Do = tier.Do,
            Source = tier.Source,
            Counts = isOver || ppm >= tier.From,
            Ppm = ppm,
            IsAirFree = isAirFree,
            IsOver = isOver,
        };

    static ShownValue Ppm(double ppm, bool isOver) => ShownValue.Alone(Math.Round((decimal)ppm, 0, MidpointRounding.AwayFromZero), Unit.PartsPerMillion.Symbol, isOver);

    IReadOnlyList<StartupEvent> Refuse(string said, Message reason) => [new CommandRefused(now, said, reason)];
}
