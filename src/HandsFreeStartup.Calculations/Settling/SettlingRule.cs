using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Settling;

/// <summary>Whether a reading has settled.</summary>
public enum Settled
{
    /// <summary>The series is too short to say.</summary>
    TooEarly,
    /// <summary>It may still drift, or it scatters too much.</summary>
    NotYet,
    /// <summary>Drift and scatter are small enough.</summary>
    Yes,
}

/// <summary>When a series counts as settled: straight line through a window, drift proven small.</summary>
/// <remarks>
/// Least squares line over the window, slope b with standard error s(b) from the residuals, n samples. Settled when
/// (|b| + t(1 − α, n − 2) s(b)) · window ≤ allowed drift, and the residual standard deviation ≤ allowed scatter. This is the two one-sided tests of equivalence:
/// the probability α of saying "settled" while the true drift is at the allowed drift or beyond is the stated false-alarm rate, for independent normal residuals.
/// Method: any textbook of statistics; no field source.
/// </remarks>
/// <param name="Window">How far back the line goes.</param>
/// <param name="AllowedDrift">Largest drift over the window, in the unit of the series.</param>
/// <param name="AllowedScatter">Largest residual standard deviation, in the unit of the series.</param>
/// <param name="FalseAlarmRate">α, between 0.0001 and 0.5.</param>
public sealed record SettlingRule(TimeSpan Window, double AllowedDrift, double AllowedScatter, double FalseAlarmRate = 0.05)
{
    /// <summary>Fewest samples in the window.</summary>
    public const int FewestSamples = 5;

    /// <summary>Judges a series.</summary>
    /// <param name="samples">In order of time.</param>
    public SettlingResult Judge(ReadOnlySpan<Sample> samples)
    {
        ReadOnlySpan<Sample> last = WindowMean.Last(samples, Window);
        if (last.Length < FewestSamples)
        {
            return new(Settled.TooEarly, Estimate.Unknown, double.NaN);
        }
        (Estimate slope, double scatter) = Line(last);
        double seconds = Window.TotalSeconds;
        Estimate drift = new(slope.Value * seconds, slope.StandardUncertainty * seconds);
        double bound = Math.Abs(drift.Value) + StudentDistribution.Quantile(1 - FalseAlarmRate, last.Length - 2) * drift.StandardUncertainty;
        return new(bound <= AllowedDrift && scatter <= AllowedScatter ? Settled.Yes : Settled.NotYet, drift, scatter);
    }

    static (Estimate Slope, double Scatter) Line(ReadOnlySpan<Sample> samples)
    {
        int n = samples.Length;
        double meanTime = 0;
        double meanValue = 0;
        foreach (Sample sample in samples)
        {
            meanTime += sample.At.TotalSeconds / n;
            meanValue += sample.Value / n;
        }
        double times = 0;
        double products = 0;
        foreach (Sample sample in samples)
        {
            double time = sample.At.TotalSeconds - meanTime;
            times += time * time;
            products += time * (sample.Value - meanValue);
        }
        double slope = products / times;
        double residuals = 0;
        foreach (Sample sample in samples)
        {
            double residual = sample.Value - meanValue - slope * (sample.At.TotalSeconds - meanTime);
            residuals += residual * residual;
        }
        double scatter = Math.Sqrt(residuals / (n - 2));
        return (new(slope, scatter / Math.Sqrt(times)), scatter);
    }
}

/// <summary>What a settling rule found.</summary>
/// <param name="Settled">Whether it has settled.</param>
/// <param name="Drift">Drift over the window with its standard error; unknown when it is too early.</param>
/// <param name="Scatter">Residual standard deviation; NaN when it is too early.</param>
public readonly record struct SettlingResult(Settled Settled, Estimate Drift, double Scatter);
