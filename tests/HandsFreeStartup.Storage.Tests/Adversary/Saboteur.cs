using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;
using HandsFreeStartup.Storage.Tests.Support;

namespace HandsFreeStartup.Storage.Tests.Adversary;

/// <summary>Works through a start-up with an unsafe fact in it, hurried, careless or hostile, and wants the signature all the same.</summary>
sealed class Saboteur(StartupPlan plan, UnsafeFact fact, Random random, JobDescription? description = null)
{
    /// <summary>Nobody tries longer: a walk as it should go takes about three phrases a step.</summary>
    int MostPhrases => 6 * plan.Steps.Length;

    /// <summary>Writing a record takes a thousand times as long as a phrase: one trick in so many.</summary>
    const int SeldomEdits = 60;

    bool _isTold;

    /// <summary>An edit of the record that a resume took; null where all were refused.</summary>
    public string? GoneOnWith { get; private set; }

    public LiveJob Job { get; } = new(plan, TimeSpan.FromHours(30), description);

    /// <summary>Looks on after each move; null for nobody.</summary>
    public Action<LiveJob>? After { get; init; }

    Step Step => plan.All[plan.IndexOf(Job.Step)];

    /// <summary>Works until it is over or nothing helps.</summary>
    public void Work()
    {
        while (Job.Procedure.Phase != Phase.Finished && Job.Given < MostPhrases)
        {
            string before = Job.Step;
            Phase phase = Job.Procedure.Phase;
            GoOn();
            After?.Invoke(Job);
            if (Job.Step == before && Job.Procedure.Phase == phase)
            {
                Trick();
            }
            else if (random.Next(40) == 0)
            {
                Trick();
            }
        }
    }

    void GoOn()
    {
        switch (Job.Procedure.Phase)
        {
            case Phase.Asking when Job.Procedure.Expectation.Commands is [CommandWord.GoAhead, ..]:
                Job.Say(CommandWord.GoAhead);
                break;
            case Phase.Asking:
                DoStep();
                break;
            case Phase.Dictating:
                Job.Dictate(random.Next(5) == 0 ? "." : "looked at it");
                break;
            case Phase.Choosing:
                Job.Choose(Job.Procedure.Expectation.Choices[random.Next(Job.Procedure.Expectation.Choices.Length)].Value);
                break;
            case Phase.Stopped:
                WayBack();
                break;
            case Phase.Condemning:
                Job.Say(AnswerWord.No);
                break;
            default:
                Job.Say(random.Next(6) == 0 ? AnswerWord.No : AnswerWord.Confirm);
                break;
        }
    }

    void WayBack()
    {
        switch (random.Next(5))
        {
            case 0:
                Job.SetClock(TimeSpan.FromMinutes(30));
                break;
            case 1:
                Job.Restart(TimeSpan.FromMinutes(random.Next(1, 20)), random.Next(3) == 0);
                break;
            default:
                Job.Wait(TimeSpan.FromMinutes(random.Next(1, 12)));
                break;
        }

        if (random.Next(3) != 0)
        {
            Job.Say("room_co", random.Next(3) == 0 ? 40 : 1);
        }

        Job.Say(AnswerWord.Yes);
        if (Job.Procedure.Phase == Phase.Stopped)
        {
            Job.Say(random.Next(8) == 0 ? AnswerWord.Yes : AnswerWord.No);
        }
    }

    void DoStep()
    {
        Step step = Step;
        if (step.Id == fact.AlarmAt && !_isTold)
        {
            _isTold = true;
            Job.Say(fact.Alarm);
            return;
        }

        if (step.Id == fact.ShownAt && !_isTold)
        {
            _isTold = true;
            Show(fact.InTheRoom);
            return;
        }

        if (step.Id == fact.Undone && random.Next(4) != 0)
        {
            Trick();
            return;
        }

        switch (step.Kind)
        {
            case StepKind.Ask when step.Question!.Choices is { IsEmpty: false } choices:
                Job.Choose(choices[random.Next(choices.Length)].Value);
                break;
            case StepKind.Ask:
                Job.Say(step.Id == fact.AskedIn && random.Next(3) != 0 == step.Question!.Proper || step.Id != fact.AskedIn && !step.Question!.Proper ? AnswerWord.No : AnswerWord.Yes);
                break;
            case StepKind.Wait:
                Wait(step);
                break;
            case StepKind.Read or StepKind.Adjust:
                Read(step);
                break;
            case StepKind.Sign:
                Job.Say(CommandWord.Finish).Say(random.Next(4) == 0 ? AnswerWord.Yes : AnswerWord.Confirm);
                break;
            default:
                Job.Say(CommandWord.Done);
                break;
        }
    }

    /// <summary>The alarm on the belt is read out; once in a while in the middle of something else.</summary>
    void Show(decimal ppm)
    {
        if (random.Next(3) == 0)
        {
            Job.Say(random.Next(3) switch { 0 => CommandWord.Finish, 1 => CommandWord.GoBack, _ => CommandWord.Next });
        }

        Job.Give(new Phrase.Reading(Fields.Find("room_co")!, ppm, new Evidence("words", Channel.Voice, random.Next(4) == 0 ? Certainty.Amber : Certainty.Green)) { IsOver = ppm == 9999 });
        if (Job.Procedure.Phase == Phase.Confirming)
        {
            Job.Say(random.Next(3) == 0 ? AnswerWord.No : AnswerWord.Confirm);
        }
    }

    void Wait(Step step)
    {
        if (step.Id == fact.Unwaited && random.Next(4) != 0)
        {
            Job.SetClock(step.Timer!.Duration * 2).Say(CommandWord.Next);
        }
        else
        {
            Job.Wait(step.Timer!.Duration).Say(CommandWord.Next);
        }
    }

    void Read(Step step)
    {
        if (step.Id != fact.Unwaited && random.Next(6) != 0)
        {
            Job.Wait(plan.Steps.FirstOrDefault(wait => wait.Id == step.After)?.Timer?.Duration ?? TimeSpan.Zero);
        }

        SayPlate(step);
        foreach (ReadingDemand demand in step.Readings)
        {
            Say(step, demand);
        }

        ReadingDemand[] twice = [.. step.Readings.Where(demand => demand.Settles is { Twice: true })];
        if (twice.Length > 0 && random.Next(5) != 0)
        {
            Job.Wait(twice[0].Settles!.Window);
        }

        foreach (ReadingDemand demand in twice)
        {
            Say(step, demand);
        }

        Job.Say(CommandWord.Next);
    }

    void SayPlate(Step step)
    {
        foreach (string name in step.Limited.Where(name => plan.Limit(name, step.Scope) is null && Job.Procedure.Expectation.Readings.Any(reading => reading.Field.Id == "limit_upper")))
        {
            foreach ((string id, decimal value) in GoodValues.Plate(plan, name))
            {
                Job.Say(Job.Procedure.Expectation.Readings.Single(reading => reading.Field.Id == id).Field, value);
            }

            Job.Say(CommandWord.Next);
        }
    }

    /// <summary>The true value mostly; once in a while the one that is wanted.</summary>
    void Say(Step step, ReadingDemand demand)
    {
        bool isTrue = fact.Readings.TryGetValue((demand.FieldId, step.Scope ?? ""), out decimal bad) && random.Next(5) != 0;
        decimal value = isTrue ? bad : GoodValues.Of(plan, demand, step.Scope);
        Job.Give(new Phrase.Reading(Fields.Find(demand.FieldId)!, value, new Evidence("words", random.Next(2) == 0 ? Channel.Voice : Channel.Keys, random.Next(8) == 0 ? Certainty.Amber : Certainty.Green))
        {
            IsOver = isTrue && value == 9999,
        });
        if (Job.Procedure.Phase == Phase.Confirming)
        {
            Job.Say(random.Next(4) == 0 ? AnswerWord.No : AnswerWord.Confirm);
        }
    }

    /// <summary>Whatever might help around a guard.</summary>
    void Trick()
    {
        switch (random.Next(20))
        {
            case 15 when description is not null && random.Next(SeldomEdits) == 0:
                GoneOnWith ??= EditedRecord.GoneOnWith(Job.Log, random);
                break;
            case 0:
                Job.Say(CommandWord.SkipStep).Dictate("not today");
                break;
            case 1:
                Job.Say(CommandWord.Disregard).Say(CommandWord.Next);
                break;
            case 2:
                Job.Say(CommandWord.GoBack);
                break;
            case 3:
                Job.Say(CommandWord.Finish).Say(AnswerWord.No);
                break;
            case 4:
                Job.Say(AnswerWord.Yes);
                break;
            case 5:
                Job.Say(AnswerWord.No);
                break;
            case 6:
                Job.Say(AnswerWord.Confirm);
                break;
            case 7:
                Job.SetClock(TimeSpan.FromMinutes(random.Next(-90, 240)));
                break;
            case 8:
                Job.Restart(TimeSpan.FromMinutes(random.Next(0, 30)), random.Next(4) == 0);
                break;
            case 9:
                Job.Say(CommandWord.StartTimer).Wait(TimeSpan.FromSeconds(random.Next(1, 90)));
                break;
            case 10:
                Job.Say(Any<CommandWord>());
                break;
            case 11:
                Step step = Step;
                foreach (ReadingDemand demand in step.Readings)
                {
                    Say(step, demand);
                }

                Job.Say(CommandWord.Next);
                break;
            case 18 or 19:
                Job.Wait(TimeSpan.FromMinutes(random.Next(0, 7)));
                Show(random.Next(6) == 0 ? 40 : 1);
                break;
            case 17:
                SayTwiceOnly(Step);
                break;
            case 12:
                Job.Say(CommandWord.StandBy).Say(CommandWord.Next).Say(CommandWord.GoAhead);
                break;
            case 16:
                Job.Give(new Phrase.Jump(plan.SpokenSteps[random.Next(plan.SpokenSteps.Length)], Evidence.Typed("go to"))).Say(AnswerWord.Confirm);
                break;
            case 13:
                Job.Dictate("a reason");
                break;
            default:
                Job.Say(CommandWord.Done).Say(CommandWord.Next);
                break;
        }
    }

    /// <summary>What is asked twice is said as it is wanted, and whatever stands beside it is left as it is.</summary>
    void SayTwiceOnly(Step step)
    {
        ReadingDemand[] twice = [.. step.Readings.Where(demand => demand.Settles is { Twice: true })];
        foreach (ReadingDemand demand in twice.Concat(twice))
        {
            Job.Wait(demand == twice[0] ? demand.Settles!.Window : TimeSpan.Zero).Say(demand.FieldId, GoodValues.Of(plan, demand, step.Scope));
            if (Job.Procedure.Phase == Phase.Confirming)
            {
                Job.Say(AnswerWord.Confirm);
            }
        }

        Job.Say(CommandWord.Next);
    }

    T Any<T>()
        where T : struct, Enum
    {
        T[] all = Enum.GetValues<T>();
        return all[random.Next(all.Length)];
    }
}
