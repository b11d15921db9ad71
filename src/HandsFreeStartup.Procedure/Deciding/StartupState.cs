using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Settling;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Safety;
using static HandsFreeStartup.Procedure.Deciding.PhaseMachine;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>How far a step has come.</summary>
enum StepStatus
{
    Ahead,
    Done,
    Skipped,
}

/// <summary>A reading that was entered, and whether it still counts.</summary>
sealed record KeptReading(EnteredReading Reading, string StepId, ReadingState State, int Number, DateTimeOffset At)
{
    public bool Counts => State is ReadingState.Provisional or ReadingState.Final && !Reading.IsEarly;
}

/// <summary>Something open; <see cref="IsClosed"/> while only its leak check is missing.</summary>
sealed record OpenThing(Thing Thing, bool IsClosed);

/// <summary>The timer of a step.</summary>
/// <param name="StartedAt">By the wall clock.</param>
/// <param name="Steady">By the clock that cannot be set; null where the record has none.</param>
/// <param name="Duration">How long it runs.</param>
/// <param name="IsHalfway">Whether half of it was told.</param>
/// <param name="IsEnded">Whether its end was told.</param>
/// <param name="IsOfThisRun">Whether it was started since the program was started.</param>
sealed record RunningTimer(DateTimeOffset StartedAt, TimeSpan? Steady, TimeSpan Duration, bool IsHalfway, bool IsEnded, bool IsOfThisRun)
{
    public TimeSpan Remaining(Now now) => IsEnded ? TimeSpan.Zero : Larger(TimeSpan.Zero, Duration - Elapsed(now));

    /// <summary>By the steady clock; across a resume the shorter of both, and after a restart of the machine no more than it has been up.</summary>
    public TimeSpan Elapsed(Now now)
    {
        TimeSpan byWall = Larger(TimeSpan.Zero, now.At - StartedAt);
        if (now.Steady is not { } steady || Steady is not { } began)
        {
            return byWall;
        }

        TimeSpan bySteady = steady >= began ? steady - began : steady;
        return IsOfThisRun || bySteady < byWall ? bySteady : byWall;
    }

    static TimeSpan Larger(TimeSpan one, TimeSpan other) => one > other ? one : other;
}

/// <summary>Free speech that was heard and read back.</summary>
/// <param name="Text">As heard; no language finds other words for it.</param>
/// <param name="Evidence">How it was heard.</param>
sealed record HeardText(Message Text, Evidence Evidence)
{
    public static HeardText Of(DictationHeard heard) => new($"{new MessagePart.Form(heard.Text)}", heard.Evidence);
}

/// <summary>The clocks as they were when a run began, or the wall clock jumped.</summary>
sealed record ClockMark(DateTimeOffset At, TimeSpan Steady);

/// <summary>Where the talk with the technician stands, beside the record of what was done. Only <see cref="Apply"/> changes it.</summary>
sealed partial class StartupState(StartupPlan plan)
{
    readonly PhaseMachine _machine = new();
    readonly JobRecord _record = new(plan);
    readonly Dictionary<string, int> _improperAnswers = [];
    readonly List<(MonoxidePlace Place, string Scope, int Number)> _excesses = [];
    readonly Dictionary<ReadingKey, int> _beforeShutOff = [];
    MonoxideJudged? _aired;
    readonly Dictionary<ReadingKey, ImmutableArray<Sample>> _samples = [];
    readonly HashSet<ReadingKey> _moving = [];
    readonly Dictionary<string, DeclaredLimit> _stated = [];
    readonly Dictionary<string, Evidence> _unexplained = [];
    readonly HashSet<string> _excused = [];
    readonly Dictionary<string, PendingOxygen> _adjusted = [];
    readonly HashSet<StopCause> _causes = [];

    public StartupPlan Plan { get; } = plan;

    /// <summary>What must be looked at before a signature, the gravest first.</summary>
    public ImmutableArray<JobException> Exceptions => _record.Exceptions;
    public Phase Phase => _machine.Phase;
    public JobDescription? Job => _record.Job;
    public int StepIndex { get; private set; }
    public Step Step => Plan.All[StepIndex];

    /// <summary>The step that "go to" has named, while it waits for its confirmation.</summary>
    public Step? Target { get; private set; }

    /// <summary>Whether the step is one of those that make a furnace safe that is not put into service.</summary>
    public bool IsMakingSafe => StepIndex >= Plan.Steps.Length;

    /// <summary>The readings that were entered last and not disregarded, whether they stand or not.</summary>
    public IEnumerable<ReadingKey> Keys => _record.Keys;

    /// <summary>The day on which the job began; null before.</summary>
    public DateOnly? Day => _record.Began is { } began ? DateOnly.FromDateTime(began.UtcDateTime) : null;

    /// <summary>By stage or room: the readings that count.</summary>
    public ImmutableDictionary<string, ImmutableSortedDictionary<string, EnteredReading>> Stages => Keys.Select(key => Reading(key)!).Where(kept => kept.Counts)
        .GroupBy(kept => kept.Reading.Key.Scope)
        .ToImmutableDictionary(stage => stage.Key, stage => stage.ToImmutableSortedDictionary(kept => kept.Reading.Key.FieldId, kept => kept.Reading, StringComparer.Ordinal));

    /// <summary>The stages and rooms that have results that still count.</summary>
    public IEnumerable<string> ScopesOfResults => _record.Results.Select(fate => fate.Scope).Distinct();

    /// <summary>The results of a stage that still count.</summary>
    public ImmutableArray<CalculatedResult> Results(string? scope) => [.. _record.Results.Where(fate => fate.Scope == (scope ?? "")).Select(fate => fate.Result)];

    /// <summary>Those, and the ones that stages have in common.</summary>
    public IEnumerable<CalculatedResult> ResultsBehind(string? scope) =>
        _record.Results.Where(fate => fate.Scope == (scope ?? "") || ResultKind.Find(fate.Result.Id) is { SpansStages: true }).Select(fate => fate.Result);

    public IReadOnlyList<OpenThing> Open => [.. _record.Things.Where(thing => thing.IsOpen).Select(thing => new OpenThing(thing.Thing, thing.Closed is not null))];

    /// <summary>By stage: the oxygen before adjustments, until it was measured again.</summary>
    public Dictionary<string, PendingOxygen> PendingOxygen { get; } = [];

    /// <summary>What the expected oxygen of a stage was worked out from; null where there was no adjustment.</summary>
    public PendingOxygen? Adjusted(string scope) => PendingOxygen.GetValueOrDefault(scope) ?? _adjusted.GetValueOrDefault(scope);
    public IReadOnlyDictionary<string, RunningTimer> Timers => _record.Timers.Where(timer => !timer.IsWithdrawn).ToDictionary(timer => timer.StepId, Running);
    public EnteredReading? Doubtful { get; private set; }
    public ReadingKey? Provisional { get; private set; }
    public ReadingKey? LastEntered { get; private set; }
    public DictationPurpose Purpose { get; private set; }
    public StopCause Cause { get; private set; }
    public bool IsStopped { get; private set; }

    /// <summary>How often something was asked anew so far.</summary>
    public int Questions { get; private set; }
    public bool IsPaused { get; private set; }
    public bool Signs { get; private set; }
    public bool IsSigned => _record.Signature is not null;

    /// <summary>The first reading of the current step as it was when the step was entered; null where there was none.</summary>
    public decimal? AdjustedFrom { get; private set; }

    /// <summary>Why it was stopped since it last went on: each must be over before it goes on again.</summary>
    public IReadOnlySet<StopCause> Causes => _causes;
    public bool AsksFreshSmell { get; private set; }

    /// <summary>After a smell of gas and its wait, no gas was smelled any more.</summary>
    public bool IsSmellGone { get; private set; }

    /// <summary>After carbon monoxide and its wait, the room was measured below its limit.</summary>
    public bool IsAirClear { get; private set; }

    /// <summary>Air that was not clear where nothing asked for it; null when it was measured clear since.</summary>
    public MonoxideJudged? Unaired { get; private set; }

    /// <summary>The wait after such air that ends last, in whatever step it began; null where none runs. Before its end no value of a room proves anything.</summary>
    public KeyValuePair<string, RunningTimer>? AirAwaited => Unaired is null ? null
        : Timers.Where(timer => MonoxideAgain.StepOf(timer.Key) is not null && !timer.Value.IsEnded).OrderByDescending(timer => timer.Value.StartedAt + timer.Value.Duration)
            .Select(timer => (KeyValuePair<string, RunningTimer>?)timer).FirstOrDefault();

    /// <summary>What one of several words is asked for.</summary>
    public ChoiceTopic? Choosing { get; private set; }

    /// <summary>Free speech that awaits its confirmation.</summary>
    public HeardText? Heard { get; private set; }

    /// <summary>The reason for which the furnace is not put into service, while one of several words is asked for.</summary>
    public string EndReason { get; private set; } = "";

    /// <summary>That the furnace is not put into service is decided; the steps that make it safe lead to the end.</summary>
    public EndDecided? End => _record.Decided;

    /// <summary>A limit that was said and is strange; it is asked a second time.</summary>
    public LimitDoubted? DoubtedLimit { get; private set; }

    /// <summary>What moves the exhaust, as stated or said; null while nobody has.</summary>
    public DraftBy? DraftBy { get; private set; } = plan.Appliance.Branch.DraftBy;

    /// <summary>Both clocks, as last known to fit together.</summary>
    public ClockMark? Clocks { get; private set; }

    /// <summary>By reading: the value that the second set must agree with.</summary>
    public Dictionary<ReadingKey, decimal> FirstSet { get; } = [];

    /// <summary>The value of the first set, where the second agreed with it.</summary>
    public decimal? FirstOf(ReadingKey key) => Agreed.Contains(key) && FirstSet.TryGetValue(key, out decimal first) ? first : null;

    /// <summary>Readings whose second value agreed with the first.</summary>
    public HashSet<ReadingKey> Agreed { get; } = [];

    /// <summary>The condition that waits for its confirmation, or that ended the start-up.</summary>
    public UnsafeAsked? Condition { get; private set; }
    public bool IsUnsafe { get; private set; }

    /// <summary>Ended, not put into service; nothing leads from here to a signature.</summary>
    public bool HasEnded => _record.OutOfService is not null;

    public StepStatus Status(Step step) => _record.StepOf(step.Id)?.End switch
    {
        StepEnd.Done => StepStatus.Done,
        StepEnd.Skipped => StepStatus.Skipped,
        _ => StepStatus.Ahead,
    };

    /// <summary>Whether the step belongs to this furnace, as far as that is known by now. What is open is closed, whatever branch opened it.</summary>
    public bool Applies(Step step) => Applies(step, DraftBy);

    /// <summary>The same, once it is known what moves the exhaust.</summary>
    public bool Applies(Step step, DraftBy? by) => step.OnlyFor.DraftBy is not { } drawn || by is not { } draws || drawn == draws
        || Open.Any(open => step.Closes.Contains(open.Thing.Name) || step.Proves.Contains(open.Thing.Name));

    /// <summary>How an unsafe answer of the step was heard that nobody has explained yet; null where there is none.</summary>
    public Evidence? Unexplained(string stepId) => _unexplained.GetValueOrDefault(stepId);

    /// <summary>Whether a reason was given why values of the step stay outside of their limits.</summary>
    public bool IsExcused(string stepId) => _excused.Contains(stepId);

    public KeptReading? Reading(string fieldId, string? scope) => Reading(new ReadingKey(fieldId, scope ?? ""));

    public KeptReading? Reading(ReadingKey key) => _record.Reading(key) is { } fate ? Kept(fate) : null;

    public bool Counts(string fieldId, string? scope) => Reading(fieldId, scope) is { Counts: true };

    /// <summary>The limit of the files, or else the one that was said from the rating plate.</summary>
    public DeclaredLimit? Limit(string? name, string? scope) =>
        Plan.Limit(name, scope) ?? (name is null ? null : _stated.GetValueOrDefault(scope is null ? name : $"{name}/{scope}"));

    /// <summary>The wait that must be over before a reading of <paramref name="step"/> proves anything; null where it would not be early now.</summary>
    public string? WaitBefore(Step step, string fieldId) =>
        step.After is { } wait && Timers.GetValueOrDefault(wait) is not { IsEnded: true } ? wait
        : fieldId == FieldId.RoomCo && AirAwaited is { Key: var air } ? air
        : fieldId is FieldId.RoomCo or FieldId.FlueCo && Timers.GetValueOrDefault(MonoxideAgain.IdOf(step.Id)) is { IsEnded: false } ? MonoxideAgain.IdOf(step.Id)
        : null;

    /// <summary>How often the step was answered otherwise than it should.</summary>
    public int ImproperAnswers(string stepId) => _improperAnswers.GetValueOrDefault(stepId);

    /// <summary>How many measurements other than the one of that number asked to shut the furnace off, in that place and stage or room.</summary>
    public int Excesses(MonoxidePlace place, string scope, int number) =>
        _excesses.Count(excess => excess.Place == place && excess.Scope == scope && excess.Number != number);

    /// <summary>Whether the reading of carbon monoxide, or of the flue gas that it was in, was measured no later than when the furnace was to be shut off for it: whatever oxygen is said afterwards, it proves nothing.</summary>
    public bool IsBeforeShutOff(ReadingKey key) => _beforeShutOff.TryGetValue(key, out int last) && Reading(key) is { } kept && kept.Number <= last;

    /// <summary>The number of the CO reading of that stage or room; 0 if there is none.</summary>
    public int MonoxideNumber(MonoxidePlace place, string scope) => Reading(place == MonoxidePlace.Room ? FieldId.RoomCo : FieldId.FlueCo, scope)?.Number ?? 0;

    /// <summary>Whether every prompt is said in full.</summary>
    public bool SaysFull { get; private set; } = plan.Settings.SaysFullPrompts;

    /// <summary>The value that was found first and was acted upon or went on from; null before one.</summary>
    public EnteredReading? Found(ReadingKey key) => _record.Readings.FirstOrDefault(fate => fate.Reading.Key == key && fate.WasFinal)?.Reading;

    /// <summary>The values of a series so far; each step has its own.</summary>
    public ImmutableArray<Sample> Samples(ReadingKey key, string stepId) => Reading(key)?.StepId == stepId ? _samples.GetValueOrDefault(key, []) : [];

    /// <summary>Whether a series was found not to have settled.</summary>
    public bool IsMoving(ReadingKey key) => _moving.Contains(key);

    /// <summary>A value of a series; the time counts from a fixed moment.</summary>
    public static Sample SampleOf(DateTimeOffset at, decimal value) => new(at - DateTimeOffset.UnixEpoch, (double)value);

    /// <summary>Takes in one event, live or replayed: first what it means for the talk, under the record as it was, then the record.</summary>
    /// <exception cref="InvalidOperationException">It cannot follow the events before it.</exception>
    /// <exception cref="KeyNotFoundException">It speaks of a reading or a wait that there is not.</exception>
    public void Apply(StartupEvent happened)
    {
        Phase before = Phase;
        happened.FoldBy(this);
        _record.Take(happened);
        Questions += Phase == before && LateSpeech.LeavesTheQuestion(happened, IsStopped) ? 0 : 1;
    }

    public string Drawing() => _machine.Drawing();

    void Enter(StepEntered entered)
    {
        StepIndex = Plan.IndexOf(entered.StepId);
        LastEntered = null;
        if (Target is not null)
        {
            Target = null;
            _machine.Fire(Move.Settle);
        }

        AdjustedFrom = Step.Readings.Select(demand => Reading(demand.FieldId, Step.Scope)?.Reading.Value).FirstOrDefault();
    }

    void Except(ExceptionMade made)
    {
        Heard = null;
        if (made.Purpose == DictationPurpose.AnswerReason)
        {
            _unexplained.Remove(made.StepId);
        }
        else
        {
            _excused.Add(made.StepId);
        }

        _machine.Fire(Move.Settle);
    }

    void Choose(ChoiceMade made)
    {
        Choosing = null;
        if (made.Topic == ChoiceTopic.Step)
        {
            DraftBy = Plan.All[Plan.IndexOf(made.StepId)].Question?.DraftOf(made.Value) ?? DraftBy;
        }
    }

    void Answer(AnswerGiven given)
    {
        Step step = Plan.All[Plan.IndexOf(given.StepId)];
        if (step.Question is not { } question || given.Answer == question.Proper)
        {
            return;
        }

        _improperAnswers[given.StepId] = ImproperAnswers(given.StepId) + 1;
        if (step.Guards)
        {
            _unexplained[given.StepId] = given.Evidence;
        }
    }

    /// <summary>What was typed was not misheard: taking it back still needs its reason. After a stop another step may be current than the one that was answered.</summary>
    void Deny()
    {
        if (Condition is { Key: null, StepId: var asked } && Unexplained(asked) is { Channel: Channel.Voice })
        {
            _unexplained.Remove(asked);
        }

        Condition = null;
        _machine.Fire(Move.Settle);
    }

    void Decline()
    {
        Heard = null;
        Choosing = null;
        Settle();
    }

    void Settle() => _machine.Fire(IsStopped ? Move.HoldStill : Move.Settle);

    void Judge(SeriesJudged judged)
    {
        if (judged.Settled == Settled.NotYet)
        {
            _moving.Add(judged.Key);
        }
    }

    void Resume()
    {
        IsStopped = false;
        Unaired = IsAirClear ? null : Unaired;
        Heard = null;
        _causes.Clear();
        foreach (Step step in Plan.Steps.Where(step => step.Question is { StopsForGas: true }))
        {
            _unexplained.Remove(step.Id);
        }

        _machine.Fire(Move.Settle);
    }

    void Decide()
    {
        Heard = null;
        Choosing = null;
        if (!IsStopped)
        {
            _machine.Fire(Move.Settle);
        }
    }

    void Keep(ReadingEntered entered)
    {
        ReadingKey key = entered.Reading.Key;
        _excused.Remove(entered.StepId);
        Compare(entered);
        ImmutableArray<Sample> samples = Samples(key, entered.StepId);
        Forget(key, isReplaced: true);
        _samples[key] = entered.Reading.IsEarly ? [] : samples.Add(SampleOf(entered.At, entered.Reading.Value));
        if (key.FieldId == FieldId.RoomCo)
        {
            Air(entered.Reading);
        }

        Provisional = key;
        LastEntered = key;
        if (Phase == Phase.Confirming)
        {
            Doubtful = null;
            Settle();
        }
    }

    /// <summary>The last value of the room tells whether it is clear, whatever was measured before it.</summary>
    void Air(EnteredReading room)
    {
        IsAirClear = CarbonMonoxideTier.IsClear(room);
        if (IsAirClear && !room.IsEarly)
        {
            (Unaired, _aired) = (null, Unaired ?? _aired);
        }
    }

    /// <summary>A clear value that is taken back, misheard perhaps, clears nothing.</summary>
    void TakeBackAir(ReadingKey key)
    {
        IsAirClear &= key.FieldId != FieldId.RoomCo;
        Unaired ??= key == new ReadingKey(FieldId.RoomCo, ReadingKey.BetweenSteps) ? _aired : null;
    }

    /// <summary>The second value, said when the time between the sets is over, agrees with the first; or it is the first of a new pair.</summary>
    void Compare(ReadingEntered entered)
    {
        if (entered.Reading.IsEarly || PairOf(entered.StepId, entered.Reading.Key.FieldId) is not { } settles)
        {
            return;
        }

        if (IsSecond(entered.StepId, entered.Reading, settles))
        {
            Agreed.Add(entered.Reading.Key);
            return;
        }

        FirstSet[entered.Reading.Key] = entered.Reading.Value;
        Agreed.RemoveWhere(key => key.Scope == entered.Reading.Key.Scope);
    }

    /// <summary>What a pair of values of that field must keep in the step; null where one value is enough.</summary>
    public Settles? PairOf(string stepId, string fieldId) =>
        Plan.All[Plan.IndexOf(stepId)].Readings.FirstOrDefault(demand => demand.FieldId == fieldId)?.Settles is { Twice: true } settles ? settles : null;

    /// <summary>Whether the value would be a second one that agrees.</summary>
    public bool IsSecond(string stepId, EnteredReading reading, Settles settles)
    {
        Unit own = Fields.Find(reading.Key.FieldId)!.Unit;
        return Timers.GetValueOrDefault(SecondSet.IdOf(stepId)) is { IsEnded: true }
            && FirstSet.TryGetValue(reading.Key, out decimal first)
            && Math.Abs(reading.Value - first) <= own.Convert(settles.Drift, Unit.Find(reading.UnitSymbol) ?? own, isDifference: true);
    }

    void Forget(ReadingKey key, bool isReplaced = false)
    {
        _samples.Remove(key);
        _moving.Remove(key);
        if (!isReplaced)
        {
            FirstSet.Remove(key);
            Agreed.Remove(key);
        }

        if (Provisional == key)
        {
            Provisional = null;
        }

        if (LastEntered == key)
        {
            LastEntered = null;
        }
    }

    void Adjust(AdjustmentMade made)
    {
        if (made.Key.FieldId != FieldId.ManifoldPressure)
        {
            return;
        }

        if (Reading(FieldId.Oxygen, made.Key.Scope) is { Counts: true } oxygen)
        {
            PendingOxygen[made.Key.Scope] = new PendingOxygen(oxygen.Reading, made.From, made.To);
        }
        else if (PendingOxygen.TryGetValue(made.Key.Scope, out PendingOxygen? pending))
        {
            PendingOxygen[made.Key.Scope] = pending with { To = made.To };
        }
    }

    void Measured(Step step)
    {
        if (step.Readings.Any(demand => demand.FieldId == FieldId.Oxygen) && Counts(FieldId.Oxygen, step.Scope))
        {
            if (PendingOxygen.Remove(step.Scope ?? "", out PendingOxygen? measured))
            {
                _adjusted[step.Scope ?? ""] = measured;
            }
        }
    }

    /// <summary>One measurement of CO counts once, however often its oxygen is corrected.</summary>
    void Count(MonoxideJudged excess)
    {
        // Where no step asks for the room, nothing but this makes sure that it is measured again; a doubtful value that is denied, or forgotten in a stop, was perhaps not misheard.
        Unaired = excess.Key.Scope == ReadingKey.BetweenSteps ? excess : Unaired;
        if (excess is not { Action: MonoxideAction.ShutOff, Counts: true, IsDoubtful: false })
        {
            return;
        }

        if (IsStopped)
        {
            // Whatever it was stopped for: such air must be proven clear too before it goes on.
            _causes.Add(StopCause.CarbonMonoxide);
            IsAirClear = false;
        }

        (MonoxidePlace, string, int) measurement = (excess.Place, excess.Key.Scope, MonoxideNumber(excess.Place, excess.Key.Scope));
        if (!_excesses.Contains(measurement))
        {
            _excesses.Add(measurement);
        }
    }

    /// <summary>The wait for another value begins: those before it prove nothing. Oxygen and temperature of the flue gas are of the same fire as its carbon monoxide.</summary>
    void Outdate(string stepId)
    {
        Step step = Plan.All[Plan.IndexOf(stepId)];
        foreach (ReadingKey key in step.Readings.Where(demand => demand.FieldId is FieldId.RoomCo or FieldId.FlueCo or FieldId.Oxygen or FieldId.CarbonDioxide or FieldId.FlueTemperature or FieldId.Nox).Select(demand => new ReadingKey(demand.FieldId, step.Scope ?? "")))
        {
            _beforeShutOff[key] = Reading(key)?.Number ?? 0;
        }
    }

    void ForgetExcess(ReadingKey key) =>
        _excesses.RemoveAll(excess => excess.Scope == key.Scope && excess.Number == MonoxideNumber(excess.Place, key.Scope));

    void Stop(StartupStopped stopped)
    {
        // The instructions of a smell of gas, then those of carbon monoxide, stay until the start-up goes on.
        Cause = IsStopped && Rank(Cause) > Rank(stopped.Cause) ? Cause : stopped.Cause;
        _causes.Add(stopped.Cause);
        AsksFreshSmell = false;
        IsSmellGone = false;
        IsAirClear = false;
        Choosing = null;
        Heard = null;
        IsStopped = true;
        IsPaused = false;
        Doubtful = null;
        Target = null;
        _machine.Fire(Move.Stop);
    }

    /// <summary>A reading that the record must have.</summary>
    void Demand(ReadingKey key) => _ = Reading(key) ?? throw new KeyNotFoundException($"There is no reading {key.FieldId} {key.Scope}.");

    /// <summary>A wait that the record must have.</summary>
    void Demand(string wait) => _ = _record.Timer(wait) ?? throw new KeyNotFoundException($"There is no wait {wait}.");

    static KeptReading Kept(ReadingFate fate) => new(fate.Reading, fate.StepId, fate.End switch
    {
        ReadingEnd.Void => ReadingState.Void,
        ReadingEnd.Final => ReadingState.Final,
        _ => ReadingState.Provisional,
    }, fate.Number, fate.At);

    static RunningTimer Running(TimerFate timer) =>
        new(timer.Started, timer.Steady, timer.Duration, timer.Halfway is not null || timer.Ended is not null, timer.Ended is not null, timer.IsOfThisRun);

    static int Rank(StopCause cause) => cause switch
    {
        StopCause.GasSmell => 2,
        StopCause.CarbonMonoxide => 1,
        _ => 0,
    };
}
