using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Reports.Copies;
using HandsFreeStartup.Reports.Copies.Narrow;
using HandsFreeStartup.Reports.Copies.Parts;
using HandsFreeStartup.Reports.Review;
using HandsFreeStartup.Reports.Summary;
using HandsFreeStartup.Reports.Tests.Support;

namespace HandsFreeStartup.Reports.Tests.Copies;

/// <summary>The exceptions of a job stand first, in full and in the same words, wherever the job is told.</summary>
[Trait("Speed", "Fast")]
public sealed class ExceptionTests
{
    static readonly DateTimeOffset At = new(2026, 3, 14, 9, 9, 20, TimeSpan.Zero);

    static readonly string Clip = $"{new string('b', 64)}.wav";

    static readonly Evidence Heard = new("monoxide", Channel.Voice, Certainty.Green) { Clip = Clip };

    [Fact]
    public void Every_copy_begins_with_every_exception_in_full()
    {
        CopySource source = Troubled();
        ImmutableArray<JobException> exceptions = JobRecord.Of(source.Plan, source.Events).Exceptions;
        Assert.Equal(
            [ExceptionKind.Alarm, ExceptionKind.Alarm, ExceptionKind.UnsafeAnswer, ExceptionKind.OutsideLimit, ExceptionKind.SkippedStep, ExceptionKind.ClockJump],
            exceptions.Select(exception => exception.Kind));

        foreach (byte[] copy in CopiesTests.All(source, Paper.Letter))
        {
            using PdfPages pdf = new(copy);
            Follows(exceptions, pdf.Texts[0], "House at the mill");
        }

        Follows(exceptions, Joined(NarrowCopy.Of(source, 32)), "House at the mill");
        Follows(exceptions, Joined(StartupSummary.Of(source.Plan, source.Events, null)), "House at the mill");
    }

    [Fact]
    public void The_review_begins_with_the_exceptions_and_plays_what_was_recorded()
    {
        CopySource source = Troubled();
        ImmutableArray<JobException> exceptions = JobRecord.Of(source.Plan, source.Events).Exceptions;

        ReviewFinding[] findings = [.. JobReview.Of(source.Plan, source.Events, RecordState.Sound).Findings];

        Assert.Equal(exceptions.Take(3).Select(exception => $"{exception.Subject}."), findings.Take(3).Select(finding => finding.Text));
        Assert.All(findings.Take(3), finding => Assert.Equal(Weight.Danger, finding.Weight));
        Assert.Equal(exceptions.Skip(3).Select(exception => exception.Reason), findings.Where(finding => finding.Weight == Weight.Doubt).Take(3).Select(finding => finding.Quote));
        Assert.Contains(findings, finding => finding is { Rule: "alarm", StepId: "combustion-high" } && finding.Text.Contains("450 ppm", StringComparison.Ordinal) && finding.Clips.SequenceEqual([Clip]));
    }

    [Fact]
    public void Forty_long_exceptions_take_a_second_page_and_not_smaller_letters()
    {
        CopySource clean = CopiesTests.Whole();
        string Reason(int i) => FormattableString.Invariant($"reason {i} {string.Join(' ', Enumerable.Repeat("the maker says so on page nine", 6))} end{i}");
        CopySource source = clean with
        {
            Events = [.. clean.Events, .. Enumerable.Range(1, 40).Select(i => new ExceptionMade(At, "combustion-high", DictationPurpose.LimitReason, FormattableString.Invariant($"value {i}"), Reason(i), Heard))],
        };
        using PdfPages pdf = new(StartupCopies.Appliance(source, Paper.A4));

        Assert.True(pdf.Pages.Count > 1);
        Assert.All(Enumerable.Range(1, 40), i => Assert.Contains(Reason(i), pdf.Text, StringComparison.Ordinal));
        Assert.All(pdf.Pages.SelectMany(page => page.Letters), letter => Assert.True(letter.PointSize >= 6.99));
    }

    [Fact]
    public void A_value_that_only_its_uncertainty_takes_into_a_tier_is_not_called_more_than_good_practice_wants()
    {
        MonoxideJudged judged = new(At, "combustion-high", new ReadingKey("oxygen", "high"))
        {
            Place = MonoxidePlace.Flue,
            Action = MonoxideAction.FindSource,
            Do = "More than good practice wants: look for the cause, and whether it rises.",
            Source = "common practice, no source",
            Counts = false,
            Ppm = 70,
            IsAirFree = true,
        };

        string text = JobRecord.Of(ScriptedJob.Plan, [judged]).Exceptions.Single().Text;

        Assert.Equal("CO in the flue, air-free (high) 70 ppm is not proven to be below 100 ppm", text);
        Assert.Contains("More than good practice wants", JobRecord.Of(ScriptedJob.Plan, [judged with { Counts = true, Ppm = 101 }]).Exceptions.Single().Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_kind_of_event_has_a_sentence()
    {
        Type[] kinds = [.. typeof(StartupEvent).Assembly.GetTypes().Where(type => type.IsSubclassOf(typeof(StartupEvent)))];
        Assert.True(kinds.Length > 50);

        Assert.All(kinds, kind =>
        {
            string sentence = EventSentence.Of((StartupEvent)Sample.Of(kind), id => $"title of {id}");
            Assert.DoesNotContain(kind.Name, sentence, StringComparison.Ordinal);
            Assert.DoesNotContain("{", sentence, StringComparison.Ordinal);
            Assert.NotEmpty(sentence);
        });
    }

    /// <summary>Each exception in full, in its order, and only then the rest.</summary>
    static void Follows(IEnumerable<JobException> exceptions, string text, string rest)
    {
        int at = 0;
        foreach (JobException exception in exceptions)
        {
            int found = Ascii(text).IndexOf(Ascii(exception.Text), at, StringComparison.Ordinal);
            Assert.True(found >= at, $"'{exception.Text}' does not stand after letter {at} of: {text}");
            at = found;
        }

        Assert.True(text.IndexOf(rest, StringComparison.Ordinal) > at, "The exceptions stand before everything else.");
    }

    static string Ascii(string text) => text.Replace('–', '-');

    static string Joined(string text) => string.Join(' ', text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));

    static CopySource Troubled()
    {
        StartupEvent[] whole = [.. ScriptedJob.Whole().Events];
        EnteredReading high = new(new ReadingKey("flue_co", "high"), 290m, "ppm", Heard) { ExpandedUncertainty = 20m };
        return CopiesTests.Source(ScriptedJob.Plan,
        [
            .. whole[..^1],
            new ReadingEntered(At, "combustion-high", high),
            new MonoxideJudged(At, "combustion-high", high.Key)
            {
                Place = MonoxidePlace.Flue,
                Action = MonoxideAction.ShutOff,
                Do = "Shut the furnace off.",
                Source = "a standard (invented)",
                Counts = true,
                Ppm = 450,
                IsAirFree = true,
            },
            new StartupStopped(At, StopCause.GasSmell, Heard),
            new StartupResumed(At, "the regulator vent was loose and was tightened"),
            new AnswerGiven(At, "smell", true, Heard),
            new ExceptionMade(At, "adjust-high", DictationPurpose.LimitReason, "Static pressure 0.55 in. w.c. is over 0.50 in. w.c.", "the coil is replaced next week", Heard),
            new ClockJumped(At, TimeSpan.FromMinutes(7), TimeSpan.Zero),
            whole[^1],
        ]);
    }
}
