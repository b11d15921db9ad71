using FsCheck.Xunit;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Tests.Support;
using HandsFreeStartup.Calculations.Water;

namespace HandsFreeStartup.Calculations.Tests.Gases;

[Properties(Arbitrary = [typeof(Readings)], MaxTest = 500)]
public sealed class GasLaws
{
    static readonly Species[] InFlue =
        [Species.Nitrogen, Species.Oxygen, Species.Argon, Species.CarbonDioxide, Species.CarbonMonoxide, Species.Water];

    [Property]
    public bool Enthalpy_rises_with_temperature(Share at, Share more) => InFlue.All(species =>
        species.Heat.Enthalpy(200 + 700 * at.Value + 0.01 + 100 * more.Value) > species.Heat.Enthalpy(200 + 700 * at.Value));

    [Property]
    public bool Heat_capacity_is_the_slope_of_enthalpy(Share at) => InFlue.All(species =>
    {
        double kelvin = 210 + 780 * at.Value;
        double slope = (species.Heat.Enthalpy(kelvin + 0.05) - species.Heat.Enthalpy(kelvin - 0.05)) / 0.1;
        return Math.Abs(slope - species.Heat.HeatCapacity(kelvin)) < 1e-5 * slope;
    });

    [Property]
    public bool Dew_point_rises_with_partial_pressure(Share at, Share more)
    {
        double pascals = 700 + 50000 * at.Value;
        return SaturationLine.Temperature(pascals + 0.01 + 1000 * more.Value) > SaturationLine.Temperature(pascals);
    }

    [Property]
    public bool Saturation_temperature_is_the_inverse_of_saturation_pressure(Share at)
    {
        double kelvin = 273.15 + 100 * at.Value;
        return Math.Abs(SaturationLine.Temperature(SaturationLine.Pressure(kelvin)) - kelvin) < 1e-9;
    }
}
