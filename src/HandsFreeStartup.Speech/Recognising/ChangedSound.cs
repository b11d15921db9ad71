using HandsFreeStartup.Speech.Listening;

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

    /// <summary>Below half of it lie the lows: blowers rumble there, and of a voice hardly more than its pitch.</summary>
    const int RateOfLows = 1000;

    /// <summary>In how many ways it can be changed.</summary>
    public const int Ways = 2;

    /// <summary>The sound 130 ms later (way 0), or without what lies below some 480 Hz (way 1).</summary>
    public static float[] Of(ReadOnlySpan<float> samples16k, int way) => way == 0 ? [.. new float[Later], .. samples16k] : WithoutLows(samples16k.ToArray());

    static float[] WithoutLows(float[] sound)
    {
        float[] lows = Resampler.Convert(Resampler.Convert(sound, Rate, RateOfLows), RateOfLows, Rate);
        return [.. sound.Zip(lows, (sample, low) => sample - low)];
    }
}
