using System.Collections.Immutable;
using HandsFreeStartup.Storage.Log;

namespace HandsFreeStartup.Fleet.Publishing;

/// <summary>A finding of the review, without anything that was dictated.</summary>
/// <param name="Rule">Stable id of its rule.</param>
/// <param name="Weight">0 note, 1 doubt, 2 danger.</param>
/// <param name="At">When it happened, UTC; null where it belongs to no moment.</param>
/// <param name="Step">Id of the step, or empty.</param>
/// <param name="Text">One sentence.</param>
/// <param name="Clips">Recordings in which it can be heard.</param>
/// <param name="IsException">Whether it is one of the exceptions of the job.</param>
public sealed record FleetFinding(string Rule, int Weight, DateTimeOffset? At, string Step, string Text, ImmutableArray<string> Clips, bool IsException);

/// <summary>A value that was heard or worked out.</summary>
public sealed record FleetValue
{
    /// <summary>When, UTC.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>Id of the step.</summary>
    public required string Step { get; init; }

    /// <summary>Stage or room, or empty.</summary>
    public required string Scope { get; init; }

    /// <summary>Id of the field or result.</summary>
    public required string Quantity { get; init; }

    /// <summary>As a number; null where it cannot be told, or where more was read than the instrument shows.</summary>
    public required double? Value { get; init; }

    /// <summary>As said, with its decimals, or with the word "over".</summary>
    public required string Shown { get; init; }

    /// <summary>Unit of value, uncertainty and limits.</summary>
    public required string Unit { get; init; }

    /// <summary>Expanded, k = 2; null where none is stated.</summary>
    public required double? Uncertainty { get; init; }

    /// <summary>Lower limit, or null.</summary>
    public required double? Lower { get; init; }

    /// <summary>Upper limit, or null.</summary>
    public required double? Upper { get; init; }

    /// <summary>Who sets the limit.</summary>
    public required string LimitSource { get; init; }

    /// <summary>In words, or empty.</summary>
    public required string Verdict { get; init; }

    /// <summary>What became of a reading, such as "final"; "result" for what was worked out.</summary>
    public required string State { get; init; }

    /// <summary>voice or keys, or the formula of a result.</summary>
    public required string Heard { get; init; }

    /// <summary>green or amber; empty for a result.</summary>
    public required string Certainty { get; init; }

    /// <summary>Recording, or empty.</summary>
    public required string Clip { get; init; }

    /// <summary>Whether it was worked out and not heard.</summary>
    public bool IsResult => State == "result";
}

/// <summary>A job with everything that the office sees of it.</summary>
public sealed record JobToPublish
{
    /// <summary>The job's file.</summary>
    public required string Path { get; init; }

    /// <summary>Name of the job.</summary>
    public required string JobId { get; init; }

    /// <summary>signed, out-of-service, accepted or returned.</summary>
    public required string Status { get; init; }

    /// <summary>Whether the lead has something to do here.</summary>
    public required bool MustBeLookedAt { get; init; }

    /// <summary>First event, by the clock on the wall of the job.</summary>
    public required DateTimeOffset Began { get; init; }

    /// <summary>Last event of the start-up, by the same clock.</summary>
    public required DateTimeOffset Ended { get; init; }

    /// <summary>Who worked.</summary>
    public required string Technician { get; init; }

    /// <summary>Id of the appliance sheet.</summary>
    public required string Model { get; init; }

    /// <summary>Title of the appliance sheet.</summary>
    public required string Appliance { get; init; }

    /// <summary>Changes whenever the rules by which findings and values are worked out may have changed.</summary>
    public required string Rules { get; init; }

    /// <summary>In the order of the review.</summary>
    public required ImmutableArray<FleetFinding> Findings { get; init; }

    /// <summary>In the order of time.</summary>
    public required ImmutableArray<FleetValue> Values { get; init; }

    /// <summary>The record itself.</summary>
    public required CarriedRecord Record { get; init; }

    /// <summary>Number of its events.</summary>
    public int Count => Record.Events.Length;

    /// <summary>Hash of its last event.</summary>
    public byte[] Head => Record.Events[^1].Hash;
}

/// <summary>What the database holds of a job.</summary>
/// <param name="Count">Number of events.</param>
/// <param name="Head">Hash of the last one, upper-case hexadecimal.</param>
/// <param name="Rules">By which rules its findings and values were worked out.</param>
public sealed record PublishedHead(int Count, string Head, string Rules);

/// <summary>What publishing a job has done.</summary>
public enum PublishOutcome
{
    /// <summary>It is new there.</summary>
    Sent,
    /// <summary>It was there, and what came since was added.</summary>
    Continued,
    /// <summary>It was there already as it is here.</summary>
    Unchanged,
}

/// <summary>This one record cannot be published, whatever the database does: another one is there under the same job, or something of it cannot be read. The message is a sentence that names it.</summary>
/// <param name="message">The sentence.</param>
public sealed class FleetRecordException(string message) : Exception(message);
