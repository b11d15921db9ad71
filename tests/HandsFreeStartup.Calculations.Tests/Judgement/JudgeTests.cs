using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Tests.Support;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Tests.Judgement;

public sealed class JudgeTests
{
    /// <summary>Source: Reference/guarded_acceptance.csv (zones after ILAC-G8:09/2019 4.2.3).</summary>
    [Fact]
    public void Every_zone_of_the_guarded_acceptance_table_is_met()
    {
        foreach (ReferenceTable.Row row in ReferenceTable.Rows("guarded_acceptance"))
        {
            Limit limit = new(
                row.Has("lower_limit") ? row.Number("lower_limit") : null,
                row.Has("upper_limit") ? row.Number("upper_limit") : null, "table", IsSafety: true);
            Verdict verdict = Judge.Verdict(new Estimate(row.Number("measured_value"), row.Number("standard_uncertainty")), limit);

            Assert.True(row.Text("zone").Replace("_", "") == verdict.ToString().ToLowerInvariant(), $"{verdict} for {row}");
        }
    }

    /// <summary>Source: worked example after ILAC-G8:09/2019 4.2.3, limit 400, U 32.6 (calculated).</summary>
    [Theory]
    [InlineData(360, Verdict.Pass)]
    [InlineData(385, Verdict.ConditionalPass)]
    [InlineData(420, Verdict.ConditionalFail)]
    [InlineData(440, Verdict.Fail)]
    public void The_four_zones_of_the_worked_example(double measured, Verdict expected) =>
        Assert.Equal(expected, Judge.Verdict(new Estimate(measured, 16.3), new Limit(null, 400, "example", IsSafety: true)));

    [Theory]
    [InlineData(double.NaN, 1)]
    [InlineData(5, double.NaN)]
    [InlineData(double.PositiveInfinity, 1)]
    [InlineData(5, double.PositiveInfinity)]
    [InlineData(5, -1)]
    public void A_value_that_means_nothing_cannot_be_judged(double value, double uncertainty) =>
        Assert.Equal(Verdict.CannotTell, Judge.Verdict(new Estimate(value, uncertainty), new Limit(0, 10, "example", IsSafety: false)));

    [Fact]
    public void An_absent_value_cannot_be_judged() =>
        Assert.Equal(Verdict.CannotTell, Judge.Verdict(null, new Limit(0, 10, "example", IsSafety: false)));

    [Fact]
    public void Inside_the_guard_band_of_a_safety_limit_nothing_is_proven()
    {
        Limit safety = new(null, 400, "example", IsSafety: true);
        Limit other = safety with { IsSafety = false };

        Assert.False(Judge.IsProven(Verdict.ConditionalPass, safety));
        Assert.True(Judge.IsProven(Verdict.ConditionalPass, other));
        Assert.True(Judge.IsProven(Verdict.Pass, safety));
        Assert.False(Judge.IsProven(Verdict.CannotTell, other));
    }

    [Fact]
    public void A_value_that_would_pass_only_when_rounded_does_not_pass() =>
        Assert.Equal(Verdict.Fail, Judge.Verdict(Estimate.Exactly(400.0000001), new Limit(null, 400, "example", IsSafety: false)));

    [Theory]
    [InlineData(null, null)]
    [InlineData(2.0, 1.0)]
    [InlineData(double.NaN, 1.0)]
    public void A_limit_without_sensible_bounds_is_refused(double? lower, double? upper) =>
        Assert.Throws<ArgumentException>(() => Judge.Verdict(Estimate.Exactly(1), new Limit(lower, upper, "example", IsSafety: false)));
}
