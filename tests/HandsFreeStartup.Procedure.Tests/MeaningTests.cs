using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Events;
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
        Assert.Contains("half saturated", Result(job, "dew_point").Remark, StringComparison.Ordinal);
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
}
