using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Calculations.Combustion;

/// <summary>Standard uncertainties (one standard deviation) of a <see cref="FlueReading"/>; independent of one another.</summary>
/// <param name="Oxygen">u of the O2, by volume.</param>
/// <param name="CarbonMonoxide">u of the CO, by volume.</param>
/// <param name="FlueTemperature">u of the flue temperature.</param>
/// <param name="AirTemperature">u of the combustion air temperature.</param>
/// <param name="Pressure">u of the pressure.</param>
/// <param name="AirRelativeHumidity">u of the relative humidity.</param>
public readonly record struct FlueUncertainty(
    Fraction Oxygen, Fraction CarbonMonoxide, TemperatureDifference FlueTemperature, TemperatureDifference AirTemperature,
    Pressure Pressure = default, Fraction AirRelativeHumidity = default)
{
    /// <summary>Uncertainty of a portable analyzer that just keeps the error limits of its class.</summary>
    /// <remarks>
    /// Limits: O2 ± 0.3 % by volume; CO ± 20 ppm or 5 %, the greater; flue temperature ± 2 K or 1.5 % of the Celsius value, the greater;
    /// air ± 1 K. EN 50379-2, value from memory, low confidence: use the instrument's own certificate where there is one.
    /// Each limit is the half width of a rectangular distribution, u = limit/√3 (JCGM 100:2008, 4.3.7; value from memory).
    /// </remarks>
    public static FlueUncertainty OfErrorLimits(Fraction carbonMonoxide, Temperature flue)
    {
        double root = Math.Sqrt(3);
        return new(
            Fraction.FromPercent(0.3 / root),
            new(Math.Max(20e-6, 0.05 * carbonMonoxide.Value) / root),
            new(Math.Max(2, 0.015 * flue.Celsius) / root),
            new(1 / root));
    }
}
