using System.Collections.Immutable;

namespace HandsFreeStartup.Storage.Log;

/// <summary>Something wrong with a record.</summary>
/// <param name="Sequence">The event that is meant, or null when it is the file.</param>
/// <param name="Message">A plain sentence.</param>
public sealed record LogFinding(long? Sequence, string Message);

/// <summary>That names, free speech and recordings were removed from a record.</summary>
/// <param name="Sequence">The event that tells it; everything before it was removed.</param>
/// <param name="At">When.</param>
/// <param name="By">By whom.</param>
public sealed record Redaction(long Sequence, DateTimeOffset At, string By);

/// <summary>What the verification of a record has shown.</summary>
/// <param name="Count">Number of events in it.</param>
/// <param name="Checkpoint">Count and last hash as recomputed; null where the record is empty or its chain broken.</param>
/// <param name="Findings">Everything wrong; the first wrong event first. Empty for a sound record.</param>
public sealed record Verification(int Count, Checkpoint? Checkpoint, ImmutableArray<LogFinding> Findings)
{
    /// <summary>Whether nothing is wrong.</summary>
    public bool IsSound => Findings.IsEmpty;

    /// <summary>The last removal of personal data, or null if there was none.</summary>
    public Redaction? Redaction { get; init; }

    /// <summary>What is not wrong but must be known, such as a review after the checkpoint was printed; plain sentences.</summary>
    public ImmutableArray<string> Remarks { get; init; } = [];
}

/// <summary>How far a chain of hashes holds.</summary>
/// <param name="FirstWrong">The first event that does not fit, or null.</param>
/// <param name="LastHash">The hash of the last event that fits, or the origin.</param>
sealed record ChainResult(LogFinding? FirstWrong, byte[] LastHash);
