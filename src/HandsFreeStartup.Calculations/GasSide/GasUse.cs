using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.GasSide;

/// <summary>How much gas the owner will use, and how far a burner turns down.</summary>
/// <remarks>Definitions. A therm is 100000 Btu. The yearly use is at the input that was measured, for the hours of burning that the owner states.</remarks>
public static class GasUse
{
    /// <summary>High over low input; 1 or above.</summary>
    /// <param name="high">Input or gas flow at high fire.</param>
    /// <param name="low">The same at low fire, same unit, above zero.</param>
    public static T TurndownFormula<T>(in T high, in T low) where T : struct, IFormulaNumber<T> => high / low;

    /// <summary>Gas in an hour of burning, ft³.</summary>
    /// <param name="btuPerHour">Input rate, Btu/h.</param>
    /// <param name="btuPerCubicFoot">Gross heating value, Btu/ft³, above zero.</param>
    public static T PerHourFormula<T>(in T btuPerHour, in T btuPerCubicFoot) where T : struct, IFormulaNumber<T> => btuPerHour / btuPerCubicFoot;

    /// <summary>Gas in a year, therms.</summary>
    /// <param name="btuPerHour">Input rate, Btu/h.</param>
    /// <param name="hoursPerYear">Hours of burning in a year.</param>
    public static T PerYearFormula<T>(in T btuPerHour, in T hoursPerYear) where T : struct, IFormulaNumber<T> => btuPerHour * hoursPerYear / 100_000;
}
