using System.Collections.Immutable;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Languages;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Reports.Summary;
using HandsFreeStartup.Running;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Start;

/// <summary>A job with its open record: new, or one that goes on.</summary>
sealed class OpenJob : IEventLog, IPhotoShelf, IDisposable
{
    const double QuickFactor = 0.01;

    readonly StartupLog _log;
    readonly AttachmentStore? _clips;

    OpenJob(StartupLog log, StartupPlan plan, JobDescription? begins, bool keepsClips)
    {
        _log = log;
        _clips = keepsClips ? new AttachmentStore(log.Path) : null;
        (Plan, Begins) = (plan, begins);
    }

    /// <summary>What leads the job.</summary>
    public StartupPlan Plan { get; }

    /// <summary>The description to begin with; null for a job that goes on.</summary>
    public JobDescription? Begins { get; }

    /// <summary>All events of the returned record that it follows; null where it follows none.</summary>
    public IReadOnlyList<StartupEvent>? Returned { get; private init; }

    /// <summary>Where the record lies.</summary>
    public string Path => _log.Path;

    /// <summary>Makes the record of a new job, or of a rehearsal, which lies elsewhere.</summary>
    public static OpenJob New(StartOptions options, string recognizer, TimeProvider clock)
    {
        FileCopy checklist = UserFile.CopyChecklist(options.Files.Checklist ?? Shipped(options.Demo ? "two-stage-natural-gas.yaml" : "gas-furnace.yaml"), ShippedFiles.Checklists);
        FileCopy appliance = UserFile.Copy(Given(options.Files.Appliance, options.Demo, "--appliance", "demo-furnace.yaml"));
        FileCopy site = UserFile.Copy(Given(options.Files.Site, options.Demo, "--site", "demo-site.yaml"));
        string jobId = NewId(clock);
        bool isQuick = options.Quick || options.Demo;
        JobDescription job = new(jobId, checklist, appliance, site)
        {
            Technician = Technician(options),
            ProgramVersion = ProgramVersion.Informational,
            Recogniser = recognizer,
            IsDemonstration = isQuick || options.Sound.Wav.Length > 0 || options.Rehearsal is not null,
            TimerFactor = isQuick ? QuickFactor : 1,
            Settings = Settings(options),
            Occasion = options.Files.Occasion,
            UtcOffset = Offset(clock),
            Rehearsal = options.Rehearsal,
        };
        job = options.Demo || options.Rehearsal is not null ? job : WithOthers(job, options.Data.Jobs, clock);
        StartupPlan plan = UserFile.PlanOf(job, isNew: true);
        OccasionChoice.Check(plan.Checklist, options.Files.Occasion);
        LanguageFiles.Find(options.Language ?? plan.Settings.Language);
        string folder = options.Rehearsal is null ? options.Data.Jobs : options.Data.Rehearsals;
        options.Data.Make(folder);
        return new OpenJob(StartupLog.Create(System.IO.Path.Combine(folder, $"{jobId}.db"), clock), plan, job, options.Sound.KeepsClips);
    }

    /// <summary>Makes the record of a job that follows one which its lead has returned: with the same files, linked to it by its hash. What stands is carried over, the rest is done and measured anew.</summary>
    /// <exception cref="WrongUseException">That record was not returned.</exception>
    public static OpenJob Following(StartOptions options, string recognizer, TimeProvider clock, TextWriter output)
    {
        string path = JobFile.Find(options.Data, options.Earlier!.Name!);
        StoredJob returned = StoredJob.Read(path);
        if (returned.Verification.Findings is [var finding, ..])
        {
            throw new LogException($"The record {path} does not verify, so nothing follows it: {finding.Message.TrimEnd('.')}. Keep the file as it is, run verify on it, and begin a new job.");
        }

        if (returned.Events is not [StartupBegan began, ..] || returned.Events.OfType<RecordReviewed>().LastOrDefault() is not { Outcome: ReviewOutcome.Returned } review)
        {
            throw new WrongUseException($"The record {path} was not returned by its lead technician, so there is nothing to follow. Begin a new start-up without --follow.");
        }

        Checkpoint last = returned.Verification.Checkpoint!;
        output.WriteLine($"Follows {began.Job.JobId}, returned by {review.Lead}: {review.Remark}");
        if (review.Steps.IsEmpty)
        {
            output.WriteLine("The lead has named no step, so nothing is carried over: everything is done and measured anew.");
        }

        JobDescription job = began.Job with
        {
            JobId = NewId(clock),
            Technician = Technician(options),
            ProgramVersion = ProgramVersion.Informational,
            Recogniser = recognizer,
            IsDemonstration = began.Job.IsDemonstration || options.Quick || options.Sound.Wav.Length > 0,
            TimerFactor = options.Quick ? QuickFactor : began.Job.TimerFactor,
            UtcOffset = Offset(clock),
            Follows = new FollowedJob(began.Job.JobId, last.Count, last.Hash) { Technician = began.Job.Technician },
        };
        job = WithOthers(job, System.IO.Path.GetDirectoryName(path)!, clock);
        StartupPlan plan = UserFile.PlanOf(job, isNew: true);
        return new OpenJob(StartupLog.Create(System.IO.Path.Combine(System.IO.Path.GetDirectoryName(path)!, $"{job.JobId}.db"), clock), plan, job, options.Sound.KeepsClips) { Returned = returned.Events };
    }

    /// <summary>The job with everything that was started up at the same address in this visit.</summary>
    static JobDescription WithOthers(JobDescription job, string folder, TimeProvider clock)
    {
        ImmutableArray<ApplianceBeside> others = [.. (job.Beside ?? []).Union(SamePlace.Signed(folder, job, clock.GetUtcNow()))];
        return others.IsEmpty ? job : job with { Beside = others };
    }

    /// <summary>A sentence for each appliance that was started up at the same address in this visit; none where a job is resumed.</summary>
    public IEnumerable<string> Others() => (Begins?.Beside ?? []).Select(other =>
        $"Started up at this address already: {other.Title}, job {other.JobId}. It runs too while the rooms are walked, and the rooms are measured again. One customer copy for all: copies {other.JobId} {Begins!.JobId}");

    static string NewId(TimeProvider clock) => FormattableString.Invariant($"{clock.GetLocalNow():yyyyMMdd-HHmmss}-{Guid.NewGuid().ToString("N")[..4]}");

    /// <summary>Opens an interrupted job: the named one, or the only one that is unfinished. An ended one, or one that does not verify, is not resumed.</summary>
    public static OpenJob ToGoOn(StartOptions options, TimeProvider clock)
    {
        string path = options.Earlier?.Name is { } job ? JobFile.Find(options.Data, job) : UnfinishedJobs.Only(options.Data.Jobs, "start");
        if (options.Rehearsal is null)
        {
            NoRehearsal.Check(path);
        }

        UnfinishedJobs.Check(path);
        StartupLog log = StartupLog.Open(path, clock);
        try
        {
            IReadOnlyList<StartupEvent> events = log.ReadAll();
            if (events is not [StartupBegan began, ..])
            {
                throw new WrongUseException($"The record {log.Path} holds no start-up yet. Begin a new one.");
            }

            StartupPlan plan = UserFile.PlanOf(began.Job);
            Replay.Of(log.Path, plan, events);
            return new OpenJob(log, plan, null, options.Sound.KeepsClips);
        }
        catch
        {
            log.Dispose();
            throw;
        }
    }

    /// <inheritdoc/>
    public void Append(IReadOnlyList<StartupEvent> decided) => _log.Append(decided);

    /// <inheritdoc/>
    public IReadOnlyList<StartupEvent> ReadAll() => _log.ReadAll();

    /// <inheritdoc/>
    public string? KeepClip(SpeechClip clip) => _clips?.Keep(clip.Samples);

    /// <inheritdoc/>
    public KeptPhoto Keep(string path)
    {
        try
        {
            (string name, string hash) = new AttachmentStore(Path).KeepPhoto(path);
            return new KeptPhoto(name, hash);
        }
        catch (LogException e)
        {
            return new KeptPhoto("", "", e.Message);
        }
    }

    /// <summary>The notice to the owner where the furnace was not put into service, else null.</summary>
    public string? Notice(Language language) => OutOfServiceNotice.Of(Plan, ReadAll(), language);

    /// <summary>Writes the summary beside the record.</summary>
    /// <param name="language">In which it is written.</param>
    /// <returns>Its path.</returns>
    public string WriteSummary(Language language)
    {
        string path = System.IO.Path.ChangeExtension(Path, ".txt");
        WholeFile.WriteText(path, StartupSummary.Of(Plan, ReadAll(), _log.Checkpoint?.ToString(), language), "The record is whole, but its summary");
        return path;
    }

    /// <inheritdoc/>
    public void Dispose() => _log.Dispose();

    /// <summary>The language that was named, or that of the settings, before there is a job.</summary>
    /// <exception cref="WrongUseException">It is not there.</exception>
    public static Language LanguageOf(StartOptions options) => LanguageFiles.Find(options.Language ?? (Settings(options) is { } file ? UserFile.ReadSettings(file).Language : null));

    /// <summary>The settings that were named, or the usual ones if there are any. The demonstration uses none.</summary>
    static FileCopy? Settings(StartOptions options) =>
        options.Files.Settings is { } named ? UserFile.Copy(named)
        : !options.Demo && File.Exists(options.Data.Settings) ? UserFile.Copy(options.Data.Settings)
        : null;

    static string Technician(StartOptions options) => options.Technician is { } named
        ? GivenName.Of(named, "The technician signs by name: give --technician NAME, or leave it out.")
        : options.Demo ? "Technician of the demonstration" : Environment.UserName;

    static string Given(string? path, bool isDemo, string option, string sample) =>
        path ?? (isDemo
            ? Shipped(sample)
            : throw new WrongUseException($"Give {option} FILE, or let new job ask for everything: to write it yourself, copy {Shipped(sample)} and write down what your own plate, instructions and instruments say. To look around first, use --demo."));

    static string Shipped(string name) => System.IO.Path.Combine(ShippedFiles.Checklists, name);

    /// <summary>In whole minutes, as clocks on walls have it.</summary>
    static TimeSpan Offset(TimeProvider clock) => TimeSpan.FromMinutes(Math.Round(clock.LocalTimeZone.GetUtcOffset(clock.GetUtcNow()).TotalMinutes));
}
