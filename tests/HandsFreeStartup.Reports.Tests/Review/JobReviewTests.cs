using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Reports.Review;
using HandsFreeStartup.Reports.Tests.Support;

namespace HandsFreeStartup.Reports.Tests.Review;

/// <summary>Each rule on a job that shows what it looks for, and on one that does not. The plan and the readings are invented.</summary>
[Trait("Speed", "Fast")]
public sealed class JobReviewTests
{
    static readonly DateTimeOffset Begin = new(2026, 3, 14, 9, 0, 0, TimeSpan.Zero);

    [Fact]
    public void A_job_as_it_should_go_has_no_finding()
    {
        JobReview review = Of(Clean());

        Assert.Empty(review.Findings);
        Assert.Equal(JobStatus.Signed, review.Status);
        Assert.False(review.MustBeLookedAt);
    }

    [Fact]
    public void A_whole_job_with_its_correction_skip_and_note_shows_each_of_them_by_weight()
    {
        JobReview review = Of(ScriptedJob.Whole().Events);

        Assert.Equal(
            ["Doubt clock-went-forward", "Doubt skipped-step", "Note corrections", "Note note"],
            review.Findings.Select(finding => $"{finding.Weight} {finding.Rule}").Order());
        ReviewFinding skipped = review.Findings.Single(finding => finding.Rule == "skipped-step");
        Assert.Equal(("Step 'look' was skipped.", "panel is painted shut"), (skipped.Text, skipped.Quote));
        Assert.Equal("Oxygen (high): 2 tries. 6.70 % disregarded; none stands.",
            Of([.. ScriptedJob.Whole().Events.TakeWhile(happened => happened is not ReadingEntered { Reading.Value: 7.60m })]).Findings.Single(finding => finding.Rule == "corrections").Text);
        Assert.Equal(review.Findings.OrderByDescending(finding => finding.Weight), review.Findings);
        Assert.True(review.MustBeLookedAt);
    }

    [Fact]
    public void What_was_left_open_is_the_first_finding()
    {
        JobReview review = Of([.. Clean().TakeWhile(happened => happened is not ThingClosed)]);

        Assert.Equal(("left-open", Weight.Danger, "Still open: manifold port."), (review.Findings[0].Rule, review.Findings[0].Weight, review.Findings[0].Text));
        Assert.Contains(review.Findings, finding => finding.Rule == "unfinished");
        Assert.Equal(JobStatus.Unfinished, review.Status);
    }

    [Fact]
    public void A_plug_that_was_not_checked_for_leaks_counts_as_left_open() =>
        Assert.Contains(Of([.. Clean().Where(happened => happened is not ThingProved)]).Findings, finding => finding.Text == "Closed, but not checked for leaks: manifold port.");

    [Fact]
    public void A_stop_is_a_danger_whether_it_was_resumed_or_not()
    {
        StartupEvent stop = new StartupStopped(Begin.AddSeconds(30), StopCause.GasSmell, Evidence.Typed("gas smell"));

        Assert.Contains(Of([.. Clean().Take(4), stop]).Findings, finding => finding is { Rule: "stopped", Weight: Weight.Danger });
        ReviewFinding resumed = Of([.. Clean().Take(4), stop, new StartupResumed(Begin.AddSeconds(90), "regulator vent, aired")]).Findings.Single(finding => finding.Rule == "alarm");
        Assert.Equal((Weight.Danger, "Stopped: gas was smelled.", "regulator vent, aired"), (resumed.Weight, resumed.Text, resumed.Quote));
    }

    [Fact]
    public void A_timer_that_did_not_run_to_its_end_is_told_and_so_is_what_was_read_before()
    {
        StartupEvent[] events = [.. Clean().Where(happened => happened is not (TimerEnded or TimerHalfway))];

        Assert.Contains(Of(events).Findings, finding => finding is { Rule: "timer-cut-short", Text: "The timer of \"warm-up\" (8:00) did not run to its end." });
        Assert.Contains(Of(events).Findings, finding => finding is { Rule: "before-warm-up", Text: "Read before \"warm-up\" was over: Oxygen (high), CO in flue (high)." });
    }

    [Fact]
    public void A_timer_that_ended_too_soon_is_told() => Assert.Contains(
        Of([.. Clean().Select(happened => happened is TimerEnded ended ? ended with { At = ended.At.AddMinutes(-5) } : happened)]).Findings,
        finding => finding is { Rule: "timer-cut-short", Text: "The timer of \"warm-up\" (8:00) ended after 3:02." });

    [Fact]
    public void A_clock_that_went_back_is_told() => Assert.Contains(
        Of([.. Clean().Select(happened => happened is StartupSigned signed ? signed with { At = Begin } : happened)]).Findings, finding => finding.Rule == "clock-went-back");

    [Fact]
    public void A_reading_that_was_said_early_is_told_and_its_lack_too()
    {
        JobReview review = Of(Changed("oxygen", reading => reading with { IsEarly = true }));

        Assert.Contains(review.Findings, finding => finding.Rule == "early-reading");
        Assert.Contains(review.Findings, finding => finding is { Rule: "missing-reading", Text: "No Oxygen (high) counts in step \"combustion-high\"." });
    }

    [Theory]
    [InlineData(Verdict.ConditionalPass, false, "guard-band", Weight.Note)]
    [InlineData(Verdict.ConditionalFail, false, "guard-band", Weight.Danger)]
    [InlineData(Verdict.Fail, false, "limit", Weight.Danger)]
    [InlineData(Verdict.CannotTell, true, "limit", Weight.Danger)]
    [InlineData(Verdict.ConditionalPass, true, "guard-band", Weight.Danger)]
    public void Verdicts_weigh_by_what_they_prove(Verdict verdict, bool isSafety, string rule, Weight weight) => Assert.Contains(
        Of(Changed("oxygen", reading => reading with { Verdict = verdict, Limit = new DeclaredLimit("oxygen", 5m, 9.5m, "%", "invented", isSafety) })).Findings,
        finding => finding.Rule == rule && finding.Weight == weight && finding.Text.StartsWith("Oxygen (high) 7.60 ± 0.3 %", StringComparison.Ordinal));

    [Fact]
    public void A_value_that_was_given_up_twice_is_a_doubt()
    {
        ScriptedJob job = UpToCombustion().Read("oxygen", 6.7m).Order(CommandWord.Disregard).Read("oxygen", 6.1m).Order(CommandWord.Disregard).Read("oxygen", 7.6m).Read("flue_co", 17m);

        ReviewFinding corrections = Of(job.Events).Findings.Single(finding => finding.Rule == "corrections");

        Assert.Equal((Weight.Doubt, "Oxygen (high): 3 tries. 6.7 % disregarded, 6.1 % disregarded; 7.6 % stands."), (corrections.Weight, corrections.Text));
    }

    [Fact]
    public void The_recordings_of_a_finding_are_named()
    {
        string clip = $"{new string('a', 64)}.wav";

        Assert.Equal(clip, Assert.Single(Of(Changed("oxygen", reading => reading with
        {
            Evidence = new Evidence("oxygen seven point six", Channel.Voice, Certainty.Amber) { Why = "unusual", Clip = clip },
        })).Findings.Single(finding => finding.Rule == "doubtful-reading").Clips));
    }

    [Fact]
    public void What_is_wrong_with_the_record_outweighs_everything_even_an_acceptance()
    {
        JobReview review = JobReview.Of(ScriptedJob.Plan, [.. Clean(), new RecordReviewed(Begin.AddDays(1), "L. Ead", ReviewOutcome.Accepted, "")], new RecordState(["Event 3 does not match its hash."]));

        Assert.Equal(JobStatus.Accepted, review.Status);
        Assert.Equal((Weight.Danger, "Event 3 does not match its hash."), (review.Findings[0].Weight, review.Findings[0].Text));
        Assert.True(review.MustBeLookedAt);
    }

    [Theory]
    [InlineData(ReviewOutcome.Accepted, JobStatus.Accepted, false)]
    [InlineData(ReviewOutcome.Returned, JobStatus.Returned, true)]
    public void The_last_word_of_the_lead_decides_whether_it_must_still_be_looked_at(ReviewOutcome outcome, JobStatus status, bool mustBeLookedAt)
    {
        JobReview review = Of([.. ScriptedJob.Whole().Events, new RecordReviewed(Begin.AddDays(1), "L. Ead", outcome, "measure draft again")]);

        Assert.Equal((status, mustBeLookedAt), (review.Status, review.MustBeLookedAt));
        Assert.Contains(review.Findings, finding => finding is { Rule: "reviewed", Quote: "measure draft again" });
    }

    [Fact]
    public void No_text_of_a_finding_holds_what_was_dictated() => Assert.All(
        Of([.. ScriptedJob.Whole().Events, new RecordReviewed(Begin, "L. Ead", ReviewOutcome.Returned, "call the owner")]).Findings,
        finding => Assert.DoesNotMatch("painted shut|was stiff|call the owner", finding.Text));

    static JobReview Of(IReadOnlyList<StartupEvent> events) => JobReview.Of(ScriptedJob.Plan, events, RecordState.Sound);

    static ImmutableArray<StartupEvent> Changed(string fieldId, Func<EnteredReading, EnteredReading> change) =>
        [.. Clean().Select(happened => happened is ReadingEntered entered && entered.Reading.Key.FieldId == fieldId ? entered with { Reading = change(entered.Reading) } : happened)];

    static ScriptedJob UpToCombustion() => new ScriptedJob()
        .Answer(AnswerWord.No).Order(CommandWord.Done).Order(CommandWord.Done)
        .Wait(TimeSpan.FromMinutes(4)).Wait(TimeSpan.FromMinutes(4)).Order(CommandWord.Next);

    static IReadOnlyList<StartupEvent> Clean() => UpToCombustion()
        .Read("oxygen", 7.60m).Read("flue_co", 17m).Order(CommandWord.Next)
        .Read("manifold_pressure", 3.50m).Order(CommandWord.Next)
        .Order(CommandWord.Done).Answer(AnswerWord.Yes)
        .Order(CommandWord.Finish).Answer(AnswerWord.Confirm).Events;
}
