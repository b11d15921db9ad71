using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Calculations.AirSide;

/// <summary>The ICAO standard atmosphere below 11 km: what the barometer is expected to show at an altitude.</summary>
/// <remarks>
/// T = T0 − L h; p = p0 (T/T0)^(g M/(R* L)), h geopotential. ICAO Doc 7488: T0 288.15 K, p0 101325 Pa, L 6.5 K/km, g 9.80665 m/s²,
/// R* 8314.32 J/(kmol K), M 28.964420 kg/kmol (constants from memory). Weather moves the real barometer by ± 3 %.
/// </remarks>
public static class StandardAtmosphere
{
    const double Kelvin0 = 288.15, LapsePerMetre = 0.0065, GasConstant = 8314.32 / 28.964420;

    /// <summary>Temperature; −1 km to 11 km.</summary>
    public static Temperature Temperature(Altitude altitude) => new(Kelvin0 - LapsePerMetre * altitude.Metres);

    /// <summary>Pressure; −1 km to 11 km.</summary>
    public static AbsolutePressure Pressure(Altitude altitude) => new(101325 * PressureRatio(altitude));

    /// <summary>Pressure over that at sea level.</summary>
    public static double PressureRatio(Altitude altitude) =>
        Math.Pow(Temperature(altitude).Kelvin / Kelvin0, 9.80665 / (GasConstant * LapsePerMetre));

    /// <summary>Density of dry air, ideal gas, kg/m³.</summary>
    public static double Density(Altitude altitude) => Pressure(altitude).Pascals / (GasConstant * Temperature(altitude).Kelvin);

    /// <summary>Geopotential altitude of a surveyed height z: h = R z/(R + z), R = 6356766 m.</summary>
    public static Altitude FromSurveyedHeight(Length height) => new(6356766 * height.Metres / (6356766 + height.Metres));
}
