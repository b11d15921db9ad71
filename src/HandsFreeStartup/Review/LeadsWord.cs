using System.Collections.Immutable;
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
    public static void MayBeAccepted(ReviewedRecord record, string remark)
    {
        if ((record.Job is null ? record.Review.Findings.FirstOrDefault()?.Text : record.Job.Verification.Findings.FirstOrDefault()?.Message) is { } wrong)
        {
            throw new WrongUseException($"The record {record.Path} does not verify and cannot be accepted: {wrong}");
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
    public static string Record(string path, string lead, ReviewOutcome outcome, string remark, TimeProvider clock, params ImmutableArray<string> steps)
    {
        (lead, remark) = Checked(lead, outcome, remark);
        if (outcome == ReviewOutcome.Accepted)
        {
            MayBeAccepted(ReviewedRecord.Read(path), remark);
        }

        using StartupLog log = StartupLog.Open(path, clock);
        return Append(log, lead, outcome, remark, clock.GetUtcNow(), steps);
    }

    /// <summary>Name and remark as they become part of the record.</summary>
    /// <exception cref="WrongUseException">There is no name, or no remark where one is needed.</exception>
    public static (string Lead, string Remark) Checked(string? lead, ReviewOutcome outcome, string? remark)
    {
        (string name, string said) = (GivenName.Of(lead, "The lead technician signs by name: give --lead NAME."), GivenName.Remark(remark));
        return outcome == ReviewOutcome.Returned && said.Length == 0
            ? throw new WrongUseException("Who returns a record says what is to be done: give --remark TEXT.")
            : (name, said);
    }

    /// <summary>Makes a word part of a record that is open.</summary>
    /// <param name="log">The record.</param>
    /// <param name="lead">Who signs.</param>
    /// <param name="outcome">Accepted or returned.</param>
    /// <param name="remark">What is said about it.</param>
    /// <param name="at">When the word was given.</param>
    /// <param name="steps">The steps that are returned; empty where none is named, and then everything is.</param>
    /// <returns>One sentence that says what was recorded.</returns>
    /// <exception cref="WrongUseException">The job has not ended.</exception>
    /// <exception cref="LogException">It could not be recorded.</exception>
    public static string Append(StartupLog log, string lead, ReviewOutcome outcome, string remark, DateTimeOffset at, params ImmutableArray<string> steps)
    {
        IReadOnlyList<StartupEvent> events = log.ReadAll();
        if (events is not [StartupBegan began, ..])
        {
            throw new WrongUseException($"The record {log.Path} holds no start-up.");
        }

        StartupProcedure procedure = Replay.Of(log.Path, UserFile.PlanOf(began.Job), events);
        if (steps.FirstOrDefault(step => procedure.Plan.Steps.All(known => known.Id != step)) is { } unknown)
        {
            throw new WrongUseException($"This job has no step '{unknown}'. Its steps are: {string.Join(", ", procedure.Plan.Steps.Select(step => step.Id))}.");
        }

        IReadOnlyList<StartupEvent> reviewed = procedure.Review(lead, outcome, remark, at, steps);
        if (reviewed.Count == 0)
        {
            throw new WrongUseException($"The start-up {began.Job.JobId} is neither signed nor ended, so there is nothing to accept or return yet. Resume it with start --resume.");
        }

        foreach (StartupEvent happened in reviewed)
        {
            log.Append(happened);
            procedure.Apply(happened);
        }

        return $"{(outcome == ReviewOutcome.Accepted ? "Accepted" : "Returned")} by {lead}: {log.Checkpoint}";
    }
}
