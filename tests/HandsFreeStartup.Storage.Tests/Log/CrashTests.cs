using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;

namespace HandsFreeStartup.Storage.Tests.Log;

/// <summary>Another process appends; it is killed, crowded out or refused. Set HANDSFREE_KILLS for more than the usual number of kills.</summary>
public sealed class CrashTests : IDisposable
{
    readonly TemporaryFolder _folder = new();

    string Job => _folder.File("job.db");

    [Fact]
    public void Kill_at_random_moments_loses_no_acknowledged_event_and_doubles_none()
    {
        int kills = int.TryParse(Environment.GetEnvironmentVariable("HANDSFREE_KILLS"), out int wanted) ? wanted : 12;
        Random random = new(20260314);
        int acknowledged = 0;
        for (int i = 0; i < kills; i++)
        {
            using (AppendingProcess process = AppendingProcess.On(Job))
            {
                process.Await(random.Next(1, 40));
                process.Kill();
                Assert.Equal("", process.Failure);
                Assert.True(process.LastAcknowledged > acknowledged, "the process recorded nothing");
                acknowledged = process.LastAcknowledged;
            }

            AssertWhole(acknowledged, mayHoldMore: 1);
            acknowledged = Math.Max(acknowledged, StoredJob.Read(Job).Events.Count);
        }
    }

    [Fact]
    public void A_second_process_on_the_same_job_is_refused_and_the_first_goes_on()
    {
        using AppendingProcess first = AppendingProcess.On(Job);
        first.Await(3);

        using AppendingProcess second = AppendingProcess.On(Job);
        second.AwaitEnd();

        Assert.Equal(3, second.ExitCode);
        Assert.Equal($"The record {Job} is in use by another running start-up. End that one first.", second.Failure);
        first.Await(3);
        first.Kill();
        AssertWhole(first.LastAcknowledged, mayHoldMore: 1);
    }

    [Fact]
    public void A_read_only_folder_is_told_in_one_sentence_and_nothing_is_left_in_it()
    {
        using (ReadOnlyFolder guard = new(_folder.Path))
        {
            using AppendingProcess process = AppendingProcess.OnWithoutPrivilege(Job);
            process.AwaitEnd();

            Assert.Equal(3, process.ExitCode);
            Assert.Equal($"The record {Job} cannot be written: its folder is read-only or missing. Choose another folder with --data, or make this one writable.", process.Failure);
        }

        Assert.Empty(Directory.GetFileSystemEntries(_folder.Path));
    }

    [Fact]
    public void A_disk_that_takes_no_more_stops_the_log_with_a_plain_message_and_the_record_intact()
    {
        using (AppendingProcess process = AppendingProcess.OnLimited(Job, 200))
        {
            process.AwaitEnd();

            Assert.Equal(3, process.ExitCode);
            Assert.True(process.LastAcknowledged > 10);
            Assert.Matches($"^Event {process.LastAcknowledged + 1} could not be recorded: the disk (is full|refuses to write). .*start --resume", process.Failure);
            Assert.Contains($"The {process.LastAcknowledged} events before it are safe in {Job}.", process.Failure, StringComparison.Ordinal);
            AssertWhole(process.LastAcknowledged, mayHoldMore: 0);
        }

        using StartupLog log = StartupLog.Open(Job);
        int before = log.Checkpoint!.Count;
        log.Append(Some.Reading("oxygen", 7.6m, "low"));
        Assert.Equal(before + 1, log.Checkpoint.Count);
    }

    [Theory]
    [InlineData(120)]
    [InlineData(200)]
    [InlineData(333)]
    public void A_disk_that_is_full_in_the_middle_of_a_decision_leaves_none_of_its_events(int kibibytes)
    {
        const int Together = 7;
        using AppendingProcess process = AppendingProcess.OnLimited(Job, kibibytes, Together);
        process.AwaitEnd();

        Assert.Equal(3, process.ExitCode);
        Assert.True(process.LastAcknowledged > Together);
        Assert.Equal(0, (process.LastAcknowledged - 1) % Together);
        AssertWhole(process.LastAcknowledged, mayHoldMore: 0);
    }

    public void Dispose() => _folder.Dispose();

    /// <summary>Every acknowledged event is there once, in its order, and the chain holds; an event that was recorded but not yet acknowledged may follow.</summary>
    void AssertWhole(int acknowledged, int mayHoldMore)
    {
        StoredJob job = StoredJob.Read(Job);
        Assert.Empty(job.Verification.Findings);
        Assert.InRange(job.Events.Count, acknowledged, acknowledged + mayHoldMore);
        Assert.IsType<StartupBegan>(job.Events[0]);
        Assert.Equal(
            Enumerable.Range(2, job.Events.Count - 1).Select(number => $"note {number}"),
            job.Events.Skip(1).Select(happened => Assert.IsType<NoteTaken>(happened).Text));
    }
}
