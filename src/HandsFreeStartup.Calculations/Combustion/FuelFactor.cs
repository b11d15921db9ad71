using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Combustion;

/// <summary>Fuel factor Fo: whether O2, CO2 and the fuel setting belong together.</summary>
/// <remarks>
/// Fo = (20.9 − O2)/CO2, all in % dry; with CO present O2 − CO/2 and CO2 + CO take their places (EPA Method 3B, section 12; seen in a reprint).
/// Dilution does not change Fo, so a value outside the range of the fuel shows a wrong fuel setting, a faulty cell or a bad sample.
/// </remarks>
public static class FuelFactor
{
    /// <summary>Fo from readings.</summary>
    /// <param name="oxygenPercent">O2, % dry.</param>
    /// <param name="carbonDioxidePercent">CO2, % dry, above 0.</param>
    /// <param name="carbonMonoxidePercent">CO, % dry; 100 ppm is 0.01 %.</param>
    public static Uncertain Of(in Uncertain oxygenPercent, in Uncertain carbonDioxidePercent, in Uncertain carbonMonoxidePercent) =>
        Formula(oxygenPercent, carbonDioxidePercent, carbonMonoxidePercent);

    /// <summary>Fo of numbers of any kind.</summary>
    /// <param name="oxygenPercent">O2, % dry.</param>
    /// <param name="carbonDioxidePercent">CO2, % dry, above 0.</param>
    /// <param name="carbonMonoxidePercent">CO, % dry.</param>
    public static T Formula<T>(in T oxygenPercent, in T carbonDioxidePercent, in T carbonMonoxidePercent) where T : struct, IFormulaNumber<T> =>
        (20.9 - (oxygenPercent - 0.5 * carbonMonoxidePercent)) / (carbonDioxidePercent + carbonMonoxidePercent);

    /// <summary>Fo that the composition of a fuel leads to, the same at any excess air: 20.9 · dry flue / CO2 of complete combustion in air with 20.9 % O2.</summary>
    /// <param name="fuel">A fuel with carbon.</param>
    public static double Expected(Fuel fuel) => 0.209 / Stoichiometry.Of(fuel, DryAir.WithTradeOxygen).CarbonDioxideMaximum;

    /// <summary>Range in which Fo is accepted: by the carbon-richest large part of the fuel; null for a fuel that the method does not list.</summary>
    /// <remarks>EPA Method 3B, table of Fo: natural gas 1.600–1.836, propane 1.434–1.586, butane 1.405–1.553; values from memory.</remarks>
    public static Limit? AcceptRange(Fuel fuel)
    {
        const string Source = "EPA Method 3B, fuel factor table, value from memory";
        double methane = 0;
        double propane = 0;
        double butane = 0;
        foreach (FuelComponent component in fuel.Composition)
        {
            methane += component.Species == Species.Methane ? component.MoleFraction : 0;
            propane += component.Species == Species.Propane ? component.MoleFraction : 0;
            butane += component.Species == Species.NormalButane || component.Species == Species.Isobutane ? component.MoleFraction : 0;
        }
        return methane >= 0.8 ? new(1.600, 1.836, Source, IsSafety: false)
            : propane >= 0.8 ? new(1.434, 1.586, Source, IsSafety: false)
            : butane >= 0.8 ? new(1.405, 1.553, Source, IsSafety: false)
            : null;
    }
}
