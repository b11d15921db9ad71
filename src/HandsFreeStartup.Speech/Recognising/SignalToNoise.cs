namespace HandsFreeStartup.Speech.Recognising;

/// <summary>How far a clip's loud part stands above its quiet part, by loudness alone and so independent of what the recognizer believes.</summary>
static class SignalToNoise
{
    const int Frame = 512;
    const double QuietShare = 0.15;
    const double LoudShare = 0.3;

    /// <summary>Power of a microphone's own noise, full scale 1: a quieter clip is no better for it.</summary>
    public const double LeastNoise = 2.8e-8;

    /// <summary>Power of the loudest 30 % of the frames without the noise, beside the power of the quietest 15 %, decibels; 0 for a clip without a whole frame.</summary>
    /// <param name="samples">16 kHz mono samples between -1 and 1, with a little silence around the speech.</param>
    public static double Of(ReadOnlySpan<float> samples)
    {
        double[] powers = Powers(samples, Frame);
        if (powers.Length == 0)
        {
            return 0;
        }

        Array.Sort(powers);
        double noise = powers[..Math.Max(1, (int)(powers.Length * QuietShare))].Average();
        double loud = powers[^Math.Max(1, (int)(powers.Length * LoudShare))..].Average();
        return 10 * Math.Log10(Math.Max(loud - noise, 1e-12) / Math.Max(noise, LeastNoise));
    }

    /// <summary>Mean squares of the frames of so many samples, in order; what is left at the end is no frame.</summary>
    public static double[] Powers(ReadOnlySpan<float> samples, int frame)
    {
        double[] powers = new double[samples.Length / frame];
        for (int i = 0; i < powers.Length; i++)
        {
            double sum = 0;
            foreach (float sample in samples.Slice(i * frame, frame))
            {
                sum += sample * sample;
            }

            powers[i] = sum / frame;
        }

        return powers;
    }
}
