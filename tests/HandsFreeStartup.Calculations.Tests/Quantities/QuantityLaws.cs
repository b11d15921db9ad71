using FsCheck.Xunit;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Tests.Support;

namespace HandsFreeStartup.Calculations.Tests.Quantities;

/// <summary>Unit round trips: to one unit in the last place where the conversion is one factor.</summary>
[Properties(Arbitrary = [typeof(Readings)], MaxTest = 1000)]
public sealed class QuantityLaws
{
    [Property]
    public bool Pressures_come_back(AnyNumber x) =>
        Same(x, Pressure.FromInchesOfWater(x.Value).InchesOfWater) && Same(x, Pressure.FromMillibars(x.Value).Millibars) && Same(x, Pressure.FromPsi(x.Value).Psi)
        && Same(x, AbsolutePressure.FromPsi(x.Value).Psi) && Same(x, AbsolutePressure.FromInchesOfMercury(x.Value).InchesOfMercury) && Same(x, AbsolutePressure.FromMillibars(x.Value).Millibars);

    [Property]
    public bool Heat_rates_and_heating_values_come_back(AnyNumber x) =>
        Same(x, HeatRate.FromKilowatts(x.Value).Kilowatts) && Near(x, HeatRate.FromBtuPerHour(x.Value).BtuPerHour, 4)
        && Near(x, HeatingValue.FromBtuPerCubicFoot(x.Value).BtuPerCubicFoot, 4) && Same(x, HeatingValue.FromMegajoulesPerCubicMetre(x.Value).MegajoulesPerCubicMetre);

    [Property]
    public bool Flows_and_volumes_come_back(AnyNumber x) =>
        Same(x, Volume.FromCubicFeet(x.Value).CubicFeet) && Near(x, VolumeFlow.FromCubicFeetPerHour(x.Value).CubicFeetPerHour, 4)
        && Near(x, VolumeFlow.FromCubicFeetPerMinute(x.Value).CubicFeetPerMinute, 4) && Same(x, VolumeFlow.FromCubicMetresPerHour(x.Value).CubicMetresPerHour);

    [Property]
    public bool Lengths_altitudes_and_fractions_come_back(AnyNumber x) =>
        Same(x, Length.FromInches(x.Value).Inches) && Same(x, Length.FromFeet(x.Value).Feet) && Same(x, Altitude.FromFeet(x.Value).Feet)
        && Same(x, Fraction.FromPercent(x.Value).Percent) && Same(x, Fraction.FromPartsPerMillion(x.Value).PartsPerMillion);

    /// <summary>An offset is added, so the last places of the kelvin are what can be lost.</summary>
    [Property]
    public bool Temperatures_come_back_to_the_last_places_of_the_kelvin(Share x) =>
        Math.Abs(Temperature.FromFahrenheit(900 * x.Value).Fahrenheit - 900 * x.Value) < 1e-12 * 1500
        && Math.Abs(Temperature.FromCelsius(500 * x.Value).Celsius - 500 * x.Value) < 1e-12 * 800;

    [Property]
    public bool Temperature_differences_come_back(AnyNumber x) => Same(x, TemperatureDifference.FromFahrenheit(x.Value).Fahrenheit);

    static bool Same(AnyNumber expected, double actual) => Near(expected, actual, 1);

    static bool Near(AnyNumber expected, double actual, int lastPlaces) =>
        Math.Abs(actual - expected.Value) <= lastPlaces * (Math.BitIncrement(Math.Abs(expected.Value)) - Math.Abs(expected.Value));
}
