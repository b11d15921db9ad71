using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Storage.Tests.Support;

/// <summary>Walks a plan by phrases, step by step, as its files want it.</summary>
sealed class Walker(StartupPlan plan)
{
    const int MostSteps = 400;

    public LiveJob Job { get; } = new(plan);

    public Step Step => plan.Steps[plan.IndexOf(Job.Step)];

    /// <summary>The current step as it should go.</summary>
    public Walker DoStep()
    {
        Step step = Step;
        switch (step.Kind)
        {
            case StepKind.Ask:
                Job.Say(step.Question!.Proper ? AnswerWord.Yes : AnswerWord.No);
                break;
            case StepKind.Wait:
                Job.Wait(step.Timer!.Duration).Say(CommandWord.Next);
                break;
            case StepKind.Read or StepKind.Adjust:
                Job.Wait(plan.Steps.FirstOrDefault(wait => wait.Id == step.After)?.Timer?.Duration ?? TimeSpan.Zero);
                SayReadings(step);
                Job.Say(CommandWord.Next);
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
            Assert.True(moves < MostSteps, $"The walk does not end; it stays at {Job.Step}: {Job.Last.OfType<CommandRefused>().LastOrDefault()?.Reason}");
            DoStep();
        }

        return this;
    }

    public void SayReadings(Step step)
    {
        foreach (ReadingDemand demand in step.Readings)
        {
            Job.Say(demand.FieldId, GoodValues.Of(plan, demand, step.Scope));
        }
    }
}
