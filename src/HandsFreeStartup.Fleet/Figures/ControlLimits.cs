namespace HandsFreeStartup.Fleet.Figures;

/// <summary>Limits of a control chart for single values, from the mean of the moving range of two.</summary>
/// <remarks>
/// Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.2 "Individuals Control Charts": center x̄, limits x̄ ± 3 MR̄/1.128.
/// </remarks>
/// <param name="Centre">Mean.</param>
/// <param name="Lower">Lower limit.</param>
/// <param name="Upper">Upper limit.</param>
public sealed record ControlLimits(double Centre, double Lower, double Upper)
{
    /// <summary>Expected range of two values of a normal distribution, in standard deviations.</summary>
    const double RangeOfTwo = 1.128;

    /// <summary>Fewer values say nothing of a spread (common practice, no source).</summary>
    public const int Fewest = 8;

    /// <summary>
    /// The limits of values in the order of time; null where there are too few. A value outside of them would widen them and hide the next one, so they are worked out anew without it
    /// (common practice, no source). A quantity that is never negative has no negative limit.
    /// </summary>
    public static ControlLimits? Of(IReadOnlyList<double> values)
    {
        ControlLimits? limits = null;
        for (IReadOnlyList<double> kept = values; kept.Count >= Fewest;)
        {
            limits = OfAll(kept);
            double[] inside = [.. kept.Where(value => !limits.IsOutside(value))];
            if (inside.Length == kept.Count)
            {
                break;
            }

            kept = inside;
        }

        return limits is not null && values.All(value => value >= 0) ? limits with { Lower = Math.Max(0, limits.Lower) } : limits;
    }

    static ControlLimits OfAll(IReadOnlyList<double> values)
    {
        double center = values.Average();
        double spread = 3 * values.Zip(values.Skip(1), (before, after) => Math.Abs(after - before)).Average() / RangeOfTwo;
        // Values that are all alike differ by what the machine rounds.
        spread = Math.Max(spread, 1e-9 * Math.Abs(center));
        return new ControlLimits(center, center - spread, center + spread);
    }

    /// <summary>Whether a value lies outside of them.</summary>
    public bool IsOutside(double value) => value < Lower || value > Upper;
}
