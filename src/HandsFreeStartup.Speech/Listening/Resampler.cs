namespace HandsFreeStartup.Speech.Listening;

/// <summary>Changes the sampling rate of a sound with a windowed-sinc low-pass, so that nothing folds back below half the new rate.</summary>
/// <remarks>
/// Kaiser window with beta 8.6: side lobes near -90 dB (Oppenheim and Schafer, Discrete-Time Signal Processing, Kaiser window design formulas).
/// The pass band ends at 0.91 of half the lower rate, the stop band begins at half the lower rate.
/// </remarks>
static class Resampler
{
    const int CrossingsEachSide = 32;
    const double Beta = 8.6;
    const double Cutoff = 0.955;

    /// <summary>The same sound at another rate; length is scaled by the ratio, rounded up.</summary>
    public static float[] Convert(float[] sound, int from, int to)
    {
        if (from == to)
        {
            return sound;
        }

        int common = (int)System.Numerics.BigInteger.GreatestCommonDivisor(from, to);
        int phases = to / common, step = from / common;
        double lowPass = Cutoff * Math.Min(1, (double)to / from);
        int reach = (int)Math.Ceiling(CrossingsEachSide / lowPass);
        float[][] filters = new float[phases][];
        float[] converted = new float[((long)sound.Length * to + from - 1) / from];
        for (int i = 0; i < converted.Length; i++)
        {
            long at = (long)i * step;
            int phase = (int)(at % phases);
            float[] filter = filters[phase] ??= Filter((double)phase / phases, lowPass, reach);
            converted[i] = Weighted(sound, (int)(at / phases) - reach + 1, filter);
        }

        return converted;
    }

    static float Weighted(float[] sound, int first, float[] filter)
    {
        double sum = 0;
        for (int k = Math.Max(0, -first); k < filter.Length && first + k < sound.Length; k++)
        {
            sum += sound[first + k] * filter[k];
        }

        return (float)sum;
    }

    // Weights of the input samples around a point that lies `fraction` after an input sample; they add up to one.
    static float[] Filter(double fraction, double lowPass, int reach)
    {
        double[] weights = new double[2 * reach];
        for (int k = 0; k < weights.Length; k++)
        {
            double distance = k - reach + 1 - fraction;
            double edge = distance / reach;
            double x = Math.PI * lowPass * distance;
            double sinc = x == 0 ? 1 : Math.Sin(x) / x;
            weights[k] = sinc * Bessel(Beta * Math.Sqrt(Math.Max(0, 1 - edge * edge)));
        }

        double sum = weights.Sum();
        return [.. weights.Select(weight => (float)(weight / sum))];
    }

    // Modified Bessel function of the first kind, order zero, by its power series.
    static double Bessel(double x)
    {
        double term = 1, sum = 1;
        for (int k = 1; term > 1e-12 * sum; k++)
        {
            term *= x / (2 * k) * (x / (2 * k));
            sum += term;
        }

        return sum;
    }
}
