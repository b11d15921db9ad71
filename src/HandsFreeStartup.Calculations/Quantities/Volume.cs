namespace HandsFreeStartup.Calculations.Quantities;

/// <summary>A volume, such as one turn of a meter's test dial.</summary>
/// <param name="CubicMetres">m³ at the state of the gas, not at a base state.</param>
public readonly record struct Volume(double CubicMetres)
{
    /// <summary>One cubic foot in cubic meters, by definition.</summary>
    public const double CubicMetresPerCubicFoot = 0.3048 * 0.3048 * 0.3048;

    /// <summary>From cubic feet.</summary>
    public static Volume FromCubicFeet(double cubicFeet) => new(cubicFeet * CubicMetresPerCubicFoot);

    /// <summary>From cubic meters.</summary>
    public static Volume FromCubicMetres(double cubicMetres) => new(cubicMetres);

    /// <summary>Cubic feet.</summary>
    public double CubicFeet => CubicMetres / CubicMetresPerCubicFoot;
}
