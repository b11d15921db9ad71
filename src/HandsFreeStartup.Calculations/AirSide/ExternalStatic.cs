using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.AirSide;

/// <summary>Total external static pressure across the furnace.</summary>
/// <remarks>
/// TESP = supply static − return static, both against the room; the return is normally negative, so the magnitudes add up.
/// Which side of coil and filter counts is the maker's definition. Common practice, no source.
/// </remarks>
public static class ExternalStatic
{
    /// <summary>Supply minus return.</summary>
    public static Pressure Total(Pressure supply, Pressure returned) => supply - returned;

    /// <summary>The same with uncertainties; any one unit of pressure.</summary>
    public static Uncertain Total(in Uncertain supply, in Uncertain returned) => Formula(supply, returned);

    /// <summary>The total of numbers of any kind.</summary>
    /// <param name="supply">Supply static.</param>
    /// <param name="returned">Return static, in the same unit.</param>
    public static T Formula<T>(in T supply, in T returned) where T : struct, IFormulaNumber<T> => supply - returned;
}
