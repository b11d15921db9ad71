using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Settling;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>A value that is said again and again.</summary>
public sealed class SeriesTests
{
    static readonly ImmutableArray<Step> Steps = [.. Some.Steps.Select(step => step.Id == "combustion"
        ? step with { Readings = [step.Readings[0] with { Settles = new(TimeSpan.FromSeconds(45), 0.3m, 0.2m, "common practice, no source") }, .. step.Readings.Skip(1)] }
        : step)];

    static LiveJob Said(params decimal[] oxygen)
    {
        LiveJob job = new LiveJob(Some.PlanOf(Steps)).GoTo("combustion");
        foreach (decimal value in oxygen)
        {
            job.Now += TimeSpan.FromSeconds(10);
            job.Say("oxygen", value);
        }

        return job;
    }

    [Fact]
    public void Five_values_that_stand_still_have_settled_and_the_last_one_stands()
    {
        LiveJob job = Said(7.6m, 7.6m, 7.6m, 7.7m, 7.6m, 7.6m, 7.6m);

        SeriesJudged judged = job.Last.OfType<SeriesJudged>().Single();
        Assert.Equal((7, Settled.Yes, 7.6m), (judged.Count, judged.Settled, judged.Stands));
        Assert.Equal("7.6", job.View.Readings[0].Value);
        Assert.Contains(job.Procedure.Announce(job.Last, job.Now), said => said.Text.StartsWith("Settled: 7 values", StringComparison.Ordinal));
    }

    [Fact]
    public void Few_values_are_too_few_to_tell()
    {
        Assert.Equal(Settled.TooEarly, Assert.IsType<SeriesJudged>(Said(7.6m, 7.6m).Last[^1]).Settled);
        Assert.Empty(Said(7.6m).Last.OfType<SeriesJudged>());
    }

    [Fact]
    public void Values_that_move_have_not_settled_and_the_step_cannot_be_left()
    {
        LiveJob job = Said(9.0m, 8.6m, 8.2m, 7.8m, 7.4m, 7.0m);
        Assert.Equal(Settled.NotYet, Assert.IsType<SeriesJudged>(job.Last[^1]).Settled);

        job.Say("flue_co", 12m).Say("flue_temperature", 328m).Say("air_temperature", 68m).Say(CommandWord.Next);

        Assert.Contains("has not settled", Assert.IsType<CommandRefused>(job.Last[^1]).Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void A_disregarded_series_begins_anew()
    {
        LiveJob job = Said(9.0m, 8.6m, 8.2m, 7.8m, 7.4m, 7.0m).Say(CommandWord.Disregard).Say("oxygen", 7.0m);

        Assert.Empty(job.Last.OfType<SeriesJudged>());
        Assert.Equal(ReadingState.Provisional, job.View.Readings[0].State);
    }
}
