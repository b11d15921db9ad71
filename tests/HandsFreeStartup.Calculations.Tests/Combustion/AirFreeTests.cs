using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Tests.Combustion;

public sealed class AirFreeTests
{
    /// <summary>Source: trade article on CO air-free (hvactoday.com), seen in reprint: it prints 114, 75 and 1680. Full digits calculated.</summary>
    [Theory]
    [InlineData(87, 5, 114.36)]
    [InlineData(50, 7, 75.18)]
    [InlineData(1200, 6, 1683.2)]
    [InlineData(100, 8, 162.02)]
    [InlineData(150, 9.5, 275.0)]
    public void Air_free_monoxide_as_published(double monoxide, double oxygen, double airFree) =>
        Assert.Equal(airFree, AirFree.FromOxygen(monoxide, oxygen).Value, 0.06);

    /// <summary>Source: CO2 form of the same article, calculated.</summary>
    [Fact]
    public void The_carbon_dioxide_form_agrees() => Assert.Equal(163.0, AirFree.FromCarbonDioxide(100, 7.3, 11.9).Value, 0.05);

    /// <summary>Source: GUM arithmetic, calculated: sensitivities 1.6202 and 12.559.</summary>
    [Fact]
    public void Uncertainty_of_the_worked_example()
    {
        Uncertain airFree = AirFree.FromOxygen(Uncertain.Input(100, 20, 0), Uncertain.Input(8, 0.3, 1));

        Assert.Equal(162.0, airFree.Value, 0.05);
        Assert.Equal(32.6, airFree.StandardUncertainty, 0.05);
        Assert.Equal(1.6202, airFree.Contribution(0) / 20, 0.00005);
        Assert.Equal(12.559, airFree.Contribution(1) / 0.3, 0.0005);
    }

    [Theory]
    [InlineData(100, 15.1)]
    [InlineData(100, 21)]
    [InlineData(100, -0.1)]
    [InlineData(-1, 5)]
    [InlineData(double.NaN, 5)]
    [InlineData(100, double.NaN)]
    public void Where_nothing_can_be_said_there_is_no_air_free_value(double monoxide, double oxygen) =>
        Assert.Null(AirFree.Guarded(monoxide, oxygen));

    [Fact]
    public void At_the_guard_itself_there_is_a_value() => Assert.NotNull(AirFree.Guarded(100.0, 15.0));
}
