using HandsFreeStartup.Procedure.Events;

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
                [.. verification.Findings.Select(finding => new LogFinding(null, $"The record {followed.JobId} that it follows: {finding.Message}"))],
                [$"It follows the record {followed.JobId}, which was verified with it.", .. verification.Remarks]);
        }
        catch (LogException error)
        {
            return ([new LogFinding(null, $"The record {followed.JobId} that it follows cannot be verified: {error.Message}")], []);
        }
    }

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
