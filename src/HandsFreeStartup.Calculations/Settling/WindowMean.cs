using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Settling;

/// <summary>Mean of the last part of a series.</summary>
/// <remarks>
/// Arithmetic mean of the samples within the window before the last one; u = s/√n (JCGM 100:2008, 4.2.3; from memory), which is too small for samples that hang
/// together: combine it with the uncertainty of the instrument. Thirty seconds are what the German ordinance asks for O2 and flue temperature
/// (1. BImSchV, annex 2, seen).
/// </remarks>
public static class WindowMean
{
    /// <summary>The window of the ordinance.</summary>
    public static TimeSpan ThirtySeconds { get; } = TimeSpan.FromSeconds(30);

    /// <summary>Mean over the window; null with fewer than two samples in it, or when the series does not reach back over the whole window.</summary>
    /// <param name="samples">In order of time.</param>
    /// <param name="window">How far back from the last sample.</param>
    public static Estimate? Of(ReadOnlySpan<Sample> samples, TimeSpan window)
    {
        ReadOnlySpan<Sample> last = Last(samples, window);
        if (last.Length < 2)
        {
            return null;
        }
        double mean = 0;
        foreach (Sample sample in last)
        {
            mean += sample.Value / last.Length;
        }
        double squares = 0;
        foreach (Sample sample in last)
        {
            squares += (sample.Value - mean) * (sample.Value - mean);
        }
        return new Estimate(mean, Math.Sqrt(squares / (last.Length - 1) / last.Length));
    }

    /// <summary>The samples of the window; none when the series is shorter than the window.</summary>
    internal static ReadOnlySpan<Sample> Last(ReadOnlySpan<Sample> samples, TimeSpan window)
    {
        if (samples.IsEmpty || samples[^1].At - samples[0].At < window)
        {
            return [];
        }
        int first = samples.Length - 1;
        while (first > 0 && samples[^1].At - samples[first - 1].At <= window)
        {
            first--;
        }
        return samples[first..];
    }
}
