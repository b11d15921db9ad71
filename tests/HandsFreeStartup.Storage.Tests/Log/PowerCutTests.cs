using System.Text.Json;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;
using Plans = HandsFreeStartup.Procedure.Tests.Support.Some;

namespace HandsFreeStartup.Storage.Tests.Log;

/// <summary>
/// What the disk may hold after the power failed: everything up to the last sync, and of what was written since then any sectors, or none. The files of a real job
/// are put together so, opened, and compared with what was acknowledged at that moment.
/// </summary>
public sealed class PowerCutTests : IDisposable
{
    const int Sector = 512;

    readonly TemporaryFolder _folder = new();
    readonly LiveJob _live = new LiveJob().GoTo("combustion").Say("oxygen", 7.6m).Say("flue_co", 12m).Say(CommandWord.Note).Dictate("Mrs. Quarry was present").GoTo("sign");
    readonly IReadOnlyList<StartupEvent> _events;
    readonly List<byte[]> _walAfter = [];
    readonly byte[] _main;
    readonly byte[] _closed;

    public PowerCutTests()
    {
        string job = _folder.File("job.db");
        _events = [Support.Some.Began(), .. _live.Log.Skip(1)];
        using (StartupLog log = StartupLog.Create(job))
        {
            _walAfter.Add(File.ReadAllBytes($"{job}-wal"));
            foreach (StartupEvent happened in _events)
            {
                log.Append(happened);
                _walAfter.Add(File.ReadAllBytes($"{job}-wal"));
            }

            _main = File.ReadAllBytes(job);
        }

        _closed = File.ReadAllBytes(job);
    }

    [Fact]
    public void Wherever_the_write_ahead_log_ends_no_acknowledged_event_is_lost_and_the_state_is_that_of_its_replay()
    {
        byte[] wal = _walAfter[^1];
        int[] anywhere = [.. Enumerable.Range(0, 150).Select(part => _walAfter[0].Length + (int)((long)(wal.Length - _walAfter[0].Length) * part / 150))];
        int[] aroundEvents = [.. _walAfter.Skip(1).SelectMany(after => new[] { after.Length - 1, after.Length })];
        foreach (int length in anywhere.Concat(aroundEvents))
        {
            Assert.Equal(Acknowledged(length), WholeEventsOf(_main, wal[..length]));
        }
    }

    [Fact]
    public void Torn_sectors_after_the_last_sync_lose_no_acknowledged_event_and_invent_none()
    {
        Random random = new(20260314);
        for (int count = 1; count < _walAfter.Count - 1; count++)
        {
            for (int round = 0; round < 2; round++)
            {
                byte[] torn = Torn(_walAfter[count], _walAfter[count + 1], random);

                Assert.InRange(WholeEventsOf(_main, torn), count, count + 1);
            }
        }
    }

    [Fact]
    public void A_power_cut_while_the_log_is_moved_into_the_main_file_loses_nothing()
    {
        Random random = new(20260315);
        for (int round = 0; round < 60; round++)
        {
            Assert.Equal(_events.Count, WholeEventsOf(Torn(_main, _closed, random), _walAfter[^1]));
        }
    }

    [Fact]
    public void A_job_goes_on_after_a_power_cut_at_any_event()
    {
        for (int count = 1; count < _walAfter.Count; count++)
        {
            string job = LaidOut(_main, _walAfter[count]);
            using (StartupLog log = StartupLog.Open(job))
            {
                Assert.Equal(count, log.Checkpoint!.Count);
                log.Append(Support.Some.Reading("oxygen", 7.6m, "low"));
            }

            Assert.Empty(StartupLogVerifier.Verify(job).Findings);
            Assert.Equal(count + 1, StartupLogVerifier.Verify(job).Count);
        }
    }

    public void Dispose() => _folder.Dispose();

    int Acknowledged(int walLength) => _walAfter.FindLastIndex(wal => wal.Length <= walLength);

    /// <summary>The number of events that are read; they are the first ones of the job, and lead to the state that the job had then.</summary>
    int WholeEventsOf(byte[] main, byte[] wal)
    {
        StoredJob stored = StoredJob.Read(LaidOut(main, wal));
        Assert.All(stored.Verification.Findings, finding => Assert.Equal("The record holds no events.", finding.Message));
        Assert.Equal(_events.Take(stored.Events.Count).Select(EventFormat.BodyOf), stored.Events.Select(EventFormat.BodyOf));
        Assert.Equal(StateAfter(_events.Take(stored.Events.Count)), StateAfter(stored.Events));
        return stored.Events.Count;
    }

    string StateAfter(IEnumerable<StartupEvent> events)
    {
        StartupProcedure procedure = new(Plans.Plan());
        foreach (StartupEvent happened in events)
        {
            procedure.Apply(happened);
        }

        return JsonSerializer.Serialize(procedure.View(_live.Now) with { Expectation = Expectation.Open });
    }

    string LaidOut(byte[] main, byte[] wal)
    {
        string job = _folder.File($"{Guid.NewGuid():N}.db");
        File.WriteAllBytes(job, main);
        File.WriteAllBytes($"{job}-wal", wal);
        return job;
    }

    /// <summary>Every sector is the old one, the new one or, where the file was still growing, nothing but zeros.</summary>
    static byte[] Torn(byte[] before, byte[] after, Random random)
    {
        byte[] torn = new byte[after.Length];
        before.AsSpan(0, Math.Min(before.Length, after.Length)).CopyTo(torn);
        for (int at = 0; at < after.Length; at += Sector)
        {
            if (random.Next(2) == 0)
            {
                after.AsSpan(at, Math.Min(Sector, after.Length - at)).CopyTo(torn.AsSpan(at));
            }
        }

        return torn;
    }
}
