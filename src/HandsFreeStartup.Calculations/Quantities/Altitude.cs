namespace HandsFreeStartup.Calculations.Quantities;

/// <summary>A geopotential height above mean sea level. Surveyed heights exceed it by less than 4 m up to 4500 m.</summary>
/// <param name="Metres">m.</param>
public readonly record struct Altitude(double Metres)
{
    /// <summary>Sea level.</summary>
    public static Altitude SeaLevel { get; } = new(0);

    /// <summary>From meters.</summary>
    public static Altitude FromMetres(double meters) => new(meters);

    /// <summary>From feet.</summary>
    public static Altitude FromFeet(double feet) => new(feet * Length.MetresPerFoot);

    /// <summary>Feet.</summary>
    public double Feet => Metres / Length.MetresPerFoot;
}
