using System.Globalization;
using HandsFreeStartup.Storage.UserFiles;
using Xunit.Abstractions;

namespace HandsFreeStartup.Tests.Fuzzing;

/// <summary>
/// Every door of the program, tried with changed inputs: never an exception, never without end, never a wrong number; what is refused is refused with a sentence. A minute in all,
/// always with the same inputs; HANDSFREE_FUZZ_MINUTES gives each door so many minutes, and other inputs every time.
/// </summary>
public sealed class FuzzTests(ITestOutputHelper output)
{
    const int Seed = 17;

    static readonly TimeSpan InAll = TimeSpan.FromSeconds(60);

    static readonly Dictionary<string, Func<FuzzedDoor>> Doors = new()
    {
        ["typed line"] = () => new TypedLineDoor(),
        ["session"] = () => new SessionDoor(),
        ["voice"] = () => new VoiceDoor(),
        ["number"] = () => new NumberDoor(),
        ["checklist"] = () => new UserFileDoor(UserFileKind.Checklist),
        ["appliance sheet"] = () => new UserFileDoor(UserFileKind.ApplianceSheet),
        ["site"] = () => new UserFileDoor(UserFileKind.Site),
        ["settings"] = () => new UserFileDoor(UserFileKind.Settings),
        ["manifest"] = () => new ManifestDoor(),
        ["sound"] = () => new SoundDoor(),
        ["table"] = () => new TableDoor(),
        ["record"] = () => new RecordDoor(isLeftBeside: false),
        ["record of a killed process"] = () => new RecordDoor(isLeftBeside: true),
        ["events"] = () => new EventDoor(),
    };

    public static TheoryData<string> Names => [.. Doors.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Nothing_that_comes_in_breaks_the_program_or_becomes_a_wrong_number(string name)
    {
        string? minutes = Environment.GetEnvironmentVariable("HANDSFREE_FUZZ_MINUTES");
        int seed = minutes is null ? Seed : Random.Shared.Next();
        TimeSpan length = minutes is null ? InAll / Doors.Count : TimeSpan.FromMinutes(double.Parse(minutes, CultureInfo.InvariantCulture));
        using FuzzedDoor door = Doors[name]();

        FuzzCount count = new FuzzRun(door, seed).Run(length, TimeProvider.System);

        output.WriteLine($"{name}, seed {seed}: {count}");
        Assert.True(count.Defects.Count == 0, string.Join("\n\n", count.Defects));
        Assert.True(count.Tried > door.Corpus.Count, "Nothing was changed.");
    }

    [Fact]
    public void A_defect_is_found_told_once_and_its_input_kept()
    {
        using BrokenDoor door = new();

        FuzzCount count = new FuzzRun(door, Seed).Run(TimeSpan.FromSeconds(2), TimeProvider.System);

        string defect = Assert.Single(count.Defects);
        Assert.Contains("IndexOutOfRangeException", defect, StringComparison.Ordinal);
        string kept = defect.Split(" kept in ")[1].Split(' ')[0];
        Assert.Contains((byte)'8', File.ReadAllBytes(kept));
        File.Delete(kept);
    }

    /// <summary>Breaks where a number is changed to one that holds an 8.</summary>
    sealed class BrokenDoor() : FuzzedDoor("broken")
    {
        protected override IEnumerable<byte[]> Seeds() => [BytesOf("7.6")];

        public override Outcome Try(byte[] input, Random random) => input.Contains((byte)'8') ? throw new IndexOutOfRangeException() : new Outcome(true, TextOf(input));
    }
}
