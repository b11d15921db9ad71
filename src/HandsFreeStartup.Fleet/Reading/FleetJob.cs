using System.Collections.Immutable;
using HandsFreeStartup.Fleet.Publishing;

namespace HandsFreeStartup.Fleet.Reading;

/// <summary>Which jobs are meant; null is every one.</summary>
/// <param name="Since">First day on which they began, by the clock on the wall of each.</param>
/// <param name="Until">Last day on which they began, by the same clock.</param>
/// <param name="Van">Crew: the login of their van.</param>
/// <param name="Technician">Who worked.</param>
/// <param name="Model">Id of the appliance sheet.</param>
/// <param name="JobId">Name of the job.</param>
public sealed record FleetFilter(DateOnly? Since = null, DateOnly? Until = null, string? Van = null, string? Technician = null, string? Model = null, string? JobId = null);

/// <summary>A word of the lead that has not become part of the record.</summary>
/// <param name="Word">Its number.</param>
/// <param name="Head">Hash of the last event that the lead saw.</param>
/// <param name="At">When it was given, UTC.</param>
/// <param name="Lead">By whom.</param>
/// <param name="IsAcceptance">Accepted; else returned.</param>
/// <param name="Remark">What is to be said or done about it.</param>
/// <param name="Refusal">Why it did not become part of the record; null while it waits.</param>
public sealed record FleetWord(long Word, byte[] Head, DateTimeOffset At, string Lead, bool IsAcceptance, string Remark, string? Refusal);

/// <summary>A job as the database keeps it.</summary>
/// <param name="Key">Its number there.</param>
/// <param name="Van">Whose it is.</param>
/// <param name="JobId">Its name.</param>
/// <param name="Status">signed, out-of-service, accepted or returned.</param>
/// <param name="MustBeLookedAt">Whether the lead has something to do here.</param>
/// <param name="Began">First event, by the clock on the wall of the job.</param>
/// <param name="Ended">Last event of the start-up, by the same clock.</param>
/// <param name="Technician">Who worked.</param>
/// <param name="Model">Id of the appliance sheet.</param>
/// <param name="Appliance">Its title.</param>
/// <param name="Count">Number of events.</param>
/// <param name="Head">Hash of the last one.</param>
/// <param name="Rules">By which rules the findings were worked out.</param>
/// <param name="IsInRegion">Whether this login may read what is personal in it.</param>
/// <param name="IsWithoutLead">Whether it was accepted or returned at the van, and not with the login of a lead; false where this login cannot tell.</param>
/// <param name="Findings">In the order of the review.</param>
/// <param name="Word">The last word of the lead that is not part of the record, or null.</param>
public sealed record FleetJob(
    long Key, string Van, string JobId, string Status, bool MustBeLookedAt, DateTimeOffset Began, DateTimeOffset Ended, string Technician, string Model, string Appliance, int Count,
    byte[] Head, string Rules, bool IsInRegion, bool IsWithoutLead, ImmutableArray<FleetFinding> Findings, FleetWord? Word)
{
    /// <summary>As it is named: the van, and the job there.</summary>
    public string Name => $"{Van}/{JobId}";
}
