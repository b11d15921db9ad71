using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Calculations.Tests.Fuels;

public sealed class FuelTests
{
    [Theory]
    [InlineData("natural-gas")]
    [InlineData("propane")]
    [InlineData("hydrogen-blend-20")]
    [InlineData("hydrogen")]
    public void A_preset_is_found_by_its_id(string id) => Assert.Equal(id, Fuel.Find(id)?.Id);

    [Fact]
    public void An_unknown_fuel_is_not_found() => Assert.Null(Fuel.Find("coal"));

    [Fact]
    public void Every_preset_has_its_own_id_and_a_sensible_heating_value()
    {
        Assert.Equal(Fuel.Presets.Length, Fuel.Presets.Select(fuel => fuel.Id).Distinct().Count());
        Assert.All(Fuel.Presets, fuel => Assert.InRange(fuel.LowerHeatingValue / fuel.HigherHeatingValue, 0.84, 0.93));
    }

    [Fact]
    public void Bad_compositions_are_refused_with_a_sentence()
    {
        Assert.Contains("add up to 0.9", Assert.Throws<ArgumentException>(() => Fuel.FromComposition("x", "x", new FuelComponent(Species.Methane, 0.9))).Message);
        Assert.Contains("CH4 comes twice", Assert.Throws<ArgumentException>(() => Fuel.FromComposition("x", "x", new(Species.Methane, 0.5), new(Species.Methane, 0.5))).Message);
        Assert.Contains("N2 is -0.1", Assert.Throws<ArgumentException>(() => Fuel.FromComposition("x", "x", new(Species.Methane, 1.1), new(Species.Nitrogen, -0.1))).Message);
        Assert.Contains("nothing in it burns", Assert.Throws<ArgumentException>(() => Fuel.FromComposition("x", "x", new FuelComponent(Species.Nitrogen, 1))).Message);
        Assert.Throws<ArgumentException>(() => Fuel.FromComposition("x", "x", new FuelComponent(Species.Methane, double.NaN)));
    }

    /// <summary>Source: ISO 6976:2016 gross heating value of n-hexane at 25 °C, value from memory; GPA 2145 at 60 °F, reproduced by a published analysis.</summary>
    [Fact]
    public void Hexane_that_is_not_in_the_NASA_data()
    {
        Fuel hexane = Fuel.FromComposition("hexane", "hexane", new FuelComponent(Species.Hexane, 1));

        Assert.Equal(4194.95e3, hexane.HigherHeatingValue, 1.0);
        Assert.Equal(4755.9, hexane.VolumetricHeatingValue(Temperature.FromFahrenheit(60), AbsolutePressure.FromPsi(14.696), gross: true).BtuPerCubicFoot, 1.5);
    }
}
