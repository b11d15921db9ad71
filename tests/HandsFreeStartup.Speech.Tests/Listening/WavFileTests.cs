using System.Text;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Tests.Support;

namespace HandsFreeStartup.Speech.Tests.Listening;

/// <summary>Expected values: the sine itself (mathematics); headers after the RIFF WAVE format as published with Multimedia Programming Interface 1.0 (1991) and its extensible form.</summary>
public sealed class WavFileTests : IDisposable
{
    readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData(1, 8, 1)]
    [InlineData(1, 16, 1)]
    [InlineData(1, 24, 2)]
    [InlineData(1, 32, 1)]
    [InlineData(3, 32, 2)]
    [InlineData(3, 64, 1)]
    public void Samples_of_every_plain_kind_come_out_as_the_same_sine(int tag, int bits, int channels)
    {
        float[] read = WavFile.Read(_folder.File("sine.wav", WavBytes.Of(WavBytes.Sine(500, 16_000, 0.5), 16_000, tag, bits, channels)));

        Assert.Equal(8_000, read.Length);
        double step = bits == 8 ? 1.0 / 128 : 1.0 / 32768;
        Assert.All(read.Select((sample, i) => (sample, i)), pair => Assert.Equal(0.5 * Math.Sin(2 * Math.PI * 500 * pair.i / 16_000), pair.sample, step));
    }

    [Theory]
    [InlineData(8_000)]
    [InlineData(11_025)]
    [InlineData(22_050)]
    [InlineData(44_100)]
    [InlineData(48_000)]
    [InlineData(96_000)]
    [InlineData(44_101)]
    public void Another_rate_gives_the_same_sine_at_16_kHz(int rate)
    {
        float[] read = WavFile.Read(_folder.File("sine.wav", WavBytes.Of(WavBytes.Sine(1_000, rate, 0.5), rate)));

        Assert.Equal(8_000, read.Length, 1.0);
        for (int i = 200; i < 7_800; i++)
        {
            Assert.Equal(0.5 * Math.Sin(2 * Math.PI * 1_000 * i / 16_000), read[i], 1e-3);
        }
    }

    [Fact]
    public void A_recording_of_many_hours_is_refused_before_it_fills_the_memory()
    {
        string path = _folder.File("hours.wav", WavBytes.Of(new double[3_600_000 + 1_000], 1_000, 1, 8));

        Assert.Contains("60 minutes of sound, and 60 are taken: cut it into shorter recordings.", Assert.Throws<SoundFileException>(() => WavFile.Read(path)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(9_000)]
    [InlineData(12_000)]
    [InlineData(15_000)]
    [InlineData(23_000)]
    public void A_tone_above_half_the_rate_does_not_fold_back(double hertz)
    {
        float[] read = WavFile.Read(_folder.File("tone.wav", WavBytes.Of(WavBytes.Sine(hertz, 48_000, 0.5), 48_000)));

        double loudest = read[200..7_800].Max(Math.Abs);
        Assert.True(loudest < 0.5 * 1e-3, $"{hertz} Hz came through at {20 * Math.Log10(loudest / 0.5):0} dB");
    }

    [Fact]
    public void Channels_are_averaged()
    {
        byte[] stereo = WavBytes.Header(16_000, 1, 16, 2, 8, [.. Shorts(8_000, 16_000, -4_000, 4_000)]);

        Assert.Equal([12_000 / 32768f, 0f], WavFile.Read(_folder.File("stereo.wav", stereo)));
    }

    [Fact]
    public void The_extensible_header_is_understood()
    {
        byte[] file = WavBytes.Extensible(WavBytes.Sine(500, 16_000, 0.5), 16_000);

        Assert.Equal(0.5, WavFile.Read(_folder.File("extensible.wav", file)).Max(), 1e-3);
    }

    [Theory]
    [InlineData(0u)]
    [InlineData(0x7FFF_F000u)]
    [InlineData(0xFFFF_FFFFu)]
    public void A_file_written_to_a_pipe_is_read_to_its_end(uint stated)
    {
        byte[] file = WavBytes.Of(WavBytes.Sine(500, 16_000, 0.5), 16_000);
        BitConverter.TryWriteBytes(file.AsSpan(40), stated);

        Assert.Equal(8_000, WavFile.Read(_folder.File("pipe.wav", file)).Length);
    }

    [Fact]
    public void What_is_written_is_read_again()
    {
        float[] sound = [.. WavBytes.Sine(440, 16_000, 0.7).Select(sample => (float)sample), 1.5f, -1.5f];
        string path = Path.Combine(_folder.Path, "kept.wav");

        WavFile.Write(path, sound);
        float[] read = WavFile.Read(path);

        Assert.Equal(sound.Length, read.Length);
        Assert.All(sound.Zip(read), pair => Assert.Equal(Math.Clamp(pair.First, -1, 1), pair.Second, 1.0 / 32768));
    }

    public static TheoryData<string, byte[], string> Unusable => new()
    {
        { "empty.wav", [], "is empty" },
        { "text.wav", Encoding.ASCII.GetBytes("oxygen seven point six"), "is not a WAV file" },
        { "riff.wav", Encoding.ASCII.GetBytes("RIFF"), "is not a WAV file" },
        { "header.wav", WavBytes.Of(WavBytes.Sine(500, 16_000, 0.5), 16_000)[..30], "the header is cut short" },
        { "short.wav", WavBytes.Of(WavBytes.Sine(500, 16_000, 0.5), 16_000)[..9_000], "is cut short: it should hold 16000 bytes of sound and holds 8956" },
        { "none.wav", [.. WavBytes.Of([0.5], 16_000)[..40], 0, 0, 0, 0], "holds no sound" },
        { "mulaw.wav", WavBytes.Header(16_000, 7, 8, 1, 1, [0, 0]), "is compressed or of an unusual kind (format 7, 8 bits)" },
        { "rate.wav", WavBytes.Header(0, 1, 16, 1, 2, [0, 0]), "1 channels and 0 samples per second" },
        { "nan.wav", WavBytes.Header(16_000, 3, 32, 1, 4, BitConverter.GetBytes(float.NaN)), "not a number" },
    };

    [Theory]
    [MemberData(nameof(Unusable))]
    public void An_unusable_file_is_refused_in_one_sentence_that_names_it(string name, byte[] bytes, string why)
    {
        string path = _folder.File(name, bytes);

        SoundFileException refused = Assert.Throws<SoundFileException>(() => WavFile.Read(path));

        Assert.StartsWith(path, refused.Message);
        Assert.Contains(why, refused.Message);
        Assert.DoesNotContain('\n', refused.Message);
    }

    [Fact]
    public void A_missing_file_is_named()
    {
        string path = Path.Combine(_folder.Path, "nothing-here.wav");

        Assert.StartsWith(path, Assert.Throws<SoundFileException>(() => WavFile.Read(path)).Message);
    }

    static IEnumerable<byte> Shorts(params short[] values) => values.SelectMany(BitConverter.GetBytes);
}
