using System.Globalization;
using System.Text;
using System.Text.Json;
using CsvHelper;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Review;

/// <summary>A folder of jobs into which somebody has put what he liked.</summary>
public sealed class HostileFolderTests : IDisposable
{
    readonly string _data = Directory.CreateTempSubdirectory("handsfree-").FullName;
    readonly string _jobs;

    public HostileFolderTests()
    {
        _jobs = Path.Combine(_data, "jobs");
        FixtureJob.Fill(_jobs, 3);
    }

    public void Dispose() => Directory.Delete(_data, recursive: true);

    [Fact]
    public async Task One_bad_job_never_hides_the_others_and_each_is_told()
    {
        string[] alone = Jobs((await InProcess.Run("review", "--data", _data, "--json")).Output);
        List<string> hostile = [];
        foreach ((string what, Action<string> make) in HostileRecords.All)
        {
            string path = Path.Combine(_jobs, $"{hostile.Count:000}.db");
            make(path);
            hostile.Add(path);
            Assert.NotEmpty(what);
        }

        ProgramResult first = await InProcess.Run("review", "--data", _data);
        ProgramResult again = await InProcess.Run("review", "--data", _data);
        ProgramResult json = await InProcess.Run("review", "--data", _data, "--json");

        Assert.Equal((1, ""), (first.ExitCode, first.Error));
        Assert.Equal(3, alone.Length);
        Assert.Equal(alone, Jobs(json.Output).Where(job => job.Contains("/job-0000", StringComparison.Ordinal)));
        Assert.All(hostile.Where(path => !Directory.Exists(path)), path => Assert.Contains(path, first.Output, StringComparison.Ordinal));
        Assert.Equal(first.Output, again.Output);
        Assert.DoesNotContain('\u001b', first.Output + json.Output);
        Assert.Equal(3 + hostile.Count(path => !Directory.Exists(path)), Jobs(json.Output).Length);
    }

    [Fact]
    public async Task Each_of_them_by_itself_is_a_review_a_verification_and_a_sentence_and_never_a_defect()
    {
        foreach ((string what, Action<string> make) in HostileRecords.All)
        {
            string path = Path.Combine(_jobs, "hostile.db");
            make(path);
            foreach (string[] command in (string[][])
            [
                ["review", path, "--plain"], ["review", path, "--json"], ["verify", path], ["copies", path, "--out", Path.Combine(_data, "out")],
                ["review", path, "--csv", Path.Combine(_data, "table.csv")], ["review", path, "--accept", "--lead", "L. Ead"],
                ["forget", path, "--keep-readings", "--by", "L. Ead"], ["start", "--keys", "--plain", "--resume", path],
            ])
            {
                ProgramResult result = await InProcess.Run([.. command, "--data", _data]);
                Assert.True(result.ExitCode is 0 or 1 or 2, $"{what}: {string.Join(' ', command)}: {result.ExitCode} {result.Error}");
                Assert.True(result.ExitCode != 2 || result.Error.TrimEnd().EndsWith('.'), $"{what}: {string.Join(' ', command)}: {result.Error}");
                Assert.DoesNotContain('\u001b', result.Output + result.Error);
            }

            Remove(path);
        }
    }

    [Theory]
    [InlineData("{}")]
    [InlineData("null")]
    [InlineData("[]")]
    [InlineData("{\"Path\":null,\"Review\":null,\"Checkpoint\":null}")]
    [InlineData("{\"Path\":\"/elsewhere.db\"")]
    [InlineData("\ud800")]
    [InlineData("7")]
    public async Task A_row_of_the_index_that_is_none_costs_only_time(string content)
    {
        string sound = (await InProcess.Run("review", "--data", _data)).Output;
        RawDatabase.Query(Path.Combine(_data, "review-index.db"), $"update job set content='{content}'");

        ProgramResult result = await InProcess.Run("review", "--data", _data);

        Assert.Equal((1, sound, ""), (result.ExitCode, result.Output, result.Error));
    }

    [Fact]
    public async Task A_row_of_the_index_that_tells_of_another_job_is_not_believed()
    {
        string sound = (await InProcess.Run("review", "--data", _data)).Output;
        RawDatabase.Query(Path.Combine(_data, "review-index.db"), "update job set content=(select content from job limit 1)");

        Assert.Equal(sound, (await InProcess.Run("review", "--data", _data)).Output);
    }

    [Fact]
    public async Task A_recording_that_was_changed_in_place_is_seen_the_next_time_though_its_time_was_set_back()
    {
        string job = Path.Combine(_jobs, "spoken.db");
        string clip = new AttachmentStore(job).Keep(new float[16_000]);
        HostileRecords.Write(job, [.. FixtureJob.Events().Take(2), new UtteranceHeard(Some.Moment, Evidence.Typed("x") with { Clip = clip })]);
        ProgramResult before = await InProcess.Run("review", "--data", _data);
        string file = new AttachmentStore(job).Find(AttachmentKind.Recording, clip)!;
        DateTime written = File.GetLastWriteTimeUtc(file);
        byte[] sound = await File.ReadAllBytesAsync(file);
        sound[20_000] = 1;
        await File.WriteAllBytesAsync(file, sound);
        File.SetLastWriteTimeUtc(file, written);

        ProgramResult after = await InProcess.Run("review", "--data", _data);

        Assert.DoesNotContain("was changed or damaged", before.Output, StringComparison.Ordinal);
        Assert.Contains($"the recording {clip} was changed or damaged", after.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Links_are_not_followed_and_a_circle_of_them_ends()
    {
        string elsewhere = Directory.CreateDirectory(Path.Combine(_data, "elsewhere")).FullName;
        FixtureJob.Write(Path.Combine(elsewhere, "strange.db"));
        Directory.CreateSymbolicLink(Path.Combine(_jobs, "circle"), _jobs);
        Directory.CreateSymbolicLink(Path.Combine(_jobs, "away"), elsewhere);
        File.CreateSymbolicLink(Path.Combine(_jobs, "linked.db"), Path.Combine(elsewhere, "strange.db"));

        ProgramResult result = await InProcess.Run("review", "--data", _data);

        Assert.StartsWith("4 of 4 jobs", result.Output, StringComparison.Ordinal);
        Assert.Contains("linked.db is a link to somewhere else", result.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_record_named_by_a_link_is_the_record_that_it_leads_to()
    {
        File.CreateSymbolicLink(Path.Combine(_data, "mine.db"), Path.Combine(_jobs, "job-00000.db"));

        Assert.Equal(0, (await InProcess.Run("verify", Path.Combine(_data, "mine.db"), "--data", _data)).ExitCode);
    }

    [Fact]
    public async Task Names_and_notes_reach_terminal_JSON_and_table_as_marks_and_a_formula_as_text()
    {
        const string name = "=HYPERLINK(\"http://x\")\u001b]52;c;AAAA\u0007\u202E";
        string job = Path.Combine(_jobs, "named.db");
        IReadOnlyList<StartupEvent> events = FixtureJob.Events();
        StartupBegan began = (StartupBegan)events[0];
        HostileRecords.Write(job, [began with { Job = began.Job with { Technician = name } }, .. events.Skip(1)]);

        string lines = (await InProcess.Run("review", job, "--plain", "--data", _data)).Output;
        string json = (await InProcess.Run("review", job, "--json", "--data", _data)).Output;
        await InProcess.Run("review", job, "--csv", Path.Combine(_data, "table.csv"), "--data", _data);

        Assert.Contains("=HYPERLINK(\"http://x\")␛]52;c;AAAA␇\uFFFD", lines, StringComparison.Ordinal);
        Assert.Equal(name, JsonDocument.Parse(json).RootElement.GetProperty("jobs")[0].GetProperty("technician").GetString());
        Assert.All(lines + json, letter => Assert.False(char.IsControl(letter) && letter != '\n'));
        using CsvReader table = new(new StreamReader(Path.Combine(_data, "table.csv"), Encoding.UTF8), CultureInfo.InvariantCulture);
        Assert.True(table.Read() && table.ReadHeader() && table.Read());
        Assert.Equal("'=HYPERLINK(\"http://x\")␛]52;c;AAAA␇\uFFFD", table.GetField("technician"));
        Assert.All(table.HeaderRecord!.Where(column => column is "value" or "lower"), column => Assert.DoesNotContain('\'', table.GetField(column)!));
    }

    [Fact]
    public async Task Forgetting_a_record_whose_name_is_a_pattern_removes_nothing_of_the_others()
    {
        string pattern = Path.Combine(_jobs, "*.db");
        FixtureJob.Write(pattern);
        string copy = Path.Combine(_jobs, "job-00000-appliance.pdf");
        await File.WriteAllTextAsync(copy, "a copy");

        Assert.Equal(0, (await InProcess.Run("forget", pattern, "--keep-readings", "--by", "L. Ead", "--data", _data)).ExitCode);

        Assert.True(File.Exists(copy));
    }

    static string[] Jobs(string json) => [.. JsonDocument.Parse(json).RootElement.GetProperty("jobs").EnumerateArray().Select(job => job.GetRawText())];

    static void Remove(string path)
    {
        foreach (string file in Directory.EnumerateFileSystemEntries(Path.GetDirectoryName(path)!, $"{Path.GetFileNameWithoutExtension(path)}*"))
        {
            if (Directory.Exists(file) && new DirectoryInfo(file).LinkTarget is null)
            {
                Directory.Delete(file, recursive: true);
            }
            else
            {
                File.Delete(file);
            }
        }
    }
}
