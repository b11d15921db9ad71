using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Reports.Summary;
using HandsFreeStartup.Reports.Tests.Support;

namespace HandsFreeStartup.Reports.Tests.Summary;

[Trait("Speed", "Fast")]
public sealed class StartupSummaryTests
{
    [Fact]
    public void A_whole_job_reads_as_approved()
    {
        string approved = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Summary", "approved-summary.txt"));

        Assert.Equal(approved, StartupSummary.Of(ScriptedJob.Plan, ScriptedJob.Whole().Events, "37 events, ends 0123 4567 89AB CDEF"));
    }

    [Fact]
    public void Every_beginning_of_a_job_can_be_summed_up_within_72_columns()
    {
        IReadOnlyList<StartupEvent> events = ScriptedJob.Whole().Events;
        for (int count = 0; count <= events.Count; count++)
        {
            string summary = StartupSummary.Of(ScriptedJob.Plan, [.. events.Take(count)], null);

            Assert.All(summary.Split('\n'), line => Assert.InRange(line.Length, 0, 72));
            Assert.Contains(count == events.Count ? "completed and signed by T. Tester on 2026-" : "Not signed: ", Joined(summary), StringComparison.Ordinal);
            Assert.Contains("licensed person decide", Joined(summary), StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Long_dictation_and_long_words_are_wrapped_and_never_cut()
    {
        string word = new('#', 200);

        string summary = StartupSummary.Of(ScriptedJob.Plan, new ScriptedJob().Order(CommandWord.Note).Dictate($"the {word} \n\t was loose").Events, null);

        Assert.All(summary.Split('\n'), line => Assert.InRange(line.Length, 0, 72));
        Assert.Equal(200, summary.Count(letter => letter == '#'));
        Assert.Contains("was loose", summary, StringComparison.Ordinal);
    }

    [Fact]
    public void A_demonstration_says_so_at_the_top()
    {
        string summary = StartupSummary.Of(ScriptedJob.Plan, new ScriptedJob(isDemonstration: true).Events, null);

        Assert.StartsWith("DEMONSTRATION.", summary.Split('\n')[2], StringComparison.Ordinal);
    }

    [Fact]
    public void A_stop_that_was_not_resumed_is_the_verdict()
    {
        string summary = StartupSummary.Of(ScriptedJob.Plan, new ScriptedJob().Answer(AnswerWord.Yes).Events, null);

        Assert.Contains("Not signed: stopped for safety, gas was smelled, and not resumed", Joined(summary), StringComparison.Ordinal);
        Assert.Contains("\"Do you smell gas?\" was last answered yes. Leave the building.", Joined(summary), StringComparison.Ordinal);
    }

    [Fact]
    public void An_open_port_is_the_first_thing_to_be_looked_at()
    {
        ScriptedJob job = new ScriptedJob().Answer(AnswerWord.No).Order(CommandWord.Done).Order(CommandWord.Done);

        string summary = StartupSummary.Of(ScriptedJob.Plan, job.Events, null);

        Assert.Contains("-\n- STILL OPEN: manifold port\n", summary, StringComparison.Ordinal);
        Assert.Contains("manifold port (gas side): opened 09:00:03, STILL OPEN", summary, StringComparison.Ordinal);
    }

    [Fact]
    public void A_safety_limit_that_is_not_proven_is_to_be_looked_at()
    {
        ScriptedJob job = new ScriptedJob().Answer(AnswerWord.No).Order(CommandWord.Done).Order(CommandWord.Done)
            .Wait(TimeSpan.FromMinutes(9)).Order(CommandWord.Next).Read("oxygen", 7.6m).Read("flue_co", 900m);

        // By hand: 900 x 20.9 / (20.9 - 7.6) = 1414.3; U = sqrt((45 x 20.9 / 13.3)^2 + (1414.3 / 13.3 x 0.3)^2) = 77.6, one digit, rounded up.
        Assert.Contains("CO air-free (high) 1414 ± 80 ppm: FAIL (at most 400 ppm)", Joined(StartupSummary.Of(ScriptedJob.Plan, job.Events, null)), StringComparison.Ordinal);
    }

    [Fact]
    public void A_doubtful_reading_that_was_never_confirmed_is_shown_but_does_not_count()
    {
        ScriptedJob job = new ScriptedJob().Answer(AnswerWord.No).Order(CommandWord.Done).Order(CommandWord.Done)
            .Wait(TimeSpan.FromMinutes(9)).Order(CommandWord.Next).Read("oxygen", 7.6m, Certainty.Amber).Order(CommandWord.EmergencyStop);

        string summary = Joined(StartupSummary.Of(ScriptedJob.Plan, job.Events, null));

        Assert.Contains("NEVER CONFIRMED, not in the record", summary, StringComparison.Ordinal);
        Assert.Contains("was read back and never confirmed; it is not in the record", summary, StringComparison.Ordinal);
        Assert.Contains("No Oxygen (high) counts", summary, StringComparison.Ordinal);
    }

    /// <summary>Without the line breaks of the layout.</summary>
    static string Joined(string text) => string.Join(' ', text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
