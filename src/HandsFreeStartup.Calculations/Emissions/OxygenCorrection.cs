using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Emissions;

/// <summary>A concentration at a reference O2.</summary>
/// <remarks>C(ref) = C (air − O2(ref))/(air − O2), O2 in % dry; air is 20.9 in US rules (EPA, seen in a reprint) and 21 in German ones (1. BImSchV, seen).</remarks>
public static class OxygenCorrection
{
    /// <summary>The oxygen of air in US rules, %.</summary>
    public const double UnitedStates = 20.9;

    /// <summary>The oxygen of air in German rules, %.</summary>
    public const double Germany = 21;

    /// <summary>The concentration at the reference O2, in the unit of the measured one.</summary>
    /// <param name="concentration">As measured, dry.</param>
    /// <param name="oxygenPercent">As measured, % dry, below <paramref name="airPercent"/>.</param>
    /// <param name="referencePercent">Reference O2, % dry; 0 makes it air-free.</param>
    /// <param name="airPercent">Oxygen of air in the rule, %.</param>
    public static Uncertain ToReference(in Uncertain concentration, in Uncertain oxygenPercent, double referencePercent, double airPercent = UnitedStates) =>
        Formula(concentration, oxygenPercent, referencePercent, airPercent);

    /// <summary>The concentration at the reference O2 of numbers of any kind.</summary>
    /// <param name="concentration">As measured, dry.</param>
    /// <param name="oxygenPercent">As measured, % dry.</param>
    /// <param name="referencePercent">Reference O2, % dry.</param>
    /// <param name="airPercent">Oxygen of air in the rule, %.</param>
    public static T Formula<T>(in T concentration, in T oxygenPercent, double referencePercent, double airPercent) where T : struct, IFormulaNumber<T> =>
        concentration * (airPercent - referencePercent) / (airPercent - oxygenPercent);
}
