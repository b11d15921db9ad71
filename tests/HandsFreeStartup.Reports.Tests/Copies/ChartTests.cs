using HandsFreeStartup.Calculations.Settling;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Reports.Copies;
using HandsFreeStartup.Reports.Copies.Charts;
using HandsFreeStartup.Reports.Tests.Support;

namespace HandsFreeStartup.Reports.Tests.Copies;

[Trait("Speed", "Fast")]
public sealed class ChartTests
{
    static readonly ReadingKey Manifold = new("manifold_pressure", "high");

    [Fact]
    public void Every_reading_that_was_entered_again_is_a_series_with_what_became_of_each_value()
    {
        IReadOnlyList<Series> all = Series.Of(new CopyFacts(CopiesTests.Whole()));

        Assert.Equal(["Oxygen, high fire", "CO in flue, high fire", "Manifold pressure, high fire"], all.Select(series => series.Title));
        Assert.Equal([[Mark.Void, Mark.Standing], [Mark.Void, Mark.Standing], [Mark.Replaced, Mark.Standing]], all.Select(series => series.Points.Select(point => point.Mark)));
        Assert.Equal([7.60, 7.1], all[0].Points.Select(point => point.Value));
        Assert.Equal((3.35, 3.65, "3.50 in. w.c."), (all[2].Lower, all[2].Upper, all[2].Left));
        Assert.All(all, series => Assert.Null(series.SettledAt));
    }

    [Theory]
    [InlineData(new[] { Settled.TooEarly, Settled.NotYet, Settled.Yes, Settled.Yes }, 2)]
    [InlineData(new[] { Settled.Yes, Settled.NotYet, Settled.Yes }, 2)]
    [InlineData(new[] { Settled.Yes, Settled.NotYet }, null)]
    public void A_series_is_settled_since_the_first_judgement_that_no_other_took_back(Settled[] judgments, int? since)
    {
        CopySource whole = CopiesTests.Whole();
        DateTimeOffset begin = whole.Events[0].At;
        CopySource judged = whole with
        {
            Events = [.. whole.Events, .. judgments.Select((settled, i) => new SeriesJudged(begin.AddSeconds(i), "adjust-high", Manifold, i + 2, settled, null, 3.50m))],
        };

        Series series = Series.Of(new CopyFacts(judged)).Single(series => series.Title.StartsWith("Manifold", StringComparison.Ordinal));

        Assert.Equal(since is { } index ? begin.AddSeconds(index) : null, series.SettledAt);
    }

    [Fact]
    public void The_office_copy_draws_them_on_request_and_names_the_value_that_stands()
    {
        CopySource source = CopiesTests.Whole();
        using PdfPages without = new(StartupCopies.Office(source, Paper.A4));
        using PdfPages with = new(StartupCopies.Office(source, Paper.A4, withCharts: true));

        Assert.DoesNotContain("Readings over time", without.Text, StringComparison.Ordinal);
        Assert.Contains("Readings over time", with.Texts[1], StringComparison.Ordinal);
        Assert.Contains("Limit 3.35 to 3.65 in. w.c.; from 2026-03-14 09:09:14 +00:00", with.Texts[1], StringComparison.Ordinal);
        Assert.Contains("3.50 in. w.c.", with.Texts[1], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(0, "0:00")]
    [InlineData(90, "1:30")]
    [InlineData(3600, "1:00:00")]
    [InlineData(90061, "25:01:01")]
    public void Times_are_told_from_the_first_value(double seconds, string label) => Assert.Equal(label, Scale.TimeLabel(seconds));
}
