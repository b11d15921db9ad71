namespace HandsFreeStartup.Speech.Recognising;

/// <summary>How long somebody spoke in a clip, measured by loudness alone and so independent of what the recogniser believes.</summary>
static class VoicedTime
{
    const int Frame = 160;
    const double FrameSeconds = 0.01;

    /// <summary>From the first to the last moment that is clearly louder than the quietest part of the clip; zero if there is none.</summary>
    public static TimeSpan Of(ReadOnlySpan<float> samples)
    {
        double[] levels = new double[samples.Length / Frame];
        for (int i = 0; i < levels.Length; i++)
        {
            double sum = 0;
            foreach (float sample in samples.Slice(i * Frame, Frame))
            {
                sum += sample * sample;
            }

            levels[i] = 10 * Math.Log10(sum / Frame + 1e-10);
        }

        if (levels.Length == 0)
        {
            return TimeSpan.Zero;
        }

        double[] sorted = [.. levels.Order()];
        double floor = sorted[sorted.Length / 10];
        double loud = sorted[sorted.Length * 95 / 100];
        double threshold = Math.Max(floor + 0.35 * (loud - floor), loud - 25);
        int first = Array.FindIndex(levels, level => level > threshold);
        int last = Array.FindLastIndex(levels, level => level > threshold);
        return first < 0 || loud - floor < 3 ? TimeSpan.Zero : TimeSpan.FromSeconds((last - first + 1) * FrameSeconds);
    }
}
