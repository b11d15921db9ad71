using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Tests.Support;

/// <summary>A procedure with the log beside it: decides, keeps, applies, as the session does.</summary>
sealed class LiveJob
{
    readonly StartupPlan _plan;
    readonly List<StartupEvent> _log = [];
    readonly List<TimeSpan> _times = [];

    public LiveJob(StartupPlan? plan = null, TimeSpan? steady = null, JobDescription? job = null)
    {
        _plan = plan ?? Some.Plan();
        Steady = steady;
        Procedure = new StartupProcedure(_plan);
        Keep(Procedure.Begin(job ?? Some.Job, Present));
    }

    /// <summary>The same job at the same moment; what is done to one is not done to the other.</summary>
    public LiveJob(LiveJob other)
    {
        _plan = other._plan;
        _log = [.. other._log];
        _times = [.. other._times];
        (Now, Steady, World, Step, Last, Given) = (other.Now, other.Steady, other.World, other.Step, other.Last, other.Given);
        Procedure = Replayed();
    }

    public StartupProcedure Procedure { get; private set; }

    /// <summary>The wall clock; it may be set.</summary>
    public DateTimeOffset Now { get; set; } = Some.Morning;

    /// <summary>The clock that only runs; null where there is none.</summary>
    public TimeSpan? Steady { get; private set; }

    public Now Present => new(Now, Steady);

    /// <summary>Time as it really went by, whatever the clocks say.</summary>
    public TimeSpan World { get; private set; }

    /// <summary>The real time of each event of the log.</summary>
    public IReadOnlyList<TimeSpan> Times => _times;
    public IReadOnlyList<StartupEvent> Log => _log;
    public IReadOnlyList<StartupEvent> Last { get; private set; } = [];
    public StartupView View => Procedure.View(Present);
    public string Step { get; private set; } = "";

    public LiveJob Say(string fieldId, decimal value, Certainty certainty = Certainty.Green) =>
        Give(new Phrase.Reading(Fields.Find(fieldId)!, value, Some.Heard(certainty)));

    public LiveJob Say(Field field, decimal value, Certainty certainty = Certainty.Green) => Give(new Phrase.Reading(field, value, Some.Heard(certainty)));

    public LiveJob Say(CommandWord word) => Give(new Phrase.Command(word, Some.Heard()));

    public LiveJob Say(AnswerWord word) => Give(new Phrase.Answer(word, Some.Heard()));

    /// <summary>Free speech, confirmed where it is read back.</summary>
    public LiveJob Dictate(string text)
    {
        Give(new Phrase.Dictation(Some.Heard() with { Words = text }));
        return Procedure.Phase == Phase.ReadingBack ? Say(AnswerWord.Confirm) : this;
    }

    /// <summary>One of the words that are offered.</summary>
    public LiveJob Choose(string value) => Give(new Phrase.Choice(value, Some.Heard()));

    /// <summary>A stopped start-up, its waits over, is led back by an own finding.</summary>
    public LiveJob LeadBack(string cause)
    {
        Wait(TimeSpan.FromMinutes(11)).Say(AnswerWord.Yes);
        if (View.ListeningFor is ["yes", "no", ..])
        {
            Say(AnswerWord.No);
        }

        return Choose("own-finding").Dictate(cause);
    }

    /// <summary>All steps that make the furnace safe.</summary>
    public LiveJob MakeSafe()
    {
        for (int moves = 0; Procedure.Phase == Phase.Asking && moves < 20; moves++)
        {
            DoStep();
        }

        return this;
    }

    public LiveJob Wait(TimeSpan span)
    {
        Now += span;
        Steady += span > TimeSpan.Zero ? span : TimeSpan.Zero;
        World += span > TimeSpan.Zero ? span : TimeSpan.Zero;
        return Give(new Phrase.TimePassed());
    }

    /// <summary>Somebody sets the wall clock.</summary>
    public LiveJob SetClock(TimeSpan by)
    {
        Now += by;
        return Give(new Phrase.TimePassed());
    }

    /// <summary>The program is ended and started again, so much later; the machine too, where its steady clock begins anew.</summary>
    public LiveJob Restart(TimeSpan later, bool isMachineToo = false)
    {
        Now += later;
        Steady = isMachineToo ? TimeSpan.FromTicks(Math.Min(later.Ticks, TimeSpan.TicksPerMinute)) : Steady + later;
        World += later;
        Procedure = Replayed();
        Keep(Procedure.Run(Present));
        return this;
    }

    /// <summary>How many phrases were given.</summary>
    public int Given { get; private set; }

    public LiveJob Give(Phrase phrase)
    {
        Given++;
        Keep(Procedure.Decide(phrase, Present));
        return this;
    }

    /// <summary>Everything as it should go, up to the step of that id.</summary>
    public LiveJob GoTo(string stepId)
    {
        for (int moves = 0; Step != stepId && moves < 100; moves++)
        {
            DoStep();
        }

        Assert.Equal(stepId, Step);
        return this;
    }

    /// <summary>Another procedure to which the stored events were applied.</summary>
    public StartupProcedure Replayed()
    {
        StartupProcedure replayed = new(_plan);
        foreach (StartupEvent happened in _log)
        {
            replayed.Apply(happened);
        }

        return replayed;
    }

    /// <summary>The current step as it should go.</summary>
    public void DoStep()
    {
        Step step = _plan.All[_plan.IndexOf(Step)];
        switch (step.Kind)
        {
            case StepKind.Ask:
                Say(step.Question!.Proper ? AnswerWord.Yes : AnswerWord.No);
                break;
            case StepKind.Wait:
                Wait(step.Timer!.Duration).Say(CommandWord.Next);
                break;
            case StepKind.Read or StepKind.Adjust:
                foreach (ReadingDemand demand in step.Readings)
                {
                    Say(demand.FieldId, Good(demand.FieldId, step.Scope));
                }

                SaySecondSet(step);
                Say(CommandWord.Next);
                break;
            default:
                Say(CommandWord.Done);
                break;
        }
    }

    void SaySecondSet(Step step)
    {
        ReadingDemand[] twice = [.. step.Readings.Where(demand => demand.Settles is { Twice: true })];
        foreach (ReadingDemand demand in twice)
        {
            Wait(demand == twice[0] ? demand.Settles!.Window : TimeSpan.Zero).Say(demand.FieldId, Good(demand.FieldId, step.Scope));
        }
    }

    static decimal Good(string fieldId, string? scope) => fieldId switch
    {
        "oxygen" => 7.6m,
        "flue_co" => 12m,
        "flue_temperature" => 328m,
        "air_temperature" => 68m,
        "draft" => -0.03m,
        "inlet_pressure" => 7.0m,
        "manifold_pressure" => scope == "low" ? 1.7m : 3.5m,
        "supply_temperature" => 122m,
        "return_temperature" => 68m,
        "supply_static" => 0.20m,
        "return_static" => -0.15m,
        "room_co" => 2m,
        "flame_current" => 3.5m,
        "line_voltage" => 120m,
        "control_voltage" => 25m,
        _ => throw new ArgumentOutOfRangeException(nameof(fieldId), fieldId, "no good value known"),
    };

    void Keep(IReadOnlyList<StartupEvent> events)
    {
        Last = events;
        foreach (StartupEvent happened in events)
        {
            _log.Add(happened);
            _times.Add(World);
            Step = happened is StepEntered entered ? entered.StepId : Step;
            Procedure.Apply(happened);
        }
    }
}
