using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Fuzzing;

/// <summary>
/// A live start-up into which anything is typed, as a process: it goes on to the last line, its record is sound, and every reading in it is one that its line holds. Behind the
/// typed line lie the procedure, the voice, the screen and the record.
/// </summary>
public sealed class SessionDoor() : FuzzedDoor("session")
{
    const int MostLines = 300;

    static readonly string[] WholeStart =
    [
        "done", "no", "done", "monoxide 0", "next", "yes", "line voltage 121", "control voltage 26.4", "next", "done", "done", "yes", "inlet pressure 7.2", "next", "done", "yes", "flame current 3.8", "next",
        "inlet 6.9", "next", "manifold pressure 3.5", "disregard", "manifold 3.45", "note", "Mrs. Quarry was present", "read back", "what is open", "skip step", "it is too cold", "go back", "photo nowhere.jpg",
    ];

    /// <summary>Every name of a field, for the room's monoxide is called like the flue's.</summary>
    static readonly string[] Names = [.. Fields.All.Concat(Fields.PlateBounds).SelectMany(field => field.SpokenNames)];

    readonly TypedLineDoor _line = new();

    public override IReadOnlyList<string> Words => [.. _line.Words, .. WholeStart.Select(line => $"\n{line}\n"), "\nphoto ", "\nnote\n", "/dev/zero", "\ngo to ", "\nyes\n", "\nno\n", "\nconfirm\n"];

    protected override IEnumerable<byte[]> Seeds() =>
        [BytesOf(string.Join('\n', WholeStart)), BytesOf(string.Join('\n', WholeStart.Take(12).Append("emergency stop").Append("yes").Append("finish").Append("yes").Append("cracked"))), .. LinesOf("typed-lines.txt").Chunk(60).Select(lines => BytesOf(string.Join('\n', lines.Select(TextOf))))];

    public override Outcome Try(byte[] input, Random random)
    {
        string data = In("data");
        if (Directory.Exists(data))
        {
            Directory.Delete(data, recursive: true);
        }

        ProgramResult result = ProgramProcess.RunTyping(
            TextOf(input).Split('\n').Take(MostLines),
            "start", "--keys", "--plain", "--mute", "--data", data, "--appliance", Sheet("demo-furnace"), "--site", Sheet("demo-site"), "--checklist", Sheet("two-stage-natural-gas")).GetAwaiter().GetResult();

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        Assert.All(result.Output, letter => Assert.True(letter == '\n' || !char.IsControl(letter)));
        string record = Assert.Single(Directory.GetFiles(Path.Combine(data, "jobs"), "*.db"));
        Assert.Empty(StartupLogVerifier.Verify(record).Findings);
        ReadingEntered[] entered = [.. StoredJob.Read(record).Events.OfType<ReadingEntered>()];
        foreach (EnteredReading reading in entered.Select(one => one.Reading))
        {
            Field field = Fields.Find(reading.Key.FieldId)!;
            TypedLineDoor.Check(reading.Evidence.Words, new Phrase.Reading(field, reading.Value, reading.Evidence) { IsOver = reading.Value == field.Highest && field.MayBeOver }, Names);
        }

        return new Outcome(entered.Length > 0, result.Output.Split('\n').LastOrDefault(line => line.StartsWith("  >", StringComparison.Ordinal)) ?? "");
    }

    static string Sheet(string name) => Path.Combine(ShippedFiles.Checklists, $"{name}.yaml");
}
