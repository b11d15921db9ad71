using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Calculations.Tests.Quantities;

/// <summary>Conversion values: NIST SP 811 class, values from memory, unless a row says otherwise.</summary>
public sealed class QuantityTests
{
    [Theory]
    [InlineData(3.5, 8.718)]
    [InlineData(7, 17.436)]
    [InlineData(10, 24.909)]
    [InlineData(11, 27.400)]
    [InlineData(14, 34.872)]
    public void Inches_of_water_in_millibars(double inches, double millibars) =>
        Assert.Equal(millibars, Pressure.FromInchesOfWater(inches).Millibars, 0.0005);

    [Fact]
    public void The_conventional_inch_of_water() => Assert.Equal(249.08891, Pressure.FromInchesOfWater(1).Pascals, 1e-9);

    [Fact]
    public void One_psi() => Assert.Equal(6894.757293168, Pressure.FromPsi(1).Pascals, 1e-8);

    [Fact]
    public void Half_a_psi_in_inches_of_water() => Assert.Equal(13.84, Pressure.FromPsi(0.5).InchesOfWater, 0.005);

    [Fact]
    public void Thirty_inches_of_mercury() => Assert.Equal(14.7346, AbsolutePressure.FromInchesOfMercury(30).Psi, 0.00005);

    [Fact]
    public void A_cubic_foot() => Assert.Equal(0.028316846592, Volume.FromCubicFeet(1).CubicMetres, 1e-17);

    [Fact]
    public void A_hundred_thousand_Btu_per_hour() => Assert.Equal(29.3071, HeatRate.FromBtuPerHour(100_000).Kilowatts, 0.00005);

    [Fact]
    public void A_Btu_per_cubic_foot() => Assert.Equal(0.03725895, HeatingValue.FromBtuPerCubicFoot(1).MegajoulesPerCubicMetre, 5e-9);

    [Fact]
    public void Temperature_scales_meet_at_minus_forty() =>
        Assert.Equal(Temperature.FromCelsius(-40).Kelvin, Temperature.FromFahrenheit(-40).Kelvin, 1e-12);

    [Fact]
    public void Gauge_pressure_adds_to_the_barometer_and_comes_off_again()
    {
        AbsolutePressure inMeter = AbsolutePressure.StandardAtmosphere + Pressure.FromInchesOfWater(7);

        Assert.Equal(101325 + 7 * 249.08891, inMeter.Pascals, 1e-9);
        Assert.Equal(7, (inMeter - AbsolutePressure.StandardAtmosphere).InchesOfWater, 1e-10);
    }
}
