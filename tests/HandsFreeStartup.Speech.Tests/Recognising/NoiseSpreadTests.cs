using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Recognising;
using HandsFreeStartup.Speech.Tests.Support;

namespace HandsFreeStartup.Speech.Tests.Recognising;

public sealed class NoiseSpreadTests
{
    /// <summary>The spread below which the shipped policy takes noise for that of a blower.</summary>
    const double Steady = 0.75;

    /// <summary>Normal noise under a shipped recording; <paramref name="power"/> says how strong it is at a moment, seconds.</summary>
    static float[] Under(Func<double, double> power, double rumble = 0)
    {
        Random random = new(7);
        double low = 0;
        return [.. WavFile.Read(Shipped.Recording("oxygen_seven_point_six")).Select((sample, at) =>
        {
            double normal = Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
            low = 0.99 * low + normal;
            return (float)(sample + power(at / 16_000.0) * 0.01 * (normal + rumble * low));
        })];
    }

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void Rushing_air_is_steady_whether_it_hisses_or_rumbles(double rumble) => Assert.InRange(NoiseSpread.Of(Under(_ => 1, rumble)), 0, Steady);

    [Fact]
    public void Blows_and_swelling_noise_are_not_steady()
    {
        Assert.InRange(NoiseSpread.Of(Under(moment => 0.4 + Math.Exp(-(moment % 0.15) / 0.04))), Steady, 20);
        Assert.InRange(NoiseSpread.Of(Under(moment => 1 + 0.6 * Math.Sin(2 * Math.PI * 3 * moment))), Steady, 20);
    }

    [Fact]
    public void A_quiet_room_is_steady() => Assert.Equal(0, NoiseSpread.Of(new float[16_000]));

    [Fact]
    public void A_clip_without_a_whole_frame_is_not() => Assert.Equal(double.PositiveInfinity, NoiseSpread.Of(new float[257]));
}
