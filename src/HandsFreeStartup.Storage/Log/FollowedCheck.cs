using HandsFreeStartup.Procedure.Deciding;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Record;

namespace HandsFreeStartup.Storage.Log;

/// <summary>Verifies the record that a job follows together with it: it must lie beside it, be sound, and be the one whose hash the job holds.</summary>
static class FollowedCheck
{
    /// <summary>More records in a row are no work on a furnace; it ends a circle that somebody has made.</summary>
    const int Longest = 20;

    /// <summary>What is wrong with the followed record, and what must be known of it.</summary>
    /// <param name="path">The job that follows.</param>
    /// <param name="log">Its log.</param>
    /// <param name="depth">How many records were followed already.</param>
    public static (IReadOnlyList<LogFinding> Findings, IReadOnlyList<string> Remarks) Of(string path, StoredLog log, int depth)
    {
        if (FollowedBy(log) is not { } followed)
        {
            return ([], []);
        }

        string file = Path.Combine(Path.GetDirectoryName(Path.GetFullPath(path))!, $"{Path.GetFileName(followed.JobId)}.db");
        if (depth >= Longest || Path.GetFileName(followed.JobId) != followed.JobId)
        {
            return ([new LogFinding(1, $"It says that it follows the record {followed.JobId}, which cannot be.")], []);
        }

        if (!File.Exists(file))
        {
            return ([], [$"It follows the record {followed.JobId}, which is not beside it: put it there and verify again."]);
        }

        try
        {
            using JobSnapshot snapshot = JobSnapshot.Open(file);
            Verification verification = StartupLogVerifier.Verify(file, snapshot.Connection, new Checkpoint(followed.Events, followed.Hash), depth + 1);
            return (
                [.. CarriedWrongly(log, StoredLog.Read(snapshot.Connection, LogConnection.FormatOf(snapshot.Connection, file)), followed), .. verification.Findings.Select(finding => new LogFinding(null, $"The record {followed.JobId} that it follows: {finding.Message}"))],
                [$"It follows the record {followed.JobId}, which was verified with it.", .. verification.Remarks]);
        }
        catch (UserFiles.ChecklistFileException error)
        {
            return ([new LogFinding(null, $"What it carries over from the record {followed.JobId} cannot be compared: {error.Message}")], []);
        }
        catch (LogException error)
        {
            return ([new LogFinding(null, $"The record {followed.JobId} that it follows cannot be verified: {error.Message}")], []);
        }
    }

    /// <summary>What was carried over and does not stand so in the returned record.</summary>
    static IEnumerable<LogFinding> CarriedWrongly(StoredLog log, StoredLog theirs, FollowedJob followed)
    {
        (long Number, StartupEvent Happened)[] carried =
            [.. log.Events.Select(stored => (stored.Sequence, Happened: log.EventOf(stored))).Where(one => one.Happened is StepCarried || (one.Happened is LimitStated stated && stated.Limit.Source.EndsWith(CarryingOver.SourceIn(followed.JobId, ""), StringComparison.Ordinal)))];
        StartupEvent[] returned = [.. theirs.Events.Take(carried.Length == 0 ? 0 : followed.Events).Select(theirs.EventOf)];
        if (returned is not [StartupBegan began, ..])
        {
            return [];
        }

        if (followed.Technician is { } told && told != began.Job.Technician)
        {
            return [new LogFinding(1, $"It says that {told} worked on the record {followed.JobId}; it was {began.Job.Technician}.")];
        }

        JobRecord record = JobRecord.Of(UserFiles.UserFile.PlanOf(began.Job), returned);
        return carried.Where(one => !(one.Happened is StepCarried step ? Stands(step, record, returned) : Stands((LimitStated)one.Happened, returned, followed)))
            .Select(one => new LogFinding(one.Number, FormattableString.Invariant($"Event {one.Number}: what it carries over does not stand so in the record {followed.JobId}.")));
    }

    static bool Stands(StepCarried carried, JobRecord record, StartupEvent[] returned) =>
        record.StepOf(carried.StepId) is { End: StepEnd.Done } step && step.Left == carried.Done
        && carried.Readings.All(one => record.Reading(one.Reading.Key) is { Counts: true } fate && fate.At == one.At && CarryingOver.Quiet(fate.Reading) == one.Reading)
        && (record.Answer(carried.StepId)?.At, record.Answer(carried.StepId)?.Answer) == (carried.Answer?.At, carried.Answer?.Answer)
        && carried.Choice == returned.OfType<ChoiceMade>().LastOrDefault(made => made.Topic == ChoiceTopic.Step && made.StepId == carried.StepId)?.Value;

    static bool Stands(LimitStated stated, StartupEvent[] returned, FollowedJob followed) =>
        returned.OfType<LimitStated>().Any(said => said.Limit with { Source = CarryingOver.SourceIn(followed.JobId, said.Limit.Source) } == stated.Limit);

    static FollowedJob? FollowedBy(StoredLog log)
    {
        try
        {
            return log.Events is [var first, ..] && log.EventOf(first) is StartupBegan began ? began.Job.Follows : null;
        }
        catch (LogException)
        {
            // That the first event cannot be read is told already.
            return null;
        }
    }
}
