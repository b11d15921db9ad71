namespace HandsFreeStartup.Calculations.Quantities;

/// <summary>A pressure above vacuum: barometer, gas in a meter, flue gas.</summary>
/// <param name="Pascals">Pa, greater than zero.</param>
public readonly record struct AbsolutePressure(double Pascals)
{
    /// <summary>One inch of mercury at 0 °C in pascals (NIST SP 811).</summary>
    public const double PascalsPerInchOfMercury = 3386.389;

    /// <summary>The standard atmosphere, 101325 Pa, by definition.</summary>
    public static AbsolutePressure StandardAtmosphere { get; } = new(101325);

    /// <summary>From pascals.</summary>
    public static AbsolutePressure FromPascals(double pascals) => new(pascals);

    /// <summary>From pounds-force per square inch, absolute.</summary>
    public static AbsolutePressure FromPsi(double psi) => new(psi * Pressure.PascalsPerPsi);

    /// <summary>From inches of mercury at 0 °C.</summary>
    public static AbsolutePressure FromInchesOfMercury(double inches) => new(inches * PascalsPerInchOfMercury);

    /// <summary>From millibars (hectopascals).</summary>
    public static AbsolutePressure FromMillibars(double millibars) => new(millibars * 100);

    /// <summary>Pounds-force per square inch, absolute.</summary>
    public double Psi => Pascals / Pressure.PascalsPerPsi;

    /// <summary>Inches of mercury at 0 °C.</summary>
    public double InchesOfMercury => Pascals / PascalsPerInchOfMercury;

    /// <summary>Millibars (hectopascals).</summary>
    public double Millibars => Pascals / 100;

    /// <summary>The absolute pressure of something at a gauge pressure in these surroundings.</summary>
    public static AbsolutePressure operator +(AbsolutePressure surroundings, Pressure gauge) => new(surroundings.Pascals + gauge.Pascals);

    /// <summary>How far one absolute pressure lies above another.</summary>
    public static Pressure operator -(AbsolutePressure left, AbsolutePressure right) => new(left.Pascals - right.Pascals);
}
