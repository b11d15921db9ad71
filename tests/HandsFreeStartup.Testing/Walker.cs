using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Storage.Tests.Support;

/// <summary>Walks a plan by phrases, step by step, as its files want it.</summary>
sealed class Walker(StartupPlan plan, LiveJob job)
{
    const int MostSteps = 400;

    public Walker(StartupPlan plan, TimeSpan? steady = null)
        : this(plan, new LiveJob(plan, steady))
    {
    }

    public LiveJob Job { get; } = job;

    /// <summary>Which of the words of a choice is taken: the last, or the first.</summary>
    public bool TakesFirst { get; init; }

    public Step Step => plan.All[plan.IndexOf(Job.Step)];

    /// <summary>The current step as it should go.</summary>
    public Walker DoStep()
    {
        Step step = Step;
        switch (step.Kind)
        {
            case StepKind.Ask when step.Question!.Choices is { IsEmpty: false } choices:
                Job.Choose((TakesFirst ? choices[0] : choices[^1]).Value);
                break;
            case StepKind.Ask:
                Job.Say(step.Question!.Proper ? AnswerWord.Yes : AnswerWord.No);
                Explain();
                break;
            case StepKind.Wait:
                Job.Wait(step.Timer!.Duration).Say(CommandWord.Next);
                break;
            case StepKind.Read or StepKind.Adjust:
                Job.Wait(plan.Steps.FirstOrDefault(wait => wait.Id == step.After)?.Timer?.Duration ?? TimeSpan.Zero);
                StatePlate(step);
                SayReadings(step);
                SaySecondSet(step);
                Job.Say(CommandWord.Next);
                Explain();
                break;
            case StepKind.Sign:
                Job.Say(CommandWord.Finish).Say(AnswerWord.Confirm);
                break;
            default:
                Job.Say(CommandWord.Done);
                break;
        }

        return this;
    }

    /// <summary>Goes on until <paramref name="isThere"/>, or to the end.</summary>
    public Walker GoTo(Func<Step, bool> isThere)
    {
        for (int moves = 0; Job.Procedure.Phase == Phase.Asking && !isThere(Step); moves++)
        {
            Assert.True(moves < MostSteps, $"The walk does not end; it stays at {Job.Step}: {Job.Last.OfType<CommandRefused>().LastOrDefault()?.Reason.Shown}");
            DoStep();
        }

        return this;
    }

    /// <summary>A reason is given where one is asked for.</summary>
    void Explain()
    {
        if (Job.Procedure.Phase == Phase.Dictating)
        {
            Job.Dictate("found, put right and looked at again");
        }
    }

    /// <summary>Limits that no file states are said from the plate.</summary>
    void StatePlate(Step step)
    {
        foreach (string name in step.Limited.Where(name => plan.Limit(name, step.Scope) is null && Job.Procedure.Expectation.Readings.Any(reading => reading.Field.Id == "limit_upper")))
        {
            foreach ((string id, decimal value) in GoodValues.Plate(plan, name))
            {
                Field bound = Job.Procedure.Expectation.Readings.Single(reading => reading.Field.Id == id).Field;
                Job.Say(bound, value);
            }

            Job.Say(CommandWord.Next);
        }
    }

    void SaySecondSet(Step step)
    {
        ReadingDemand[] twice = [.. step.Readings.Where(demand => demand.Settles is { Twice: true })];
        if (twice.Length > 0)
        {
            Job.Wait(twice[0].Settles!.Window);
        }

        foreach (ReadingDemand demand in twice)
        {
            Job.Say(demand.FieldId, GoodValues.Of(plan, demand, step.Scope));
        }
    }

    public void SayReadings(Step step)
    {
        foreach (ReadingDemand demand in step.Readings)
        {
            Job.Say(demand.FieldId, GoodValues.Of(plan, demand, step.Scope));
        }
    }
}
