using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.AirSide;

/// <summary>Rise of the circulated air, and the net temperature of the flue gas.</summary>
/// <remarks>
/// Rise = supply − return, supply measured out of sight of the heat exchanger. It must lie inside the range of the rating plate at each stage.
/// Net flue temperature = flue − combustion air. Both are differences: 1 K is 1.8 °F.
/// </remarks>
public static class TemperatureRise
{
    /// <summary>Supply minus return, or flue minus combustion air.</summary>
    public static TemperatureDifference Of(Temperature hot, Temperature cold) => hot - cold;

    /// <summary>The same with uncertainties; any one unit of temperature.</summary>
    public static Uncertain Of(in Uncertain hot, in Uncertain cold) => Formula(hot, cold);

    /// <summary>The difference of numbers of any kind.</summary>
    /// <param name="hot">Supply, or flue.</param>
    /// <param name="cold">Return, or combustion air, in the same unit.</param>
    public static T Formula<T>(in T hot, in T cold) where T : struct, IFormulaNumber<T> => hot - cold;
}
