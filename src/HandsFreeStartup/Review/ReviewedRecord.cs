using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Reports.Review;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Review;

/// <summary>A record with its review.</summary>
/// <param name="Path">The job's file.</param>
/// <param name="Review">Where it stands and what was found.</param>
/// <param name="Checkpoint">Count and last hash; null where the chain is broken.</param>
/// <param name="Job">What was read; null where nothing could be read.</param>
/// <param name="Plan">What the job was led by; null where nothing could be read.</param>
sealed record ReviewedRecord(string Path, JobReview Review, string? Checkpoint, StoredJob? Job, StartupPlan? Plan)
{
    /// <summary>Reads, verifies and reviews a record; whatever is wrong with it becomes a finding.</summary>
    public static ReviewedRecord Read(string path)
    {
        string name = System.IO.Path.GetFileNameWithoutExtension(path);
        if (StoredJob.IsInUse(path))
        {
            return new ReviewedRecord(path, JobReview.UnderWay(name), null, null, null);
        }

        try
        {
            StoredJob job = StoredJob.Read(path);
            if (job.Events is not [StartupBegan began, ..])
            {
                return Unreadable(path, name, "The record holds no start-up.");
            }

            if (began.Job.Rehearsal is not null)
            {
                return Unreadable(path, name, NoRehearsal.Refusal(path));
            }

            StartupPlan plan = UserFile.PlanOf(began.Job);
            return new ReviewedRecord(path, JobReview.Of(plan, job.Events, StateOf(job.Verification)), job.Verification.Checkpoint?.ToString(), job, plan);
        }
        catch (LogException error)
        {
            return Unreadable(path, name, error.Message);
        }
        catch (ChecklistFileException error)
        {
            return Unreadable(path, name, $"The files that the job keeps cannot be used: {error.Message}");
        }
        catch (Exception error) when (Damage.Explains(error))
        {
            return Unreadable(path, name, "The record cannot be reviewed: its events contradict one another.");
        }
    }

    /// <summary>What the verification of a record has shown, in the words of the review.</summary>
    public static RecordState StateOf(Verification verification) => new(
        [.. verification.Findings.Select(finding => finding.Message)],
        verification.Redaction is { } redaction
            ? FormattableString.Invariant($"Names, free speech and recordings before event {redaction.Sequence} were removed on {redaction.At:yyyy-MM-dd} by {redaction.By}.")
            : null);

    static ReviewedRecord Unreadable(string path, string name, string why)
    {
        JobReview review = JobReview.Unreadable(name, why);
        return new ReviewedRecord(path, review with { Findings = [.. review.Findings, .. Wrong(path)] }, null, null, null);
    }

    static ImmutableArray<ReviewFinding> Wrong(string path)
    {
        try
        {
            return [.. StartupLogVerifier.Verify(path).Findings.Select(finding => new ReviewFinding("record", Weight.Danger, finding.Message))];
        }
        catch (LogException)
        {
            return [];
        }
    }
}
