using System.Collections.Immutable;
using HandsFreeStartup.Running;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Hear;

/// <summary>Mixes a noise under recordings at a stated signal-to-noise ratio.</summary>
/// <remarks>
/// The ratio is 10 log10 (P / N): P is the mean square of the recording over the frames of 32 ms in which the speech detector finds speech, N the mean square of the
/// stretch of noise that is added to the whole recording. A recording without speech gets the noise at the level that it has under the median recording with speech.
/// A noise shorter than the recording goes round. The stretch begins at a random place that depends only on the seed and on the recording's number.
/// A sum beyond full scale is made quieter as a whole, which leaves the ratio as it is.
/// </remarks>
/// <param name="noise">16 kHz mono.</param>
/// <param name="decibels">The ratio, dB.</param>
/// <param name="seed">Another seed takes other stretches of the noise.</param>
/// <param name="powers">P of each recording, null without speech.</param>
sealed class NoiseMix(float[] noise, double decibels, int seed, ImmutableArray<double?> powers)
{
    const float Speech = 0.5f;

    readonly double _usualPower = Median(powers);

    /// <summary>Reads the noise and measures the speech of all recordings.</summary>
    /// <exception cref="WrongUseException">The noise is silent or no recording holds speech.</exception>
    /// <exception cref="SoundFileException">A file cannot be used.</exception>
    public static NoiseMix Of(string noise, double decibels, int seed, IEnumerable<HearCase> cases, SileroDetector detector)
    {
        float[] sound = WavFile.Read(noise);
        ImmutableArray<double?> powers = [.. cases.Select(measured => SpeechPower(WavFile.Read(measured.Path), detector))];
        return Power(sound) == 0 ? throw new WrongUseException($"{noise} is silent: name a recording of noise.")
            : powers.All(power => power is null) ? throw new WrongUseException("No recording of the manifest holds speech, so that no signal-to-noise ratio can be kept: leave out --snr.")
            : new NoiseMix(sound, decibels, seed, powers);
    }

    /// <summary>Mean square of a sound over the frames that hold speech; null if none does.</summary>
    public static double? SpeechPower(float[] sound, SileroDetector detector)
    {
        detector.Forget();
        double sum = 0;
        int frames = 0;
        float[] frame = new float[AudioFrame.Length];
        for (int at = 0; at + frame.Length <= sound.Length; at += frame.Length)
        {
            sound.AsSpan(at, frame.Length).CopyTo(frame);
            if (detector.Probability(frame) >= Speech)
            {
                sum += Power(frame);
                frames++;
            }
        }

        return frames == 0 ? null : sum / frames;
    }

    /// <summary>The recording with its stretch of noise.</summary>
    /// <param name="sound">16 kHz mono.</param>
    /// <param name="number">Which recording of the manifest, from 0.</param>
    public float[] Under(float[] sound, int number)
    {
        int offset = new Random(unchecked((seed * 1_000_003) ^ number)).Next(noise.Length);
        float[] mixed = new float[sound.Length];
        for (int i = 0; i < mixed.Length; i++)
        {
            mixed[i] = noise[(offset + i) % noise.Length];
        }

        double gain = Math.Sqrt((powers[number] ?? _usualPower) / Math.Pow(10, decibels / 10) / Math.Max(Power(mixed), 1e-12));
        float peak = 0;
        for (int i = 0; i < mixed.Length; i++)
        {
            mixed[i] = sound[i] + (float)(gain * mixed[i]);
            peak = Math.Max(peak, Math.Abs(mixed[i]));
        }

        return peak <= 1 ? mixed : [.. mixed.Select(sample => sample / peak)];
    }

    static double Median(ImmutableArray<double?> powers)
    {
        double[] spoken = [.. powers.OfType<double>().Order()];
        return spoken[spoken.Length / 2];
    }

    static double Power(ReadOnlySpan<float> sound)
    {
        double sum = 0;
        foreach (float sample in sound)
        {
            sum += (double)sample * sample;
        }

        return sound.IsEmpty ? 0 : sum / sound.Length;
    }
}
