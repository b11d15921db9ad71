using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Time.Testing;

namespace HandsFreeStartup.Storage.Tests.Log;

public sealed class StartupLogTests : IDisposable
{
    readonly TemporaryFolder _folder = new();

    string Job => _folder.File("job.db");

    [Fact]
    public void Events_are_read_back_in_their_order()
    {
        using StartupLog log = StartupLog.Create(Job);
        foreach (StartupEvent happened in Some.SmallJob)
        {
            log.Append(happened);
        }

        Assert.Equal(Some.SmallJob.Select(EventFormat.BodyOf), log.ReadAll().Select(EventFormat.BodyOf));
    }

    [Fact]
    public void A_reopened_log_goes_on_where_it_stopped()
    {
        using (StartupLog log = StartupLog.Create(Job))
        {
            log.Append(Some.Began());
        }

        using (StartupLog log = StartupLog.Open(Job))
        {
            log.Append(Some.Reading("oxygen", 7.6m, "low"));
            Assert.Equal(2, log.Checkpoint!.Count);
        }

        Assert.True(StartupLogVerifier.Verify(Job).IsSound);
    }

    [Fact]
    public void The_time_of_recording_comes_from_the_given_clock_and_stands_beside_the_time_of_the_event()
    {
        using (StartupLog log = StartupLog.Create(Job, new FakeTimeProvider(Some.Moment.AddHours(1))))
        {
            log.Append(Some.Began());
        }

        Assert.Equal("2026-03-14T10:26:53.5890000+00:00", Query("select recorded_at from event"));
    }

    [Fact]
    public void A_clock_that_is_set_back_loses_nothing_and_changes_no_order()
    {
        TurnedClock clock = new() { Now = Some.Moment };
        using (StartupLog log = StartupLog.Create(Job, clock))
        {
            log.Append(Some.Began());
            clock.Now -= TimeSpan.FromDays(400);
            log.Append(Some.Reading("oxygen", 7.6m, "low"));
        }

        StoredJob stored = StoredJob.Read(Job);
        Assert.Empty(stored.Verification.Findings);
        Assert.Collection(stored.Events, first => Assert.IsType<StartupBegan>(first), second => Assert.IsType<ReadingEntered>(second));
        Assert.Equal("2025-02-07T09:26:53.5890000+00:00", Query("select recorded_at from event where sequence=2"));
    }

    [Theory]
    [InlineData("update event set body='x' where sequence=1", "the log is append-only")]
    [InlineData("update personal set content='x'", "the log is append-only")]
    [InlineData("delete from personal", "the log is append-only")]
    [InlineData("insert into personal values (2, 'x', zeroblob(32), 'x')", "the log has no gaps")]
    [InlineData("delete from event where sequence=2", "the log is append-only")]
    [InlineData("insert or replace into event select sequence, recorded_at, kind, 'x', previous_hash, hash from event where sequence=1", "the log has no gaps")]
    [InlineData("insert into event select 99, recorded_at, kind, body, previous_hash, hash from event where sequence=1", "the log has no gaps")]
    public void The_file_itself_refuses_changes(string sql, string message)
    {
        Write(Job, Some.SmallJob);

        SqliteException error = Assert.Throws<SqliteException>(() => Query($"pragma recursive_triggers=on; {sql}"));

        Assert.Contains(message, error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_second_use_of_the_same_job_is_refused()
    {
        using StartupLog first = StartupLog.Create(Job);

        LogException opening = Assert.Throws<LogException>(() => StartupLog.Open(Job));
        LogException verifying = Assert.Throws<LogException>(() => StartupLogVerifier.Verify(Job));

        Assert.Equal($"The record {Job} is in use by another running start-up. End that one first.", opening.Message);
        Assert.Equal(opening.Message, verifying.Message);
    }

    [Fact]
    public void The_database_is_locked_even_against_programs_that_know_nothing_of_the_lock_file()
    {
        using StartupLog log = StartupLog.Create(Job);
        log.Append(Some.Began());

        SqliteException error = Assert.Throws<SqliteException>(() => Query("select count(*) from event"));

        Assert.Equal(5, error.SqliteErrorCode);
    }

    [Fact]
    public void The_lock_file_of_a_dead_process_does_not_block()
    {
        Write(Job, Some.SmallJob);
        File.WriteAllText($"{Job}.lock", "");

        using StartupLog log = StartupLog.Open(Job);

        Assert.Equal(Some.SmallJob.Length, log.Checkpoint!.Count);
    }

    [Fact]
    public void An_existing_record_is_never_overwritten()
    {
        Write(Job, Some.SmallJob);
        byte[] before = File.ReadAllBytes(Job);

        LogException error = Assert.Throws<LogException>(() => StartupLog.Create(Job));

        Assert.Contains("exists already", error.Message, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllBytes(Job));
    }

    [Fact]
    public void A_missing_record_is_told_in_one_sentence() =>
        Assert.Equal($"There is no record {Job}. Look at the name and the folder.", Assert.Throws<LogException>(() => StartupLog.Open(Job)).Message);

    [Fact]
    public void A_missing_folder_is_told_in_one_sentence() =>
        Assert.Contains("its folder is read-only or missing", Assert.Throws<LogException>(() => StartupLog.Create(_folder.File("none/job.db"))).Message, StringComparison.Ordinal);

    [Fact]
    public void A_file_that_is_no_record_is_refused_and_left_alone()
    {
        File.WriteAllText(Job, new string('x', 5000));

        LogException error = Assert.Throws<LogException>(() => StartupLog.Open(Job));

        Assert.Contains("is damaged or no record of this program", error.Message, StringComparison.Ordinal);
        Assert.Equal(new string('x', 5000), File.ReadAllText(Job));
    }

    [Fact]
    public void A_database_of_another_program_is_refused()
    {
        Query("create table note (text)");

        Assert.Equal($"{Job} is no record of this program.", Assert.Throws<LogException>(() => StartupLog.Open(Job)).Message);
    }

    [Fact]
    public void A_record_of_a_newer_program_is_refused()
    {
        Write(Job, Some.SmallJob);
        Query("pragma user_version=3");

        Assert.Contains("has format 3; this program knows formats up to 2", Assert.Throws<LogException>(() => StartupLog.Open(Job)).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_changed_record_is_not_gone_on_with()
    {
        Write(Job, Some.SmallJob);
        Query("drop trigger event_is_never_changed; update event set body=replace(body, '7.60', '6.70') where sequence=5");

        LogException error = Assert.Throws<LogException>(() => StartupLog.Open(Job));

        Assert.Contains("Event 5 does not match its hash", error.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_record_in_a_read_only_folder_is_read_and_verified_but_not_opened_for_writing()
    {
        Write(Job, Some.SmallJob);
        using ReadOnlyFolder guard = new(_folder.Path);

        Assert.True(StartupLogVerifier.Verify(Job).IsSound);
        Assert.Equal(Some.SmallJob.Length, StoredJob.Read(Job).Events.Count);
        if (guard.IsEffective)
        {
            Assert.Contains("read-only or missing", Assert.Throws<LogException>(() => StartupLog.Open(Job)).Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_clip_is_kept_as_a_plain_recording_named_by_its_hash_and_found_by_the_verifier()
    {
        AttachmentStore clips = new(Job);
        string name = clips.Keep([0f, 0.5f, -1f, 2f]);
        Write(Job, [Some.Began(), Some.Note("hot plate", new Evidence("hot plate", Channel.Voice, Certainty.Amber) { Clip = name })]);

        byte[] wav = File.ReadAllBytes(clips.Find(AttachmentKind.Recording, name)!);
        Assert.Equal(name, $"{Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(wav))}.wav");
        Assert.Equal("RIFF"u8, wav.AsSpan(0, 4));
        Assert.Equal([0, 0, 0x00, 0x40, 0x00, 0x80, 0xFF, 0x7F], wav[44..]);
        Assert.True(StartupLogVerifier.Verify(Job).IsSound);

        wav[^1] ^= 1;
        File.WriteAllBytes(clips.Find(AttachmentKind.Recording, name)!, wav);
        Assert.Equal($"Event 2: the recording {name} was changed or damaged.", Assert.Single(StartupLogVerifier.Verify(Job).Findings).Message);

        File.Delete(clips.Find(AttachmentKind.Recording, name)!);
        Assert.Equal($"Event 2: the recording {name} is missing.", Assert.Single(StartupLogVerifier.Verify(Job).Findings).Message);
    }

    public void Dispose() => _folder.Dispose();

    internal static void Write(string path, IEnumerable<StartupEvent> events)
    {
        using StartupLog log = StartupLog.Create(path);
        foreach (StartupEvent happened in events)
        {
            log.Append(happened);
        }
    }

    sealed class TurnedClock : TimeProvider
    {
        public DateTimeOffset Now { get; set; }

        public override DateTimeOffset GetUtcNow() => Now;
    }

    string Query(string sql) => RawDatabase.Query(Job, sql);
}
