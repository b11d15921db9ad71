using System.Buffers.Binary;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Tests.Surroundings;

namespace HandsFreeStartup.Tests.Fuzzing;

/// <summary>A WAV file. What is taken is as long as its header and its bytes say, every sample is a number, and plain 16-bit sound is what its bytes are.</summary>
public sealed class SoundDoor() : FuzzedDoor("sound")
{
    public override IReadOnlyList<string> Words { get; } = ["RIFF", "WAVE", "fmt ", "data", "LIST", "fact", "RIFX", "RF64"];

    protected override IEnumerable<byte[]> Seeds() =>
    [
        Wav(1, 1, 16_000, 16, 400), Wav(1, 2, 44_100, 16, 400), Wav(1, 1, 8_000, 8, 300), Wav(1, 1, 48_000, 24, 300), Wav(1, 6, 16_000, 32, 480), Wav(3, 1, 16_000, 32, 400),
        Wav(3, 2, 22_050, 64, 640), Wav(-2, 1, 16_000, 16, 400), Wav(7, 1, 8_000, 8, 100), Wav(1, 1, 16_000, 16, 0),
    ];

    public override Outcome Try(byte[] input, Random random)
    {
        string path = In("sound.wav");
        File.WriteAllBytes(path, input);
        try
        {
            float[] sound = WavFile.Read(path);
            Assert.All(sound, sample => Assert.True(float.IsFinite(sample)));
            Assert.InRange(sound.Length, 1, 16L * Math.Max(1, input.Length));
            CheckPlain(input, sound);
            return new Outcome(true, "taken");
        }
        catch (SoundFileException refused)
        {
            SurroundingsTests.AssertSentence(refused.Message);
            return new Outcome(false, refused.Message);
        }
    }

    /// <summary>The canonical header of 44 bytes is read a second time here, and its samples one by one.</summary>
    static void CheckPlain(byte[] file, float[] sound)
    {
        ReadOnlySpan<byte> bytes = file;
        bool isPlain = file.Length > 44 && bytes[12..36].SequenceEqual(Wav(1, 1, 16_000, 16, 0).AsSpan(12, 24)) && bytes[36..40].SequenceEqual("data"u8);
        uint stated = isPlain ? BinaryPrimitives.ReadUInt32LittleEndian(bytes[40..]) : 0;
        if (isPlain && stated > 0 && stated <= file.Length - 44)
        {
            Assert.Equal((int)stated / 2, sound.Length);
            for (int i = 0; i < sound.Length; i++)
            {
                Assert.Equal(BinaryPrimitives.ReadInt16LittleEndian(bytes[(44 + 2 * i)..]) / 32768f, sound[i]);
            }
        }
    }

    static byte[] Wav(short tag, short channels, int rate, short bits, int length)
    {
        int format = tag == -2 ? 40 : 16;
        using MemoryStream file = new();
        using BinaryWriter wav = new(file);
        wav.Write("RIFF"u8);
        wav.Write(20 + format + length);
        wav.Write("WAVEfmt "u8);
        wav.Write(format);
        wav.Write(tag);
        wav.Write(channels);
        wav.Write(rate);
        wav.Write(rate * channels * bits / 8);
        wav.Write((short)(channels * bits / 8));
        wav.Write(bits);
        if (tag == -2)
        {
            wav.Write((short)22);
            wav.Write(bits);
            wav.Write(4);
            wav.Write((short)1);
            wav.Write(new byte[14]);
        }

        wav.Write("data"u8);
        wav.Write(length);
        for (int i = 0; i < length; i++)
        {
            wav.Write(tag == 3 ? (byte)0 : (byte)(i * 37));
        }

        return file.ToArray();
    }
}
