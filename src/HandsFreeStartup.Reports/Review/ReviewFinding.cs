using System.Collections.Immutable;
using System.Text.Json.Serialization;

namespace HandsFreeStartup.Reports.Review;

/// <summary>How much a finding weighs.</summary>
public enum Weight
{
    /// <summary>Worth knowing; nothing need be done.</summary>
    Note,
    /// <summary>Must be looked at: something was left out, or values do not fit.</summary>
    Doubt,
    /// <summary>Can hurt somebody, or the record cannot be believed.</summary>
    Danger,
}

/// <summary>Something the lead technician should know about a job.</summary>
/// <param name="Rule">Stable id of the rule that found it, for instance <c>skipped-step</c>.</param>
/// <param name="Weight">How much it weighs.</param>
/// <param name="Text">One plain sentence without anything that was dictated freely.</param>
public sealed record ReviewFinding(string Rule, Weight Weight, string Text)
{
    /// <summary>When it happened, by the clock on the wall of the job; null where it belongs to no moment.</summary>
    public DateTimeOffset? At { get; init; }

    /// <summary>In which step; empty where it belongs to none.</summary>
    public string StepId { get; init; } = "";

    /// <summary>What was dictated about it, such as the reason of a skipped step; empty for nothing. People may be named in it.</summary>
    public string Quote { get; init; } = "";

    /// <summary>Recordings in which it can be heard.</summary>
    public ImmutableArray<string> Clips { get; init; } = [];

    /// <summary>Whether it is one of the exceptions of the job, which come first within their weight.</summary>
    [JsonIgnore]
    public bool IsException { get; init; }
}

/// <summary>What the verification of the record has shown; the review trusts nothing without it.</summary>
/// <param name="Problems">Everything wrong with the record; empty where it is as it was written.</param>
/// <param name="Redaction">When and by whom names were removed, as one sentence; null where they were not.</param>
public sealed record RecordState(ImmutableArray<string> Problems, string? Redaction = null)
{
    /// <summary>A record that is as it was written.</summary>
    public static RecordState Sound { get; } = new([]);
}
