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
/// <param name="At">When, UTC.</param>
/// <param name="Step">Id of the step.</param>
/// <param name="Scope">Stage or room, or empty.</param>
/// <param name="Quantity">Id of the field or result.</param>
/// <param name="Value">As a number; null where it cannot be told, or where more was read than the instrument shows.</param>
/// <param name="Shown">As said, with its decimals, or with the word "over".</param>
/// <param name="Unit">Unit of value, uncertainty and limits.</param>
/// <param name="Uncertainty">Expanded, k = 2; null where none is stated.</param>
/// <param name="Lower">Lower limit, or null.</param>
/// <param name="Upper">Upper limit, or null.</param>
/// <param name="LimitSource">Who sets the limit.</param>
/// <param name="Verdict">In words, or empty.</param>
/// <param name="State">What became of a reading, such as "final"; "result" for what was worked out.</param>
/// <param name="Heard">voice or keys, or the formula of a result.</param>
/// <param name="Certainty">green or amber; empty for a result.</param>
/// <param name="Clip">Recording, or empty.</param>
public sealed record FleetValue(
    DateTimeOffset At, string Step, string Scope, string Quantity, double? Value, string Shown, string Unit, double? Uncertainty, double? Lower, double? Upper,
    string LimitSource, string Verdict, string State, string Heard, string Certainty, string Clip)
{
    /// <summary>Whether it was worked out and not heard.</summary>
    public bool IsResult => State == "result";
}

/// <summary>A job with everything that the office sees of it.</summary>
/// <param name="Path">The job's file.</param>
/// <param name="JobId">Name of the job.</param>
/// <param name="Status">signed, out-of-service, accepted or returned.</param>
/// <param name="MustBeLookedAt">Whether the lead has something to do here.</param>
/// <param name="Began">First event, by the clock on the wall of the job.</param>
/// <param name="Ended">Last event of the start-up, by the same clock.</param>
/// <param name="Technician">Who worked.</param>
/// <param name="Model">Id of the appliance sheet.</param>
/// <param name="Appliance">Title of the appliance sheet.</param>
/// <param name="Rules">Changes whenever the rules by which findings and values are worked out may have changed.</param>
/// <param name="Findings">In the order of the review.</param>
/// <param name="Values">In the order of time.</param>
/// <param name="Record">The record itself.</param>
public sealed record JobToPublish(
    string Path, string JobId, string Status, bool MustBeLookedAt, DateTimeOffset Began, DateTimeOffset Ended, string Technician, string Model, string Appliance, string Rules,
    ImmutableArray<FleetFinding> Findings, ImmutableArray<FleetValue> Values, CarriedRecord Record)
{
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
