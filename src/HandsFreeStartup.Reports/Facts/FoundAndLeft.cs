using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Reports.Facts;

/// <summary>A number as all copies show it.</summary>
/// <param name="Value">With its doubt and its unit.</param>
/// <param name="Fate">Empty while it stands; "was" or "void" in front of a number that no longer does.</param>
sealed record ShownNumber(ShownValue Value, string Fate)
{
    public bool Stands => Fate.Length == 0;

    public string Number => Value.Number;

    public override string ToString() => $"{(Stands ? "" : Fate + " ")}{Value.Text}";
}

/// <summary>One line of the readings: what was found first, the gravest value ever, and what was left.</summary>
/// <param name="Label">What it is.</param>
/// <param name="Scope">Stage, room or empty.</param>
sealed record FoundAndLeft(string Label, string Scope)
{
    /// <summary>Whether it was worked out.</summary>
    public required bool IsResult { get; init; }

    /// <summary>Of all numbers in the line.</summary>
    public required string Unit { get; init; }

    /// <summary>The first value that stood, or null.</summary>
    public required ShownNumber? Found { get; init; }

    /// <summary>The gravest value that was ever measured; null where it is the one that was found or left.</summary>
    public required ShownNumber? Worst { get; init; }

    /// <summary>The value that stands at the end of the record, or null.</summary>
    public required ShownNumber? Left { get; init; }

    /// <summary>What judged the value that stands, or null.</summary>
    public required DeclaredLimit? Limit { get; init; }

    /// <summary>Over the value that stands, or null.</summary>
    public required Verdict? Verdict { get; init; }

    /// <summary>What must be known beside the numbers, for instance why none stands; empty if nothing.</summary>
    public required Message Remark { get; init; }

    /// <summary>Whether the remark tells of something that is missing or not certain.</summary>
    public required bool IsGap { get; init; }

    public bool MustBeLookedAt => IsGap || VerdictWords.MustBeLookedAt(Verdict, Limit);
}

/// <summary>Lines that belong together: a firing stage, the supply, the rooms.</summary>
/// <param name="Title">As shown.</param>
/// <param name="Lines">In the order of the procedure, results after readings.</param>
sealed record ReadingGroup(string Title, IReadOnlyList<FoundAndLeft> Lines);
