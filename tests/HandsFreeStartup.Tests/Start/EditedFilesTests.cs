using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Start;

/// <summary>Files that somebody changes between two runs of a job, to make it pass.</summary>
public sealed class EditedFilesTests : IDisposable
{
    readonly TemporaryFolder _data = new();
    readonly string _files;

    public EditedFilesTests()
    {
        _files = Directory.CreateDirectory(Path.Combine(_data.Path, "files")).FullName;
        foreach (string name in new[] { "gas-furnace", "demo-furnace", "demo-site" })
        {
            File.Copy(Path.Combine(AppContext.BaseDirectory, "checklists", $"{name}.yaml"), Named(name));
        }
    }

    string Named(string name) => Path.Combine(_files, $"{name}.yaml");

    string[] Sheets => ["--appliance", Named("demo-furnace"), "--site", Named("demo-site"), "--checklist", Named("gas-furnace"), "--occasion", "repair"];

    [Fact]
    public async Task Limits_that_were_loosened_after_the_job_began_judge_nothing()
    {
        await Begin();
        foreach (string name in new[] { "gas-furnace", "demo-furnace", "demo-site" })
        {
            string text = await File.ReadAllTextAsync(Named(name));
            await File.WriteAllTextAsync(Named(name), text.Replace("upper: 9\n", "upper: 400\n", StringComparison.Ordinal).Replace("safety_stop: true", "safety_stop: false", StringComparison.Ordinal));
        }

        ProgramResult resumed = await Resume(["room monoxide 30", "next"]);

        Assert.Contains("not proven to be at most 9 ppm", resumed.Output, StringComparison.Ordinal);
        Assert.DoesNotContain(StoredJob.Read(_data.Job).Events, happened => happened is StepDone { StepId: "room-before" });
    }

    [Fact]
    public async Task Files_that_are_gone_are_not_needed_any_more()
    {
        await Begin();
        Directory.Delete(_files, recursive: true);

        ProgramResult resumed = await Resume(["room monoxide 1", "next"]);

        Assert.Equal(0, resumed.ExitCode);
        Assert.Contains(StoredJob.Read(_data.Job).Events, happened => happened is StepDone { StepId: "room-before" });
    }

    [Theory]
    [InlineData("--appliance", "demo-furnace")]
    [InlineData("--site", "demo-site")]
    [InlineData("--checklist", "gas-furnace")]
    [InlineData("--technician", "somebody else")]
    [InlineData("--service-type", "seasonal")]
    public async Task Other_files_or_another_name_are_not_taken_for_a_job_that_goes_on(string option, string value)
    {
        await Begin();
        int before = StoredJob.Read(_data.Job).Events.Count;

        ProgramResult swapped = await ProgramProcess.Run("start", "--resume", "--keys", "--plain", "--data", _data.Path, option, File.Exists(Named(value)) ? Named(value) : value);

        Assert.Equal(2, swapped.ExitCode);
        Assert.Contains("is resumed with the files, times and name that it began with", swapped.Error, StringComparison.Ordinal);
        Assert.Equal(before, StoredJob.Read(_data.Job).Events.Count);
    }

    [Theory]
    [InlineData("update event set body=replace(body, '\"answer\":false', '\"answer\":true')")]
    [InlineData("update event set recorded_at='2031-01-01T00:00:00.0000000+00:00' where sequence=3")]
    [InlineData("update event set body=replace(body, 'upper: 9', 'upper: 400') where sequence=1")]
    [InlineData("delete from event where kind='answer-given'")]
    [InlineData("delete from event where sequence=2")]
    [InlineData("insert into event select max(sequence)+1, recorded_at, 'startup-signed', body, hash, hash from event")]
    public async Task A_record_that_was_edited_is_not_gone_on_with(string edit)
    {
        await Begin();
        RawDatabase.Query(_data.Job, $"drop trigger if exists event_is_never_changed; drop trigger if exists event_is_never_removed; {edit}");

        ProgramResult resumed = await Resume(["room monoxide 1", "next"]);

        Assert.NotEqual(0, resumed.ExitCode);
        Assert.Single(resumed.Error.Trim().Split('\n'));
        Assert.DoesNotContain("CO in the room", resumed.Output, StringComparison.Ordinal);
    }

    public void Dispose() => _data.Dispose();

    /// <summary>A job that is interrupted before the first reading.</summary>
    async Task Begin()
    {
        ProgramResult begun = await ProgramProcess.RunTyping(["done", "done", "no", "done"], ["start", "--keys", "--plain", "--data", _data.Path, .. Sheets]);
        Assert.Contains("CO in the room before the start", begun.Output, StringComparison.Ordinal);
    }

    Task<ProgramResult> Resume(string[] lines) => ProgramProcess.RunTyping(lines, "start", "--resume", _data.Job, "--keys", "--plain", "--data", _data.Path);
}
