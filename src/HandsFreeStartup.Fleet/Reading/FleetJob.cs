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
public sealed record FleetJob
{
    /// <summary>Its number there.</summary>
    public required long Key { get; init; }

    /// <summary>Whose it is.</summary>
    public required string Van { get; init; }

    /// <summary>Its name.</summary>
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

    /// <summary>Its title.</summary>
    public required string Appliance { get; init; }

    /// <summary>Number of events.</summary>
    public required int Count { get; init; }

    /// <summary>Hash of the last one.</summary>
    public required byte[] Head { get; init; }

    /// <summary>By which rules the findings were worked out.</summary>
    public required string Rules { get; init; }

    /// <summary>Whether this login may read what is personal in it.</summary>
    public required bool IsInRegion { get; init; }

    /// <summary>Whether it was accepted or returned at the van, and not with the login of a lead; false where this login cannot tell.</summary>
    public required bool IsWithoutLead { get; init; }

    /// <summary>In the order of the review.</summary>
    public required ImmutableArray<FleetFinding> Findings { get; init; }

    /// <summary>The last word of the lead that is not part of the record, or null.</summary>
    public required FleetWord? Word { get; init; }

    /// <summary>As it is named: the van, and the job there.</summary>
    public string Name => $"{Van}/{JobId}";
}
