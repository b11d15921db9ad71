using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.GasSide;

/// <summary>Square-root law of a fixed orifice.</summary>
/// <remarks>
/// Q2/Q1 = √(p2/p1), gauge pressures of the manifold against the burner box, same gas, same orifice, incompressible (below 3 kPa the error is
/// under 0.5 %). Orifice equation of any handbook; the law is an assumption about the burner, not a measurement of it.
/// </remarks>
public static class ManifoldPressure
{
    /// <summary>Gas flow after a change of pressure over gas flow before.</summary>
    /// <param name="before">Above zero.</param>
    /// <param name="after">Zero or above.</param>
    public static double FlowRatio(Pressure before, Pressure after) => Math.Sqrt(after.Pascals / before.Pascals);

    /// <summary>Gas flow after a change of pressure over gas flow before; any one unit of pressure.</summary>
    public static Uncertain FlowRatio(in Uncertain before, in Uncertain after) => Formula(before, after);

    /// <summary>The same of numbers of any kind.</summary>
    public static T Formula<T>(in T before, in T after) where T : struct, IFormulaNumber<T> => T.Sqrt(after / before);

    /// <summary>The pressure that changes the gas flow by a ratio: p2 = p1 (Q2/Q1)².</summary>
    /// <param name="before">Above zero.</param>
    /// <param name="flowRatio">Wanted flow over present flow.</param>
    public static Pressure ForFlowRatio(Pressure before, double flowRatio) => new(before.Pascals * flowRatio * flowRatio);
}
