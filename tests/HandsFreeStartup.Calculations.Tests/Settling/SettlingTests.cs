using HandsFreeStartup.Calculations.Settling;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Tests.Settling;

public sealed class SettlingTests
{
    static readonly SettlingRule Oxygen = new(TimeSpan.FromSeconds(60), AllowedDrift: 0.2, AllowedScatter: 0.15);

    static Sample[] Series(int count, Func<int, double> value) =>
        [.. Enumerable.Range(0, count).Select(i => new Sample(TimeSpan.FromSeconds(5 * i), value(i)))];

    [Fact]
    public void A_series_of_the_same_oxygen_has_settled()
    {
        SettlingResult result = Oxygen.Judge(Series(13, _ => 7.6));

        Assert.Equal(Settled.Yes, result.Settled);
        Assert.Equal(0, result.Drift.Value, 1e-12);
        Assert.Equal(0, result.Scatter, 1e-12);
    }

    [Fact]
    public void A_drift_is_found_and_measured()
    {
        SettlingResult result = Oxygen.Judge(Series(20, i => 9 - 0.05 * i));

        Assert.Equal(Settled.NotYet, result.Settled);
        Assert.Equal(-0.05 * 12, result.Drift.Value, 1e-9);
    }

    [Fact]
    public void Scatter_alone_keeps_a_series_from_settling() =>
        Assert.Equal(Settled.NotYet, Oxygen.Judge(Series(40, i => i % 2 == 0 ? 7.3 : 7.9)).Settled);

    [Fact]
    public void An_old_swing_outside_of_the_window_is_forgotten() =>
        Assert.Equal(Settled.Yes, Oxygen.Judge(Series(40, i => i < 20 ? 15 - 0.3 * i : 7.6)).Settled);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(12)]
    public void A_short_series_is_too_early(int count) => Assert.Equal(Settled.TooEarly, Oxygen.Judge(Series(count, _ => 7.6)).Settled);

    /// <summary>The stated rate, tried: drift exactly at the allowed one, independent normal scatter, 4000 series.</summary>
    [Theory]
    [InlineData(0.05)]
    [InlineData(0.20)]
    public void The_false_alarm_rate_is_not_exceeded(double rate)
    {
        SettlingRule rule = Oxygen with { FalseAlarmRate = rate, AllowedScatter = 10 };
        Random random = new(7);
        int alarms = Enumerable.Range(0, 4000).Count(_ => rule.Judge(Series(13, i => 7.6 + 0.2 / 12 * i + 0.03 * Normal(random))).Settled == Settled.Yes);
        double allowed = rate + 4 * Math.Sqrt(rate * (1 - rate) / 4000);

        Assert.InRange(alarms / 4000.0, rate / 2, allowed);
    }

    static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());

    [Fact]
    public void The_mean_of_thirty_seconds_has_the_standard_error_of_its_samples()
    {
        Estimate mean = WindowMean.Of(Series(20, i => i < 13 ? 99 : i % 2 == 0 ? 7 : 8), WindowMean.ThirtySeconds)!.Value;

        // Seven samples, 13 to 19: 8 7 8 7 8 7 8.
        Assert.Equal(53.0 / 7, mean.Value, 1e-12);
        Assert.Equal(Math.Sqrt(12.0 / 7 / 6 / 7), mean.StandardUncertainty, 1e-12);
    }

    [Fact]
    public void Without_thirty_seconds_of_samples_there_is_no_mean() => Assert.Null(WindowMean.Of(Series(6, _ => 7.6), WindowMean.ThirtySeconds));
}
