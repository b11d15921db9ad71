using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Calculations.Combustion;

/// <summary>One combustion reading: what the probe in the flue and the one in the combustion air say.</summary>
/// <param name="Oxygen">O2 of the dried flue gas, by volume; 0 to below 20.9 %.</param>
/// <param name="CarbonMonoxide">CO of the dried flue gas, by volume.</param>
/// <param name="FlueTemperature">In the core of the flue gas; −73 °C to 727 °C.</param>
/// <param name="AirTemperature">Of the combustion air where it enters; same range.</param>
public readonly record struct FlueReading(
    Fraction Oxygen, Fraction CarbonMonoxide, Temperature FlueTemperature, Temperature AirTemperature)
{
    /// <summary>What is taken for the combustion air where nobody measured its humidity: half saturated.</summary>
    public static Fraction AssumedHumidity { get; } = new(0.5);

    /// <summary>u of <see cref="AssumedHumidity"/>: anything between dry and saturated is as possible.</summary>
    public static Fraction AssumedHumidityUncertainty { get; } = new(0.5 / 1.7320508075688772);

    /// <summary>Pressure of flue gas and combustion air; the standard atmosphere if nothing is said.</summary>
    public AbsolutePressure Pressure { get; init; } = AbsolutePressure.StandardAtmosphere;

    /// <summary>Relative humidity of the combustion air (over ice below 0 °C); dry if nothing is said.</summary>
    public Fraction AirRelativeHumidity { get; init; }

    /// <summary>Standard uncertainties; none if nothing is said.</summary>
    public FlueUncertainty Uncertainty { get; init; }
}
