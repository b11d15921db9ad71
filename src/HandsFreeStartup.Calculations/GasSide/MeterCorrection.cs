using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Calculations.GasSide;

/// <summary>From the volume that a meter counts to the volume at a base state.</summary>
/// <remarks>
/// Ideal: factor = p/p(base) · T(base)/T. Real: the same times Z(base)/Z, the ratio of the densities. p is absolute: barometer at the
/// altitude plus gauge pressure in the meter. Ideal is within 0.3 % for natural gas, within 2 % for propane between −20 °C and 45 °C up to 35 kPa.
/// </remarks>
public static class MeterCorrection
{
    /// <summary>Base state of many gas tariffs: 60 °F and 14.73 psia (30 in. of mercury).</summary>
    public static (Temperature Temperature, AbsolutePressure Pressure) Base60F1473 { get; } =
        (Temperature.FromFahrenheit(60), AbsolutePressure.FromPsi(14.73));

    /// <summary>Base state of ISO 13443: 15 °C and 101325 Pa.</summary>
    public static (Temperature Temperature, AbsolutePressure Pressure) Base15C { get; } =
        (Temperature.FromCelsius(15), AbsolutePressure.StandardAtmosphere);

    /// <summary>Base volume per metered volume, ideal gas.</summary>
    public static double IdealFactor(
        AbsolutePressure pressure, Temperature temperature, (Temperature Temperature, AbsolutePressure Pressure) baseState) =>
        pressure.Pascals / baseState.Pressure.Pascals * (baseState.Temperature.Kelvin / temperature.Kelvin);

    /// <summary>Base volume per metered volume, real gas; NaN where the fuel would be liquid.</summary>
    public static double RealFactor(
        Fuel fuel, AbsolutePressure pressure, Temperature temperature, (Temperature Temperature, AbsolutePressure Pressure) baseState) =>
        IdealFactor(pressure, temperature, baseState)
        * RealGas.CompressibilityFactor(fuel, baseState.Temperature, baseState.Pressure) / RealGas.CompressibilityFactor(fuel, temperature, pressure);
}
