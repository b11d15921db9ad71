using System.Collections.Concurrent;
using HandsFreeStartup.Fleet.Publishing;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Publish;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.Tests.Support;
using HandsFreeStartup.Storage.UserFiles;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Fleet.Tests.Support;

/// <summary>The data folder of a van with its records.</summary>
public sealed class VanFolder : IDisposable
{
    /// <summary>A start-up is led anew only once for each seed; the records differ all the same, by their random commitments.</summary>
    static readonly ConcurrentDictionary<int, IReadOnlyList<StartupEvent>> Led = [];

    public string Path { get; } = Directory.CreateTempSubdirectory("handsfree-van-").FullName;

    public string Jobs => System.IO.Path.Combine(Path, "jobs");

    public IEnumerable<string> Records => Directory.EnumerateFiles(Jobs, "*.db").Order(StringComparer.Ordinal);

    public VanFolder() => Directory.CreateDirectory(Jobs);

    public void Dispose() => Directory.Delete(Path, recursive: true);

    public string File(string jobId) => System.IO.Path.Combine(Jobs, $"{jobId}.db");

    /// <summary>Writes a signed job.</summary>
    public string Add(string jobId, int seed = 0, Func<JobDescription, JobDescription>? change = null, int leaveOut = 0, IEnumerable<StartupEvent>? more = null)
    {
        IReadOnlyList<StartupEvent> events = Led.GetOrAdd(seed, FixtureJob.Events);
        StartupBegan began = (StartupBegan)events[0];
        JobDescription job = began.Job with { JobId = jobId };
        using StartupLog log = StartupLog.Create(File(jobId));
        log.Append([began with { Job = change?.Invoke(job) ?? job }, .. events.Skip(1).SkipLast(leaveOut), .. more ?? []]);
        return File(jobId);
    }

    /// <summary>Writes a signed job that began at another moment, by another clock.</summary>
    public string AddAt(string jobId, DateTimeOffset begins, int seed = 0)
    {
        IReadOnlyList<StartupEvent> events = Led.GetOrAdd(seed, FixtureJob.Events);
        StartupBegan began = (StartupBegan)events[0];
        TimeSpan later = begins - began.At;
        using StartupLog log = StartupLog.Create(File(jobId));
        log.Append([.. events.Select(happened => happened == began ? began with { Job = began.Job with { JobId = jobId, UtcOffset = begins.Offset } } : happened).Select(happened => happened with { At = happened.At + later })]);
        return File(jobId);
    }

    /// <summary>Writes a signed job whose readings name a recording.</summary>
    public string AddWithClip(string jobId, int seed = 0)
    {
        string clip = new AttachmentStore(File(jobId)).Keep(new float[1600]);
        IReadOnlyList<StartupEvent> events = Led.GetOrAdd(seed, FixtureJob.Events);
        StartupBegan began = (StartupBegan)events[0];
        using StartupLog log = StartupLog.Create(File(jobId));
        log.Append([
            began with { Job = began.Job with { JobId = jobId } },
            .. events.Skip(1).Select(happened => happened is ReadingEntered entered ? entered with { Reading = entered.Reading with { Evidence = entered.Reading.Evidence with { Clip = clip } } } : happened)]);
        return File(jobId);
    }

    /// <summary>Writes a signed job with a photo.</summary>
    public string AddWithPhoto(string jobId, string photo, int seed = 0)
    {
        (string name, string sha256) = new AttachmentStore(File(jobId)).KeepPhoto(photo);
        IReadOnlyList<StartupEvent> events = Led.GetOrAdd(seed, FixtureJob.Events);
        StartupBegan began = (StartupBegan)events[0];
        int at = events.ToList().FindIndex(happened => happened is ReadingEntered);
        using StartupLog log = StartupLog.Create(File(jobId));
        log.Append([
            began with { Job = began.Job with { JobId = jobId } }, .. events.Take(at).Skip(1),
            new PhotoAttached(events[at].At, ((ReadingEntered)events[at]).StepId, name, sha256, ((ReadingEntered)events[at]).Reading.Evidence), .. events.Skip(at)]);
        return File(jobId);
    }

    public void AddMany(int count, string prefix = "job", int different = 10)
    {
        for (int i = 0; i < count; i++)
        {
            Add(FormattableString.Invariant($"{prefix}-{i:0000}"), i % different);
        }
    }

    /// <summary>Runs a command of the program on this folder.</summary>
    public Task<ProgramResult> Run(params string[] arguments) => InProcess.Run([.. arguments, "--data", Path]);

    public Task<ProgramResult> Publish(Firm firm, string van = "van_01", int? port = null) => Run(["publish", .. firm.Options("--to", van, port)]);

    /// <summary>The job as it is published.</summary>
    internal static JobToPublish Job(string path) => PublishedRecord.Read(path).Job ?? throw new InvalidOperationException(PublishedRecord.Read(path).Why!.Why);

    /// <summary>The site file with another customer.</summary>
    public static FileCopy Site(string customer) => UserFile.Copy(Fixture.Site.Name, $"{Fixture.Site.Text.TrimEnd()}\n  - {{ field: room_co, expanded: 3, source: invented }}\n# {customer}\n");
}
