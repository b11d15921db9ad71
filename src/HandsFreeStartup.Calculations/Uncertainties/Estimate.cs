namespace HandsFreeStartup.Calculations.Uncertainties;

/// <summary>A value with its standard uncertainty, both in the same unit, which is said by whoever holds it. One that nobody made is unknown, not zero.</summary>
public readonly record struct Estimate
{
    /// <summary>Coverage factor k of the expanded uncertainty: about 95 % for a normal distribution (JCGM 100:2008, 6.3.3; value from memory).</summary>
    public const double CoverageFactor = 2;

    // Kept as the difference from the bits of NaN, so that a structure of zeros holds no number.
    static readonly long NoNumber = BitConverter.DoubleToInt64Bits(double.NaN);

    readonly long _value;
    readonly long _standardUncertainty;

    /// <summary>A value with its standard uncertainty.</summary>
    /// <param name="value">The best value; NaN when there is none.</param>
    /// <param name="standardUncertainty">u, one standard deviation; zero for an exact value.</param>
    public Estimate(double value, double standardUncertainty) =>
        (_value, _standardUncertainty) = (BitConverter.DoubleToInt64Bits(value) ^ NoNumber, BitConverter.DoubleToInt64Bits(standardUncertainty) ^ NoNumber);

    /// <summary>The best value; NaN when there is none.</summary>
    public double Value => BitConverter.Int64BitsToDouble(_value ^ NoNumber);

    /// <summary>u, one standard deviation; zero for an exact value.</summary>
    public double StandardUncertainty => BitConverter.Int64BitsToDouble(_standardUncertainty ^ NoNumber);

    /// <summary>No value.</summary>
    public static Estimate Unknown => default;

    /// <summary>A value without uncertainty.</summary>
    public static Estimate Exactly(double value) => new(value, 0);

    /// <summary>U = k u with k = 2.</summary>
    public double ExpandedUncertainty => CoverageFactor * StandardUncertainty;

    /// <summary>Whether there is a value and an uncertainty that mean anything.</summary>
    public bool IsKnown => double.IsFinite(Value) && double.IsFinite(StandardUncertainty) && StandardUncertainty >= 0;
}
