using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Storage.Index;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Storage.Tests.Log;

/// <summary>Records that were made to break whoever reads them. Each is told as what it is: by a finding, or by one sentence where nothing can be read.</summary>
public sealed class HostileRecordTests : IDisposable
{
    readonly TemporaryFolder _folder = new();
    readonly string _job;

    public HostileRecordTests() => _job = _folder.File("job.db");

    public void Dispose() => _folder.Dispose();

    public static TheoryData<string> Contents => [.. HostileRecords.Contents.Keys];

    public static TheoryData<string> Schemas => [.. HostileRecords.Schemas.Keys];

    public static TheoryData<string> Impossible => [.. HostileRecords.Impossible.Keys];

    [Theory]
    [MemberData(nameof(Contents))]
    public void What_it_holds_is_a_finding_or_one_sentence(string what)
    {
        HostileRecords.All[what](_job);

        Assert.False(StartupLogVerifier.Verify(_job).IsSound);
        Told(() => StoredJob.Read(_job));
        Told(() => StartupLog.Open(_job).Dispose());
    }

    [Theory]
    [MemberData(nameof(Schemas))]
    public void A_schema_that_was_made_to_work_without_end_is_told_before_it_works(string what)
    {
        HostileRecords.All[what](_job);

        Assert.False(StartupLogVerifier.Verify(_job).IsSound);
        Told(() => StoredJob.Read(_job));
        Told(() => StartupLog.Open(_job).Dispose());
    }

    [Theory]
    [MemberData(nameof(Impossible))]
    public void An_order_of_events_that_no_start_up_takes_is_not_sound_and_the_event_is_named(string what)
    {
        HostileRecords.All[what](_job);
        IReadOnlyList<StartupEvent> events = StoredJob.Read(_job).Events;

        LogFinding finding = StartupLogVerifier.Verify(_job).Findings.First(one => one.Sequence == 3);

        Assert.StartsWith("Event 3 ", finding.Message, StringComparison.Ordinal);
        Assert.Contains($"Event 3 ({EventFormat.KindOf(events[2])}) cannot follow the events before it.", Assert.Throws<LogException>(
            () => Replay.Of(_job, UserFile.PlanOf(((StartupBegan)events[0]).Job), events)).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("link", "was exchanged")]
    [InlineData("large", "was exchanged")]
    [InlineData("pipe", "was exchanged")]
    [InlineData("folder", "was exchanged")]
    [InlineData("linked folder", "is missing")]
    [InlineData("words", "was changed or damaged")]
    public void A_recording_that_is_none_is_told_without_reading_it(string what, string finding)
    {
        string clip = new AttachmentStore(_job).Keep([0.1f, 0.2f]);
        string path = Path.Combine(AttachmentKind.Recording.FolderOf(_job), clip);
        HostileRecords.Write(_job, [.. FixtureJob.Events().Take(2), new UtteranceHeard(Some.Moment, Evidence.Typed("x") with { Clip = clip })]);
        Assert.True(StartupLogVerifier.Verify(_job).IsSound);
        if (what == "linked folder")
        {
            Directory.Move(AttachmentKind.Recording.FolderOf(_job), _folder.File("elsewhere"));
            Directory.CreateSymbolicLink(AttachmentKind.Recording.FolderOf(_job), _folder.File("elsewhere"));
        }
        else
        {
            HostileRecords.Put(what, path);
        }

        Assert.Contains(finding, Assert.Single(StartupLogVerifier.Verify(_job).Findings).Message, StringComparison.Ordinal);
        Assert.Equal(what == "words", new AttachmentStore(_job).Find(AttachmentKind.Recording, clip) is not null);
    }

    [Fact]
    public void The_name_of_a_recording_never_leads_out_of_its_folder()
    {
        FixtureJob.Write(_job);
        HostileRecords.Write(_folder.File("other.db"), FixtureJob.Events().Take(2).Append(new UtteranceHeard(Some.Moment, Evidence.Typed("x") with { Clip = "../job.db" })));

        Assert.Null(new AttachmentStore(_folder.File("other.db")).Find(AttachmentKind.Recording, "../job.db"));
        Assert.Contains("the recording ../job.db is missing", Assert.Single(StartupLogVerifier.Verify(_folder.File("other.db")).Findings).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("pipe", "is a pipe")]
    [InlineData("link", "is a link to somewhere else")]
    [InlineData("folder", "is a folder")]
    [InlineData("large", "is larger than 64 MiB")]
    [InlineData("zeros", "is damaged or no record")]
    [InlineData("empty", "is no record of this program")]
    public void What_is_no_record_at_all_is_one_sentence(string what, string why)
    {
        HostileRecords.Put(what, _job);

        Assert.Contains(why, Assert.Throws<LogException>(() => StoredJob.Read(_job)).Message, StringComparison.Ordinal);
        Told(() => StartupLogVerifier.Verify(_job));
        Told(() => StartupLog.Open(_job).Dispose());
        Assert.NotEmpty(JobIndex.StampOf(_job));
    }

    public static TheoryData<string, string> Beside
    {
        get
        {
            TheoryData<string, string> rows = [];
            foreach ((string ending, string what) in HostileRecords.Beside)
            {
                rows.Add(ending, what);
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Beside))]
    public void What_lies_beside_a_record_holds_nobody_up(string ending, string what)
    {
        FixtureJob.Write(_job);
        HostileRecords.Put(what, _job + ending);

        Told(() => StoredJob.Read(_job));
        Told(() => StartupLogVerifier.Verify(_job));
        Told(() => StartupLog.Open(_job).Dispose());
        Assert.NotEmpty(JobIndex.StampOf(_job));
    }

    [Theory]
    [InlineData(".clips")]
    [InlineData(".photos")]
    public void A_recording_or_photo_that_is_changed_in_place_changes_the_stamp_even_if_its_time_is_set_back(string beside)
    {
        FixtureJob.Write(_job);
        string file = Path.Combine(Directory.CreateDirectory(_job + beside).FullName, "attached");
        File.WriteAllBytes(file, new byte[1 << 20]);
        DateTime written = File.GetLastWriteTimeUtc(file);
        string before = JobIndex.StampOf(_job);

        using (FileStream changed = File.OpenWrite(file))
        {
            changed.Position = 700_000;
            changed.WriteByte(1);
        }

        File.SetLastWriteTimeUtc(file, written);
        Assert.NotEqual(before, JobIndex.StampOf(_job));
        Assert.Equal(JobIndex.StampOf(_job), JobIndex.StampOf(_job));
    }

    [Fact]
    public void A_record_that_was_changed_in_place_changes_the_stamp()
    {
        FixtureJob.Write(_job);
        DateTime written = File.GetLastWriteTimeUtc(_job);
        string before = JobIndex.StampOf(_job);
        byte[] bytes = File.ReadAllBytes(_job);
        bytes[^3000] ^= 1;
        File.WriteAllBytes(_job, bytes);
        File.SetLastWriteTimeUtc(_job, written);

        Assert.NotEqual(before, JobIndex.StampOf(_job));
    }

    [Theory]
    [InlineData("pipe")]
    [InlineData("folder")]
    [InlineData("link")]
    [InlineData("zeros")]
    [InlineData("empty")]
    public void An_index_that_is_none_costs_only_time(string what)
    {
        HostileRecords.Put(what, _job);

        using JobIndex index = JobIndex.Open(_job);
        index.Write([("a", "stamp", "content")], []);

        Assert.Equal(("stamp", "content"), index.ReadAll()["a"]);
    }

    [Theory]
    [InlineData("create view job as with recursive c(n) as (select 1 union all select n + 1 from c) select n as path, n as stamp, n as content from c")]
    [InlineData("create table job (path text primary key, stamp text not null, content text not null as (hex(zeroblob(500000000))))")]
    [InlineData("create table job (path text primary key, stamp text, content text); insert into job values (null, null, null)")]
    [InlineData("create table other (x)")]
    public void An_index_whose_tables_are_others_is_begun_anew_before_anything_is_asked_of_it(string sql)
    {
        RawDatabase.Query(_job, sql);

        using (JobIndex index = JobIndex.Open(_job))
        {
            index.Write([("a", "stamp", "content")], []);
        }

        using JobIndex again = JobIndex.Open(_job);
        Assert.Equal(("stamp", "content"), again.ReadAll()["a"]);
    }

    /// <summary>Nothing but a sentence may come out.</summary>
    static void Told(Action read)
    {
        try
        {
            read();
        }
        catch (LogException error)
        {
            Assert.EndsWith(".", error.Message, StringComparison.Ordinal);
        }
    }
}
