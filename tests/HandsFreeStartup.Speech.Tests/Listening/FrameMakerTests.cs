using FsCheck.Xunit;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Tests.Support;

namespace HandsFreeStartup.Speech.Tests.Listening;

public sealed class FrameMakerLaws
{
    /// <summary>Frames are the same, however the sound arrives.</summary>
    [Property]
    public void Pieces_of_any_size_give_the_same_frames(int[] sizes, int seed)
    {
        float[] sound = [.. Enumerable.Range(0, 5_000).Select(i => MathF.Sin(i * 0.01f + seed % 100))];
        List<AudioFrame> whole = [.. new FrameMaker().Add(sound)];

        FrameMaker maker = new();
        List<AudioFrame> pieces = [];
        int at = 0;
        foreach (int size in sizes.Select(size => Math.Abs(size % 1_500)).Append(sound.Length))
        {
            int taken = Math.Min(size, sound.Length - at);
            pieces.AddRange(maker.Add(sound.AsMemory(at, taken)));
            at += taken;
        }

        Assert.Equal(whole.Count, pieces.Count);
        Assert.All(whole.Zip(pieces), pair =>
        {
            Assert.Equal(pair.First.Position, pair.Second.Position);
            Assert.Equal(pair.First.State, pair.Second.State);
            Assert.Equal(pair.First.Samples.ToArray(), pair.Second.Samples.ToArray());
        });
    }
}

public sealed class FrameMakerTests
{
    static List<AudioFrame> Frames(params float[][] parts) => [.. new FrameMaker().Add(parts.SelectMany(part => part).ToArray())];

    static float[] Square(double amplitude, double seconds) =>
        [.. Enumerable.Range(0, (int)(seconds * WavFile.Rate)).Select(i => (float)(i / 20 % 2 == 0 ? amplitude : -amplitude))];

    [Fact]
    public void Cut_off_peaks_are_reported_within_a_second_and_forgotten_again()
    {
        List<AudioFrame> frames = Frames(Square(0.3, 1.6), Square(1, 0.32), Square(0.3, 1.6));

        Assert.True(frames.FindIndex(frame => frame.State == SoundState.Overloaded) is >= 50 and < 50 + 31);
        Assert.Equal(SoundState.Good, frames[^1].State);
    }

    [Theory]
    [InlineData(50)]
    [InlineData(60)]
    [InlineData(120)]
    public void The_hum_of_the_mains_is_told_within_two_seconds_and_forgotten_when_it_is_gone(int tone)
    {
        float[] quiet = Sounds.Quiet(3.2);
        float[] hum = [.. Enumerable.Range(0, 4 * WavFile.Rate).Select(i => (float)(0.02 * Math.Sin(2 * Math.PI * tone * i / WavFile.Rate)))];
        List<AudioFrame> frames = Frames(quiet, Sounds.Mix(hum, Sounds.Quiet(4)), quiet);

        Assert.InRange(frames.FindIndex(frame => frame.State == SoundState.Humming), 100, 100 + 64);
        Assert.All(frames[165..224], frame => Assert.Equal(SoundState.Humming, frame.State));
        Assert.Equal(SoundState.Good, frames[^1].State);
    }

    [Fact]
    public void Blower_noise_and_speech_are_no_hum()
    {
        float[] speech = Sounds.Spoken("oxygen_seven_point_six");
        List<AudioFrame> frames = Frames(Sounds.Blower(8, 0.1), speech, speech, speech, speech);

        Assert.DoesNotContain(frames, frame => frame.State == SoundState.Humming);
    }

    [Fact]
    public void Speech_over_a_hum_leaves_it_a_hum()
    {
        float[] speech = Sounds.Spoken("oxygen_seven_point_six");
        float[] hum = [.. Enumerable.Range(0, 8 * WavFile.Rate).Select(i => (float)(0.02 * Math.Sin(2 * Math.PI * 60 * i / WavFile.Rate)))];
        List<AudioFrame> frames = Frames(Sounds.Mix(hum, speech, 3));

        Assert.All(frames[64..], frame => Assert.Equal(SoundState.Humming, frame.State));
    }

    [Fact]
    public void Dead_silence_is_reported_within_a_second_and_the_noise_of_a_microphone_is_none()
    {
        Random random = new(1);
        float[] faint = [.. Enumerable.Range(0, 2 * WavFile.Rate).Select(_ => (float)Math.Round((random.NextDouble() - 0.5) * 12) / 32768)];
        List<AudioFrame> frames = Frames(faint, new float[2 * WavFile.Rate], faint);

        Assert.True(frames.FindIndex(frame => frame.State == SoundState.Dead) is >= 62 and < 63 + 31);
        Assert.Equal(SoundState.Good, frames[^1].State);
        Assert.All(frames[..62], frame => Assert.Equal(SoundState.Good, frame.State));
    }

    [Theory]
    [InlineData(1.0, 0)]
    [InlineData(0.1, -20)]
    [InlineData(0.001, -60)]
    [InlineData(0, -100)]
    public void The_level_of_a_square_wave_is_its_amplitude_in_decibels(double amplitude, double expected) =>
        Assert.Equal(expected, Frames(Square(amplitude, 0.032))[0].Level, 0.01);
}
