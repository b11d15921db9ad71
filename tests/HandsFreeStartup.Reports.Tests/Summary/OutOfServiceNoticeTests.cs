using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Reports.Facts;
using HandsFreeStartup.Reports.Summary;
using HandsFreeStartup.Reports.Tests.Support;

namespace HandsFreeStartup.Reports.Tests.Summary;

[Trait("Speed", "Fast")]
public sealed class OutOfServiceNoticeTests
{
    [Fact]
    public void Carbon_monoxide_that_stays_over_the_limit_is_told_in_writing_with_what_is_still_open()
    {
        ScriptedJob job = new ScriptedJob()
            .Answer(AnswerWord.No).Order(CommandWord.Next).Order(CommandWord.Done).Wait(TimeSpan.FromMinutes(9)).Order(CommandWord.Next)
            .Read("oxygen", 8.0m).Read("flue_co", 500m).Read("flue_co", 450m).Answer(AnswerWord.Confirm)
            .Order(CommandWord.EmergencyStop).Order(CommandWord.Finish).Answer(AnswerWord.Confirm).Dictate("the house was left at once");

        string notice = OutOfServiceNotice.Of(ScriptedJob.Plan, job.Events)!;

        Assert.Contains("UNSAFE FURNACE, NOT IN SERVICE", notice, StringComparison.Ordinal);
        Assert.Contains("CO in the flue, air-free", notice, StringComparison.Ordinal);
        Assert.Contains("Still open: manifold port", notice, StringComparison.Ordinal);
        Assert.All(notice.Split('\n'), line => Assert.InRange(line.Length, 0, 72));
        Assert.EndsWith(notice, StartupSummary.Of(ScriptedJob.Plan, job.Events, null), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(EndKind.OwnersWish, false)]
    [InlineData(EndKind.NotInOrder, true)]
    [InlineData(EndKind.Unsafe, true)]
    public void Only_who_has_a_cause_to_correct_is_told_to_correct_it(EndKind kind, bool hasCause)
    {
        string notice = string.Join(' ', OutOfServiceNotice.Of(ScriptedJob.Plan, Ended(kind))!.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

        Assert.Equal(hasCause, notice.Contains("corrected the cause", StringComparison.Ordinal));
        Assert.Equal(kind == EndKind.OwnersWish, notice.Contains("BY YOUR WISH", StringComparison.Ordinal));
        Assert.Contains("- Burner off: done", notice, StringComparison.Ordinal);
        Assert.Contains("Still open: instrument cap", notice, StringComparison.Ordinal);
    }

    [Fact]
    public void An_end_by_wish_with_an_instrument_cap_off_is_not_headed_unsafe()
    {
        IReadOnlyList<StartupEvent> events = Ended(EndKind.OwnersWish);
        JobRecord facts = JobRecord.Of(ScriptedJob.Plan, events);

        Assert.Equal("Not signed", CopyVerdict.Of(facts, 0).Word);
        Assert.Contains(OpenQuestions.Of(facts), question => question == "STILL OPEN: instrument cap");
    }

    static IReadOnlyList<StartupEvent> Ended(EndKind kind)
    {
        StartupEvent[] begun = [.. new ScriptedJob().Answer(AnswerWord.No).Events];
        DateTimeOffset at = begun[^1].At;
        return
        [
            .. begun, new ThingOpened(at, "look", new Thing("instrument cap", false)), new EndDecided(at, kind, "the owner wants to wait"),
            new StepEntered(at, "safe-burner", Arrival.Forward), new StepDone(at, "safe-burner", null), new EndedOutOfService(at, "the owner wants to wait"),
        ];
    }

    [Fact]
    public void A_signed_start_up_has_no_notice() => Assert.Null(OutOfServiceNotice.Of(ScriptedJob.Plan, ScriptedJob.Whole().Events));
}
