namespace HandsFreeStartup.Calculations.Uncertainties;

/// <summary>A value with its standard uncertainty, both in the same unit, which is said by whoever holds it.</summary>
/// <param name="Value">The best value; NaN when there is none.</param>
/// <param name="StandardUncertainty">u, one standard deviation; zero for an exact value.</param>
public readonly record struct Estimate(double Value, double StandardUncertainty)
{
    /// <summary>Coverage factor k of the expanded uncertainty: about 95 % for a normal distribution (JCGM 100:2008, 6.3.3; value from memory).</summary>
    public const double CoverageFactor = 2;

    /// <summary>No value.</summary>
    public static Estimate Unknown { get; } = new(double.NaN, double.NaN);

    /// <summary>A value without uncertainty.</summary>
    public static Estimate Exactly(double value) => new(value, 0);

    /// <summary>U = k u with k = 2.</summary>
    public double ExpandedUncertainty => CoverageFactor * StandardUncertainty;

    /// <summary>Whether there is a value and an uncertainty that mean anything.</summary>
    public bool IsKnown => double.IsFinite(Value) && double.IsFinite(StandardUncertainty) && StandardUncertainty >= 0;
}
