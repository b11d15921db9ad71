using System.Globalization;

namespace HandsFreeStartup.Reports.Copies.Charts;

/// <summary>An axis with round ticks.</summary>
/// <param name="Low">Where it begins.</param>
/// <param name="High">Where it ends, above <paramref name="Low"/>.</param>
/// <param name="Step">Between ticks.</param>
sealed record Scale(double Low, double High, double Step)
{
    /// <summary>Steps between ticks of time, in seconds.</summary>
    static readonly double[] TimeSteps = [1, 2, 5, 10, 15, 30, 60, 120, 300, 600, 900, 1800, 3600, 7200, 14400, 28800, 86400];

    public IEnumerable<double> Ticks
    {
        get
        {
            int count = (int)Math.Floor((High - Low) / Step + 1e-6);
            return Enumerable.Range(0, count + 1).Select(i => Low + i * Step);
        }
    }

    /// <summary>A tick with the decimals that tell it from the next.</summary>
    public string Label(double tick) => tick.ToString($"F{Math.Max(0, (int)Math.Ceiling(-Math.Log10(Step) - 1e-9))}", CultureInfo.InvariantCulture);

    /// <summary>Where a value lies between the ends: 0 to 1, or outside of that.</summary>
    public double Part(double value) => (value - Low) / (High - Low);

    /// <summary>An axis for values, with the limits where they are near enough not to press the values flat.</summary>
    public static Scale OfValues(IReadOnlyList<double> values, IEnumerable<double> limits)
    {
        double low = values.Min(), high = values.Max();
        double reach = Math.Max(2 * (high - low), Math.Max(0.2 * Math.Abs(high), 1e-3));
        foreach (double limit in limits.Where(limit => limit > low - reach && limit < high + reach).ToArray())
        {
            (low, high) = (Math.Min(low, limit), Math.Max(high, limit));
        }

        double room = Math.Max((high - low) * 0.12, Math.Max(Math.Abs(high) * 0.02, 1e-3));
        (low, high) = (low - room, high + room);
        double rough = (high - low) / 4;
        double power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        double step = new[] { 1, 2, 5, 10 }.Select(factor => factor * power).First(step => step >= rough * 0.999);
        return new Scale(Math.Floor(low / step) * step, Math.Ceiling(high / step) * step, step);
    }

    /// <summary>An axis of seconds since the first value.</summary>
    public static Scale OfTime(double seconds)
    {
        double step = TimeSteps.FirstOrDefault(step => seconds / step <= 5, 7 * 86400);
        return new Scale(0, Math.Max(step, Math.Ceiling(seconds / step) * step), step);
    }

    /// <summary>"3:30" minutes and seconds, or hours, minutes and seconds.</summary>
    public static string TimeLabel(double seconds)
    {
        TimeSpan span = TimeSpan.FromSeconds(seconds);
        return span.TotalHours < 1
            ? span.ToString(@"m\:ss", CultureInfo.InvariantCulture)
            : FormattableString.Invariant($"{(int)span.TotalHours}:{span:mm\\:ss}");
    }
}
