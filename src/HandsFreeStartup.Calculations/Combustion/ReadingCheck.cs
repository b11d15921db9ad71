using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Calculations.Combustion;

/// <summary>Whether a reading can be true at all, before anything is worked out from it.</summary>
/// <remarks>Temperatures: the range of the gas data (200 K to 1000 K). Pressure: above a tenth of the standard atmosphere.</remarks>
static class ReadingCheck
{
    /// <summary>One sentence with the remedy, or null.</summary>
    public static string? WhyImpossible(in FlueReading reading, DryAir air) => reading switch
    {
        { Oxygen.Value: var oxygen } when !(oxygen >= 0 && oxygen < air.Oxygen && oxygen < AirFree.AirOxygenPercent / 100) =>
            "The O2 must be at least 0 % and below that of air (20.9 %); check the zero, the probe and the hose.",
        { CarbonMonoxide.Value: not (>= 0 and < 0.2) } => "The CO must lie between 0 ppm and 200000 ppm; check the zero.",
        { FlueTemperature: var flue } when !InRange(flue) => "The flue temperature is outside of -73 °C to 727 °C; measure it again.",
        { AirTemperature: var entering } when !InRange(entering) => "The combustion air temperature is outside of -73 °C to 727 °C; measure it again.",
        { Pressure.Pascals: not (>= 10132.5 and <= 1013250) } => "The pressure must be an absolute one near that of the atmosphere; check the altitude.",
        { AirRelativeHumidity.Value: not (>= 0 and <= 1) } => "The relative humidity must lie between 0 % and 100 %.",
        _ => null,
    };

    static bool InRange(Temperature temperature) => temperature.Kelvin is >= 200 and <= 1000;
}
