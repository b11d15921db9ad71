using System.Text.Json;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Tests.Support;
using Json.Schema;

namespace HandsFreeStartup.Tests.Review;

/// <summary>The command review as its user runs it, on records on the disk.</summary>
public sealed class ReviewCommandTests : IDisposable
{
    readonly string _data = Directory.CreateTempSubdirectory("handsfree-").FullName;
    readonly string _jobs;

    public ReviewCommandTests()
    {
        _jobs = Path.Combine(_data, "jobs");
        FixtureJob.Fill(_jobs, 3);
    }

    [Fact]
    public async Task A_folder_is_a_list_of_jobs_and_then_what_must_be_looked_at_and_knows_no_names()
    {
        ProgramResult result = await ProgramProcess.Run("review", "--data", _data);

        Assert.Equal((1, ""), (result.ExitCode, result.Error));
        Assert.StartsWith("3 of 3 jobs must be looked at.", result.Output, StringComparison.Ordinal);
        Assert.Contains("job-2", result.Output, StringComparison.Ordinal);
        Assert.Contains("DOUBT   The timer of \"Warm up\" was half over and over at the same moment", result.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Quarry", result.Output + await File.ReadAllTextAsync(Path.Combine(_data, "review-index.db")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_index_answers_as_the_jobs_do_and_is_made_anew_when_it_is_lost_or_damaged()
    {
        string index = Path.Combine(_data, "review-index.db");
        string first = (await ProgramProcess.Run("review", _jobs, "--data", _data)).Output;

        string remembered = (await ProgramProcess.Run("review", _jobs, "--data", _data)).Output;
        await File.WriteAllTextAsync(index, new string('x', 5000));
        string damaged = (await ProgramProcess.Run("review", _jobs, "--data", _data)).Output;
        File.Delete(index);
        string lost = (await ProgramProcess.Run("review", _jobs, "--data", _data)).Output;

        Assert.All([remembered, damaged, lost], output => Assert.Equal(first, output));
    }

    [Fact]
    public async Task A_job_that_has_changed_is_read_again()
    {
        string job = Path.Combine(_jobs, "job-00001.db");
        await ProgramProcess.Run("review", "--data", _data);
        RawDatabase.Query(job, "drop trigger event_is_never_changed; update event set body=replace(body, '7.2', '7.9') where sequence=12");

        ProgramResult result = await ProgramProcess.Run("review", "--data", _data);

        Assert.Equal(1, result.ExitCode);
        Assert.Contains("DANGER  ", result.Output[result.Output.IndexOf(job, StringComparison.Ordinal)..], StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_job_is_told_in_full()
    {
        ProgramResult result = await ProgramProcess.Run("review", "job-00000", "--data", _data);

        Assert.Equal(1, result.ExitCode);
        Assert.Contains("Must be looked at.", result.Output, StringComparison.Ordinal);
        Assert.Contains("\"Mrs. Quarry was present\"", result.Output, StringComparison.Ordinal);
        Assert.Matches("Checkpoint: [0-9]+ events, ends", result.Output);
    }

    [Fact]
    public async Task What_the_lead_accepts_is_signed_into_the_record_and_need_not_be_looked_at_again()
    {
        ProgramResult accepted = await ProgramProcess.Run("review", "job-00000", "--accept", "--lead", "L. Ead", "--data", _data);
        ProgramResult after = await ProgramProcess.Run("review", "job-00000", "--data", _data);

        Assert.Equal((0, ""), (accepted.ExitCode, accepted.Error));
        Assert.Equal(0, after.ExitCode);
        StoredJob stored = StoredJob.Read(Path.Combine(_jobs, "job-00000.db"));
        Assert.Empty(stored.Verification.Findings);
        Assert.Equal(("L. Ead", ReviewOutcome.Accepted), stored.Events[^1] is RecordReviewed reviewed ? (reviewed.Lead, reviewed.Outcome) : default);
        Assert.Contains(stored.Verification.Checkpoint!.ToString(), accepted.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_danger_is_accepted_only_with_a_remark_and_a_record_that_does_not_verify_not_at_all()
    {
        string job = Path.Combine(_jobs, "danger.db");
        using (StartupLog log = StartupLog.Create(job))
        {
            StartupEvent[] events = [.. FixtureJob.Events()];
            foreach (StartupEvent happened in events)
            {
                log.Append(happened);
            }

            log.Append(new MonoxideJudged(events[^1].At, events.OfType<ReadingEntered>().First().StepId, new ReadingKey("flue_co", "low"))
            {
                Place = MonoxidePlace.Flue,
                Action = MonoxideAction.ShutOff,
                Do = "Shut the furnace off.",
                Source = "invented",
                Counts = true,
                Ppm = 450,
            });
        }

        ProgramResult silent = await ProgramProcess.Run("review", "danger", "--accept", "--lead", "L. Ead", "--data", _data);
        RawDatabase.Query(job, "drop trigger event_is_never_changed; update event set body=replace(body, '7.2', '7.9') where sequence=12");
        ProgramResult changed = await ProgramProcess.Run("review", "danger", "--accept", "--lead", "L. Ead", "--remark", "it was put right", "--data", _data);

        Assert.Equal((2, 2), (silent.ExitCode, changed.ExitCode));
        Assert.Contains("--remark", silent.Error, StringComparison.Ordinal);
        Assert.Contains("450 ppm", silent.Error, StringComparison.Ordinal);
        Assert.Contains("does not verify", changed.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("by name", "--accept")]
    [InlineData("what is to be done", "--return", "--lead", "L. Ead")]
    [InlineData("either accepted or returned", "--accept", "--return", "--lead", "L. Ead")]
    public async Task A_word_that_lacks_something_is_refused(string message, params string[] options)
    {
        ProgramResult result = await ProgramProcess.Run(["review", "job-00000", "--data", _data, .. options]);

        Assert.Equal((2, ""), (result.ExitCode, result.Output));
        Assert.Contains(message, Assert.Single(result.Error.Trim().Split('\n')), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_job_that_has_not_ended_is_neither_accepted_nor_a_failure()
    {
        string job = Path.Combine(_jobs, "early.db");
        using (StartupLog log = StartupLog.Create(job))
        {
            log.Append(FixtureJob.Events()[0]);
        }

        ProgramResult accepted = await ProgramProcess.Run("review", "early", "--accept", "--lead", "L. Ead", "--data", _data);
        ProgramResult reviewed = await ProgramProcess.Run("review", "early", "--data", _data);

        Assert.Equal(2, accepted.ExitCode);
        Assert.Contains("neither signed nor ended", accepted.Error, StringComparison.Ordinal);
        Assert.Contains("DOUBT", reviewed.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_is_no_record_and_a_record_in_use_are_told_among_the_others()
    {
        await File.WriteAllTextAsync(Path.Combine(_jobs, "letter.db"), "Dear Mrs. Quarry");
        using StartupLog log = StartupLog.Open(Path.Combine(_jobs, "job-00002.db"));

        ProgramResult result = await ProgramProcess.Run("review", "--data", _data);

        Assert.Equal((1, ""), (result.ExitCode, result.Error));
        Assert.Matches("! letter +UNREADABLE", result.Output);
        Assert.Matches("  job-00002 +under way", result.Output);
    }

    [Theory]
    [InlineData("--data", "DATA")]
    [InlineData("job-00000", "--data", "DATA")]
    public async Task The_json_fits_its_schema(params string[] arguments)
    {
        await File.WriteAllTextAsync(Path.Combine(_jobs, "letter.db"), "Dear Mrs. Quarry");
        ProgramResult result = await ProgramProcess.Run(["review", .. arguments.Select(argument => argument == "DATA" ? _data : argument), "--json"]);
        JsonSchema schema = JsonSchema.FromText(await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "review.schema.json")));
        using JsonDocument document = JsonDocument.Parse(result.Output);

        EvaluationResults evaluation = schema.Evaluate(document.RootElement, new EvaluationOptions { OutputFormat = OutputFormat.List, RequireFormatValidation = true });

        Assert.True(evaluation.IsValid, JsonSerializer.Serialize(evaluation));
        Assert.True(document.RootElement.GetProperty("jobs").GetArrayLength() > 0);
        using JsonDocument wrong = JsonDocument.Parse(result.Output.Replace("\"doubt\"", "\"perhaps\"", StringComparison.Ordinal));
        Assert.False(schema.Evaluate(wrong.RootElement).IsValid, "the schema accepts anything");
    }

    [Fact]
    public async Task Readings_and_results_of_all_jobs_go_into_one_table()
    {
        string table = Path.Combine(_data, "readings.csv");

        ProgramResult result = await ProgramProcess.Run("review", "--csv", table, "--data", _data);

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        string[] lines = await File.ReadAllLinesAsync(table);
        Assert.Equal("job_id,technician,at,step_id,scope,quantity,value,unit,expanded_uncertainty,lower,upper,limit_source,verdict,state,heard,certainty,clip,unrounded", lines[0]);
        Assert.Contains("job-1,T. Tester,2031-03-04T08:08:00.0000000+00:00,combustion-low,low,oxygen,7.2,%,0.3,6.0,11.0,maker's instructions (invented),pass,final,voice,green,,", lines);
        Assert.Equal(3, lines.Count(line => line.Contains(",co_air_free,", StringComparison.Ordinal) && line.Contains(",low,", StringComparison.Ordinal)));
        Assert.DoesNotContain(lines, line => line.Contains("Quarry", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Nothing_to_review_is_one_sentence_and_exit_code_2()
    {
        ProgramResult result = await ProgramProcess.Run("review", "--data", Path.Combine(_data, "none"));

        Assert.Equal((2, ""), (result.ExitCode, result.Output));
        Assert.Single(result.Error.Trim().Split('\n'));
    }

    public void Dispose() => Directory.Delete(_data, recursive: true);
}
