using System.Collections.Immutable;
using System.Globalization;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Procedure.Tests.Wording;

public sealed class WordingTests
{
    [Theory]
    [InlineData(0.3, "0.3")]
    [InlineData(0.25, "0.25")]
    [InlineData(0.2, "0.2")]
    [InlineData(0.251, "0.26")]
    [InlineData(0.31, "0.4")]
    [InlineData(0.951, "1")]
    [InlineData(1.96, "2")]
    [InlineData(32.6, "40")]
    [InlineData(77.6, "80")]
    [InlineData(16.4, "17")]
    [InlineData(1568, "1600")]
    [InlineData(0.0151, "0.016")]
    [InlineData(0.1 + 0.2, "0.3")]
    [InlineData(3 * 1.1, "4")]
    [InlineData(1e-9, "0.000000001")]
    public void An_uncertainty_keeps_two_digits_where_the_first_is_1_or_2_else_one_and_is_rounded_up(double expanded, string shown) =>
        Assert.Equal(shown, RoundedUncertainty.Of(expanded)!.Value.ToString(CultureInfo.InvariantCulture));

    [Fact]
    public void No_uncertainty_is_ever_rounded_down_or_shown_with_more_than_two_digits()
    {
        Random random = new(16);
        for (int i = 0; i < 20_000; i++)
        {
            double expanded = random.NextDouble() * Math.Pow(10, random.Next(-6, 7));
            decimal shown = RoundedUncertainty.Of(expanded)!.Value;

            Assert.True((double)shown >= expanded * (1 - 1e-6), $"{expanded} became {shown}");
            Assert.True((double)shown <= expanded * 1.34, $"{expanded} became {shown}");
            Assert.InRange(shown.ToString(CultureInfo.InvariantCulture).Replace(".", "", StringComparison.Ordinal).Trim('0').Length, 1, 2);
        }
    }

    [Theory]
    [InlineData(null)]
    [InlineData(0.0)]
    [InlineData(double.NaN)]
    [InlineData(double.PositiveInfinity)]
    public void What_is_not_stated_is_never_said_as_zero(double? expanded)
    {
        Assert.Null(RoundedUncertainty.Of(expanded));
        Assert.Equal("80.1 %, no uncertainty stated", ShownValue.Of(Result(80.13, expanded, "%", 1)).Text);
    }

    [Theory]
    [InlineData("7.60", "0.3", "%", "7.60 ± 0.3 %")]
    [InlineData("12", "20", "ppm", "12 ppm (0 to 32)")]
    [InlineData("0", "20", "ppm", "0 ppm (0 to 20)")]
    [InlineData("20", "20", "ppm", "20 ± 20 ppm")]
    [InlineData("-0.02", "0.03", "in. w.c.", "-0.02 ± 0.03 in. w.c.")]
    [InlineData("0.01", "0.03", "in. w.c.", "0.01 ± 0.03 in. w.c.")]
    [InlineData("24.0", null, "V", "24.0 V, no uncertainty stated")]
    public void A_reading_keeps_its_decimals_and_its_interval_ends_at_zero_where_the_quantity_does(string value, string? expanded, string unit, string shown)
    {
        decimal? stated = expanded is null ? null : decimal.Parse(expanded, CultureInfo.InvariantCulture);

        Assert.Equal(shown, ShownValue.Of(new EnteredReading(new("any", ""), decimal.Parse(value, CultureInfo.InvariantCulture), unit, Evidence.Typed(""))
        {
            ExpandedUncertainty = stated,
        }).Text);
    }

    [Theory]
    [InlineData(89.4, 35.2, "ppm", 0, "89 ± 40 ppm")]
    [InlineData(404.0, 35.2, "ppm", 0, "404 ± 40 ppm")]
    [InlineData(80.13, 0.251, "%", 1, "80.13 ± 0.26 %")]
    [InlineData(80.15, 0.31, "%", 1, "80.2 ± 0.4 %")]
    [InlineData(2.5, 1.0, "ppm", 0, "3 ± 1 ppm")]
    public void A_result_is_never_rounded_more_coarsely_than_its_kind(double value, double expanded, string unit, int decimals, string shown) =>
        Assert.Equal(shown, ShownValue.Of(Result(value, expanded, unit, decimals)).Text);

    [Fact]
    public void More_than_the_range_is_said_so_and_has_no_uncertainty() =>
        Assert.Equal("over 9999 ppm", ShownValue.Of(new EnteredReading(new("flue_co", ""), 9999, "ppm", Evidence.Typed(""))
        {
            ExpandedUncertainty = 500,
            IsOver = true,
        }).Text);

    [Theory]
    [InlineData(0, "0:00")]
    [InlineData(59.2, "1:00")]
    [InlineData(245, "4:05")]
    [InlineData(3725, "1:02:05")]
    public void A_duration_is_said_one_way(double seconds, string shown) => Assert.Equal(shown, Durations.Text(TimeSpan.FromSeconds(seconds)));

    [Fact]
    public void An_evening_job_keeps_its_own_date()
    {
        LocalTime times = new(TimeSpan.FromHours(-5));
        DateTimeOffset at = new(2026, 3, 15, 1, 30, 0, TimeSpan.Zero);

        Assert.Equal("2026-03-14 20:30:00 -05:00", times.Stamp(at));
        Assert.Equal("2026-03-14", times.Date(at));
        Assert.Equal("local time (UTC-05:00)", times.Zone);
        Assert.Equal("2026-03-15 01:30:00 +00:00", LocalTime.Of((JobDescription?)null).Stamp(at));
        Assert.Equal("2026-03-15 01:30:00 +00:00", new LocalTime(TimeSpan.FromDays(400)).Stamp(at));
    }

    [Theory]
    [InlineData(Verdict.Pass, false, "pass")]
    [InlineData(Verdict.ConditionalPass, false, "conditional pass: inside by less than the uncertainty")]
    [InlineData(Verdict.ConditionalPass, true, "conditional pass, NOT PROVEN: inside by less than the uncertainty")]
    [InlineData(Verdict.ConditionalFail, true, "conditional fail, NOT PROVEN: outside by less than the uncertainty")]
    [InlineData(Verdict.Fail, true, "FAIL")]
    [InlineData(Verdict.CannotTell, true, "CANNOT TELL")]
    public void A_verdict_has_one_wording(Verdict verdict, bool isSafety, string words) =>
        Assert.Equal(words, VerdictWords.Of(verdict, new DeclaredLimit("any", null, 400, "ppm", "invented", isSafety)));

    [Fact]
    public void A_message_keeps_its_parts_and_shows_them_in_one_line()
    {
        DeclaredLimit limit = new("any", 3.2m, 3.8m, "in. w.c.", "invented", false);
        Message message = $"{'M'}anifold {ShownValue.Alone(3.50m, "in. w.c.")}: {limit}. {TimeSpan.FromSeconds(245)} left.";

        Assert.Equal("Manifold 3.50 in. w.c.: 3.2 to 3.8 in. w.c. 4:05 left.", message.Shown);
        Assert.Equal([typeof(MessagePart.Text), typeof(MessagePart.Text), typeof(MessagePart.Quantity), typeof(MessagePart.Text), typeof(MessagePart.Limit), typeof(MessagePart.Text), typeof(MessagePart.Duration), typeof(MessagePart.Text)],
            message.Parts.Select(part => part.GetType()));
    }

    static CalculatedResult Result(double value, double? expanded, string unit, int decimals) =>
        new("any", "Any")
        {
            Value = value,
            ExpandedUncertainty = expanded,
            UnitSymbol = unit,
            Decimals = decimals,
            Formula = "any/1",
            Inputs = ImmutableSortedDictionary<string, decimal>.Empty,
            Remark = "",
        };

    [Fact]
    public void A_sentence_that_ends_with_a_unit_ends_once()
    {
        ShownValue value = ShownValue.Alone(3.5m, Unit.InchesOfWater.Symbol);

        Assert.Equal("Manifold 3.5 in. w.c. Say next.", ((Message)$"Manifold {value}. Say next.").Shown);
        Assert.Equal("7.6 %. Say next.", ((Message)$"{ShownValue.Alone(7.6m, "%")}. Say next.").Shown);
        Assert.Equal("3.5 in. w.c. ...", ((Message)$"{value} ...").Shown);
    }
}
