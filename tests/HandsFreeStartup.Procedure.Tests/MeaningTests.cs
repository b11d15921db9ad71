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
        // Typical natural gas, O2 5 %, flue 150 °C (302 °F), air 20 °C (68 °F), dry air, sea level: lambda 1.2817, dew point 54.10 °C, 84.32 % of the
        // higher heating value (computed with NASA polynomials, reproduced with Cantera and IAPWS within 0.006 points; see the reference tables of the calculation tests).
        LiveJob job = new LiveJob().GoTo("combustion")
            .Say("oxygen", 5.0m).Say("flue_co", 0m).Say("flue_temperature", 302m).Say("air_temperature", 68m);

        Assert.Equal(28.17, Result(job, "excess_air").Value!.Value, 0.05);
        Assert.Equal(84.32, Result(job, "efficiency").Value!.Value, 0.01);
        Assert.Equal((54.10 * 1.8) + 32, Result(job, "dew_point").Value!.Value, 0.05);
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
