using HandsFreeStartup.Fleet.Tests.Support;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Fleet.Tests;

/// <summary>The command publish as a van runs it, on a real server.</summary>
[Collection(FirmServer.Name)]
public sealed class PublishTests(PostgresServer server) : IDisposable
{
    readonly VanFolder _van = new();

    public void Dispose() => _van.Dispose();

    [PostgresFact]
    public async Task Records_are_there_byte_by_byte_and_a_second_time_changes_nothing()
    {
        Firm firm = await server.NewFirm();
        _van.AddMany(3);

        ProgramResult first = await _van.Publish(firm);
        object? written = await firm.Value("select max(published_at) from job");
        ProgramResult second = await _van.Publish(firm);
        File.Delete(Path.Combine(_van.Path, "publish-index.db"));
        ProgramResult third = await _van.Publish(firm);

        Assert.Equal((0, ""), (first.ExitCode, first.Error));
        Assert.Contains("3 sent, 0 continued, 0 there already, 0 not finished, 0 refused.", first.Output, StringComparison.Ordinal);
        Assert.All([second, third], again => Assert.Equal((0, "0 sent, 0 continued, 3 there already, 0 not finished, 0 refused.\n"), (again.ExitCode, again.Output)));
        Assert.Equal(written, await firm.Value("select max(published_at) from job"));
        await SameBytes.Assert(firm, ("van_01", _van));
        Assert.True(await firm.Count("reading") > 0 && await firm.Count("result") > 0 && await firm.Count("finding") > 0 && await firm.Count("timer") > 0);
    }

    [PostgresFact]
    public async Task Another_chain_under_the_same_job_is_refused_and_named_and_nothing_changes()
    {
        Firm firm = await server.NewFirm();
        using VanFolder other = new();
        _van.Add("job-a");
        other.Add("job-a");
        await _van.Publish(firm);

        ProgramResult result = await other.Publish(firm);

        Assert.Equal(1, result.ExitCode);
        Assert.Contains("Conflict: under the job job-a the database holds another record", result.Output, StringComparison.Ordinal);
        await SameBytes.Assert(firm, ("van_01", _van));
    }

    [PostgresFact]
    public async Task A_record_that_another_van_brings_a_second_time_is_refused()
    {
        Firm firm = await server.NewFirm();
        _van.Add("job-a");
        await _van.Publish(firm);

        ProgramResult result = await _van.Publish(firm, "van_02");

        Assert.Equal(1, result.ExitCode);
        Assert.Contains("is in the database already, under another van", result.Output, StringComparison.Ordinal);
        Assert.Equal(1, await firm.Count("job"));
    }

    [PostgresFact]
    public async Task A_job_that_grew_is_continued_and_an_older_copy_of_it_is_refused()
    {
        Firm firm = await server.NewFirm();
        string job = _van.Add("job-a");
        byte[] before = await File.ReadAllBytesAsync(job);
        await _van.Publish(firm);

        await _van.Run("review", "job-a", "--accept", "--lead", "L. Ead", "--remark", "good work");
        ProgramResult grown = await _van.Publish(firm);
        await SameBytes.Assert(firm, ("van_01", _van));
        await File.WriteAllBytesAsync(job, before);
        ProgramResult older = await _van.Publish(firm);

        Assert.Contains("1 continued", grown.Output, StringComparison.Ordinal);
        Assert.Equal("accepted", await firm.Value("select status from job"));
        Assert.Equal(1, older.ExitCode);
        Assert.Contains("it is an older copy, or its end was cut off", older.Output, StringComparison.Ordinal);
    }

    [PostgresFact]
    public async Task What_is_not_finished_stays_and_what_does_not_verify_is_refused()
    {
        Firm firm = await server.NewFirm();
        _van.Add("job-open", leaveOut: 2);
        _van.Add("job-demo", change: job => job with { IsDemonstration = true });
        _van.Add("job-rehearsed", change: job => job with { Rehearsal = new RehearsalNote(1, "") });
        RawDatabase.Query(_van.Add("job-changed"), "drop trigger event_is_never_changed; update event set body=replace(body, '7.1', '7.9') where sequence>1");
        using StartupLog running = StartupLog.Open(_van.Add("job-running"));

        ProgramResult result = await _van.Publish(firm);

        Assert.Equal(1, result.ExitCode);
        Assert.Contains("0 sent, 0 continued, 0 there already, 4 not finished, 1 refused.", result.Output, StringComparison.Ordinal);
        Assert.Contains("job-changed.db: does not verify: Event", result.Output, StringComparison.Ordinal);
        Assert.Equal(0, await firm.Count("job"));
    }

    [PostgresFact]
    public async Task What_is_forgotten_on_the_van_is_gone_from_the_database_at_the_next_publish_and_the_chain_still_fits()
    {
        Firm firm = await server.NewFirm();
        string name = new AttachmentStore(_van.File("job-a")).Keep(new float[1600]);
        _van.Add("job-a", more: [new RecordReviewed(DateTimeOffset.UnixEpoch, "L. Ead", ReviewOutcome.Accepted, "Mrs. Quarry called")]);
        Assert.NotEmpty(name);
        await _van.Publish(firm);
        Assert.True(await firm.Count("personal") > 0);

        ProgramResult forgotten = await _van.Run("forget", "job-a", "--keep-readings", "--by", "O. Ffice");
        ProgramResult published = await _van.Publish(firm);

        Assert.Equal((0, 0), (forgotten.ExitCode, published.ExitCode));
        Assert.Equal((0L, 0L, 0L), (await firm.Count("personal"), await firm.Count("job_attachment"), await firm.Count("attachment")));
        Assert.Equal(1, await firm.Count("event", "kind = 'personal-data-forgotten'"));
        await SameBytes.Assert(firm, ("van_01", _van));
    }

    [PostgresFact]
    public async Task Two_vans_at_once_keep_the_same_photo_once()
    {
        Firm firm = await server.NewFirm();
        using VanFolder other = new();
        string photo = Path.Combine(_van.Path, "plate.jpg");
        await File.WriteAllBytesAsync(photo, [.. Enumerable.Range(0, 3_000_000).Select(i => (byte)(i * 7 + i / 251))]);
        foreach ((VanFolder folder, string job) in new[] { (_van, "job-a"), (_van, "job-b"), (other, "job-a") })
        {
            folder.AddWithPhoto(job, photo);
        }

        ProgramResult[] results = await Task.WhenAll(_van.Publish(firm, "van_01"), other.Publish(firm, "van_02"));

        Assert.All(results, result => Assert.Equal((0, ""), (result.ExitCode, result.Error)));
        Assert.Equal((3L, 1L, 3L), (await firm.Count("job"), await firm.Count("attachment"), await firm.Count("job_attachment")));
        Assert.Equal(3_000_000L, await firm.Value("select sum(length(content)) from attachment_piece"));
        await SameBytes.Assert(firm, ("van_01", _van), ("van_02", other));
    }
}
