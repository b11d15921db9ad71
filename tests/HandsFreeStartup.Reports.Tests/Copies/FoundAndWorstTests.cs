using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Reports.Copies;
using HandsFreeStartup.Reports.Copies.Narrow;
using HandsFreeStartup.Reports.Facts;
using HandsFreeStartup.Reports.Tests.Support;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Content;

namespace HandsFreeStartup.Reports.Tests.Copies;

/// <summary>What was measured once is not gone because it was measured again.</summary>
[Trait("Speed", "Fast")]
public sealed class FoundAndWorstTests
{
    static readonly DateTimeOffset At = new(2026, 3, 14, 9, 9, 20, TimeSpan.Zero);
    static readonly ReadingKey Room = new("room_co", "kitchen");

    [Fact]
    public void A_confirmed_value_that_was_measured_again_stays_as_found() =>
        Assert.Equal(("250", null, "1"), Line([.. Final(250), .. Final(1)]));

    [Fact]
    public void A_graver_value_in_between_stays_as_worst() =>
        Assert.Equal(("12", "250", "1"), Line([.. Final(12), .. Final(250), .. Final(1)]));

    [Fact]
    public void A_value_that_was_corrected_before_it_was_final_was_misheard() =>
        Assert.Equal(("1", null, "1"), Line([Entered(250), .. Final(1)]));

    [Fact]
    public void A_value_that_was_disregarded_was_misheard() =>
        Assert.Equal(("1", null, "1"), Line([Entered(250), new ReadingScratched(At, Room), .. Final(1)]));

    [Fact]
    public void A_value_that_made_everybody_leave_was_measured_though_nothing_was_accepted_after_it() =>
        Assert.Equal(("250", null, "1"), Line(
        [
            Entered(250), new MonoxideJudged(At, "look", Room)
            {
                Place = MonoxidePlace.Room,
                Action = MonoxideAction.Evacuate,
                Do = "Everybody leaves.",
                Source = "invented",
                Counts = true,
                Ppm = 250,
            }, .. Final(1),
        ]));

    [Fact]
    public void Every_copy_prints_what_was_found()
    {
        CopySource source = CopiesTests.Source(ScriptedJob.Plan, [.. ScriptedJob.Whole().Events, .. Final(250), .. Final(1)]);

        Assert.All(CopiesTests.All(source, Paper.A4), copy =>
        {
            using PdfPages pdf = new(copy);
            Assert.Matches("Kitchen was 250 – 1 ", pdf.Text);
        });
        Assert.Contains("found was 250 ppm", NarrowCopy.Of(source, 48), StringComparison.Ordinal);
    }

    [Fact]
    public void A_worst_value_over_the_range_does_not_touch_what_was_found()
    {
        ReadingEntered full = Entered(9999);
        StartupEvent over = full with { Reading = full.Reading with { IsOver = true } };
        CopySource source = CopiesTests.Source(ScriptedJob.Plan, [.. ScriptedJob.Whole().Events, .. Final(40), over, new ReadingStood(At, Room), .. Final(1)]);

        Assert.All(CopiesTests.All(source, Paper.A4), copy =>
        {
            using PdfDocument pdf = PdfDocument.Open(copy);
            Word[] words = [.. pdf.GetPages().SelectMany(page => page.GetWords()).SkipWhile(word => word.Text != "Kitchen").Take(12)];
            Word found = Assert.Single(words, word => word.Text == "40"), worst = Assert.Single(words, word => word.Text == "9999");
            Assert.True(worst.BoundingBox.Top < found.BoundingBox.Bottom, $"{found.BoundingBox} beside {worst.BoundingBox}");
        });
    }

    static (string? Found, string? Worst, string? Left) Line(IEnumerable<StartupEvent> events)
    {
        FoundAndLeft line = ReadingGroups.Of(JobRecord.Of(ScriptedJob.Plan, [.. ScriptedJob.Whole().Events, .. events])).SelectMany(group => group.Lines).Single(one => one.Label == "Kitchen");
        return (line.Found?.Number, line.Worst?.Number, line.Left?.Number);
    }

    static ReadingEntered Entered(decimal ppm) => new(At, "look", new EnteredReading(Room, ppm, "ppm", Evidence.Typed("monoxide")));

    static StartupEvent[] Final(decimal ppm) => [Entered(ppm), new ReadingStood(At, Room)];
}
