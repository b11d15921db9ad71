using System.Globalization;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Storage.Tests.Support;

/// <summary>Walks a plan by phrases, step by step, as its files want it: good values are the middle of the limits.</summary>
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
            Job.Say(demand.FieldId, Good(demand.FieldId, demand.LimitName, step.Scope));
        }
    }

    decimal Good(string fieldId, string? limitName, string? scope) => fieldId switch
    {
        "return_temperature" => 68,
        "supply_temperature" => 68 + (plan.Limit("temperature_rise", scope) is { } rise ? Math.Round(Middle(rise)) : 50),
        "supply_static" => 0.20m,
        "return_static" => -0.15m,
        "air_temperature" => 70,
        "flue_co" => 8,
        "room_co" => 2,
        "meter_time" => Seconds(scope),
        _ when plan.Limit(limitName, scope) is { } limit => Rounded(Middle(limit), Fields.Find(fieldId)!.FewestDecimals),
        _ => throw new InvalidOperationException($"No good value is known for {fieldId}, {scope}."),
    };

    /// <summary>Seconds for one turn of the dial at the middle of the permitted input; any where the site or the sheet cannot tell.</summary>
    decimal Seconds(string? scope) => plan.Site is { MeterDialCubicFeet: { } dial, HeatingValue: { } heating } && plan.Limit("input_rate", scope) is { } input
        ? Rounded(3600 * dial * heating / Middle(input), 1)
        : 40;

    static decimal Middle(DeclaredLimit limit) => ((limit.Lower ?? limit.Upper!.Value) + (limit.Upper ?? limit.Lower!.Value)) / 2;

    static decimal Rounded(decimal value, int decimals) =>
        decimal.Parse(value.ToString($"F{decimals}", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
