using System.CommandLine;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Fleet;
using HandsFreeStartup.Fleet.Publishing;
using HandsFreeStartup.Fleet.Reading;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Reports.Review;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.Log;

namespace HandsFreeStartup.Review;

/// <summary>The review of what the firm's database holds: the same findings, words and exit codes as from files.</summary>
/// <param name="parsed">The command line.</param>
/// <param name="database">Where the jobs are.</param>
sealed class FleetReview(ParseResult parsed, FleetDatabase database)
{
    readonly FleetReader _reader = new(database);
    readonly TextWriter _output = parsed.InvocationConfiguration.Output;

    /// <summary>Lists the jobs that were chosen, what must be looked at in each, and which words of the lead are on their way.</summary>
    public async Task<int> List(bool isJson, CancellationToken cancellation)
    {
        IReadOnlyList<FleetJob> jobs = await _reader.Jobs(FleetSelection.Of(parsed, null), cancellation);
        FolderEntry[] entries = [.. jobs.Select(Entry)];
        if (isJson)
        {
            ReviewJson.Write(entries, _output);
        }
        else
        {
            ReviewText.Write(entries, _output);
            foreach (string told in jobs.SelectMany(Told))
            {
                _output.WriteLine(told);
            }
        }

        return entries.Any(entry => entry.Review.MustBeLookedAt) ? ExitCode.FoundSomething : ExitCode.Done;
    }

    /// <summary>Tells everything of one job; its record is read, verified and reviewed as if it lay here.</summary>
    public async Task<int> Tell(string name, bool isJson, CancellationToken cancellation)
    {
        FleetJob job = await Only(name, cancellation);
        ReviewedRecord record = await Record(job, cancellation);
        if (isJson)
        {
            ReviewJson.Write([new FolderEntry(record.Path, record.Review, record.Checkpoint)], _output);
        }
        else
        {
            ReviewText.Write(record, _output);
            foreach (string told in Told(job))
            {
                _output.WriteLine(told);
            }
        }

        return record.Review.MustBeLookedAt ? ExitCode.FoundSomething : ExitCode.Done;
    }

    /// <summary>Gives the lead's word on one job; the van makes it part of the record at its next publish.</summary>
    public async Task<int> Give(string name, string? lead, ReviewOutcome outcome, string? remark, TimeProvider clock, CancellationToken cancellation)
    {
        (string signed, string said) = LeadsWord.Checked(lead, outcome, remark);
        FleetJob job = await Only(name, cancellation);
        if (!job.IsInRegion)
        {
            throw new WrongUseException($"The job {job.Name} belongs to another region: its lead gives the word on it.");
        }

        if (outcome == ReviewOutcome.Accepted)
        {
            LeadsWord.MayBeAccepted(await Record(job, cancellation), said);
        }

        await new LeadsMail(database).Give(job, clock.GetUtcNow(), signed, outcome == ReviewOutcome.Accepted, said, cancellation);
        _output.WriteLine($"{(outcome == ReviewOutcome.Accepted ? "Accepted" : "Returned")} by {signed}: it becomes part of the record when {job.Van} publishes next. {new Checkpoint(job.Count, Convert.ToHexString(job.Head))}");
        return ExitCode.Done;
    }

    async Task<FleetJob> Only(string name, CancellationToken cancellation) => await _reader.Jobs(FleetSelection.Of(parsed, name), cancellation) switch
    {
        [var job] => job,
        [] => throw new WrongUseException($"There is no job {name} in {database.Address}: look at the name, or whether its van has published."),
        [var job, ..] => throw new WrongUseException($"More than one van has a job {name}: name it with its van, such as {job.Name}."),
    };

    /// <summary>The review of a job. Where its personal parts belong to another region, what was worked out when it was published is all that can be told.</summary>
    async Task<ReviewedRecord> Record(FleetJob job, CancellationToken cancellation)
    {
        if (!job.IsInRegion)
        {
            FolderEntry entry = Entry(job);
            return new ReviewedRecord(job.Name, entry.Review, entry.Checkpoint, null, null);
        }

        using ScratchFolder folder = ScratchFolder.Make("job");
        string path = Path.Combine(folder.Path, "job.db");
        await _reader.LayDown(job, path, cancellation);
        return ReviewedRecord.Read(path) with { Path = job.Name };
    }

    static FolderEntry Entry(FleetJob job) => new(job.Name, ReviewOf(job), new Checkpoint(job.Count, Convert.ToHexString(job.Head)).ToString());

    static JobReview ReviewOf(FleetJob job) => new()
    {
        Status = StatusOf(job.Status),
        JobId = job.JobId,
        Began = job.Began,
        Ended = job.Ended,
        Technician = job.Technician,
        Appliance = job.Appliance,
        IsDemonstration = false,
        Findings = [.. job.Findings.Select(Of)],
        MustBeLookedAt = job.MustBeLookedAt,
    };

    static JobStatus StatusOf(string word) => Enum.GetValues<JobStatus>().FirstOrDefault(status => FleetSelection.Word(status) == word, JobStatus.Unreadable);

    static ReviewFinding Of(FleetFinding finding) => new(finding.Rule, (Weight)finding.Weight, finding.Text)
    {
        At = finding.At,
        StepId = finding.Step,
        Clips = finding.Clips,
        IsException = finding.IsException,
    };

    /// <summary>What stands in the database of the lead's word and not in the record itself.</summary>
    static IEnumerable<string> Told(FleetJob job)
    {
        if (job.IsWithoutLead)
        {
            yield return $"{job.Name}: {job.Status} at {job.Van} itself, and not with the login of a lead.";
        }

        if (job.Word is { } word)
        {
            yield return word.Refusal is { } refusal ? $"{job.Name}: the word of {word.Lead} did not become part of the record: {refusal}"
                : $"{job.Name}: {(word.IsAcceptance ? "accepted" : "returned")} by {word.Lead}, and waiting for {job.Van} to publish.";
        }
    }
}
