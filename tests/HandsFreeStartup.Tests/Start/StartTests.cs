using System.Diagnostics;
using System.Runtime.InteropServices;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Start;

/// <summary>The command start as a process: keys, interrupting, resuming, and what can be wrong.</summary>
public sealed partial class StartTests
{
    static readonly string Checklists = Folder("checklists");

    static readonly string[] Sheets =
    [
        "--appliance", Path.Combine(Checklists, "demo-furnace.yaml"), "--site", Path.Combine(Checklists, "demo-site.yaml"),
        "--checklist", Path.Combine(Checklists, "two-stage-natural-gas.yaml"),
    ];

    [Fact]
    public async Task A_whole_start_up_can_be_typed()
    {
        using TemporaryFolder data = new();
        string[] typed =
        [
            "done", "no", "done", "monoxide 0", "next", "yes", "line voltage 121", "control voltage 26.4", "next", "done", "done", "yes",
            "inlet pressure 7.2", "next", "done", "yes", "yes", "flame current 3.8", "next",
        ];

        ProgramResult result = await ProgramProcess.RunTyping(typed, ["start", "--keys", "--plain", "--data", data.Path, .. Sheets]);

        Assert.Equal(0, result.ExitCode);
        Assert.Contains("Warm up", result.Output, StringComparison.Ordinal);
        Assert.Contains("start --resume", result.Output, StringComparison.Ordinal);
        Assert.Equal(["0", "121", "26.4", "7.2", "3.8"], RecordLines.Of(data.Job).Select(line => line.Split('\t')[3]));
        Assert.False(Assert.IsType<StartupBegan>(StoredJob.Read(data.Job).Events[0]).Job.IsDemonstration);
    }

    [Fact]
    public async Task A_photo_is_kept_beside_the_record_and_an_end_out_of_service_prints_its_notice()
    {
        using TemporaryFolder data = new();
        string photo = Path.Combine(data.Path, "plate of the furnace.jpg");
        await File.WriteAllBytesAsync(photo, [0xff, 0xd8, 0xff, 0x00]);

        ProgramResult result = await ProgramProcess.RunTyping(
            [$"photo {photo}", "photo nowhere.jpg", "done", "finish", "yes", "the heat exchanger is cracked", "not in order", "done", "yes", "yes", "yes"],
            ["start", "--keys", "--plain", "--data", data.Path, .. Sheets]);

        PhotoAttached attached = Assert.Single(StoredJob.Read(data.Job).Events.OfType<PhotoAttached>());
        Assert.Equal(await File.ReadAllBytesAsync(photo), await File.ReadAllBytesAsync(Path.Combine(AttachmentKind.Photo.FolderOf(data.Job), attached.Name)));
        Assert.Contains("The photo nowhere.jpg cannot be kept: there is no such file", result.Output, StringComparison.Ordinal);
        Assert.Contains("NOTICE TO THE OWNER: FURNACE NOT PUT INTO SERVICE", result.Output, StringComparison.Ordinal);
        Assert.Contains("the heat exchanger is cracked", result.Output, StringComparison.Ordinal);

        string kept = Path.Combine(AttachmentKind.Photo.FolderOf(data.Job), attached.Name);
        Assert.Empty(StoredJob.Read(data.Job).Verification.Findings);
        await File.WriteAllBytesAsync(kept, [0xff, 0xd8, 0xff, 0x01]);
        Assert.Contains("was changed or damaged", Assert.Single(StoredJob.Read(data.Job).Verification.Findings).Message, StringComparison.Ordinal);
        File.Delete(kept);
        Assert.Contains("is missing", Assert.Single(StoredJob.Read(data.Job).Verification.Findings).Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_ended_job_is_not_resumed_by_name_or_by_itself()
    {
        using TemporaryFolder data = new();
        await ProgramProcess.RunTyping(
            ["done", "finish", "yes", "the owner wants to wait", "not in order", "done", "yes", "yes", "yes"], ["start", "--keys", "--plain", "--data", data.Path, .. Sheets]);
        Assert.IsType<EndedOutOfService>(StoredJob.Read(data.Job).Events.Last(happened => happened is EndedOutOfService));

        ProgramResult unnamed = await ProgramProcess.Run("start", "--resume", "--keys", "--plain", "--data", data.Path);
        ProgramResult named = await ProgramProcess.Run("start", "--resume", data.Job, "--keys", "--plain", "--data", data.Path);

        Assert.Equal((2, 2), (unnamed.ExitCode, named.ExitCode));
        Assert.Contains("no unfinished record", unnamed.Error, StringComparison.Ordinal);
        Assert.Contains("has ended", named.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Of_several_unfinished_jobs_none_is_guessed()
    {
        using TemporaryFolder data = new();
        await ProgramProcess.RunTyping(["done"], ["start", "--keys", "--plain", "--data", data.Path, .. Sheets]);
        string first = data.Job;
        await ProgramProcess.RunTyping(["done"], ["start", "--keys", "--plain", "--data", data.Path, .. Sheets]);

        ProgramResult resumed = await ProgramProcess.Run("start", "--resume", "--keys", "--plain", "--data", data.Path);

        Assert.Equal(2, resumed.ExitCode);
        Assert.Contains("2 records are unfinished", resumed.Error, StringComparison.Ordinal);
        Assert.Contains(Path.GetFileNameWithoutExtension(first), resumed.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Sigterm_ends_cleanly_and_the_job_goes_on_where_it_stopped()
    {
        using TemporaryFolder data = new();
        using (Process process = ProgramProcess.Start(["start", "--keys", "--plain", "--data", data.Path, .. Sheets]))
        {
            Task<string> error = process.StandardError.ReadToEndAsync();
            await process.StandardInput.WriteLineAsync("done");
            while (await process.StandardOutput.ReadLineAsync() is { } line && !line.Contains("Do you smell gas", StringComparison.Ordinal))
            {
            }

            Assert.Equal(0, Kill(process.Id, SigTerm));
            ProgramResult broken = await ProgramProcess.Ended(process, process.StandardOutput.ReadToEndAsync(), error);

            Assert.Equal(0, broken.ExitCode);
            Assert.Contains("start --resume", broken.Output, StringComparison.Ordinal);
            Assert.Equal("", broken.Error);
        }

        ProgramResult resumed = await ProgramProcess.RunTyping(["no"], "start", "--resume", "--keys", "--plain", "--data", data.Path);

        Assert.Equal(0, resumed.ExitCode);
        Assert.Contains("Zero the analyzer", resumed.Output, StringComparison.Ordinal);
        Assert.Single(StoredJob.Read(data.Job).Events.OfType<StartupBegan>());
    }

    [Fact]
    public async Task A_second_process_on_the_same_job_is_refused()
    {
        using TemporaryFolder data = new();
        using Process first = ProgramProcess.Start(["start", "--keys", "--plain", "--data", data.Path, .. Sheets]);
        await first.StandardOutput.ReadLineAsync();

        ProgramResult second = await ProgramProcess.Run("start", "--resume", "--keys", "--plain", "--data", data.Path);
        first.Kill();
        await first.WaitForExitAsync();

        Assert.Equal(2, second.ExitCode);
        Assert.Contains("in use", second.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", second.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--wav", "no-such.wav")]
    [InlineData("--checklist", "no-such.yaml")]
    [InlineData("--resume", "no-such-job")]
    public async Task A_missing_file_is_one_sentence_and_exit_code_2(string option, string file)
    {
        using TemporaryFolder data = new();

        ProgramResult result = await ProgramProcess.Run(["start", "--plain", "--data", data.Path, .. option == "--resume" ? [] : Sheets[..4], option, file]);

        Assert.Equal(2, result.ExitCode);
        Assert.Contains(file, Assert.Single(result.Error.TrimEnd().Split('\n')), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_mistake_in_a_sheet_is_told_with_its_place_before_the_job_starts()
    {
        using TemporaryFolder data = new();
        string sheet = Path.Combine(data.Path, "sheet.yaml");
        await File.WriteAllTextAsync(sheet, (await File.ReadAllTextAsync(Sheets[1])).Replace("stages: 2", "stages: two", StringComparison.Ordinal));

        ProgramResult result = await ProgramProcess.Run("start", "--keys", "--plain", "--data", data.Path, "--appliance", sheet, "--site", Sheets[3], "--checklist", Sheets[5]);

        Assert.Equal(2, result.ExitCode);
        Assert.Matches(@"sheet\.yaml:\d+:\d+: ", result.Error);
        Assert.False(Directory.Exists(Path.Combine(data.Path, "jobs")));
    }

    const int SigTerm = 15;

    [LibraryImport("libc", EntryPoint = "kill", SetLastError = true)]
    private static partial int Kill(int process, int signal);

    internal static string Folder(string name)
    {
        DirectoryInfo? above = new(AppContext.BaseDirectory);
        while (above is not null && !File.Exists(Path.Combine(above.FullName, name, "two-stage-natural-gas.yaml")))
        {
            above = above.Parent;
        }

        return Path.Combine(above!.FullName, name);
    }
}
