using System.Buffers.Binary;
using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Speech.Listening;

/// <summary>A sound file that cannot be used; the message is one sentence that names the file and the remedy.</summary>
/// <param name="message">The sentence.</param>
public sealed class SoundFileException(string message) : Exception(message);

/// <summary>Sound files: RIFF WAVE with plain samples, of any rate and number of channels.</summary>
public static class WavFile
{
    /// <summary>Samples per second everywhere inside the program.</summary>
    public const int Rate = 16_000;

    /// <summary>An hour in good quality; a phrase has seconds, a noise minutes.</summary>
    const int MostBytes = 1 << 29;

    const int MostSeconds = 3600;

    /// <summary>The sound of a file, as 16 kHz mono samples between -1 and 1; channels are averaged, other rates are converted.</summary>
    /// <param name="path">A RIFF WAVE file with integer samples of 8, 16, 24 or 32 bits, or float samples of 32 or 64 bits.</param>
    /// <exception cref="SoundFileException">The file is missing, not of that kind, empty or cut short.</exception>
    public static float[] Read(string path)
    {
        (float[] samples, int rate) = ReadAsItIs(path);
        return Resampler.Convert(samples, rate, Rate);
    }

    /// <summary>The same at the rate of the file, samples per second.</summary>
    internal static (float[] Samples, int Rate) ReadAsItIs(string path)
    {
        byte[] bytes;
        try
        {
            bytes = RegularFile.ReadAll(path, MostBytes);
        }
        catch (Exception e) when (FileTrouble.Is(e))
        {
            throw new SoundFileException(FileTrouble.Sentence(e, $"{path} cannot be read", "name another recording"));
        }

        RiffWave wave = RiffWave.Parse(bytes, path);
        if (wave.Seconds > MostSeconds)
        {
            throw new SoundFileException(FormattableString.Invariant($"{path} holds {wave.Seconds / 60:0} minutes of sound, and {MostSeconds / 60} are taken: cut it into shorter recordings."));
        }

        return (wave.MonoSamples(), wave.Rate);
    }

    /// <summary>Keeps a sound as 16 kHz mono, 16 bits; samples beyond full scale are clipped.</summary>
    /// <param name="path">Where; an existing file is replaced.</param>
    /// <param name="samples">16 kHz mono samples between -1 and 1.</param>
    public static void Write(string path, ReadOnlySpan<float> samples)
    {
        const int header = 44;
        byte[] file = new byte[header + 2 * samples.Length];
        "RIFF"u8.CopyTo(file);
        BinaryPrimitives.WriteInt32LittleEndian(file.AsSpan(4), file.Length - 8);
        "WAVEfmt "u8.CopyTo(file.AsSpan(8));
        BinaryPrimitives.WriteInt32LittleEndian(file.AsSpan(16), 16);
        BinaryPrimitives.WriteInt16LittleEndian(file.AsSpan(20), RiffWave.IntegerSamples);
        BinaryPrimitives.WriteInt16LittleEndian(file.AsSpan(22), 1);
        BinaryPrimitives.WriteInt32LittleEndian(file.AsSpan(24), Rate);
        BinaryPrimitives.WriteInt32LittleEndian(file.AsSpan(28), 2 * Rate);
        BinaryPrimitives.WriteInt16LittleEndian(file.AsSpan(32), 2);
        BinaryPrimitives.WriteInt16LittleEndian(file.AsSpan(34), 16);
        "data"u8.CopyTo(file.AsSpan(36));
        BinaryPrimitives.WriteInt32LittleEndian(file.AsSpan(40), 2 * samples.Length);
        for (int i = 0; i < samples.Length; i++)
        {
            BinaryPrimitives.WriteInt16LittleEndian(file.AsSpan(header + 2 * i), (short)Math.Clamp(MathF.Round(samples[i] * 32768f), short.MinValue, short.MaxValue));
        }

        File.WriteAllBytes(path, file);
    }
}
