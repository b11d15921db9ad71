using System.Text;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Storage.Tests.Log;

public sealed class ForgettingTests : IDisposable
{
    static readonly string[] Names = ["Owner (invented)", "1 Mill Lane", "House at the mill", "invented-site", "Mrs. Quarry", "kennel"];

    readonly TemporaryFolder _folder = new();
    readonly string _job;
    readonly Checkpoint _printed;
    readonly string _clip;

    public ForgettingTests()
    {
        _job = _folder.File("job.db");
        _clip = new AttachmentStore(_job).Keep([0.1f, 0.2f]);
        JobDescription job = Some.Began().Job with { Checklist = Fixture.Checklist, Appliance = Fixture.Appliance, Site = Fixture.Site };
        Evidence spoken = new("Mrs. Quarry was present", Channel.Voice, Certainty.Green) { Clip = _clip };
        using StartupLog log = StartupLog.Create(_job);
        foreach (StartupEvent happened in (StartupEvent[])
        [
            new StartupBegan(Some.Moment, job),
            Some.Reading("oxygen", 7.60m, "low"),
            new DictationAsked(Some.Moment, DictationPurpose.Note),
            Some.Note("Mrs. Quarry was present", spoken),
            new DictationAsked(Some.Moment, DictationPurpose.SkipReason),
            new StepSkipped(Some.Moment, "drill", "the kennel is in the way", spoken with { Words = "the kennel is in the way" }),
            new UtteranceHeard(Some.Moment, spoken),
            new DangerAsked(Some.Moment, spoken),
            new StartupStopped(Some.Moment, StopCause.Emergency, Evidence.Typed("emergency stop")),
            new DictationAsked(Some.Moment, DictationPurpose.ResumeReason),
            new StartupResumed(Some.Moment, "Mrs. Quarry opened the windows"),
            new FinishAsked(Some.Moment, false),
            new DictationAsked(Some.Moment, DictationPurpose.EndReason),
            new EndedOutOfService(Some.Moment, "Mrs. Quarry wants another day"),
            new RecordReviewed(Some.Moment, "L. Ead", ReviewOutcome.Returned, "call Mrs. Quarry"),
        ])
        {
            log.Append(happened);
        }

        _printed = log.Checkpoint!;
    }

    [Fact]
    public void Before_it_everything_reads_as_it_was_written()
    {
        IReadOnlyList<StartupEvent> events = StoredJob.Read(_job).Events;

        Assert.Equal("Mrs. Quarry was present", events.OfType<NoteTaken>().Single().Text);
        Assert.Equal(Fixture.Site, ((StartupBegan)events[0]).Job.Site);
        Assert.Equal("call Mrs. Quarry", events.OfType<RecordReviewed>().Single().Remark);
    }

    [Fact]
    public void Not_a_byte_of_a_name_and_no_recording_is_left_in_the_folder()
    {
        Assert.All(Names, name => Assert.True(Holds(name), $"the test would not find {name}"));

        Forget();

        Assert.All(Names, name => Assert.False(Holds(name), $"{name} is still there"));
        Assert.Equal([_job], Directory.GetFileSystemEntries(_folder.Path));
    }

    [Fact]
    public void The_log_stays_whole_and_tells_when_and_by_whom_it_was_redacted()
    {
        Forget();

        Verification verification = StartupLogVerifier.Verify(_job, _printed);

        Assert.Empty(verification.Findings);
        Assert.Equal(16, verification.Count);
        Assert.Equal(new Redaction(16, Some.Moment, "L. Ead"), verification.Redaction);
        Assert.Equal("Since the checkpoint was printed the record was freed of names; nothing else was added.", Assert.Single(verification.Remarks));
    }

    [Fact]
    public void Readings_stay_and_the_job_can_still_be_led_by_its_files()
    {
        Site before = UserFile.ReadSite(Fixture.Site);

        Forget();

        IReadOnlyList<StartupEvent> events = StoredJob.Read(_job).Events;
        JobDescription job = ((StartupBegan)events[0]).Job;
        Site after = UserFile.ReadTogether(job.Checklist, job.Appliance, job.Site).Site;
        Assert.Equal("7.60", ((ReadingEntered)events[1]).Reading.Value.ToString(System.Globalization.CultureInfo.InvariantCulture));
        Assert.Equal("T. Tester", job.Technician);
        Assert.Equal(("removed", "(removed)", "(removed)", "(removed)"), (after.Id, after.Title, after.Customer, after.Address));
        Assert.Equal(before.Rooms.AsEnumerable(), after.Rooms);
        Assert.Equal(before.Instruments.AsEnumerable(), after.Instruments);
        Assert.Equal(before.AltitudeFeet, after.AltitudeFeet);
        Assert.Equal(new NoteTaken(Some.Moment, "drill", "(removed)", new Evidence("(removed)", Channel.Voice, Certainty.Green)
        {
            Clip = _clip,
        }), events.OfType<NoteTaken>().Single());
    }

    [Fact]
    public void A_second_time_removes_nothing_and_adds_nothing()
    {
        Forget();
        int count = StartupLogVerifier.Verify(_job).Count;

        using StartupLog log = StartupLog.Open(_job);

        Assert.True(log.ForgetPersonalData("somebody else") is { Texts: 0, Recordings: 0, Photos: 0, OutOfReach: [] });
        Assert.Equal(count, log.Checkpoint!.Count);
    }

    [Fact]
    public void A_removal_that_was_broken_off_after_it_was_told_is_seen_and_brought_to_its_end()
    {
        using (StartupLog log = StartupLog.Open(_job))
        {
            log.Append(new PersonalDataForgotten(Some.Moment, "L. Ead", 1));
        }

        Assert.Contains(StartupLogVerifier.Verify(_job).Findings, finding => finding.Message == "Event 4: its personal part 'text' is still there although it was to be removed: run forget again.");

        Forget();

        Assert.Empty(StartupLogVerifier.Verify(_job).Findings);
        Assert.Equal(16, StartupLogVerifier.Verify(_job).Count);
    }

    [Fact]
    public void A_text_that_is_put_back_after_it_was_removed_is_found()
    {
        Forget();
        RawDatabase.Query(_job, "drop trigger personal_comes_with_its_event; insert into personal values (4, 'text', zeroblob(32), '\"all was well\"')");

        Assert.Contains(StartupLogVerifier.Verify(_job).Findings, finding => finding.Message.StartsWith("Event 4: its personal part 'text' does not match its hash", StringComparison.Ordinal));
    }

    [Fact]
    public void What_stands_for_a_text_cannot_be_guessed_from_it()
    {
        string[] commitments = [.. new[] { 4, 7 }.Select(sequence => RawDatabase.Query(_job, $"select json_extract(body, '$.evidence.words.sealed') from event where sequence={sequence}"))];

        Assert.All(commitments, commitment => Assert.Equal(64, commitment.Length));
        Assert.NotEqual(commitments[0], commitments[1]);
    }

    public void Dispose() => _folder.Dispose();

    void Forget()
    {
        using StartupLog log = StartupLog.Open(_job, new Microsoft.Extensions.Time.Testing.FakeTimeProvider(Some.Moment));
        log.ForgetPersonalData("L. Ead");
    }

    bool Holds(string name) => Directory.EnumerateFiles(_folder.Path, "*", SearchOption.AllDirectories)
        .Any(file => File.ReadAllBytes(file).AsSpan().IndexOf(Encoding.UTF8.GetBytes(name)) >= 0);
}
