using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Reports.Review;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Review;

/// <summary>The lead technician's word on a record: an event of its own, chained to all before it.</summary>
static class LeadsWord
{
    /// <summary>A record that does not verify is not accepted, and a danger only with a word on it.</summary>
    static void MayBeAccepted(string path, string remark)
    {
        ReviewedRecord record = ReviewedRecord.Read(path);
        if (record.Job?.Verification.Findings is [var finding, ..])
        {
            throw new WrongUseException($"The record {path} does not verify and cannot be accepted: {finding.Message}");
        }

        if (remark.Length == 0 && record.Review.Findings.FirstOrDefault(one => one.Weight == Weight.Danger) is { } danger)
        {
            throw new WrongUseException($"Who accepts a record with a danger in it says why: give --remark TEXT. The first: {danger.Text}");
        }
    }

    /// <summary>Accepts or returns a record.</summary>
    /// <returns>One sentence that says what was recorded.</returns>
    /// <exception cref="WrongUseException">It has no name, no remark where it needs one, or the job has not ended.</exception>
    /// <exception cref="LogException">It could not be recorded.</exception>
    public static string Record(string path, string lead, ReviewOutcome outcome, string remark, TimeProvider clock)
    {
        lead = GivenName.Of(lead, "The lead technician signs by name: give --lead NAME.");
        remark = GivenName.Remark(remark);

        if (outcome == ReviewOutcome.Returned && remark.Length == 0)
        {
            throw new WrongUseException("Who returns a record says what is to be done: give --remark TEXT.");
        }

        if (outcome == ReviewOutcome.Accepted)
        {
            MayBeAccepted(path, remark);
        }

        using StartupLog log = StartupLog.Open(path, clock);
        IReadOnlyList<StartupEvent> events = log.ReadAll();
        if (events is not [StartupBegan began, ..])
        {
            throw new WrongUseException($"The record {path} holds no start-up.");
        }

        StartupProcedure procedure = Replay.Of(path, UserFile.PlanOf(began.Job), events);
        IReadOnlyList<StartupEvent> reviewed = procedure.Review(lead, outcome, remark, clock.GetUtcNow());
        if (reviewed.Count == 0)
        {
            throw new WrongUseException($"The start-up {began.Job.JobId} is neither signed nor ended, so there is nothing to accept or return yet. Go on with it by start --resume.");
        }

        foreach (StartupEvent happened in reviewed)
        {
            log.Append(happened);
            procedure.Apply(happened);
        }

        return $"{(outcome == ReviewOutcome.Accepted ? "Accepted" : "Returned")} by {lead}: {log.Checkpoint}";
    }
}
