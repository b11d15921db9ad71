using System.Globalization;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Fleet;
using HandsFreeStartup.Fleet.Publishing;
using HandsFreeStartup.Fleet.Reading;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.Index;
using HandsFreeStartup.Storage.Log;

namespace HandsFreeStartup.Publish;

/// <summary>What became of the records of one run.</summary>
/// <param name="Sent">New in the database.</param>
/// <param name="Continued">Were there, and have grown or were worked out anew.</param>
/// <param name="There">Were there already.</param>
/// <param name="NotYet">Unfinished, under way, or demonstrations.</param>
/// <param name="Refused">Do not verify, or another record is there under the same job, or a recording cannot be sent.</param>
sealed record PublishCount(int Sent, int Continued, int There, int NotYet, int Refused)
{
    /// <summary>In one line.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Sent} sent, {Continued} continued, {There} there already, {NotYet} not finished, {Refused} refused.");
}

/// <summary>Runs over the records of a van, oldest first. What is there already is known by the head of its chain, and is not even read where its file has not changed.</summary>
/// <param name="data">Where the index of what was published is kept; it may be lost.</param>
/// <param name="tell">Takes a line for every record that was sent, refused or kept back.</param>
/// <param name="clock">Compared with the server's.</param>
sealed class PublishRun(DataFolder data, Action<string> tell, TimeProvider clock)
{
    static readonly TimeSpan TolerableClock = TimeSpan.FromMinutes(5);

    /// <summary>Records that were kept back, by path with their stamp: they are not read again before they change.</summary>
    readonly Dictionary<string, (string Stamp, bool IsWrong)> _keptBack = [];

    /// <summary>Publishes records.</summary>
    /// <param name="paths">Their files.</param>
    /// <param name="address">The database.</param>
    /// <param name="cancellation">Ends it after the record that is being sent.</param>
    /// <exception cref="FleetException">The database cannot be reached any more; what was sent is there.</exception>
    public async Task<PublishCount> Run(IEnumerable<string> paths, FleetAddress address, CancellationToken cancellation)
    {
        await using FleetDatabase database = await FleetDatabase.Open(address, cancellation);
        Publisher publisher = new(database);
        WordDelivery delivery = new(new LeadsMail(database), tell, clock);
        await TellClock(publisher, cancellation);
        IReadOnlyDictionary<string, PublishedHead> heads = await publisher.Heads(cancellation);
        await delivery.Fetch(cancellation);
        using JobIndex index = Index();
        IReadOnlyDictionary<string, (string Stamp, string Content)> known = index.ReadAll();
        PublishCount count = new(0, 0, 0, 0, 0);
        foreach ((string path, string stamp) in Ordered(paths))
        {
            cancellation.ThrowIfCancellationRequested();
            if (known.TryGetValue(path, out (string Stamp, string Content) row) && row.Stamp == stamp && IsThere(row.Content, heads, delivery))
            {
                count = count with { There = count.There + 1 };
            }
            else if (_keptBack.TryGetValue(path, out (string Stamp, bool IsWrong) kept) && kept.Stamp == stamp)
            {
                count = kept.IsWrong ? count with { Refused = count.Refused + 1 } : count with { NotYet = count.NotYet + 1 };
            }
            else
            {
                count = await Publish(path, publisher, delivery, count, cancellation, job => index.Write([(path, JobIndex.StampOf(path), ContentOf(job))], []));
            }
        }

        return count;
    }

    /// <summary>How many records were not published yet as they are now, as far as that is known without the database.</summary>
    public int Waiting(IEnumerable<string> paths)
    {
        using JobIndex index = Index();
        IReadOnlyDictionary<string, (string Stamp, string Content)> known = index.ReadAll();
        return Ordered(paths).Count(one => !(known.TryGetValue(one.Path, out (string Stamp, string Content) row) && row.Stamp == one.Stamp)
            && !(_keptBack.TryGetValue(one.Path, out (string Stamp, bool IsWrong) kept) && kept.Stamp == one.Stamp));
    }

    JobIndex Index() => JobIndex.Open(data.PublishIndex);

    static IEnumerable<(string Path, string Stamp)> Ordered(IEnumerable<string> paths) =>
        paths.Select(Path.GetFullPath).OrderBy(path => FileStatus.Of(path).Written).ThenBy(path => path, StringComparer.Ordinal).Select(path => (path, JobIndex.StampOf(path)));

    async Task<PublishCount> Publish(string path, Publisher publisher, WordDelivery delivery, PublishCount count, CancellationToken cancellation, Action<JobToPublish> remember)
    {
        (JobToPublish? job, KeptBack? why) = PublishedRecord.Read(path);
        if (job is not null && delivery.Deliver(job))
        {
            (job, why) = PublishedRecord.Read(path);
        }

        if (job is null)
        {
            tell($"{(why!.IsWrong ? "refused" : "not yet"),-10}{path}: {why.Why}");
            if (why.IsWrong || !StoredJob.IsInUse(path))
            {
                _keptBack[path] = (JobIndex.StampOf(path), why.IsWrong);
            }

            return why.IsWrong ? count with { Refused = count.Refused + 1 } : count with { NotYet = count.NotYet + 1 };
        }

        try
        {
            PublishOutcome outcome = await publisher.Publish(job, cancellation);
            await delivery.Settle(job, cancellation);
            remember(job);
            if (outcome != PublishOutcome.Unchanged)
            {
                tell($"{(outcome == PublishOutcome.Sent ? "sent" : "continued"),-10}{job.JobId}: {new Checkpoint(job.Count, Convert.ToHexString(job.Head))}");
            }

            return outcome switch
            {
                PublishOutcome.Sent => count with { Sent = count.Sent + 1 },
                PublishOutcome.Continued => count with { Continued = count.Continued + 1 },
                _ => count with { There = count.There + 1 },
            };
        }
        catch (FleetRecordException refusal)
        {
            tell($"{"refused",-10}{refusal.Message}");
            return count with { Refused = count.Refused + 1 };
        }
    }

    async Task TellClock(Publisher publisher, CancellationToken cancellation)
    {
        TimeSpan ahead = await publisher.ClockAhead(clock, cancellation);
        if (ahead.Duration() > TolerableClock)
        {
            tell(string.Create(CultureInfo.InvariantCulture,
                $"note      The clock of this machine is {ahead.Duration():d\\.hh\\:mm} (days.hours:minutes) {(ahead > TimeSpan.Zero ? "ahead of" : "behind")} the server's: set it before the next job. Records are sent as they are."));
        }
    }

    static string ContentOf(JobToPublish job) => $"{job.Rules} {Convert.ToHexString(job.Head)} {job.JobId}";

    static bool IsThere(string content, IReadOnlyDictionary<string, PublishedHead> heads, WordDelivery delivery) =>
        content.Split(' ', 3) is [var rules, var head, var job] && rules == PublishedRecord.Rules && heads.TryGetValue(job, out PublishedHead? there) && there.Rules == rules && there.Head == head
        && !delivery.IsWaiting(job);
}
