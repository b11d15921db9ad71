namespace HandsFreeStartup.Calculations.Quantities;

/// <summary>A gauge or differential pressure: manifold, inlet, draft, static. Negative is below the surroundings.</summary>
/// <remarks>A pressure above vacuum is an <see cref="AbsolutePressure"/>; the two are added, never mixed.</remarks>
/// <param name="Pascals">Pa.</param>
public readonly record struct Pressure(double Pascals)
{
    /// <summary>One inch of water in pascals: conventional water (1000 kg/m³) at standard gravity (9.80665 m/s²), 249.08891 Pa.</summary>
    /// <remarks>Water at 4 °C would make it 249.082 Pa, at 60 °F 248.84 Pa (NIST SP 811).</remarks>
    public const double PascalsPerInchOfWater = 0.0254 * 9.80665 * 1000;

    /// <summary>One pound-force per square inch in pascals (NIST SP 811).</summary>
    public const double PascalsPerPsi = 0.45359237 * 9.80665 / (0.0254 * 0.0254);

    /// <summary>From pascals.</summary>
    public static Pressure FromPascals(double pascals) => new(pascals);

    /// <summary>From inches of water column, conventional.</summary>
    public static Pressure FromInchesOfWater(double inches) => new(inches * PascalsPerInchOfWater);

    /// <summary>From millibars.</summary>
    public static Pressure FromMillibars(double millibars) => new(millibars * 100);

    /// <summary>From pounds-force per square inch, gauge.</summary>
    public static Pressure FromPsi(double psi) => new(psi * PascalsPerPsi);

    /// <summary>Inches of water column, conventional.</summary>
    public double InchesOfWater => Pascals / PascalsPerInchOfWater;

    /// <summary>Millibars.</summary>
    public double Millibars => Pascals / 100;

    /// <summary>Pounds-force per square inch.</summary>
    public double Psi => Pascals / PascalsPerPsi;

    /// <summary>Sum of two gauge or differential pressures.</summary>
    public static Pressure operator +(Pressure left, Pressure right) => new(left.Pascals + right.Pascals);

    /// <summary>Difference of two gauge or differential pressures.</summary>
    public static Pressure operator -(Pressure left, Pressure right) => new(left.Pascals - right.Pascals);

    /// <summary>A multiple of a pressure.</summary>
    public static Pressure operator *(double factor, Pressure pressure) => new(factor * pressure.Pascals);
}
