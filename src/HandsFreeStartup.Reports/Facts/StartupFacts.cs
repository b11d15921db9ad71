using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Reports.Facts;

/// <summary>What the events of a job add up to for a reader: the fate of every step, reading, timer and opened thing.</summary>
sealed class StartupFacts
{
    readonly Dictionary<string, StepFate> _steps;
    readonly List<ReadingFate> _readings = [];
    readonly List<ResultFate> _results = [];
    readonly List<TimerFate> _timers = [];
    readonly List<ThingFate> _things = [];
    int _doubtful = -1;

    StartupFacts(StartupPlan plan) =>
        (Plan, _steps) = (plan, plan.All.ToDictionary(step => step.Id, step => new StepFate(step, StepEnd.NotReached, null, null, "", false)));

    public StartupPlan Plan { get; }

    public JobDescription? Job { get; private set; }

    /// <summary>By which people are told times.</summary>
    public LocalTime Times => LocalTime.Of(Job);

    public JobEnd End { get; private set; }

    /// <summary>Reason of the end out of service, cause of the stop, or name of who signed.</summary>
    public string EndText { get; private set; } = "";

    /// <summary>Why it was decided not to put the furnace into service; null while that was not decided.</summary>
    public EndDecided? Decided { get; private set; }

    /// <summary>The steps of the start-up, and those of making safe once an end without service was decided.</summary>
    public IReadOnlyList<StepFate> Steps => [.. (Decided is null ? Plan.Steps : Plan.All).Select(step => _steps[step.Id])];

    public IReadOnlyList<ReadingFate> Readings => _readings;

    /// <summary>The results that still count.</summary>
    public IReadOnlyList<ResultFate> Results => [.. _results.Where(fate => fate.Counts)];

    /// <summary>Every result that was ever worked out, first to last.</summary>
    public IReadOnlyList<ResultFate> AllResults => _results;

    public IReadOnlyList<TimerFate> Timers => _timers;

    public IReadOnlyList<ThingFate> Things => _things;

    /// <summary>Adds up <paramref name="events"/>, first to last.</summary>
    public static StartupFacts Of(StartupPlan plan, IEnumerable<StartupEvent> events)
    {
        StartupFacts facts = new(plan);
        foreach (StartupEvent happened in events)
        {
            facts.Take(happened);
        }
        return facts;
    }

    void Take(StartupEvent happened)
    {
        switch (happened)
        {
            case StartupBegan began:
                Job = began.Job;
                break;
            case StepEntered or StepDone or StepSkipped or StepReopened:
                TakeStep(happened);
                break;
            case ReadingEntered or ReadingStood or ReadingScratched or ReadingVoided or ConfirmationAsked or ConfirmationRefused:
                TakeReading(happened);
                break;
            case ResultsComputed computed:
                Compute(computed);
                break;
            case TimerStarted or TimerEnded:
                TakeTimer(happened);
                break;
            case ThingOpened or ThingClosed or ThingProved:
                TakeThing(happened);
                break;
            case StartupStopped stopped:
                _doubtful = -1;
                (End, EndText) = (JobEnd.Stopped, InWords(stopped.Cause));
                break;
            case StartupResumed:
                (End, EndText) = (JobEnd.Unfinished, "");
                break;
            case MonoxideJudged { IsDoubtful: false, Counts: true } judged:
                // What was acted upon was measured: only "disregard" makes a mishearing of it.
                Change(judged.Key, fate => fate with { WasFinal = true });
                break;
            case EndDecided decided:
                Decided = decided;
                break;
            case StartupSigned signed:
                (End, EndText) = (JobEnd.Signed, signed.Technician);
                break;
            case EndedOutOfService ended:
                (End, EndText) = (JobEnd.OutOfService, ended.Reason);
                break;
        }
    }

    public static string InWords(StopCause cause) => cause switch
    {
        StopCause.GasSmell => "gas was smelled",
        StopCause.CarbonMonoxide => "carbon monoxide in a room",
        _ => "emergency stop",
    };

    void TakeStep(StartupEvent happened)
    {
        switch (happened)
        {
            case StepEntered entered:
                Change(entered.StepId, step => step.End is StepEnd.NotReached || entered.Arrival != Arrival.Forward
                    ? step with { End = StepEnd.UnderWay, Entered = step.Entered ?? entered.At, Left = null, Reason = "" }
                    : step);
                break;
            case StepDone done:
                Change(done.StepId, step => step with { End = StepEnd.Done, Left = done.At, Reason = "", EndedByItself = done.Evidence is null });
                break;
            case StepReopened reopened:
                Change(reopened.StepId, step => step with { End = StepEnd.UnderWay, Left = null, Reason = "" });
                break;
            case StepSkipped skipped:
                Change(skipped.StepId, step => step with { End = StepEnd.Skipped, Left = skipped.At, Reason = skipped.Reason });
                break;
        }
    }

    void TakeReading(StartupEvent happened)
    {
        switch (happened)
        {
            case ReadingEntered entered:
                Enter(entered);
                break;
            case ReadingStood stood:
                Change(stood.Key, fate => fate with { End = ReadingEnd.Final, WasFinal = true });
                break;
            case ReadingScratched scratched:
                Change(scratched.Key, fate => fate with { End = ReadingEnd.Disregarded });
                Forget(scratched.Key);
                break;
            case ReadingVoided voided:
                Change(voided.Key, fate => fate with { End = ReadingEnd.Void, Because = voided.Because });
                Forget(voided.Key);
                break;
            case ConfirmationAsked asked:
                _doubtful = _readings.Count;
                _readings.Add(new ReadingFate(asked.At, asked.StepId, asked.Reading, ReadingEnd.Unanswered, true, asked.Reading.Evidence.Why));
                break;
            case ConfirmationRefused when _doubtful >= 0:
                _readings[_doubtful] = _readings[_doubtful] with { End = ReadingEnd.Refused };
                _doubtful = -1;
                break;
        }
    }

    void Enter(ReadingEntered entered)
    {
        Change(entered.Reading.Key, fate => fate with { End = ReadingEnd.Replaced });
        Forget(entered.Reading.Key);
        bool wasReadBack = _doubtful >= 0 && _readings[_doubtful].Reading == entered.Reading;
        if (wasReadBack)
        {
            _readings.RemoveAt(_doubtful);
        }
        _doubtful = -1;
        _readings.Add(new ReadingFate(entered.At, entered.StepId, entered.Reading, entered.Reading.IsEarly ? ReadingEnd.Early : ReadingEnd.Provisional, wasReadBack, entered.Reading.Evidence.Why));
    }

    void Compute(ResultsComputed computed)
    {
        Discard("a later one took its place", old => old.Scope == computed.Scope && computed.Results.Any(result => result.Id == old.Result.Id));
        _results.AddRange(computed.Results.Select(result => new ResultFate(computed.At, computed.StepId, computed.Scope, result)));
    }

    void TakeTimer(StartupEvent happened)
    {
        if (happened is TimerStarted started)
        {
            int index = _timers.FindIndex(timer => timer.StepId == started.StepId);
            int starts = index < 0 ? 1 : _timers[index].Starts + 1;
            _timers.RemoveAll(timer => timer.StepId == started.StepId);
            _timers.Add(new TimerFate(started.StepId, started.At, started.Duration, null, starts));
        }
        else if (happened is TimerEnded ended && _timers.FindIndex(timer => timer.StepId == ended.StepId) is >= 0 and var index)
        {
            _timers[index] = _timers[index] with { Ended = ended.At };
        }
    }

    void TakeThing(StartupEvent happened)
    {
        switch (happened)
        {
            case ThingOpened opened:
                _things.Add(new ThingFate(opened.Thing, opened.At, null, null));
                break;
            case ThingClosed closed:
                ChangeLast(closed.Name, thing => thing with { Closed = thing.Closed ?? closed.At });
                break;
            case ThingProved proved:
                ChangeLast(proved.Name, thing => thing.Closed is null ? thing : thing with { Proved = proved.At });
                break;
        }
    }

    void Change(string stepId, Func<StepFate, StepFate> change)
    {
        if (_steps.TryGetValue(stepId, out StepFate? step))
        {
            _steps[stepId] = change(step);
        }
    }

    void Change(ReadingKey key, Func<ReadingFate, ReadingFate> change)
    {
        int index = _readings.FindLastIndex(fate => fate.Reading.Key == key && fate.Counts);
        if (index >= 0)
        {
            _readings[index] = change(_readings[index]);
        }
    }

    void ChangeLast(string name, Func<ThingFate, ThingFate> change)
    {
        int index = _things.FindLastIndex(thing => thing.Thing.Name == name);
        if (index >= 0)
        {
            _things[index] = change(_things[index]);
        }
    }

    /// <summary>A result does not outlive a reading that went into it.</summary>
    void Forget(ReadingKey key) =>
        Discard("a reading behind it no longer counts", fate => fate.Scope == key.Scope && fate.Result.Inputs.ContainsKey(key.FieldId));

    void Discard(string because, Predicate<ResultFate> which)
    {
        for (int i = 0; i < _results.Count; i++)
        {
            if (_results[i].Counts && which(_results[i]))
            {
                _results[i] = _results[i] with { NoLonger = because };
            }
        }
    }
}
