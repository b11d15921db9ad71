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
/// <param name="IsResult">Whether it was worked out.</param>
/// <param name="Unit">Of all numbers in the line.</param>
/// <param name="Found">The first value that stood, or null.</param>
/// <param name="Worst">The gravest value that was ever measured; null where it is the one that was found or left.</param>
/// <param name="Left">The value that stands at the end of the record, or null.</param>
/// <param name="Limit">What judged the value that stands, or null.</param>
/// <param name="Verdict">Over the value that stands, or null.</param>
/// <param name="Remark">What must be known beside the numbers, for instance why none stands; empty if nothing.</param>
/// <param name="IsGap">Whether the remark tells of something that is missing or not certain.</param>
sealed record FoundAndLeft(
    string Label, string Scope, bool IsResult, string Unit, ShownNumber? Found, ShownNumber? Worst, ShownNumber? Left, DeclaredLimit? Limit, Verdict? Verdict, string Remark, bool IsGap)
{
    public bool MustBeLookedAt => IsGap || VerdictWords.MustBeLookedAt(Verdict, Limit);
}

/// <summary>Lines that belong together: a firing stage, the supply, the rooms.</summary>
/// <param name="Title">As shown.</param>
/// <param name="Lines">In the order of the procedure, results after readings.</param>
sealed record ReadingGroup(string Title, IReadOnlyList<FoundAndLeft> Lines);
