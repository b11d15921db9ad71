using System.Globalization;
using HandsFreeStartup.Hear;

namespace HandsFreeStartup.Tests.Hear;

/// <summary>The figures as a user reads them.</summary>
public sealed class HearTextTests
{
    static HearRow Row(string expected, string heard, string certainty, string why = "") =>
        new("a.wav", expected, heard)
        {
            Class = certainty,
            Score = -0.1,
            Margin = 5,
            Ratio = 0,
            LatencyMs = 100,
            Likeliest = heard,
            Free = HearRow.Nothing,
            Why = why,
            Seconds = 1,
        };

    static string[] Lines(params HearRow[] rows)
    {
        using StringWriter text = new(CultureInfo.InvariantCulture);
        HearText.Print(HearFigures.Of(rows, new HearNeeds(1000, 300, 0.003)), text);
        return text.ToString().Split(Environment.NewLine);
    }

    [Fact]
    public void Why_something_was_asked_is_counted_the_commonest_reason_first()
    {
        string[] lines = Lines(
            Row("draft=0.02", "draft=0.02", "green"),
            Row("flue_co=30", "flue_co=30", "amber", "It sounds like thirteen."),
            Row("oxygen=7.6", "oxygen=7.6", "amber", "It was not clear."),
            Row("oxygen=5", HearRow.Nothing, "red", "It was not clear."),
            Row(HearRow.Nothing, HearRow.Nothing, "red", "It sounded like noise, not like speech."));

        int asked = Array.FindIndex(lines, line => line.StartsWith("asked again or to be confirmed", StringComparison.Ordinal));
        Assert.Equal(["     2 of them, 1 right: It was not clear.", "     1 of them, 1 right: It sounds like thirteen."], lines[(asked + 1)..(asked + 3)]);
        Assert.DoesNotContain(lines, line => line.Contains("noise", StringComparison.Ordinal));
    }

    [Fact]
    public void The_gain_over_the_original_models_stays_visible()
    {
        string[] lines = Lines(Row("draft=0.02", "draft=0.02", "green"));

        int beside = Array.FindIndex(lines, line => line.Contains("original models (b00b1b94c415", StringComparison.Ordinal));
        Assert.EndsWith(" 100.0 %, 0 wrong", lines[beside + 1]);
        Assert.Equal([94.0, 86.8, 71.6, 48.8, 88.9, 75.3], OriginalModels.Figures.Select(figure => figure.RightPercent));
        Assert.EndsWith("  48.8 %, 1 wrong", lines[beside + 5]);
    }

    [Fact]
    public void Seldom_reasons_are_counted_together()
    {
        string[] lines = Lines([.. Enumerable.Range(0, 15).Select(i => Row("draft=0.02", "draft=0.02", "amber", $"reason {i:D2}"))]);

        Assert.Contains("     3 of them for other reasons, in --json", lines);
        Assert.Equal(12, lines.Count(line => line.Contains("reason ", StringComparison.Ordinal)));
    }
}
