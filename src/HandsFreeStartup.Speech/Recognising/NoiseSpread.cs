namespace HandsFreeStartup.Speech.Recognising;

/// <summary>
/// How unsteady the noise of a clip is. Air that rushes, as in a blower or a burner, is the sum of very many small sounds and keeps its power; dishes, tools, water that splashes and people do not,
/// and what does not may cover a single word.
/// </summary>
static class NoiseSpread
{
    const int Frame = 256;
    const double Low = 0.05, High = 0.2;

    /// <summary>The power of the quieter fifth of the frames of 16 ms beside that of the quietest twentieth, decibels, of what is left of the sound when it is differentiated twice, which takes the
    /// rumble out of it; positive infinity for a clip without a whole frame.</summary>
    /// <param name="samples">16 kHz mono samples between -1 and 1, with a little silence around the speech.</param>
    public static double Of(ReadOnlySpan<float> samples)
    {
        float[] curve = new float[Math.Max(0, samples.Length - 2)];
        for (int i = 0; i < curve.Length; i++)
        {
            curve[i] = samples[i + 2] - 2 * samples[i + 1] + samples[i];
        }

        double[] powers = SignalToNoise.Powers(curve, Frame);
        if (powers.Length == 0)
        {
            return double.PositiveInfinity;
        }

        Array.Sort(powers);
        double At(double share) => Math.Max(powers[(int)(share * (powers.Length - 1))], SignalToNoise.LeastNoise);
        return 10 * Math.Log10(At(High) / At(Low));
    }
}
