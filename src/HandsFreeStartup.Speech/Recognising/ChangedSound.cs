using System.Collections.Immutable;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>
/// The same sound, changed so that a listener would still hear the same words. What a model makes of noise is an accident of where its frames fall and of the rumble under the voice, and seldom
/// lasts; what was said does.
/// </summary>
static class ChangedSound
{
    const int Rate = 16_000;

    /// <summary>No multiple of the 20 ms that a model takes at a time.</summary>
    const int Later = Rate * 130 / 1000;

    /// <summary>Below it blowers rumble, and of a voice there is hardly more than its pitch; hertz.</summary>
    const double EdgeOfLows = 500;

    /// <summary>Quality of the three parts of a Butterworth filter of the sixth order: 1 / (2 cos 15°), 1 / (2 cos 45°), 1 / (2 cos 75°).</summary>
    static readonly ImmutableArray<double> Qualities = [.. ((double[])[15, 45, 75]).Select(degrees => 1 / (2 * Math.Cos(degrees * Math.PI / 180)))];

    /// <summary>In how many ways it can be changed.</summary>
    public const int Ways = 2;

    /// <summary>The sound 130 ms later (way 0), or without its lows (way 1).</summary>
    public static float[] Of(ReadOnlySpan<float> samples16k, int way) => way == 0 ? [.. new float[Later], .. samples16k] : WithoutLows(samples16k);

    static float[] WithoutLows(ReadOnlySpan<float> sound)
    {
        float[] left = sound.ToArray();
        foreach (double quality in Qualities)
        {
            HighPass(left, quality);
        }

        return left;
    }

    /// <summary>A high-pass of the second order in place. Source: R. Bristow-Johnson, Audio EQ Cookbook, published as a W3C Working Group Note.</summary>
    static void HighPass(float[] sound, double quality)
    {
        double angle = 2 * Math.PI * EdgeOfLows / Rate, cos = Math.Cos(angle), alpha = Math.Sin(angle) / (2 * quality);
        double b0 = (1 + cos) / 2 / (1 + alpha), a1 = -2 * cos / (1 + alpha), a2 = (1 - alpha) / (1 + alpha);
        double before = 0, twoBefore = 0, outBefore = 0, outTwoBefore = 0;
        for (int i = 0; i < sound.Length; i++)
        {
            double passed = b0 * (sound[i] - 2 * before + twoBefore) - a1 * outBefore - a2 * outTwoBefore;
            (twoBefore, before, outTwoBefore, outBefore) = (before, sound[i], outBefore, passed);
            sound[i] = (float)passed;
        }
    }
}
