using HandsFreeStartup.Calculations.AirSide;
using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Calculations.Tests.AirSide;

public sealed class AirSideTests
{
    [Fact]
    public void A_rise_is_a_difference_and_knows_no_offset() =>
        Assert.Equal(55, TemperatureRise.Of(Temperature.FromFahrenheit(125), Temperature.FromFahrenheit(70)).Fahrenheit, 1e-9);

    [Fact]
    public void Supply_and_return_static_add_up_by_magnitude() =>
        Assert.Equal(0.5, ExternalStatic.Total(Pressure.FromInchesOfWater(0.30), Pressure.FromInchesOfWater(-0.20)).InchesOfWater, 1e-12);
}
