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

        Assert.Contains("has not settled", Assert.IsType<CommandRefused>(job.Last[^1]).Reason.Shown, StringComparison.Ordinal);
    }

    [Fact]
    public void A_disregarded_series_begins_anew()
    {
        LiveJob job = Said(9.0m, 8.6m, 8.2m, 7.8m, 7.4m, 7.0m).Say(CommandWord.Disregard).Say("oxygen", 7.0m);

        Assert.Empty(job.Last.OfType<SeriesJudged>());
        Assert.Equal(ReadingState.Provisional, job.View.Readings[0].State);
    }

    [Fact]
    public void Values_that_moved_and_then_stand_still_let_the_step_be_left()
    {
        LiveJob job = Said(9.0m, 8.6m, 8.2m, 7.8m, 7.4m, 7.0m, 7.0m, 7.0m, 7.0m, 7.0m, 7.0m, 7.0m);
        Assert.Equal(Settled.Yes, Assert.IsType<SeriesJudged>(job.Last[^1]).Settled);

        job.Say("flue_co", 12m).Say("flue_temperature", 328m).Say("air_temperature", 68m).Say(CommandWord.Next);
        Assert.Equal("manifold", job.Step);
    }

    [Fact]
    public void What_was_said_before_its_time_is_no_value_of_a_series()
    {
        LiveJob job = new(Some.PlanOf([.. Steps.Where(step => step.Id is "papers" or "combustion" or "warm-up" or "sign").Select(step => step.Id switch
        {
            "papers" => step with { Starts = ["warm-up"] },
            "combustion" => step with { After = "warm-up" },
            _ => step,
        }).OrderBy(step => step.Id switch { "papers" => 0, "combustion" => 1, "warm-up" => 2, _ => 3 })]));
        job.Say(CommandWord.Done).Say("oxygen", 9.0m);
        Assert.True(job.Log.OfType<ReadingEntered>().Single().Reading.IsEarly);

        job.Wait(TimeSpan.FromMinutes(8)).Say("oxygen", 7.6m);
        Assert.Empty(job.Last.OfType<SeriesJudged>());
        Assert.Equal(2, job.Say("oxygen", 7.6m).Last.OfType<SeriesJudged>().Single().Count);
    }

    [Fact]
    public void A_series_belongs_to_one_step()
    {
        Step first = Steps.Single(step => step.Id == "combustion") with { Readings = [Steps.Single(step => step.Id == "combustion").Readings[0]] };
        LiveJob job = new LiveJob(Some.PlanOf([first, first with { Id = "again" }, Steps[^1]])).Say("oxygen", 7.6m).Say(CommandWord.Next).Say("oxygen", 7.6m);

        Assert.Equal("again", job.Step);
        Assert.Empty(job.Last.OfType<SeriesJudged>());
    }

    [Fact]
    public void Under_degrees_Celsius_a_series_settles_by_the_same_differences()
    {
        StartupPlan known = Some.PlanOf([.. Some.Steps.Select(step => step.Id == "combustion"
            ? step with { Readings = [.. step.Readings.Select(demand => demand.FieldId == "flue_temperature" ? demand with { Settles = new(TimeSpan.FromSeconds(45), 6m, 4m, "common practice, no source") } : demand)] } : step)]);
        StartupPlan plan = StartupPlan.From(known.Checklist, known.Appliance, known.Site, settings: Settings.Default with { Temperature = Unit.Celsius });
        LiveJob job = new LiveJob(plan).GoTo("combustion");
        foreach (int celsius in new[] { 160, 161, 162, 163, 164, 165, 166 })
        {
            job.Now += TimeSpan.FromSeconds(10);
            job.Say(plan.FieldOf("flue_temperature", "high"), celsius);
        }

        // 6 °F are 3.3 °C: a degree in ten seconds is more than that in 45.
        Assert.Equal(Settled.NotYet, Assert.IsType<SeriesJudged>(job.Last[^1]).Settled);
    }
}
