using System.Collections.Immutable;

namespace HandsFreeStartup.Fleet.Figures;

/// <summary>One value of one job.</summary>
/// <param name="Job">The job's number in the database.</param>
/// <param name="Van">Whose job it was.</param>
/// <param name="At">When, by the clock on the wall of the job.</param>
public sealed record FleetPoint(long Job, string Van, DateTimeOffset At)
{
    /// <summary>The value; null where it cannot be told or was over the range of the instrument.</summary>
    public required double? Value { get; init; }

    /// <summary>As said or worked out; empty where it cannot be told.</summary>
    public required string Shown { get; init; }

    /// <summary>Expanded, k = 2; null where none is stated.</summary>
    public required double? Uncertainty { get; init; }

    /// <summary>Lower limit of the plate or of practice, or null.</summary>
    public required double? Lower { get; init; }

    /// <summary>Upper limit, or null.</summary>
    public required double? Upper { get; init; }
}

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

    /// <summary>Values that somebody should look at: no number, outside of the limit that judges it, or outside of what the others are like.</summary>
    public IEnumerable<Outlier> Outliers(ControlLimits? limits) => Points.Select(point => Judged(point, limits)).OfType<Outlier>();

    Outlier? Judged(FleetPoint point, ControlLimits? limits) => point.Value is not { } value ? point.Shown.Length > 0 ? new(point, "more than the instrument shows", double.PositiveInfinity) : new(point, "cannot be told", Outlier.Doubtful)
        : value < point.Lower ? new(point, "below its limit", Outlier.Limit + Share(point.Lower.Value - value, point.Lower.Value))
        : value > point.Upper ? new(point, "above its limit", Outlier.Limit + Share(value - point.Upper.Value, point.Upper.Value))
        : limits?.IsOutside(value) == true ? new(point, "unlike the others", Math.Min(Outlier.Doubtful, Share(Math.Abs(value - limits.Centre), limits.Upper - limits.Centre)))
        : null;

    static double Share(double distance, double of) => distance / Math.Max(Math.Abs(of), 1e-9);
}

/// <summary>A value that somebody should look at.</summary>
/// <param name="Point">Which.</param>
/// <param name="Why">In words.</param>
/// <param name="Gravity">A higher one is looked at first: more than can be shown, then by how far it is beyond its limit, then what cannot be told, then what is unlike the others (common practice, no source).</param>
public sealed record Outlier(FleetPoint Point, string Why, double Gravity)
{
    /// <summary>Of a value that cannot be told.</summary>
    public const double Doubtful = 1e6;

    /// <summary>Of a value at its limit.</summary>
    public const double Limit = 2e6;
}
