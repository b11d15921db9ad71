using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;

namespace HandsFreeStartup.Tests.Fuzzing;

/// <summary>
/// Events that no start-up writes, in a record whose hashes all fit: one event a line, kind and content. What is read back is what was written, and every command that reads records
/// says what it finds.
/// </summary>
public sealed class EventDoor() : FuzzedDoor("events")
{
    public override IReadOnlyList<string> Words { get; } =
    [
        .. EventFormat.Kinds, .. Written(0).SelectMany(line => line.Split('"').Where(word => word.Length is > 0 and < 40)).Distinct().Take(400), "null", "true", "[]", "{}", "0001-01-01T00:00:00+00:00",
        "9999-12-31T23:59:59.9999999+00:00", "79228162514264337593543950335", "-79228162514264337593543950335", "1e308", "\"NaN\"", "10675199.02:48:05.4775807", "-00:00:01", "conditional-pass", "cannot-tell",
    ];

    protected override IEnumerable<byte[]> Seeds() => new[] { 0, 4, 6 }.Select(seed => BytesOf(string.Join('\n', Written(seed))));

    static IEnumerable<string> Written(int seed) => FixtureJob.Events(seed).Select(happened => $"{EventFormat.KindOf(happened)}\t{EventFormat.BodyOf(happened)}");

    public override Outcome Try(byte[] input, Random random)
    {
        List<StartupEvent> events = [];
        string refusal = "";
        foreach (string[] parts in TextOf(input).Split('\n').Take(300).Select(line => line.Split('\t', 2)).Where(parts => parts.Length == 2))
        {
            try
            {
                events.Add(EventFormat.Read(parts[0], parts[1]));
            }
            catch (LogException refused)
            {
                refusal = refused.Message;
            }
        }

        if (events.Count == 0)
        {
            return new Outcome(false, refusal);
        }

        string path = In("job.db");
        foreach (string old in Directory.GetFiles(Folder, "job.db*"))
        {
            File.Delete(old);
        }

        return Written(path, events, random) is { } told ? new Outcome(true, $"{told} {refusal}") : new Outcome(false, "cannot be written");
    }

    string? Written(string path, List<StartupEvent> events, Random random)
    {
        try
        {
            HostileRecords.Write(path, events);
        }
        catch (LogException refused)
        {
            Assert.EndsWith(".", refused.Message, StringComparison.Ordinal);
            return null;
        }

        Verification verification = StartupLogVerifier.Verify(path);
        StoredJob job = StoredJob.Read(path);
        Assert.Equal(events.Select(EventFormat.BodyOf), job.Events.Select(EventFormat.BodyOf));
        RecordCommands.TryOne(path, Folder, random);
        return verification.Findings.FirstOrDefault()?.Message ?? "sound";
    }
}
