using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Speech.Tests.Support;

/// <summary>Sounds made by construction, the same in every run; levels are root mean square, full scale 1.</summary>
public static class Sounds
{
    public static float[] Spoken(string recording) => WavFile.Read(Shipped.Recording(recording));

    public static float[] Silence(double seconds) => new float[(int)(seconds * WavFile.Rate)];

    /// <summary>The faint hiss of a microphone in a quiet room, -70 dBFS.</summary>
    public static float[] Quiet(double seconds, int seed = 1) => Scaled(White(seconds, seed), 0.0003);

    /// <summary>A blower: brown noise with its mains tones.</summary>
    public static float[] Blower(double seconds, double level, int seed = 2)
    {
        float[] white = White(seconds, seed);
        double brown = 0;
        for (int i = 0; i < white.Length; i++)
        {
            brown = 0.985 * brown + white[i];
            double time = (double)i / WavFile.Rate;
            double tones = Math.Sin(2 * Math.PI * 120 * time) + 0.5 * Math.Sin(2 * Math.PI * 240 * time) + 0.3 * Math.Sin(2 * Math.PI * 580 * time);
            white[i] = (float)(brown + 1.5 * tones + 0.3 * white[i]);
        }

        return Scaled(white, level);
    }

    /// <summary>A slammed door: a thud at full scale that rings off within a quarter of a second.</summary>
    public static float[] DoorSlam(int seed = 3)
    {
        float[] white = White(0.4, seed);
        double low = 0;
        for (int i = 0; i < white.Length; i++)
        {
            double time = (double)i / WavFile.Rate;
            low = 0.95 * low + white[i];
            white[i] = (float)Math.Clamp(Math.Exp(-time / 0.05) * (0.9 * Math.Sin(2 * Math.PI * 70 * time) + 0.6 * low), -1, 1);
        }

        return white;
    }

    /// <summary>A cough: a burst of coarse noise of a fifth of a second, with no voice in it.</summary>
    public static float[] Cough(int seed = 4)
    {
        float[] white = White(0.2, seed);
        for (int i = 0; i < white.Length; i++)
        {
            white[i] *= (float)Math.Exp(-(double)i / WavFile.Rate / 0.07);
        }

        return Scaled(white, 0.15);
    }

    public static float[] Join(params float[][] parts) => [.. parts.SelectMany(part => part)];

    /// <summary>Both at once, the second from a moment on.</summary>
    public static float[] Mix(float[] one, float[] other, double from = 0)
    {
        int start = (int)(from * WavFile.Rate);
        float[] sum = new float[Math.Max(one.Length, start + other.Length)];
        one.CopyTo(sum, 0);
        for (int i = 0; i < other.Length; i++)
        {
            sum[start + i] += other[i];
        }

        return sum;
    }

    public static float[] Scaled(float[] sound, double level)
    {
        if (sound.Length == 0)
        {
            return sound;
        }

        double now = Math.Sqrt(sound.Average(sample => (double)sample * sample));
        return [.. sound.Select(sample => (float)(sample * level / now))];
    }

    /// <summary>Root mean square of the part that is louder than 1 % of full scale: of speech, without its pauses.</summary>
    public static double ActiveLevel(float[] sound) => Math.Sqrt(sound.Where(sample => Math.Abs(sample) > 0.01f).Average(sample => (double)sample * sample));

    static float[] White(double seconds, int seed)
    {
        Random random = new(seed);
        float[] noise = new float[(int)(seconds * WavFile.Rate)];
        for (int i = 0; i < noise.Length; i++)
        {
            // Four uniform numbers are near enough to a normal one.
            noise[i] = (float)(random.NextDouble() + random.NextDouble() + random.NextDouble() + random.NextDouble() - 2);
        }

        return noise;
    }
}
