using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Storage.Tests.Log;

/// <summary>A typed job that the program wrote when its format was 1, with the checkpoint that it printed then.</summary>
public sealed class OlderFormatTests : IDisposable
{
    static readonly Checkpoint Printed = Checkpoint.Parse("26 events, ends 473F A8BF 839C 5EEF")!;

    readonly TemporaryFolder _folder = new();
    readonly string _job;

    public OlderFormatTests()
    {
        _job = _folder.File("old.db");
        File.Copy(Path.Combine(AppContext.BaseDirectory, "Fixtures", "format-1.db"), _job);
    }

    [Fact]
    public void It_is_read_and_verified_by_its_own_rules_and_left_as_it_is()
    {
        byte[] before = File.ReadAllBytes(_job);

        StoredJob stored = StoredJob.Read(_job);

        Assert.Empty(StartupLogVerifier.Verify(_job, Printed).Findings);
        Assert.Empty(stored.Verification.Findings);
        Assert.Equal(26, stored.Events.Count);
        Assert.Equal("Owner of the house (invented)", UserFile.ReadSite(((StartupBegan)stored.Events[0]).Job.Site).Customer);
        Assert.Equal("owner is away", Assert.IsType<EndedOutOfService>(stored.Events[^1]).Reason);
        Assert.Equal(before, File.ReadAllBytes(_job));
    }

    [Fact]
    public void It_takes_no_further_event() => Assert.Equal(
        $"The record {_job} has format 1 of an earlier program: it can be read, reviewed and verified, but takes no further event. Begin a new job.",
        Assert.Throws<LogException>(() => StartupLog.Open(_job)).Message);

    [Fact]
    public void A_change_in_it_is_found()
    {
        RawDatabase.Query(_job, "drop trigger event_is_never_changed; update event set body=replace(body, '26.4', '24.6') where body like '%26.4%'");

        Assert.EndsWith("does not match its hash: it was changed or damaged.", StartupLogVerifier.Verify(_job).Findings[0].Message, StringComparison.Ordinal);
    }

    public void Dispose() => _folder.Dispose();
}
