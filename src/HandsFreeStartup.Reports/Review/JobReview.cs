using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Record;

namespace HandsFreeStartup.Reports.Review;

/// <summary>Where a job stands for the lead technician.</summary>
public enum JobStatus
{
    /// <summary>Neither signed nor ended.</summary>
    Unfinished,
    /// <summary>Stopped for safety and not resumed.</summary>
    Stopped,
    /// <summary>Ended without putting the appliance into service.</summary>
    OutOfService,
    /// <summary>Signed by the technician, not yet reviewed.</summary>
    Signed,
    /// <summary>Returned by the lead.</summary>
    Returned,
    /// <summary>Accepted by the lead.</summary>
    Accepted,
    /// <summary>A start-up is writing it at this moment.</summary>
    UnderWay,
    /// <summary>The record cannot be read.</summary>
    Unreadable,
}

/// <summary>A job as the lead technician looks at it: where it stands, and every finding, what can hurt first.</summary>
public sealed record JobReview
{
    /// <summary>Where it stands.</summary>
    public required JobStatus Status { get; init; }

    /// <summary>Name of the job.</summary>
    public required string JobId { get; init; }

    /// <summary>First event, by the clock on the wall of the job; null where there is none.</summary>
    public required DateTimeOffset? Began { get; init; }

    /// <summary>Last event of the start-up itself, by the same clock.</summary>
    public required DateTimeOffset? Ended { get; init; }

    /// <summary>Who worked.</summary>
    public required string Technician { get; init; }

    /// <summary>Title of the appliance sheet.</summary>
    public required string Appliance { get; init; }

    /// <summary>Whether it is no record of a start-up.</summary>
    public required bool IsDemonstration { get; init; }

    /// <summary>By weight, then the exceptions in their own order, then the others by time.</summary>
    public required ImmutableArray<ReviewFinding> Findings { get; init; }

    /// <summary>Whether the lead has something to do here.</summary>
    public required bool MustBeLookedAt { get; init; }

    /// <summary>Reviews a job.</summary>
    /// <param name="plan">What it was led by.</param>
    /// <param name="events">All its events, first to last.</param>
    /// <param name="record">What the verification of the record has shown.</param>
    public static JobReview Of(StartupPlan plan, IReadOnlyList<StartupEvent> events, RecordState record)
    {
        JobRecord facts = JobRecord.Of(plan, events);
        ReviewedJob job = new(facts, record);
        ImmutableArray<ReviewFinding> findings =
        [
            .. ReviewRules.All.SelectMany(rule => rule(job)).Select(finding => finding with { At = Local(facts, finding.At) }).OrderByDescending(finding => finding.Weight).ThenBy(finding => finding.Rule == "record" ? 0 : finding.IsException ? 1 : 2)
                .ThenBy(finding => finding.IsException ? DateTimeOffset.MinValue : finding.At ?? DateTimeOffset.MinValue),
        ];
        JobStatus status = StatusOf(facts);
        return new JobReview
        {
            Status = status,
            JobId = facts.Job?.JobId ?? "unknown",
            Began = Local(facts, facts.Began),
            Ended = Local(facts, facts.StartupEnded),
            Technician = facts.Job?.Technician ?? "unknown",
            Appliance = plan.Appliance.Title,
            IsDemonstration = facts.Job?.IsDemonstration ?? false,
            Findings = findings,
            MustBeLookedAt = MustLookAt(status, findings, record),
        };
    }

    /// <summary>A job of which nothing can be read but why.</summary>
    /// <param name="jobId">Name of its file.</param>
    /// <param name="why">One sentence.</param>
    public static JobReview Unreadable(string jobId, string why) => Unread(JobStatus.Unreadable, jobId) with
    {
        Findings = [new ReviewFinding("record", Weight.Danger, why)],
        MustBeLookedAt = true,
    };

    /// <summary>A job that is being written; there is nothing to review yet.</summary>
    /// <param name="jobId">Name of its file.</param>
    public static JobReview UnderWay(string jobId) => Unread(JobStatus.UnderWay, jobId);

    static JobReview Unread(JobStatus status, string jobId) => new()
    {
        Status = status,
        JobId = jobId,
        Began = null,
        Ended = null,
        Technician = "unknown",
        Appliance = "unknown",
        IsDemonstration = false,
        Findings = [],
        MustBeLookedAt = false,
    };

    /// <summary>What the lead accepted was looked at; only a record that is no longer what was accepted must be looked at again.</summary>
    static bool MustLookAt(JobStatus status, ImmutableArray<ReviewFinding> findings, RecordState record) => status switch
    {
        JobStatus.Accepted => !record.Problems.IsEmpty,
        JobStatus.Returned => true,
        _ => findings.Any(finding => finding.Weight >= Weight.Doubt),
    };

    static DateTimeOffset? Local(JobRecord facts, DateTimeOffset? at) => at is { } moment ? facts.Times.At(moment) : null;

    static JobStatus StatusOf(JobRecord facts) => (facts.End, facts.Reviews.LastOrDefault()?.Outcome) switch
    {
        (JobEnd.Signed or JobEnd.OutOfService, ReviewOutcome.Accepted) => JobStatus.Accepted,
        (JobEnd.Signed or JobEnd.OutOfService, ReviewOutcome.Returned) => JobStatus.Returned,
        (JobEnd.Signed, _) => JobStatus.Signed,
        (JobEnd.OutOfService, _) => JobStatus.OutOfService,
        (JobEnd.Stopped, _) => JobStatus.Stopped,
        _ => JobStatus.Unfinished,
    };
}
