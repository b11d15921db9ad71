using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;

namespace HandsFreeStartup.Tests.Fuzzing;

/// <summary>
/// The bytes of a job's file, or of what a killed process left beside it. A record that is called sound holds the events that were written, from the first on: nothing changed,
/// exchanged or added.
/// </summary>
/// <param name="isLeftBeside">Whether the write-ahead log is changed and the file itself is whole.</param>
public sealed class RecordDoor(bool isLeftBeside) : FuzzedDoor(isLeftBeside ? "record-wal" : "record")
{
    readonly Dictionary<string, string[]> _written = [];
    byte[] _file = [];

    public override IReadOnlyList<string> Words { get; } =
        ["create table", "event", "personal", "sequence", "trigger", "SQLite format 3\0", "\"value\":", "7.6", "7.7", "reading-entered", "startup-signed", "pass", "fail", "without rowid", "strict"];

    protected override IEnumerable<byte[]> Seeds() => isLeftBeside ? [LeftBeside()] : Jobs();

    public override Outcome Try(byte[] input, Random random)
    {
        string path = In("job.db");
        foreach (string old in Directory.GetFiles(Folder, "job.db*"))
        {
            File.Delete(old);
        }

        File.WriteAllBytes(path, isLeftBeside ? _file : input);
        if (isLeftBeside)
        {
            File.WriteAllBytes($"{path}-wal", input);
        }

        try
        {
            StoredJob job = StoredJob.Read(path);
            if (job.Verification.IsSound)
            {
                Assert.True(job.Events is [StartupBegan began, ..] && _written.TryGetValue(began.Job.JobId, out string[]? written)
                    && job.Events.Count <= written.Length && job.Events.Select(EventFormat.BodyOf).SequenceEqual(written.Take(job.Events.Count)), "A changed record is called sound.");
            }

            return new Outcome(job.Verification.IsSound, job.Verification.Findings.FirstOrDefault()?.Message ?? "sound");
        }
        catch (LogException refused)
        {
            Assert.EndsWith(".", refused.Message, StringComparison.Ordinal);
            return new Outcome(false, refused.Message);
        }
        finally
        {
            if (random.Next(4) == 0)
            {
                RecordCommands.TryOne(path, Folder, random);
            }
        }
    }

    IEnumerable<byte[]> Jobs()
    {
        string[] paths = [In("a.db"), In("b.db")];
        for (int i = 0; i < paths.Length; i++)
        {
            FixtureJob.Write(paths[i], 6 * i);
            Remember(FixtureJob.Events(6 * i));
        }

        string older = Path.Combine(AppContext.BaseDirectory, "Fixtures", "format-1.db");
        Remember(StoredJob.Read(older).Events);
        return [.. paths.Append(older).Select(File.ReadAllBytes)];
    }

    void Remember(IReadOnlyList<StartupEvent> events) => _written[((StartupBegan)events[0]).Job.JobId] = [.. events.Select(EventFormat.BodyOf)];

    /// <summary>What a process leaves that is killed before it moves its last events into the file.</summary>
    byte[] LeftBeside()
    {
        string path = In("killed.db");
        IReadOnlyList<StartupEvent> events = FixtureJob.Events();
        Remember(events);
        using StartupLog log = StartupLog.Create(path);
        foreach (StartupEvent happened in events)
        {
            log.Append(happened);
        }

        _file = File.ReadAllBytes(path);
        return File.ReadAllBytes($"{path}-wal");
    }
}
