using HandsFreeStartup.Speech.Recognising;

namespace HandsFreeStartup.Speech.Tests.Recognising;

public sealed class SignalToNoiseTests
{
    /// <summary>A tone over the middle half of two seconds, on a tone of 50 Hz throughout; powers of tones are amplitude squared over two.</summary>
    static float[] Clip(double loud, double quiet) =>
        [.. Enumerable.Range(0, 32_000).Select(i => (float)((i is > 8_000 and < 24_000 ? loud * Math.Sin(2 * Math.PI * 1_000 * i / 16_000) : 0) + quiet * Math.Sin(2 * Math.PI * 1_500 * i / 16_000)))];

    [Theory]
    [InlineData(0.5, 0.05, 20)]
    [InlineData(0.1, 0.05, 6.0206)]
    [InlineData(0.5, 0.5, 0)]
    public void The_ratio_is_that_of_the_powers(double loud, double quiet, double decibels) => Assert.Equal(decibels, SignalToNoise.Of(Clip(loud, quiet)), 0.1);

    [Fact]
    public void Silence_below_a_microphones_own_noise_makes_a_clip_no_better() =>
        Assert.Equal(SignalToNoise.Of(Clip(0.5, 1e-4)), SignalToNoise.Of(Clip(0.5, 0)), 0.1);

    [Fact]
    public void A_clip_without_a_whole_frame_has_none() => Assert.Equal(0, SignalToNoise.Of(new float[511]));
}
