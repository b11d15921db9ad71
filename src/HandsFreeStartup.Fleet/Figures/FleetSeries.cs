using System.Collections.Immutable;

namespace HandsFreeStartup.Fleet.Figures;

/// <summary>One value of one job.</summary>
/// <param name="Job">The job's number in the database.</param>
/// <param name="Van">Whose job it was.</param>
/// <param name="At">When, UTC.</param>
/// <param name="Value">The value; null where it cannot be told or was over the range of the instrument.</param>
/// <param name="Shown">As said or worked out; empty where it cannot be told.</param>
/// <param name="Uncertainty">Expanded, k = 2; null where none is stated.</param>
/// <param name="Lower">Lower limit of the plate or of practice, or null.</param>
/// <param name="Upper">Upper limit, or null.</param>
public sealed record FleetPoint(long Job, string Van, DateTimeOffset At, double? Value, string Shown, double? Uncertainty, double? Lower, double? Upper);

/// <summary>The values of one quantity at one model of furnace in one stage or room, in the order of time.</summary>
/// <param name="Model">Id of the appliance sheet.</param>
/// <param name="Quantity">Id of field or result.</param>
/// <param name="Scope">Stage or room, or empty.</param>
/// <param name="Unit">Their unit.</param>
/// <param name="Points">The values.</param>
public sealed record FleetSeries(string Model, string Quantity, string Scope, string Unit, ImmutableArray<FleetPoint> Points)
{
    /// <summary>The limits of the values that are numbers.</summary>
    public ControlLimits? Limits => ControlLimits.Of([.. Points.Select(point => point.Value).OfType<double>()]);

    /// <summary>Values that somebody should look at, each with why: no number, outside of the limit that judges it, or outside of what the others are like.</summary>
    public IEnumerable<(FleetPoint Point, string Why)> Outliers(ControlLimits? limits) => Points
        .Select(point => (point, point.Value is not { } value ? point.Shown.Length > 0 ? "more than the instrument shows" : "cannot be told"
            : value < point.Lower ? "below its limit"
            : value > point.Upper ? "above its limit"
            : limits?.IsOutside(value) == true ? "unlike the others"
            : ""))
        .Where(one => one.Item2.Length > 0);
}
