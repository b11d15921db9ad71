using System.Diagnostics;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Start;

/// <summary>The demonstration as its user runs it: real recordings, real models, real record.</summary>
public sealed class DemonstrationTests
{
    [Fact]
    public async Task The_demonstration_leaves_exactly_the_record_that_was_spoken()
    {
        using TemporaryFolder data = new();

        ProgramResult result = await ProgramProcess.Run("start", "--demo", "--data", data.Path);

        Assert.Equal(0, result.ExitCode);
        Assert.Equal("", result.Error);
        string[] expected = [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Demo", "expected-record.tsv")).Where(line => line[0] != '#')];
        Assert.Equal(expected, RecordLines.Of(data.Job));
        StoredJob stored = StoredJob.Read(data.Job);
        Assert.True(Assert.IsType<StartupBegan>(stored.Events[0]).Job.IsDemonstration);
        Assert.All(stored.Events.OfType<ReadingEntered>(), entered => Assert.Equal(Channel.Voice, entered.Reading.Evidence.Channel));
        Assert.Contains("DEMONSTRATION", await File.ReadAllTextAsync(Path.ChangeExtension(data.Job, ".txt")), StringComparison.Ordinal);
        Assert.Contains(data.Job, result.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Killed_at_random_moments_it_loses_nothing_that_was_shown_and_doubles_nothing()
    {
        using TemporaryFolder data = new();
        Random moments = new(20310304);
        for (int round = 0; round < 5; round++)
        {
            string folder = Path.Combine(data.Path, $"round-{round}");
            List<string> shown = await ShownUntilKilled(folder, lines: moments.Next(5, 60));

            string job = Assert.Single(Directory.GetFiles(Path.Combine(folder, "jobs"), "*.db"));
            // The one phrase that is legal wherever it was killed, also while a reason is dictated or read back.
            ProgramResult resumed = await ProgramProcess.RunTyping(["emergency stop"], "start", "--resume", "--keys", "--plain", "--data", folder);

            Assert.Equal(0, resumed.ExitCode);
            IReadOnlyList<string> record = RecordLines.Of(job);
            Assert.Equal(shown.Count(IsEntry), record.Count(line => line.StartsWith("entered", StringComparison.Ordinal)), 1.0);
            Assert.True(record.Count(line => line.StartsWith("entered", StringComparison.Ordinal)) >= shown.Count(IsEntry));
            string[] expected = [.. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Demo", "expected-record.tsv")).Where(line => line[0] != '#')];
            Assert.Equal(expected[..record.Count], record);
            Assert.IsType<StartupStopped>(StoredJob.Read(job).Events[^1]);
        }
    }

    /// <summary>A shown reading: "> Oxygen (low) 9.1 %. Pass (...)." follows what was heard.</summary>
    static bool IsEntry(string line) => line.StartsWith("  > ", StringComparison.Ordinal)
        && Fields.All.Any(field => line.StartsWith($"  > {field.Label}", StringComparison.Ordinal))
        && !line.Contains('?', StringComparison.Ordinal)
        && !line.Contains("disregarded", StringComparison.Ordinal)
        && !line.Contains("adjusted", StringComparison.Ordinal)
        && line[4..].IndexOfAny([.. "0123456789"]) > 0;

    static async Task<List<string>> ShownUntilKilled(string folder, int lines)
    {
        using Process process = ProgramProcess.Start("start", "--demo", "--data", folder);
        List<string> shown = [];
        while (shown.Count < lines && await process.StandardOutput.ReadLineAsync() is { } line)
        {
            shown.Add(line);
        }

        process.Kill();

        // What it wrote before the kill and nobody had read yet was shown too.
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            shown.Add(line);
        }

        await process.WaitForExitAsync();
        return shown;
    }
}
