using System.Globalization;
using Microsoft.Data.Sqlite;

namespace HandsFreeStartup.Storage.Log;

/// <summary>
/// Reads a record by itself, recomputes every hash and trusts nothing. It cannot tell a wholly rewritten record from a true one unless it is given the
/// checkpoint that was printed on the copies.
/// </summary>
public static class StartupLogVerifier
{
    /// <summary>Verifies the record at <paramref name="path"/>, which is not touched.</summary>
    /// <param name="path">The job's file.</param>
    /// <param name="printed">The checkpoint on the copies, or null.</param>
    /// <exception cref="LogException">The file is missing, in use or cannot be opened at all.</exception>
    public static Verification Verify(string path, Checkpoint? printed = null)
    {
        try
        {
            using JobSnapshot snapshot = JobSnapshot.Open(path);
            return Verify(path, snapshot.Connection, printed);
        }
        catch (SqliteException error)
        {
            return Damaged(LogErrors.OnOpening(path, error));
        }
        catch (Exception error) when (Damage.Explains(error))
        {
            return Damaged(error);
        }
    }

    static Verification Damaged(Exception error) => new(0, null, [new LogFinding(null, $"The file is damaged and cannot be read: {error.Message.TrimEnd('.')}.")]);

    internal static Verification Verify(string path, SqliteConnection connection, Checkpoint? printed, int depth = 0)
    {
        LogFormat? format = LogFormat.Find(long.Parse(LogConnection.Text(connection, "pragma user_version"), CultureInfo.InvariantCulture));
        if (Unreadable(connection, format) is { } unreadable)
        {
            return unreadable;
        }

        StoredLog log = StoredLog.Read(connection, format ?? LogFormat.Current);
        ChainResult chain = CheckChain(log);
        List<LogFinding> findings = [];
        if (chain.FirstWrong is not null)
        {
            findings.Add(chain.FirstWrong);
        }

        findings.AddRange(CheckFile(connection, format));
        ContentCheck content = new(path, log);
        findings.AddRange(content.Findings);
        findings.AddRange(PersonalCheck.Of(log, content.Redaction));
        PrintedCheck? copies = printed is null ? null : new(log, printed);
        findings.AddRange(copies?.Findings ?? []);
        (IReadOnlyList<LogFinding> wrongBefore, IReadOnlyList<string> before) = FollowedCheck.Of(path, log, depth);
        findings.AddRange(wrongBefore);
        if (log.Events.Count == 0)
        {
            findings.Add(new LogFinding(null, "The record holds no events."));
        }
        bool isWhole = chain.FirstWrong is null && log.Events.Count > 0;
        return new Verification(log.Events.Count, isWhole ? new Checkpoint(log.Events.Count, Convert.ToHexString(chain.LastHash)) : null, [.. findings])
        {
            Redaction = content.Redaction,
            Remarks = [.. copies?.Remarks ?? [], .. before],
        };
    }

    /// <summary>The verification of a file whose tables are not those of a record; null where they are.</summary>
    static Verification? Unreadable(SqliteConnection connection, LogFormat? format)
    {
        try
        {
            LogConnection.RequireTables(connection, format ?? LogFormat.Current);
            return null;
        }
        catch (LogException error)
        {
            return new Verification(0, null, [new LogFinding(null, error.Message), .. CheckFile(connection, format)]);
        }
    }

    internal static ChainResult CheckChain(StoredLog log)
    {
        byte[] hash = HashChain.Origin(log.Format.Version);
        for (int i = 0; i < log.Events.Count; i++)
        {
            StoredEvent stored = log.Events[i];
            string? wrong = WhatIsWrong(stored, i + 1, hash);
            if (wrong is not null)
            {
                return new ChainResult(new LogFinding(stored.Sequence, FormattableString.Invariant($"Event {stored.Sequence} {wrong}")), hash);
            }
            hash = stored.Hash;
        }
        return new ChainResult(null, hash);
    }

    static string? WhatIsWrong(StoredEvent stored, long expectedSequence, byte[] previousHash) =>
        stored.Sequence != expectedSequence ? FormattableString.Invariant($"stands where event {expectedSequence} should be: events were removed or inserted.")
        : !stored.HasProperTypes ? "is stored with wrong types: it was changed or damaged."
        : !stored.PreviousHash.AsSpan().SequenceEqual(previousHash) ? "does not follow from the event before it: one of the two was changed, exchanged or damaged."
        : !stored.Hash.AsSpan().SequenceEqual(HashChain.OfEvent(previousHash, stored.Sequence, stored.RecordedAt, stored.Kind, stored.Body))
            ? "does not match its hash: it was changed or damaged."
        : null;

    static IEnumerable<LogFinding> CheckFile(SqliteConnection connection, LogFormat? format)
    {
        string structure = LogConnection.Text(connection, "pragma integrity_check");
        if (structure != "ok")
        {
            yield return new LogFinding(null, $"The structure of the file is damaged: {structure.ReplaceLineEndings("; ")}.");
        }

        if (format is null || LogConnection.Text(connection, "pragma application_id") != LogFormat.ApplicationId.ToString(CultureInfo.InvariantCulture))
        {
            yield return new LogFinding(null, "The file is not marked as a record of a format that this program knows: the mark was changed, or another program wrote it.");
        }

        string[] expected = [.. (format ?? LogFormat.Current).Schema.Select(LogConnection.AsKept).Order(StringComparer.Ordinal)];
        string[] found = [.. LogConnection.Statements(connection).Order(StringComparer.Ordinal)];
        foreach (string missing in expected.Except(found))
        {
            yield return new LogFinding(null, $"The file lacks what guards it: {FirstWords(missing)} was removed or changed.");
        }

        foreach (string added in found.Except(expected))
        {
            yield return new LogFinding(null, $"The file holds what does not belong there: {FirstWords(added)}.");
        }
    }

    static string FirstWords(string statement) => string.Join(' ', statement.Split([' ', '(', '\n'], 4, StringSplitOptions.RemoveEmptyEntries).Take(3));
}
