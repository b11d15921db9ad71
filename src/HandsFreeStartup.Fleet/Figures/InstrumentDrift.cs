namespace HandsFreeStartup.Fleet.Figures;

/// <summary>The instrument of a van reads otherwise than those of the other vans at the same model of furnace.</summary>
/// <param name="Van">Whose instrument.</param>
/// <param name="Series">Where it shows.</param>
/// <param name="Count">Values of this van.</param>
/// <param name="Median">Their median.</param>
/// <param name="Others">Median of the others.</param>
/// <param name="StandardError">Of the difference of the two.</param>
public sealed record InstrumentDrift(string Van, FleetSeries Series, int Count, double Median, double Others, double StandardError)
{
    /// <summary>Values that a van, and the others together, need before anything is said (common practice, no source).</summary>
    public const int Fewest = 5;

    /// <summary>Standard errors that the difference must exceed (common practice, no source).</summary>
    public const double Strictness = 3;

    /// <summary>Standard deviation of the median of many normal values, times the root of their number: √(π/2).</summary>
    static readonly double MedianFactor = Math.Sqrt(Math.PI / 2);

    /// <summary>Standard deviation of a normal distribution, in median absolute deviations: 1/Φ⁻¹(3/4).</summary>
    const double DeviationFactor = 1.4826;

    /// <summary>Every van whose values differ from the others' by more than chance, and by more than its own uncertainty, explains.</summary>
    public static IEnumerable<InstrumentDrift> In(FleetSeries series)
    {
        foreach (IGrouping<string, FleetPoint> van in series.Points.Where(point => point.Value is not null).GroupBy(point => point.Van))
        {
            double[] own = [.. van.Select(point => point.Value!.Value)], others = [.. series.Points.Where(point => point.Van != van.Key).Select(point => point.Value).OfType<double>()];
            if (own.Length < Fewest || others.Length < Fewest)
            {
                continue;
            }

            (double mine, double theirs) = (MedianOf(own), MedianOf(others));
            double deviation = DeviationFactor * MedianOf([.. own.Select(value => Math.Abs(value - mine)), .. others.Select(value => Math.Abs(value - theirs))]);
            double error = MedianFactor * deviation * Math.Sqrt(1.0 / own.Length + 1.0 / others.Length);
            double stated = van.Select(point => point.Uncertainty ?? 0).DefaultIfEmpty().Max();
            if (Math.Abs(mine - theirs) > Math.Max(Strictness * error, stated))
            {
                yield return new InstrumentDrift(van.Key, series, own.Length, mine, theirs, error);
            }
        }
    }

    static double MedianOf(double[] values)
    {
        double[] sorted = [.. values.Order()];
        int middle = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }
}
