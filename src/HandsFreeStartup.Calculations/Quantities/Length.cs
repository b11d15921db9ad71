namespace HandsFreeStartup.Calculations.Quantities;

/// <summary>A length: orifice diameter, vent height. A height above sea level is an <see cref="Altitude"/>.</summary>
/// <param name="Metres">m.</param>
public readonly record struct Length(double Metres)
{
    /// <summary>One inch in meters, by definition.</summary>
    public const double MetresPerInch = 0.0254;

    /// <summary>One foot in meters, by definition.</summary>
    public const double MetresPerFoot = 0.3048;

    /// <summary>From meters.</summary>
    public static Length FromMetres(double meters) => new(meters);

    /// <summary>From inches.</summary>
    public static Length FromInches(double inches) => new(inches * MetresPerInch);

    /// <summary>From feet.</summary>
    public static Length FromFeet(double feet) => new(feet * MetresPerFoot);

    /// <summary>Inches.</summary>
    public double Inches => Metres / MetresPerInch;

    /// <summary>Feet.</summary>
    public double Feet => Metres / MetresPerFoot;
}
