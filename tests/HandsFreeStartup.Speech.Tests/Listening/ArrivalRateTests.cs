using HandsFreeStartup.Speech.Listening;
using Microsoft.Extensions.Time.Testing;

namespace HandsFreeStartup.Speech.Tests.Listening;

/// <summary>The rate at which samples arrive, in pieces of 30 ms of the clock.</summary>
public sealed class ArrivalRateTests
{
    static TimeSpan? Told(Func<int, double> samplesPerSecond, double seconds)
    {
        FakeTimeProvider clock = new();
        ArrivalRate rate = new(clock);
        TimeSpan piece = TimeSpan.FromMilliseconds(30);
        for (int i = 0; i * piece.TotalSeconds < seconds; i++)
        {
            if (samplesPerSecond(i) is > 0 and double now)
            {
                rate.Arrived((int)(now * piece.TotalSeconds));
            }

            if (rate.IsWrong)
            {
                return i * piece;
            }

            clock.Advance(piece);
        }

        return null;
    }

    [Theory]
    [InlineData(8_000)]
    [InlineData(32_000)]
    [InlineData(44_100)]
    [InlineData(48_000)]
    public void A_rate_of_half_or_double_and_more_is_told_within_a_second(int rate) => Assert.True(Told(_ => rate, 10) < TimeSpan.FromSeconds(1));

    [Theory]
    [InlineData(11_025)]
    [InlineData(22_050)]
    public void A_rate_nearer_to_the_right_one_is_told_after_a_whole_window(int rate) => Assert.InRange(Told(_ => rate, 10)!.Value.TotalSeconds, 0.9, 3.1);

    [Fact]
    public void The_right_rate_is_never_told() => Assert.Null(Told(_ => 16_000, 60));

    [Theory]
    [InlineData(11, 40, 12)]
    [InlineData(20, 130, 1.5)]
    [InlineData(20, 130, 4)]
    [InlineData(20, 130, 21)]
    [InlineData(26, 200, 2)]
    public void A_stall_that_is_made_up_for_is_never_told_as_a_wrong_rate(int pieces, int every, double timesAsFast)
    {
        double catchingUp = pieces / (timesAsFast - 1);
        for (int first = 0; first < every; first++)
        {
            int shift = first;
            Assert.Null(Told(i => (i + shift) % every is int at && at < pieces ? 0 : at < pieces + catchingUp ? 16_000 * timesAsFast : 16_000, 60));
        }
    }
}
