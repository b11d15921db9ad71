namespace HandsFreeStartup.Calculations.Quantities;

/// <summary>A volume per time, of gas or of air.</summary>
/// <param name="CubicMetresPerSecond">m³/s.</param>
public readonly record struct VolumeFlow(double CubicMetresPerSecond)
{
    /// <summary>From cubic meters per second.</summary>
    public static VolumeFlow FromCubicMetresPerSecond(double flow) => new(flow);

    /// <summary>From cubic meters per hour.</summary>
    public static VolumeFlow FromCubicMetresPerHour(double flow) => new(flow / 3600);

    /// <summary>From cubic feet per hour (cfh), the unit of gas.</summary>
    public static VolumeFlow FromCubicFeetPerHour(double flow) => new(flow * Volume.CubicMetresPerCubicFoot / 3600);

    /// <summary>From cubic feet per minute (cfm), the unit of air.</summary>
    public static VolumeFlow FromCubicFeetPerMinute(double flow) => new(flow * Volume.CubicMetresPerCubicFoot / 60);

    /// <summary>Cubic meters per hour.</summary>
    public double CubicMetresPerHour => CubicMetresPerSecond * 3600;

    /// <summary>Cubic feet per hour.</summary>
    public double CubicFeetPerHour => CubicMetresPerSecond * 3600 / Volume.CubicMetresPerCubicFoot;

    /// <summary>Cubic feet per minute.</summary>
    public double CubicFeetPerMinute => CubicMetresPerSecond * 60 / Volume.CubicMetresPerCubicFoot;
}
