using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Combustion;

/// <summary>Carbon monoxide as it would read without excess air.</summary>
/// <remarks>
/// COaf = CO · 20.9/(20.9 − O2), CO in ppm dry, O2 in % dry; or COaf = CO · CO2max/CO2. The 20.9 is part of the definition
/// (trade form, printed in trade articles on flue CO; limits are stated with it: ANSI Z21.47, 400 ppm air-free, seen in reprints).
/// Not the same as 1/lambda: it is the dilution of the dry flue gas.
/// </remarks>
public static class AirFree
{
    /// <summary>The oxygen of dry air in this definition, %.</summary>
    public const double AirOxygenPercent = 20.9;

    /// <summary>Dry O2, in %, above which an air-free value is refused.</summary>
    /// <remarks>
    /// Above 15 % to 16 % the uncertainty explodes, and after shutdown an O2 cell that lags the CO cell makes huge false values
    /// (trade article, seen in reprint). The lower end of that range is used.
    /// </remarks>
    public const double LargestOxygenPercent = 15;

    /// <summary>COaf, ppm, without guard.</summary>
    /// <param name="carbonMonoxidePpm">CO, ppm dry.</param>
    /// <param name="oxygenPercent">O2, % dry, below 20.9.</param>
    public static Uncertain FromOxygen(in Uncertain carbonMonoxidePpm, in Uncertain oxygenPercent) => Formula(carbonMonoxidePpm, oxygenPercent);

    /// <summary>COaf, ppm, without guard, of numbers of any kind.</summary>
    /// <param name="carbonMonoxidePpm">CO, ppm dry.</param>
    /// <param name="oxygenPercent">O2, % dry, below 20.9.</param>
    public static T Formula<T>(in T carbonMonoxidePpm, in T oxygenPercent) where T : struct, IFormulaNumber<T> =>
        carbonMonoxidePpm * AirOxygenPercent / (AirOxygenPercent - oxygenPercent);

    /// <summary>COaf, ppm, without guard, of exact numbers: the model of a Monte Carlo draw.</summary>
    /// <param name="carbonMonoxidePpm">CO, ppm dry.</param>
    /// <param name="oxygenPercent">O2, % dry, below 20.9.</param>
    public static double OfDraw(double carbonMonoxidePpm, double oxygenPercent) => Formula<Exact>(carbonMonoxidePpm, oxygenPercent).Value;

    /// <summary>COaf, ppm, without guard.</summary>
    /// <param name="carbonMonoxidePpm">CO, ppm dry.</param>
    /// <param name="carbonDioxidePercent">CO2, % dry, above 0.</param>
    /// <param name="carbonDioxideMaximumPercent">CO2 of the fuel without excess air, % dry.</param>
    public static Uncertain FromCarbonDioxide(in Uncertain carbonMonoxidePpm, in Uncertain carbonDioxidePercent, double carbonDioxideMaximumPercent) =>
        carbonMonoxidePpm * carbonDioxideMaximumPercent / carbonDioxidePercent;

    /// <summary>COaf, ppm; null when the O2 is too high to say, or either value is none.</summary>
    /// <param name="carbonMonoxidePpm">CO, ppm dry.</param>
    /// <param name="oxygenPercent">O2, % dry.</param>
    public static Estimate? Guarded(in Uncertain carbonMonoxidePpm, in Uncertain oxygenPercent)
    {
        bool meaningful = oxygenPercent.Value is >= 0 and <= LargestOxygenPercent && carbonMonoxidePpm.Value >= 0;
        Estimate value = meaningful ? FromOxygen(carbonMonoxidePpm, oxygenPercent).Estimate : Estimate.Unknown;
        return value.IsKnown ? value : null;
    }
}
