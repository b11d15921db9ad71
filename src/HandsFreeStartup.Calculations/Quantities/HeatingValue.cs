namespace HandsFreeStartup.Calculations.Quantities;

/// <summary>Heat of combustion per volume of gas. Gross or net, and the base state of the volume, are said by whoever holds it.</summary>
/// <param name="JoulesPerCubicMetre">J/m³.</param>
public readonly record struct HeatingValue(double JoulesPerCubicMetre)
{
    /// <summary>From joules per cubic meter.</summary>
    public static HeatingValue FromJoulesPerCubicMetre(double value) => new(value);

    /// <summary>From megajoules per cubic meter.</summary>
    public static HeatingValue FromMegajoulesPerCubicMetre(double value) => new(value * 1e6);

    /// <summary>From Btu (IT) per cubic foot.</summary>
    public static HeatingValue FromBtuPerCubicFoot(double value) => new(value * HeatRate.JoulesPerBtu / Volume.CubicMetresPerCubicFoot);

    /// <summary>Megajoules per cubic meter.</summary>
    public double MegajoulesPerCubicMetre => JoulesPerCubicMetre / 1e6;

    /// <summary>Btu (IT) per cubic foot.</summary>
    public double BtuPerCubicFoot => JoulesPerCubicMetre * Volume.CubicMetresPerCubicFoot / HeatRate.JoulesPerBtu;

    /// <summary>The heat rate of a gas flow; both at the same base state.</summary>
    public static HeatRate operator *(HeatingValue value, VolumeFlow flow) => new(value.JoulesPerCubicMetre * flow.CubicMetresPerSecond);
}
