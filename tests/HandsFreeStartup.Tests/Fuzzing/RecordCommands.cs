using HandsFreeStartup.Tests.Support;
using HandsFreeStartup.Tests.Surroundings;

namespace HandsFreeStartup.Tests.Fuzzing;

/// <summary>Every command that reads a record, on one that may hold anything: it is done, it has found something, or it says in a sentence why not.</summary>
static class RecordCommands
{
    static readonly string[] All =
    [
        "review % --plain", "review % --json", "verify %", "review % --csv table.csv", "review % --accept --lead L", "copies % --out out --chart", "copies % --columns 32 --out out",
        "start --keys --plain --resume %", "forget % --keep-readings --by L",
    ];

    /// <summary>Tries one of them and gives its exit code.</summary>
    public static int TryOne(string record, string folder, Random random)
    {
        // Paper is slow to make: it is made less often than the rest.
        string command = All[random.Next(random.Next(4) == 0 ? All.Length : 4)];
        string[] words = [.. command.Split(' ').Select(word => word switch { "%" => record, "out" or "table.csv" => Path.Combine(folder, word), _ => word }), "--data", folder];
        ProgramResult result = InProcess.Run(words).GetAwaiter().GetResult();
        Assert.True(result.ExitCode is 0 or 1 or 2, $"{command}: {result.ExitCode} {result.Error}");
        if (result.Error.Length > 0)
        {
            SurroundingsTests.AssertSentence(result.Error);
        }

        Assert.All(result.Output, letter => Assert.True(letter == '\n' || !char.IsControl(letter), command));
        return result.ExitCode;
    }
}
