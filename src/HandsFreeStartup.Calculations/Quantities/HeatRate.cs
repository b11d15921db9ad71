namespace HandsFreeStartup.Calculations.Quantities;

/// <summary>Heat per time: input, output, blower heat.</summary>
/// <param name="Watts">W.</param>
public readonly record struct HeatRate(double Watts)
{
    /// <summary>One British thermal unit (International Table) in joules, by definition.</summary>
    public const double JoulesPerBtu = 1055.05585262;

    /// <summary>From watts.</summary>
    public static HeatRate FromWatts(double watts) => new(watts);

    /// <summary>From kilowatts.</summary>
    public static HeatRate FromKilowatts(double kilowatts) => new(kilowatts * 1000);

    /// <summary>From Btu (IT) per hour.</summary>
    public static HeatRate FromBtuPerHour(double btuPerHour) => new(btuPerHour * JoulesPerBtu / 3600);

    /// <summary>Kilowatts.</summary>
    public double Kilowatts => Watts / 1000;

    /// <summary>Btu (IT) per hour.</summary>
    public double BtuPerHour => Watts * 3600 / JoulesPerBtu;
}
