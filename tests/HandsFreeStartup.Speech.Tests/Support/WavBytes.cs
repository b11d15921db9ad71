using System.Text;

namespace HandsFreeStartup.Speech.Tests.Support;

/// <summary>Sound files built byte by byte, independently of the code under test.</summary>
public static class WavBytes
{
    /// <summary>Half a second of a sine.</summary>
    public static double[] Sine(double hertz, int rate, double amplitude) =>
        [.. Enumerable.Range(0, rate / 2).Select(i => amplitude * Math.Sin(2 * Math.PI * hertz * i / rate))];

    public static byte[] Of(double[] sound, int rate, int tag = 1, int bits = 16, int channels = 1)
    {
        byte[] data = [.. sound.SelectMany(sample => Enumerable.Repeat(Encoded(sample, tag, bits), channels)).SelectMany(bytes => bytes)];
        return Header(rate, tag, bits, channels, data.Length, data);
    }

    public static byte[] Header(int rate, int tag, int bits, int channels, int stated, byte[] data)
    {
        using MemoryStream file = new();
        using BinaryWriter writer = new(file);
        writer.Write(Encoding.ASCII.GetBytes("RIFF"));
        writer.Write(36 + data.Length);
        writer.Write(Encoding.ASCII.GetBytes("WAVEfmt "));
        writer.Write(16);
        writer.Write((short)tag);
        writer.Write((short)channels);
        writer.Write(rate);
        writer.Write(rate * channels * bits / 8);
        writer.Write((short)(channels * bits / 8));
        writer.Write((short)bits);
        writer.Write(Encoding.ASCII.GetBytes("data"));
        writer.Write(stated);
        writer.Write(data);
        return file.ToArray();
    }

    /// <summary>The 40-byte format chunk, behind an odd-sized chunk that must be skipped with its pad byte.</summary>
    public static byte[] Extensible(double[] sound, int rate)
    {
        using MemoryStream file = new();
        using BinaryWriter writer = new(file);
        writer.Write(Encoding.ASCII.GetBytes("RIFF\0\0\0\0WAVELIST"));
        writer.Write(5);
        writer.Write(Encoding.ASCII.GetBytes("hello\0fmt "));
        writer.Write(40);
        writer.Write((short)-2);
        writer.Write((short)1);
        writer.Write(rate);
        writer.Write(rate * 2);
        writer.Write((short)2);
        writer.Write((short)16);
        writer.Write((short)22);
        writer.Write((short)16);
        writer.Write(4);
        writer.Write((short)1);
        writer.Write(Convert.FromHexString("000000001000800000AA00389B71"));
        writer.Write(Encoding.ASCII.GetBytes("data"));
        writer.Write(sound.Length * 2);
        foreach (double sample in sound)
        {
            writer.Write(Encoded(sample, 1, 16));
        }

        return file.ToArray();
    }

    static byte[] Encoded(double sample, int tag, int bits) => (tag, bits) switch
    {
        (3, 32) => BitConverter.GetBytes((float)sample),
        (3, 64) => BitConverter.GetBytes(sample),
        (_, 8) => [(byte)(Math.Round(sample * 128) + 128)],
        (_, 16) => BitConverter.GetBytes((short)Math.Round(sample * 32768)),
        (_, 24) => BitConverter.GetBytes((int)Math.Round(sample * 8388608))[..3],
        _ => BitConverter.GetBytes((int)Math.Round(sample * 2147483648)),
    };
}
