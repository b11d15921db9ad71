using System.ComponentModel;
using System.Diagnostics;
using System.Text.RegularExpressions;
using HandsFreeStartup.Tests.Support;
using Microsoft.Data.Sqlite;

namespace HandsFreeStartup.Tests.Copies;

/// <summary>The command copies as a process, on a job that was typed.</summary>
public sealed class CopiesCommandTests
{
    static readonly string[] Kinds = ["appliance.pdf", "customer.pdf", "office.pdf", "narrow.txt"];

    [Theory]
    [InlineData("a4", "48", "595.276 x 841.89 pts (A4)")]
    [InlineData("letter", "32", "612 x 792 pts (letter)")]
    public async Task A_typed_job_gives_four_files_that_other_programs_can_read(string paper, string columns, string size)
    {
        using TemporaryFolder data = new();
        string job = await Typed(data);
        string folder = Path.Combine(data.Path, "for printing");

        ProgramResult result = await ProgramProcess.Run("copies", job, "--data", data.Path, "--out", folder, "--paper", paper, "--columns", columns);

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        Assert.Equal(Kinds.Select(kind => Path.Combine(folder, $"{job}-{kind}")), result.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries));
        foreach (string pdf in Kinds.Where(kind => kind.EndsWith(".pdf", StringComparison.Ordinal)).Select(kind => Path.Combine(folder, $"{job}-{kind}")))
        {
            Assert.Contains(size, Other("pdfinfo", pdf) ?? size, StringComparison.Ordinal);
            Assert.Contains("NOT SIGNED", Other("pdftotext", pdf, "-") ?? "NOT SIGNED", StringComparison.Ordinal);
            Assert.DoesNotContain("WARNING", Other("qpdf", "--check", pdf) ?? "", StringComparison.Ordinal);
            Other("pdftoppm", "-r", "30", "-png", pdf, Path.Combine(folder, "page"));
        }
        Assert.All(await File.ReadAllLinesAsync(Path.Combine(folder, $"{job}-narrow.txt")), line => Assert.InRange(line.Length, 0, int.Parse(columns)));
    }

    [Fact]
    public async Task The_printed_checkpoint_proves_the_record()
    {
        using TemporaryFolder data = new();
        string job = await Typed(data);
        await ProgramProcess.Run("copies", job, "--data", data.Path);
        string narrow = await File.ReadAllTextAsync(Path.Combine(data.Path, "jobs", $"{job}-narrow.txt"));

        string checkpoint = Regex.Match(narrow, @"\d+ events, ends( [0-9A-F]{4}){4}").Value;
        ProgramResult verified = await ProgramProcess.Run("verify", job, "--data", data.Path, "--checkpoint", checkpoint);

        Assert.Equal(0, verified.ExitCode);
        Assert.Contains("It is the record that the checkpoint was printed for.", verified.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_record_that_was_changed_is_copied_with_a_warning_on_it_and_exit_code_1()
    {
        using TemporaryFolder data = new();
        string job = await Typed(data);
        using (SqliteConnection connection = new($"Data Source={data.Job};Pooling=False"))
        {
            connection.Open();
            using SqliteCommand command = connection.CreateCommand();
            command.CommandText = "drop trigger event_is_never_changed; update event set body = replace(body, '121', '111')";
            command.ExecuteNonQuery();
        }

        ProgramResult result = await ProgramProcess.Run("copies", job, "--data", data.Path);

        Assert.Equal(1, result.ExitCode);
        Assert.Contains("does not verify", result.Error, StringComparison.Ordinal);
        Assert.Contains("RECORD DOES NOT VERIFY", await File.ReadAllTextAsync(Path.Combine(data.Path, "jobs", $"{job}-narrow.txt")), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_cannot_be_copied_or_written_is_one_sentence()
    {
        using TemporaryFolder data = new();
        string job = await Typed(data);
        string blocked = Path.Combine(data.Path, "a file");
        await File.WriteAllTextAsync(blocked, "");

        ProgramResult missing = await ProgramProcess.Run("copies", "no-such-job", "--data", data.Path);
        ProgramResult unwritable = await ProgramProcess.Run("copies", job, "--data", data.Path, "--out", blocked);
        ProgramResult tooNarrow = await ProgramProcess.Run("copies", job, "--data", data.Path, "--columns", "20");

        Assert.All([missing, unwritable, tooNarrow], result => Assert.Equal(2, result.ExitCode));
        Assert.Contains("There is no record 'no-such-job'", missing.Error, StringComparison.Ordinal);
        Assert.Contains("choose another folder with --out", unwritable.Error, StringComparison.Ordinal);
        Assert.All([missing, unwritable, tooNarrow], result => Assert.Single(result.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries)));
    }

    static async Task<string> Typed(TemporaryFolder data)
    {
        string[] typed = ["done", "no", "done", "monoxide 0", "next", "yes", "line voltage 121", "control voltage 26.4", "next", "note", "the door sticks"];
        ProgramResult result = await ProgramProcess.RunTyping(typed, ["start", "--keys", "--plain", "--data", data.Path, "--appliance", Sheet("demo-furnace.yaml"), "--site", Sheet("demo-site.yaml")]);
        Assert.Equal(0, result.ExitCode);
        return Path.GetFileNameWithoutExtension(data.Job);
    }

    static string Sheet(string name)
    {
        DirectoryInfo folder = new(AppContext.BaseDirectory);
        while (!File.Exists(Path.Combine(folder.FullName, "checklists", name)))
        {
            folder = folder.Parent ?? throw new InvalidOperationException("The folder checklists is not above the tests.");
        }
        return Path.Combine(folder.FullName, "checklists", name);
    }

    /// <summary>What another program says; null where it is not installed (the build script installs all of them).</summary>
    static string? Other(string program, params string[] arguments)
    {
        try
        {
            using Process process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true, RedirectStandardError = true })!;
            Task<string> error = process.StandardError.ReadToEndAsync();
            string output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            Assert.True(process.ExitCode == 0, $"{program} ends with {process.ExitCode}: {output} {error.Result}");
            return $"{output} {error.Result}";
        }
        catch (Win32Exception) when (Environment.GetEnvironmentVariable("CI") is null)
        {
            return null;
        }
    }
}
