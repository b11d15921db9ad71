using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>The results that a start-up shows, from the spoken numbers to the record, against values from outside.</summary>
public sealed class MeaningTests
{
    [Theory]
    [InlineData(5.0, 87, 114.36)]   // trade article on flue CO, which prints 114 (second-hand)
    [InlineData(7.0, 50, 75.18)]    // the same, which prints 75
    [InlineData(6.0, 1200, 1683.2)] // the same, which prints 1680
    public void Air_free_carbon_monoxide_is_told_as_soon_as_both_readings_are_there(double oxygen, int ppm, double expected)
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("oxygen", (decimal)oxygen).Say("flue_co", ppm);

        Assert.Equal(expected, Result(job, "co_air_free").Value!.Value, 0.05);
    }

    [Fact]
    public void Air_free_carbon_monoxide_carries_the_uncertainty_of_both_readings()
    {
        // 100 ± 20 ppm at 8 ± 0.3 % oxygen gives 162.0 ± 32.6 ppm (computed: first-order propagation, shared reference calculation).
        LiveJob job = new LiveJob().GoTo("combustion").Say("oxygen", 8.0m).Say("flue_co", 100m);

        CalculatedResult result = Result(job, "co_air_free");
        Assert.Equal(162.0, result.Value!.Value, 0.05);
        Assert.Equal(32.6, result.ExpandedUncertainty!.Value, 0.05);
        Assert.Equal(Verdict.Pass, result.Verdict);
    }

    [Fact]
    public void At_high_oxygen_air_free_carbon_monoxide_cannot_be_told_and_blocks_the_way()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("oxygen", 17.0m).Say("flue_co", 10m);

        Assert.Null(Result(job, "co_air_free").Value);
        Assert.Equal(Verdict.CannotTell, Result(job, "co_air_free").Verdict);
    }

    [Fact]
    public void Efficiency_excess_air_and_dew_point_agree_with_the_reference_calculation()
    {
        // Typical natural gas, O2 10.7 %, flue 49.4 °C (120.92 °F), air 8.9 °C (48.02 °F) and half saturated, sea level: a row of the reference tables of the
        // calculation tests, computed with Cantera 3.2.0 and IAPWS-IF97.
        LiveJob job = new LiveJob().GoTo("combustion")
            .Say("oxygen", 10.7m).Say("flue_co", 0m).Say("flue_temperature", 120.92m).Say("air_temperature", 48.02m);

        Assert.Equal(93.80, Result(job, "excess_air").Value!.Value, 0.05);
        Assert.Equal(87.58, Result(job, "efficiency").Value!.Value, 0.01);
        Assert.Equal(97.03, Result(job, "efficiency_net").Value!.Value, 0.01);
        Assert.Equal(87.66, Result(job, "efficiency_first_law").Value!.Value, 0.01);
        Assert.Equal(5.8286, Result(job, "carbon_dioxide_calculated").Value!.Value, 0.002);
        Assert.Equal((47.191 * 1.8) + 32, Result(job, "dew_point").Value!.Value, 0.05);
        Assert.Contains("half saturated", Result(job, "dew_point").Remark.Shown, StringComparison.Ordinal);
    }

    [Fact]
    public void Temperature_rise_is_supply_minus_return()
    {
        LiveJob job = new LiveJob().GoTo("rise").Say("supply_temperature", 124m).Say("return_temperature", 69m);

        Assert.Equal(55, Result(job, "temperature_rise").Value);
        Assert.Equal(Verdict.Pass, Result(job, "temperature_rise").Verdict);
    }

    static CalculatedResult Result(LiveJob job, string id) =>
        job.Log.OfType<ResultsComputed>().SelectMany(computed => computed.Results).Last(result => result.Id == id);

    [Fact]
    public void A_reading_over_its_time_completes_no_result_before_it()
    {
        StartupPlan plan = Some.PlanOf([.. Some.Steps.Select(step => step.Id == "combustion" ? step with { After = "late" } : step), Some.Steps.Single(step => step.Id == "warm-up") with { Id = "late" }, Some.Steps[^1] with { Id = "end" }]);
        LiveJob job = new LiveJob(plan).GoTo("combustion").Say("oxygen", 7.6m).Say("flue_co", 12m);

        Assert.True(job.Log.OfType<ReadingEntered>().Last().Reading.IsEarly);
        Assert.DoesNotContain(job.Log, happened => happened is ResultsComputed);
    }

    [Fact]
    public void Readings_of_another_stage_complete_no_result()
    {
        Step high = Some.Steps.Single(step => step.Id == "combustion");
        LiveJob job = new LiveJob(Some.PlanOf([high with { Readings = [new("oxygen", null)] }, high with { Id = "low", Scope = "low", Readings = [new("flue_co", null)] }, Some.Steps[^1]]))
            .Say("oxygen", 7.6m).Say(CommandWord.Next).Say("flue_co", 12m);

        Assert.Equal("low", job.Step);
        Assert.DoesNotContain(job.Log, happened => happened is ResultsComputed);
    }

    [Fact]
    public void A_result_that_nothing_limits_has_no_verdict_though_it_cannot_be_told()
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("oxygen", 7.6m).Give(new Phrase.Reading(Fields.Find("flue_co")!, 9999m, Some.Heard()) { IsOver = true })
            .Say("flue_temperature", 328m).Say("air_temperature", 68m);

        Assert.Equal((null, null), (Result(job, "efficiency").Value, Result(job, "efficiency").Verdict));
    }

    [Fact]
    public void Air_that_dilutes_too_much_is_named_as_the_reason_and_what_can_be_told_has_none()
    {
        Assert.Contains("dilutes too much", Result(new LiveJob().GoTo("combustion").Say("oxygen", 17.0m).Say("flue_co", 10m), "co_air_free").Remark.Shown, StringComparison.Ordinal);
        Assert.Equal("", Result(new LiveJob().GoTo("combustion").Say("oxygen", 7.6m).Say("flue_co", 10m), "co_air_free").Remark.Shown);
    }

    [Fact]
    public void Readings_in_degrees_Celsius_are_judged_by_the_uncertainty_that_the_site_states_in_Fahrenheit()
    {
        // 4 °F are 2.2 °C; at 180 °C (356 °F) 1.5 percent of 356 °F, 5.34 °F, is the larger: 2.97 °C.
        StartupPlan known = Some.Plan();
        StartupPlan plan = StartupPlan.From(known.Checklist, known.Appliance, known.Site, settings: Settings.Default with { Temperature = Unit.Celsius });
        EnteredReading cold = new LiveJob(plan).GoTo("combustion").Say(plan.FieldOf("air_temperature", "high"), 20m).Log.OfType<ReadingEntered>().Last().Reading;
        Assert.Equal(2 / 1.8, (double)cold.ExpandedUncertainty!.Value, 1e-6);

        StartupPlan drifting = StartupPlan.From(known.Checklist, known.Appliance, known.Site with { Instruments = [new InstrumentUncertainty("air_temperature", 2m, 0, "data sheet") { Resolution = 1m }] }, settings: Settings.Default with { Temperature = Unit.Celsius });
        EnteredReading stepped = new LiveJob(drifting).GoTo("combustion").Say(drifting.FieldOf("air_temperature", "high"), 20m).Log.OfType<ReadingEntered>().Last().Reading;
        // U = 2 √((2/2)² + 1²/12) °F (JCGM 100:2008, F.2.2.1; value from memory)
        Assert.Equal(2 * Math.Sqrt(1 + 1 / 12.0) / 1.8, (double)stepped.ExpandedUncertainty!.Value, 1e-5);
    }

    [Theory]
    [InlineData(7.6, 7.9, "agrees")]
    [InlineData(7.6, 12.0, "does not agree")]
    public void The_oxygen_after_an_adjustment_agrees_within_both_doubts(double before, double after, string told)
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("oxygen", (decimal)before).Say("flue_co", 12m).Say("flue_temperature", 328m).Say("air_temperature", 68m).Say(CommandWord.Next)
            .Say("manifold_pressure", 3.7m).Say(CommandWord.Next).Say("manifold_pressure", 3.6m).Say(CommandWord.Next).Say("oxygen", (decimal)after);

        CalculatedResult expected = Result(job, "oxygen_expected");
        Assert.Contains(told, expected.Remark.Shown, StringComparison.Ordinal);
        // At most 0.3 % of the oxygen before, and what 0.03 in. w.c. do to the square root of the pressure.
        Assert.InRange(expected.ExpandedUncertainty!.Value, 0.28, 0.45);
    }
}
