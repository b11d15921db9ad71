using System.Collections.Immutable;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;
using HandsFreeStartup.Procedure.Events;
using Microsoft.Data.Sqlite;

namespace HandsFreeStartup.Storage.Log;

/// <summary>Something wrong with a record.</summary>
/// <param name="Sequence">The event that is meant, or null when it is the file.</param>
/// <param name="Message">A plain sentence.</param>
public sealed record LogFinding(long? Sequence, string Message);

/// <summary>What the verification of a record has shown.</summary>
/// <param name="Count">Number of events in it.</param>
/// <param name="Checkpoint">Count and last hash as recomputed; null where the record is empty or its chain broken.</param>
/// <param name="Findings">Everything wrong; the first wrong event first. Empty for a sound record.</param>
public sealed record Verification(int Count, Checkpoint? Checkpoint, ImmutableArray<LogFinding> Findings)
{
    /// <summary>Whether nothing is wrong.</summary>
    public bool IsSound => Findings.IsEmpty;
}

/// <summary>How far a chain of hashes holds.</summary>
/// <param name="FirstWrong">The first event that does not fit, or null.</param>
/// <param name="LastHash">The hash of the last event that fits, or the origin.</param>
sealed record ChainResult(LogFinding? FirstWrong, byte[] LastHash);

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
            return new Verification(0, null, [new LogFinding(null, $"The file is damaged and cannot be read: {error.Message.TrimEnd('.')}.")]);
        }
    }

    internal static Verification Verify(string path, SqliteConnection connection, Checkpoint? printed)
    {
        List<LogFinding> findings = [];
        IReadOnlyList<StoredEvent> events = StoredEvent.ReadAll(connection);
        ChainResult chain = CheckChain(events);
        if (chain.FirstWrong is not null)
        {
            findings.Add(chain.FirstWrong);
        }

        findings.AddRange(CheckFile(connection));
        findings.AddRange(CheckContents(path, events));
        if (printed is not null)
        {
            findings.AddRange(CheckPrinted(events, printed));
        }

        if (events.Count == 0)
        {
            findings.Add(new LogFinding(null, "The record holds no events."));
        }
        bool isWhole = chain.FirstWrong is null && events.Count > 0;
        return new Verification(events.Count, isWhole ? new Checkpoint(events.Count, Convert.ToHexString(chain.LastHash)) : null, [.. findings]);
    }

    internal static ChainResult CheckChain(IReadOnlyList<StoredEvent> events)
    {
        byte[] hash = HashChain.Origin(LogFormat.Version);
        for (int i = 0; i < events.Count; i++)
        {
            StoredEvent stored = events[i];
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

    static IEnumerable<LogFinding> CheckFile(SqliteConnection connection)
    {
        string structure = LogConnection.Text(connection, "pragma integrity_check");
        if (structure != "ok")
        {
            yield return new LogFinding(null, $"The structure of the file is damaged: {structure.ReplaceLineEndings("; ")}.");
        }

        if (LogConnection.Text(connection, "pragma application_id") != LogFormat.ApplicationId.ToString(System.Globalization.CultureInfo.InvariantCulture)
            || LogConnection.Text(connection, "pragma user_version") != LogFormat.Version.ToString(System.Globalization.CultureInfo.InvariantCulture))
        {
            yield return new LogFinding(null, FormattableString.Invariant($"The file is not marked as a record of format {LogFormat.Version}: the mark was changed, or another program wrote it."));
        }

        string[] expected = [.. LogFormat.Schema.Select(AsKept).Order(StringComparer.Ordinal)];
        string[] found = [.. Statements(connection).Order(StringComparer.Ordinal)];
        foreach (string missing in expected.Except(found))
        {
            yield return new LogFinding(null, $"The file lacks what guards it: {FirstWords(missing)} was removed or changed.");
        }

        foreach (string added in found.Except(expected))
        {
            yield return new LogFinding(null, $"The file holds what does not belong there: {FirstWords(added)}.");
        }
    }

    static IEnumerable<LogFinding> CheckContents(string path, IReadOnlyList<StoredEvent> events)
    {
        for (int i = 0; i < events.Count; i++)
        {
            long sequence = events[i].Sequence;
            StartupEvent? happened = Parsed(events[i], out string problem);
            if (happened is null)
            {
                yield return new LogFinding(sequence, FormattableString.Invariant($"Event {sequence} cannot be read: {problem}"));
                continue;
            }

            if (i == 0 != happened is StartupBegan)
            {
                yield return new LogFinding(sequence, FormattableString.Invariant($"Event {sequence} is out of place: the first event, and only the first, tells with what the job began."));
            }

            IEnumerable<string> problems = happened is StartupBegan began ? FilesThatDoNotMatch(began.Job) : ClipsThatDoNotMatch(path, events[i]);
            foreach (string one in problems)
            {
                yield return new LogFinding(sequence, FormattableString.Invariant($"Event {sequence}: {one}"));
            }
        }
    }

    static StartupEvent? Parsed(StoredEvent stored, out string problem)
    {
        try
        {
            problem = "";
            return EventFormat.Read(Encoding.UTF8.GetString(stored.Kind), Encoding.UTF8.GetString(stored.Body));
        }
        catch (LogException error)
        {
            problem = error.Message;
            return null;
        }
    }

    static IEnumerable<string> FilesThatDoNotMatch(JobDescription job) =>
        new[] { job.Checklist, job.Appliance, job.Site }
            .Where(file => file.Sha256 != UserFiles.UserFile.HashOf(file.Text))
            .Select(file => $"the copy of {file.Name} does not match its hash.");

    static IEnumerable<string> ClipsThatDoNotMatch(string path, StoredEvent stored)
    {
        using JsonDocument body = JsonDocument.Parse(stored.Body);
        List<string> problems = [];
        foreach (string clip in ClipNames(body.RootElement))
        {
            string? file = new ClipStore(path).Find(clip);
            if (file is null)
            {
                problems.Add($"the recording {clip} is missing.");
            }
            else if ($"{Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(file)))}.wav" != clip)
            {
                problems.Add($"the recording {clip} was changed or damaged.");
            }
        }
        return problems;
    }

    static IEnumerable<string> ClipNames(JsonElement element) => element.ValueKind switch
    {
        JsonValueKind.Object => element.EnumerateObject().SelectMany(property =>
            property.NameEquals("clip") && property.Value.ValueKind == JsonValueKind.String ? [property.Value.GetString()!] : ClipNames(property.Value)),
        JsonValueKind.Array => element.EnumerateArray().SelectMany(ClipNames),
        _ => [],
    };

    static IEnumerable<LogFinding> CheckPrinted(IReadOnlyList<StoredEvent> events, Checkpoint printed)
    {
        if (events.Count < printed.Count)
        {
            yield return new LogFinding(null, FormattableString.Invariant(
                $"The checkpoint tells of {printed.Count} events, the record holds {events.Count}: its end was cut off."));
        }
        else if (printed.Count < 1 || !new Checkpoint(printed.Count, Convert.ToHexString(events[printed.Count - 1].Hash)).Fits(printed))
        {
            yield return new LogFinding(null, FormattableString.Invariant(
                $"The hash of event {printed.Count} is not that of the checkpoint: the record was rewritten, or the checkpoint belongs to another one."));
        }
        else if (events.Count > printed.Count)
        {
            yield return new LogFinding(printed.Count + 1, FormattableString.Invariant(
                $"Event {printed.Count + 1} and what follows was added after the checkpoint was printed."));
        }
    }

    static IEnumerable<string> Statements(SqliteConnection connection)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "select coalesce(sql, type || ' ' || name) from sqlite_schema";
        using SqliteDataReader rows = command.ExecuteReader();
        while (rows.Read())
        {
            yield return rows.GetString(0);
        }
    }

    /// <summary>SQLite keeps a statement as it was given, but for its first two words, which it writes in capitals.</summary>
    static string AsKept(string statement) => string.Join(' ', statement.Split(' ', 3) is [var create, var what, var rest]
        ? [create.ToUpperInvariant(), what.ToUpperInvariant(), rest]
        : [statement]);

    static string FirstWords(string statement) => string.Join(' ', statement.Split([' ', '(', '\n'], 4, StringSplitOptions.RemoveEmptyEntries).Take(3));
}
