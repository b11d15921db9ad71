using System.Diagnostics;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Storage.UserFiles;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Tour;

/// <summary>The tour as a process, typed.</summary>
public sealed class TourTests : IDisposable
{
    static readonly TimeSpan Patience = TimeSpan.FromMinutes(1);

    readonly TemporaryFolder _data = new();

    [Fact]
    public async Task Everything_is_tried_the_stop_ends_it_and_nothing_is_kept()
    {
        (string Waits, string Types)[] talk =
        [
            ("[1/6]", "say again"), ("A place to try things", "done"), ("[2/6]", "done"), ("[3/6]", "oxygen seven point six"), ("7.6", "next"),
            ("[4/6]", "flue temperature 300"), ("300", "disregard"), ("isregard", "flue temperature 310"), ("310", "next"), ("[5/6]", "emergency stop"),
        ];

        (int code, string output, string error) = await Typed(talk);

        Assert.Equal((0, ""), (code, error));
        string told = output[output.IndexOf("The tour is over; nothing was kept.", StringComparison.Ordinal)..];
        Assert.Contains("typed \"oxygen seven point six\": clear", told, StringComparison.Ordinal);
        Assert.Contains("typed \"emergency stop\"", told, StringComparison.Ordinal);
        Assert.Contains("All of it was tried.", told, StringComparison.Ordinal);
        Assert.DoesNotContain("Record:", output, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFileSystemEntries(_data.Path));
    }

    [Fact]
    public async Task What_was_not_tried_is_named()
    {
        ProgramResult result = await ProgramProcess.RunTyping(["done"], "tour", "--keys", "--plain", "--mute", "--data", _data.Path);

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        Assert.Contains("Not tried yet: a reading, disregard, emergency stop.", result.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void No_prompt_of_the_tour_holds_a_word_that_would_stop_it()
    {
        using Stream text = typeof(CommandLine).Assembly.GetManifestResourceStream("tour.yaml")!;
        using StreamReader reader = new(text);
        Checklist tour = UserFile.ReadChecklist(UserFile.Copy("tour.yaml", reader.ReadToEnd()));

        Assert.All(tour.Steps.SelectMany(step => new[] { step.Title, step.Do, step.Why, step.Prompt }), said => Assert.DoesNotContain("stop", said?.Shown ?? "", StringComparison.OrdinalIgnoreCase));
    }

    async Task<(int Code, string Output, string Error)> Typed((string Waits, string Types)[] talk)
    {
        using Process process = ProgramProcess.Start("tour", "--keys", "--plain", "--mute", "--data", _data.Path);
        Task<string> error = process.StandardError.ReadToEndAsync();
        using CancellationTokenSource late = new(Patience);
        await using CancellationTokenRegistration end = late.Token.Register(process.Kill);
        List<string> shown = [];
        Queue<(string Waits, string Types)> ahead = new(talk);
        while (await process.StandardOutput.ReadLineAsync() is { } line)
        {
            shown.Add(line);
            if (ahead.TryPeek(out (string Waits, string Types) next) && line.Contains(next.Waits, StringComparison.Ordinal))
            {
                ahead.Dequeue();
                await process.StandardInput.WriteLineAsync(next.Types);
            }
        }

        await process.WaitForExitAsync();
        Assert.True(ahead.Count == 0, $"'{(ahead.TryPeek(out (string Waits, string Types) left) ? left.Waits : "")}' was never shown: {string.Join('\n', shown)}");
        return (process.ExitCode, string.Join('\n', shown), await error);
    }

    public void Dispose() => _data.Dispose();
}
