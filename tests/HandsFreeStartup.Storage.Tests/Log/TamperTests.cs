using System.Collections.Immutable;
using System.Text;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;

namespace HandsFreeStartup.Storage.Tests.Log;

public sealed class TamperTests : IDisposable
{
    const string RemoveGuards = "drop trigger event_is_never_changed; drop trigger event_is_never_removed; drop trigger event_has_no_gap;";

    readonly TemporaryFolder _folder = new();
    readonly string _job;
    readonly Checkpoint _printed;

    public TamperTests()
    {
        _job = _folder.File("job.db");
        using StartupLog log = StartupLog.Create(_job);
        foreach (StartupEvent happened in Some.SmallJob)
        {
            log.Append(happened);
        }
        _printed = log.Checkpoint!;
    }

    [Fact]
    public void An_untouched_record_is_sound()
    {
        Verification verification = StartupLogVerifier.Verify(_job, _printed);

        Assert.Empty(verification.Findings);
        Assert.Equal(_printed, verification.Checkpoint);
    }

    /// <summary>
    /// What cannot be found are bytes that mean nothing: free space in a page and counters in the file's header. There the test demands
    /// that every event still reads as it was written, byte for byte.
    /// </summary>
    [Fact]
    public void A_flipped_bit_in_any_byte_of_the_file_is_found_or_changes_nothing_that_was_recorded()
    {
        byte[] sound = File.ReadAllBytes(_job);
        string[] written = Rows(_job);
        string changed = _folder.File("changed.db");
        int found = 0;
        for (int i = 0; i < sound.Length; i++)
        {
            byte[] bytes = [.. sound];
            bytes[i] ^= (byte)(1 << (i % 8));
            File.WriteAllBytes(changed, bytes);

            bool isFound = !IsSound(changed, _printed);

            Assert.True(isFound || written.SequenceEqual(Rows(changed)), $"byte {i} was changed, the record with it, and nobody noticed");
            found += isFound ? 1 : 0;
        }
        Assert.True(found > written.Sum(row => row.Length), $"only {found} of {sound.Length} changed bytes were found");
    }

    [Fact]
    public void A_flipped_byte_in_the_content_of_an_event_names_that_event()
    {
        byte[] sound = File.ReadAllBytes(_job);
        string changed = _folder.File("changed.db");
        int tried = 0;
        for (int sequence = 1; sequence <= Some.SmallJob.Length; sequence++)
        {
            byte[] body = Encoding.UTF8.GetBytes(RawDatabase.Query(_job, FormattableString.Invariant($"select body from event where sequence={sequence}")));
            int at = sound.AsSpan().IndexOf(body);
            Assert.True(at >= 0, $"the content of event {sequence} is not in the file as one piece");
            foreach (int offset in new[] { 0, body.Length / 2, body.Length - 1 })
            {
                byte[] bytes = [.. sound];
                bytes[at + offset] ^= 1;
                File.WriteAllBytes(changed, bytes);

                LogFinding first = StartupLogVerifier.Verify(changed).Findings[0];

                Assert.Equal(sequence, first.Sequence);
                Assert.Contains("does not match its hash", first.Message, StringComparison.Ordinal);
                tried++;
            }
        }
        Assert.Equal(3 * Some.SmallJob.Length, tried);
    }

    [Theory]
    [InlineData("delete from event where sequence=3", "Event 4 stands where event 3 should be")]
    [InlineData("delete from event where sequence=1", "Event 2 stands where event 1 should be")]
    [InlineData("delete from event where sequence=3; update event set sequence=sequence-1 where sequence>3", "Event 3 does not follow from the event before it")]
    [InlineData("update event set sequence=99 where sequence=3; update event set sequence=3 where sequence=4; update event set sequence=4 where sequence=99", "Event 3 does not follow")]
    [InlineData("update event set recorded_at='2020-01-01T00:00:00.0000000+00:00' where sequence=4", "Event 4 does not match its hash")]
    [InlineData("update event set kind='reading-scratched' where sequence=6", "Event 6 does not match its hash")]
    [InlineData("update event set body=replace(body, '7.60', '7.6') where sequence=5", "Event 5 does not match its hash")]
    [InlineData("insert into event select 8, recorded_at, kind, body, hash, hash from event where sequence=7", "Event 8 does not match its hash")]
    [InlineData("update event set hash=previous_hash where sequence=2", "Event 2 does not match its hash")]
    public void A_change_by_somebody_who_removes_the_guards_names_the_first_wrong_event(string sql, string message)
    {
        RawDatabase.Query(_job, RemoveGuards + sql);

        Verification verification = StartupLogVerifier.Verify(_job);

        Assert.StartsWith(message, verification.Findings[0].Message, StringComparison.Ordinal);
        Assert.Null(verification.Checkpoint);
    }

    [Theory]
    [InlineData("drop trigger event_is_never_changed", "The file lacks what guards it: CREATE TRIGGER event_is_never_changed was removed or changed.")]
    [InlineData("drop trigger event_has_no_gap; create trigger event_has_no_gap before insert on event when 1=0 begin select 1; end", "The file lacks what guards it")]
    [InlineData("create trigger more after insert on event begin select 1; end", "The file holds what does not belong there: CREATE TRIGGER more.")]
    [InlineData("create table more (text)", "The file holds what does not belong there: CREATE TABLE more.")]
    [InlineData("pragma user_version=0", "The file is not marked as a record of a format that this program knows")]
    [InlineData("pragma user_version=1", "Event 1 does not follow")]
    [InlineData("drop trigger personal_is_removed_only_when_told", "The file lacks what guards it: CREATE TRIGGER personal_is_removed_only_when_told")]
    public void A_change_of_the_guards_is_found(string sql, string message)
    {
        RawDatabase.Query(_job, sql);

        Assert.Contains(StartupLogVerifier.Verify(_job).Findings, finding => finding.Message.StartsWith(message, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("update personal set content=replace(content, 'id: c', 'id: d')", "Event 1: its personal part 'job/site' does not match its hash")]
    [InlineData("update personal set salt=zeroblob(32)", "Event 1: its personal part 'job/site' does not match its hash")]
    [InlineData("delete from personal", "Event 1: its personal part 'job/site' is missing: it was removed, and no event tells of it.")]
    [InlineData("update personal set sequence=2", "Event 1: its personal part 'job/site' is missing")]
    [InlineData("insert into personal values (8, 'reason', zeroblob(32), '\"x\"')", "Event 8: a personal part 'reason' does not belong to it")]
    public void A_change_of_what_stands_apart_from_the_hashed_bytes_is_found(string sql, string message)
    {
        RawDatabase.Query(_job, "drop trigger personal_is_never_changed; drop trigger personal_is_removed_only_when_told; drop trigger personal_comes_with_its_event;" + sql);

        Assert.Contains(StartupLogVerifier.Verify(_job).Findings, finding => finding.Message.StartsWith(message, StringComparison.Ordinal));
    }

    [Fact]
    public void A_review_before_the_end_of_the_job_is_out_of_place()
    {
        string early = _folder.File("early.db");
        StartupLogTests.Write(early, [Some.Began(), new RecordReviewed(Some.Moment, "L. Ead", ReviewOutcome.Accepted, "")]);

        Assert.Equal("Event 2 is out of place: a record is reviewed only after its end.", Assert.Single(StartupLogVerifier.Verify(early).Findings).Message);
    }

    [Fact]
    public void A_review_after_the_copies_were_printed_makes_them_no_liars()
    {
        using (StartupLog log = StartupLog.Open(_job))
        {
            log.Append(new RecordReviewed(Some.Moment.AddDays(1), "L. Ead", ReviewOutcome.Accepted, ""));
        }

        Verification verification = StartupLogVerifier.Verify(_job, _printed);

        Assert.Empty(verification.Findings);
        Assert.Equal("Since the checkpoint was printed the record was reviewed; nothing else was added.", Assert.Single(verification.Remarks));
    }

    [Fact]
    public void A_cut_tail_is_found_by_the_checkpoint_on_the_copies_and_by_nothing_else()
    {
        RawDatabase.Query(_job, $"{RemoveGuards} delete from event where sequence>5");
        foreach (string statement in Guards())
        {
            RawDatabase.Query(_job, statement);
        }

        Assert.True(StartupLogVerifier.Verify(_job).IsSound, "a chain that was cut at its end is still a chain");
        Assert.Equal("The checkpoint tells of 7 events, the record holds 5: its end was cut off.",
            Assert.Single(StartupLogVerifier.Verify(_job, _printed).Findings).Message);
    }

    [Fact]
    public void A_wholly_rewritten_record_is_found_by_the_checkpoint_on_the_copies_and_by_nothing_else()
    {
        string rewritten = _folder.File("rewritten.db");
        StartupLogTests.Write(rewritten, Some.SmallJob.Select(happened =>
            happened is ReadingEntered entered ? entered with { Reading = entered.Reading with { Value = 8.60m } } : happened));

        Assert.True(StartupLogVerifier.Verify(rewritten).IsSound, "a record made by this program is a record");
        Assert.StartsWith("The hash of event 7 is not that of the checkpoint",
            Assert.Single(StartupLogVerifier.Verify(rewritten, _printed).Findings).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Events_after_the_printed_checkpoint_are_found()
    {
        using (StartupLog log = StartupLog.Open(_job))
        {
            log.Append(Some.Reading("oxygen", 9.9m, "low"));
        }

        LogFinding finding = Assert.Single(StartupLogVerifier.Verify(_job, _printed).Findings);

        Assert.Equal("Event 8 and what follows was added after the checkpoint was printed.", finding.Message);
    }

    [Fact]
    public void A_file_cut_at_any_page_or_in_the_middle_of_one_is_found()
    {
        byte[] sound = File.ReadAllBytes(_job);
        string cut = _folder.File("cut.db");
        foreach (int length in Enumerable.Range(1, 12).Select(twelfth => sound.Length * twelfth / 13))
        {
            File.WriteAllBytes(cut, sound[..length]);

            Assert.False(IsSound(cut, _printed), $"cut to {length} of {sound.Length} bytes");
        }
    }

    [Fact]
    public void A_damaged_tail_that_a_killed_process_left_in_the_wal_is_found_by_the_checkpoint()
    {
        (string job, Checkpoint printed) = Unclosed();
        byte[] wal = File.ReadAllBytes($"{job}-wal");
        int unnoticed = 0;
        for (int i = 0; i < wal.Length; i += 97)
        {
            byte[] bytes = [.. wal];
            bytes[i] ^= 0x10;
            File.WriteAllBytes($"{job}-wal", bytes);
            unnoticed += IsSound(job, printed) ? 1 : 0;
        }

        File.WriteAllBytes($"{job}-wal", wal);
        Assert.True(StartupLogVerifier.Verify(job, printed).IsSound);
        Assert.Equal(0, unnoticed);
    }

    [Theory]
    [InlineData("7 events, ends 0123 4567 89AB CDEF", 7, "0123456789ABCDEF")]
    [InlineData("7 0123456789abcdef", 7, "0123456789ABCDEF")]
    [InlineData(" 41 events ends 0123 4567 89ab cdef. ", 41, "0123456789ABCDEF")]
    public void A_checkpoint_is_read_as_people_write_it(string text, int count, string hash) => Assert.Equal(new Checkpoint(count, hash), Checkpoint.Parse(text));

    [Theory]
    [InlineData("")]
    [InlineData("7 events")]
    [InlineData("7 events, ends 0123")]
    [InlineData("0123 4567 89AB CDEF")]
    [InlineData("7 events, ends 0123 4567 89AB CDEG")]
    public void What_is_no_checkpoint_is_not_taken_for_one(string text) => Assert.Null(Checkpoint.Parse(text));

    [Fact]
    public void A_printed_checkpoint_reads_back_as_itself() => Assert.True(Checkpoint.Parse(_printed.ToString())!.Fits(_printed));

    public void Dispose() => _folder.Dispose();

    /// <summary>A job as a killed process leaves it: everything still in the -wal file.</summary>
    (string Job, Checkpoint Printed) Unclosed()
    {
        string open = _folder.File("open.db"), left = _folder.File("left.db");
        using StartupLog log = StartupLog.Create(open);
        foreach (StartupEvent happened in Some.SmallJob)
        {
            log.Append(happened);
        }
        File.Copy(open, left);
        File.Copy($"{open}-wal", $"{left}-wal");
        return (left, log.Checkpoint!);
    }

    static bool IsSound(string path, Checkpoint printed)
    {
        try
        {
            return StartupLogVerifier.Verify(path, printed).IsSound;
        }
        catch (LogException)
        {
            return false;
        }
    }

    static string[] Rows(string path)
    {
        try
        {
            return [.. StoredJob.Read(path).Events.Select(happened => EventFormat.KindOf(happened) + EventFormat.BodyOf(happened))];
        }
        catch (LogException error)
        {
            return [error.Message];
        }
    }

    /// <summary>The guards of the current format, as somebody would copy them from another record.</summary>
    static ImmutableArray<string> Guards()
    {
        using TemporaryFolder folder = new();
        StartupLogTests.Write(folder.File("other.db"), [Some.Began()]);
        return [.. new[] { "event_is_never_changed", "event_is_never_removed", "event_has_no_gap" }
            .Select(name => RawDatabase.Query(folder.File("other.db"), $"select sql from sqlite_schema where name='{name}'"))];
    }
}
