using HandsFreeStartup.Procedure.Events;
using Microsoft.Data.Sqlite;

namespace HandsFreeStartup.Storage.Log;

/// <summary>A job read back for its copies or its review; the file is not touched, and a read-only folder will do.</summary>
/// <param name="Path">The job's file.</param>
/// <param name="Events">All events that can be read, first to last.</param>
/// <param name="Verification">Whether they can be believed.</param>
public sealed record StoredJob(string Path, IReadOnlyList<StartupEvent> Events, Verification Verification)
{
    /// <summary>Whether a running start-up holds the job; it cannot be read then.</summary>
    public static bool IsInUse(string path) => JobLock.IsHeld(path);

    /// <summary>Reads a job.</summary>
    /// <exception cref="LogException">The file is missing, in use, or so damaged that no event can be read.</exception>
    public static StoredJob Read(string path)
    {
        try
        {
            using JobSnapshot snapshot = JobSnapshot.Open(path);
            StoredLog log = StoredLog.Read(snapshot.Connection, LogConnection.FormatOf(snapshot.Connection, path));
            return new StoredJob(path, [.. log.Events.Select(log.EventOf)], StartupLogVerifier.Verify(path, snapshot.Connection, null));
        }
        catch (SqliteException error)
        {
            throw LogErrors.OnOpening(path, error);
        }
        catch (Exception error) when (Damage.Explains(error))
        {
            throw Damage.In(path, error);
        }
    }
}
