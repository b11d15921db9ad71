using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Reports.Summary;
using HandsFreeStartup.Reports.Tests.Support;

namespace HandsFreeStartup.Reports.Tests.Summary;

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

    [Fact]
    public void A_signed_start_up_has_no_notice() => Assert.Null(OutOfServiceNotice.Of(ScriptedJob.Plan, ScriptedJob.Whole().Events));
}
