using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.Log;

namespace HandsFreeStartup.Start;

/// <summary>The jobs that can be gone on with: neither signed nor ended, and as they were written.</summary>
static class UnfinishedJobs
{
    /// <summary>Every unfinished job of a folder, by its file.</summary>
    public static IEnumerable<string> All(string folder) =>
        Directory.Exists(folder) ? Directory.GetFiles(folder, "*.db").Order(StringComparer.Ordinal).Where(IsUnfinished) : [];

    /// <summary>The only unfinished job in a folder of records.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="command">Which command goes on with it.</param>
    /// <exception cref="WrongUseException">There is none, or more than one; the message lists them.</exception>
    public static string Only(string folder, string command) => All(folder).ToArray() switch
    {
        [var only] => only,
        [] => throw new WrongUseException($"There is no unfinished record to resume in {folder}."),
        var several => throw new WrongUseException(
            $"{several.Length} records are unfinished. Say which: {command} --resume NAME, one of {string.Join(", ", several.Select(Path.GetFileNameWithoutExtension))}."),
    };

    /// <summary>Refuses a record that has ended or does not verify.</summary>
    /// <exception cref="WrongUseException">One sentence says why.</exception>
    /// <exception cref="LogException">It cannot be read.</exception>
    public static void Check(string path)
    {
        StoredJob job = StoredJob.Read(path);
        if (job.Verification.Findings is [var finding, ..])
        {
            throw new LogException($"The record {path} does not verify, so nothing is added to it: {finding.Message.TrimEnd('.')}. Keep the file as it is, run verify on it, and begin a new job.");
        }

        if (HasEnded(job.Events))
        {
            throw new WrongUseException($"The start-up in {path} has ended: its record is closed. Review it, begin a new start-up, or, where its lead has returned it, one that follows it: start --follow.");
        }
    }

    /// <summary>One that is in use or cannot be read is named too, so that it is told and not passed over.</summary>
    static bool IsUnfinished(string path)
    {
        if (StoredJob.IsInUse(path))
        {
            return true;
        }

        try
        {
            return !HasEnded(StoredJob.Read(path).Events);
        }
        catch (LogException)
        {
            return false;
        }
    }

    static bool HasEnded(IReadOnlyList<StartupEvent> events) => events.Any(happened => happened is StartupSigned or EndedOutOfService);
}
