using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Settling;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
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
sealed record KeptReading(EnteredReading Reading, string StepId, ReadingState State, int Number)
{
    public bool Counts => State is ReadingState.Provisional or ReadingState.Final && !Reading.IsEarly;
}

/// <summary>Something open; <see cref="IsClosed"/> while only its leak check is missing.</summary>
sealed record OpenThing(Thing Thing, bool IsClosed);

/// <summary>The timer of a step.</summary>
sealed record RunningTimer(DateTimeOffset StartedAt, TimeSpan Duration, bool IsHalfway, bool IsEnded)
{
    public TimeSpan Remaining(DateTimeOffset now) => IsEnded ? TimeSpan.Zero : Larger(TimeSpan.Zero, Smaller(Duration, StartedAt + Duration - now));

    static TimeSpan Larger(TimeSpan one, TimeSpan other) => one > other ? one : other;

    static TimeSpan Smaller(TimeSpan one, TimeSpan other) => one < other ? one : other;
}

/// <summary>What the events of a start-up add up to. Only <see cref="Apply"/> changes it.</summary>
sealed class StartupState(StartupPlan plan)
{
    readonly PhaseMachine _machine = new();
    readonly Dictionary<string, StepStatus> _steps = [];
    readonly Dictionary<string, int> _improperAnswers = [];
    readonly List<(MonoxidePlace Place, string Scope, int Number)> _excesses = [];
    readonly Dictionary<ReadingKey, ImmutableArray<Sample>> _samples = [];
    readonly HashSet<ReadingKey> _moving = [];
    readonly Dictionary<string, DeclaredLimit> _stated = [];
    int _entries;

    public StartupPlan Plan { get; } = plan;
    public Phase Phase => _machine.Phase;
    public JobDescription? Job { get; private set; }
    public int StepIndex { get; private set; }
    public Step Step => Plan.Steps[StepIndex];
    public Dictionary<ReadingKey, KeptReading> Readings { get; } = [];
    public Dictionary<string, ImmutableArray<CalculatedResult>> Results { get; } = [];
    public List<OpenThing> Open { get; } = [];

    /// <summary>By stage: the oxygen before adjustments, until it was measured again.</summary>
    public Dictionary<string, PendingOxygen> PendingOxygen { get; } = [];
    public Dictionary<string, RunningTimer> Timers { get; } = [];
    public EnteredReading? Doubtful { get; private set; }
    public ReadingKey? Provisional { get; private set; }
    public ReadingKey? LastEntered { get; private set; }
    public DictationPurpose Purpose { get; private set; }
    public StopCause Cause { get; private set; }
    public bool IsStopped { get; private set; }
    public bool IsPaused { get; private set; }
    public bool Signs { get; private set; }
    public bool IsSigned { get; private set; }
    public decimal? AdjustedFrom { get; private set; }

    /// <summary>Gas was smelled, and the start-up has not gone on since.</summary>
    public bool GasWasSmelled { get; private set; }
    public bool AsksFreshSmell { get; private set; }

    /// <summary>The condition that waits for its confirmation, or that ended the start-up.</summary>
    public UnsafeAsked? Condition { get; private set; }
    public bool IsUnsafe { get; private set; }

    /// <summary>Ended, not put into service; nothing leads from here to a signature.</summary>
    public bool HasEnded { get; private set; }

    public StepStatus Status(Step step) => _steps.GetValueOrDefault(step.Id);

    public KeptReading? Reading(string fieldId, string? scope) => Readings.GetValueOrDefault(new ReadingKey(fieldId, scope ?? ""));

    public bool Counts(string fieldId, string? scope) => Reading(fieldId, scope) is { Counts: true };

    /// <summary>The limit of the files, or else the one that was said from the rating plate.</summary>
    public DeclaredLimit? Limit(string? name, string? scope) =>
        Plan.Limit(name, scope) ?? (name is null ? null : _stated.GetValueOrDefault(scope is null ? name : $"{name}/{scope}"));

    /// <summary>Whether the readings of <paramref name="step"/> would be early now.</summary>
    public bool IsEarly(Step step) => step.After is { } wait && Timers.GetValueOrDefault(wait) is not { IsEnded: true };

    /// <summary>How often the step was answered otherwise than it should.</summary>
    public int ImproperAnswers(string stepId) => _improperAnswers.GetValueOrDefault(stepId);

    /// <summary>How many measurements other than the one of that number asked to shut the furnace off, in that place and stage or room.</summary>
    public int Excesses(MonoxidePlace place, string scope, int number) =>
        _excesses.Count(excess => excess.Place == place && excess.Scope == scope && excess.Number != number);

    /// <summary>The number of the CO reading of that stage or room; 0 if there is none.</summary>
    public int MonoxideNumber(MonoxidePlace place, string scope) => Reading(place == MonoxidePlace.Room ? "room_co" : "flue_co", scope)?.Number ?? 0;

    /// <summary>The values of a series so far.</summary>
    public ImmutableArray<Sample> Samples(ReadingKey key) => _samples.GetValueOrDefault(key, []);

    /// <summary>Whether a series was found not to have settled.</summary>
    public bool IsMoving(ReadingKey key) => _moving.Contains(key);

    /// <summary>A value of a series; the time counts from a fixed moment.</summary>
    public static Sample SampleOf(DateTimeOffset at, decimal value) => new(at - DateTimeOffset.UnixEpoch, (double)value);

    public void Apply(StartupEvent happened)
    {
        switch (happened)
        {
            case StartupBegan began:
                Job = began.Job;
                _machine.Fire(Move.Begin);
                break;
            case StepEntered entered:
                Enter(entered);
                break;
            case StepDone done:
                _steps[done.StepId] = StepStatus.Done;
                Measured(Plan.Steps[Plan.IndexOf(done.StepId)]);
                break;
            case AdjustmentMade made:
                Adjust(made);
                break;
            case StepSkipped skipped:
                _steps[skipped.StepId] = StepStatus.Skipped;
                _machine.Fire(Move.Settle);
                break;
            case ReadingEntered entered:
                Keep(entered);
                break;
            case ReadingStood stood:
                Readings[stood.Key] = Readings[stood.Key] with { State = ReadingState.Final };
                Provisional = null;
                break;
            case ReadingScratched scratched:
                ForgetExcess(scratched.Key);
                _stated.Remove(PlateQuestion.IsBound(scratched.Key) ? scratched.Key.Scope : "");
                Readings.Remove(scratched.Key);
                Forget(scratched.Key);
                break;
            case ReadingVoided voided:
                Readings[voided.Key] = Readings[voided.Key] with { State = ReadingState.Void };
                Forget(voided.Key);
                break;
            case ConfirmationAsked asked:
                Doubtful = asked.Reading;
                _machine.Fire(Move.ReadBack);
                break;
            case ConfirmationRefused:
                Doubtful = null;
                _machine.Fire(Move.Settle);
                break;
            case ResultsComputed computed:
                Results[computed.Scope] = [.. Results.GetValueOrDefault(computed.Scope, [])
                    .Where(old => computed.Results.All(result => result.Id != old.Id)), .. computed.Results];
                break;
            case TimerStarted started:
                Timers[started.StepId] = new RunningTimer(started.At, started.Duration, false, false);
                break;
            case TimerHalfway half:
                Timers[half.StepId] = Timers[half.StepId] with { IsHalfway = true };
                break;
            case TimerEnded ended:
                Timers[ended.StepId] = Timers[ended.StepId] with { IsHalfway = true, IsEnded = true };
                break;
            case ThingOpened opened:
                Open.RemoveAll(open => open.Thing.Name == opened.Thing.Name);
                Open.Add(new OpenThing(opened.Thing, false));
                Reopen(opened.Thing.Name);
                break;
            case ThingClosed closed:
                Close(closed.Name);
                break;
            case ThingProved proved:
                Open.RemoveAll(open => open.Thing.Name == proved.Name && open.IsClosed);
                break;
            case DictationAsked asked:
                Purpose = asked.Purpose;
                _machine.Fire(Move.Dictate);
                break;
            case NoteTaken:
                _machine.Fire(Move.Settle);
                break;
            case DictationCancelled or FinishDeclined:
                _machine.Fire(IsStopped ? Move.HoldStill : Move.Settle);
                break;
            case ListeningPaused:
                IsPaused = true;
                break;
            case ListeningResumed:
                IsPaused = false;
                break;
            case StartupStopped stopped:
                Stop(stopped);
                break;
            case FreshSmellAsked:
                AsksFreshSmell = true;
                break;
            case FreshSmellAnswered:
                AsksFreshSmell = false;
                break;
            case StartupResumed:
                IsStopped = false;
                GasWasSmelled = false;
                _machine.Fire(Move.Settle);
                break;
            case MonoxideJudged { Action: MonoxideAction.ShutOff, Counts: true } excess:
                Count(excess);
                break;
            case UnsafeAsked asked:
                Condition = asked;
                _machine.Fire(Move.Condemn);
                break;
            case UnsafeDenied denied:
                if (Condition is { Key: null })
                {
                    _improperAnswers[denied.StepId]--;
                }

                Condition = null;
                _machine.Fire(Move.Settle);
                break;
            case UnsafeFound:
                IsUnsafe = true;
                break;
            case AnswerGiven given:
                if (Plan.Steps[Plan.IndexOf(given.StepId)].Question is { } question && given.Answer != question.Proper)
                {
                    _improperAnswers[given.StepId] = ImproperAnswers(given.StepId) + 1;
                }

                break;
            case LimitStated stated:
                _stated[stated.Limit.Name] = stated.Limit;
                break;
            case SeriesJudged { Settled: Settled.NotYet } judged:
                _moving.Add(judged.Key);
                break;
            case SeriesJudged judged:
                _moving.Remove(judged.Key);
                break;
            case FinishAsked asked:
                Signs = asked.Signs;
                _machine.Fire(Move.AskFinish);
                break;
            case StartupSigned:
                IsSigned = true;
                _steps[Step.Id] = StepStatus.Done;
                _machine.Fire(Move.End);
                break;
            case EndedOutOfService:
                HasEnded = true;
                _machine.Fire(Move.End);
                break;
            case QuestionAsked or CommandRefused or MonoxideJudged or PhotoAttached or UtteranceHeard or RecordReviewed or PersonalDataForgotten:
                break;
            default:
                throw new InvalidOperationException($"No rule for the event {happened.GetType().Name}.");
        }
    }

    public string Drawing() => _machine.Drawing();

    void Enter(StepEntered entered)
    {
        StepIndex = Plan.IndexOf(entered.StepId);
        LastEntered = null;
        AdjustedFrom = Step.Kind == StepKind.Adjust
            ? Step.Readings.Select(demand => Reading(demand.FieldId, Step.Scope)?.Reading.Value).FirstOrDefault()
            : null;
        if (entered.Arrival != Arrival.Forward)
        {
            _steps.Remove(entered.StepId);
        }
    }

    void Keep(ReadingEntered entered)
    {
        ReadingKey key = entered.Reading.Key;
        bool continues = Readings.GetValueOrDefault(key) is { Counts: true } before && before.StepId == entered.StepId;
        ImmutableArray<Sample> samples = continues ? Samples(key) : [];
        Forget(key);
        _samples[key] = entered.Reading.IsEarly ? [] : samples.Add(SampleOf(entered.At, entered.Reading.Value));
        foreach (Step adjusts in Plan.Steps.Where(step => step.Kind == StepKind.Adjust && step.Id != entered.StepId
            && step.Readings.Any(demand => new ReadingKey(demand.FieldId, step.Scope ?? "") == key)))
        {
            // What is measured anew may have to be adjusted anew.
            _steps.Remove(adjusts.Id);
        }

        Readings[key] = new KeptReading(entered.Reading, entered.StepId, ReadingState.Provisional, ++_entries);
        Provisional = key;
        LastEntered = key;
        if (Phase == Phase.Confirming)
        {
            Doubtful = null;
            _machine.Fire(Move.Settle);
        }
    }

    void Forget(ReadingKey key)
    {
        _samples.Remove(key);
        _moving.Remove(key);
        if (Provisional == key)
        {
            Provisional = null;
        }

        if (LastEntered == key)
        {
            LastEntered = null;
        }

        if (Results.TryGetValue(key.Scope, out ImmutableArray<CalculatedResult> results))
        {
            Results[key.Scope] = [.. results.Where(result => !result.Inputs.ContainsKey(key.FieldId))];
        }
    }

    void Close(string name)
    {
        int index = Open.FindIndex(open => open.Thing.Name == name);
        if (index >= 0 && Open[index].Thing.IsGasSide)
        {
            Open[index] = Open[index] with { IsClosed = true };
        }
        else if (index >= 0)
        {
            Open.RemoveAt(index);
        }
    }

    void Adjust(AdjustmentMade made)
    {
        if (made.Key.FieldId != "manifold_pressure")
        {
            return;
        }

        if (Reading("oxygen", made.Key.Scope) is { Counts: true } oxygen)
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
        if (step.Readings.Any(demand => demand.FieldId == "oxygen") && Counts("oxygen", step.Scope))
        {
            PendingOxygen.Remove(step.Scope ?? "");
        }
    }

    /// <summary>What is open again must be closed, and checked for leaks, again.</summary>
    void Reopen(string name)
    {
        foreach (Step step in Plan.Steps.Where(step => step.Closes.Contains(name) || step.Proves.Contains(name)))
        {
            _steps.Remove(step.Id);
        }
    }

    /// <summary>One measurement of CO counts once, however often its oxygen is corrected.</summary>
    void Count(MonoxideJudged excess)
    {
        (MonoxidePlace, string, int) measurement = (excess.Place, excess.Key.Scope, MonoxideNumber(excess.Place, excess.Key.Scope));
        if (!_excesses.Contains(measurement))
        {
            _excesses.Add(measurement);
        }
    }

    void ForgetExcess(ReadingKey key) =>
        _excesses.RemoveAll(excess => excess.Scope == key.Scope && excess.Number == MonoxideNumber(excess.Place, key.Scope));

    void Stop(StartupStopped stopped)
    {
        // The instructions of a smell of gas, then those of carbon monoxide, stay until the start-up goes on.
        Cause = IsStopped && Rank(Cause) > Rank(stopped.Cause) ? Cause : stopped.Cause;
        GasWasSmelled |= stopped.Cause == StopCause.GasSmell;
        AsksFreshSmell = false;
        IsStopped = true;
        if (IsSigned)
        {
            IsSigned = false;
            _steps.Remove(Step.Id);
        }

        IsPaused = false;
        Doubtful = null;
        _machine.Fire(Move.Stop);
    }

    static int Rank(StopCause cause) => cause switch
    {
        StopCause.GasSmell => 2,
        StopCause.CarbonMonoxide => 1,
        _ => 0,
    };
}
