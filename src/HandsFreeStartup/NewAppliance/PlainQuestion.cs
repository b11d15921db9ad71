using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Fuels;

namespace HandsFreeStartup.NewAppliance;

/// <summary>A question with a text or one of a few words as its answer.</summary>
/// <param name="Key">Key of the sheet.</param>
/// <param name="Says">As it is asked.</param>
/// <param name="Choices">The words that can be answered, by their number too; empty for any text.</param>
/// <param name="MayBeLeftOut">Whether nothing is an answer.</param>
sealed record PlainQuestion(string Key, string Says, ImmutableArray<string> Choices, bool MayBeLeftOut = false)
{
    /// <summary>All of them, in order.</summary>
    public static ImmutableArray<PlainQuestion> All { get; } =
    [
        new("title", "What shall the furnace be called? No maker's name is needed", []),
        new("fuel", "Which fuel does it burn, as it is set up now?", [.. Fuel.Presets.Select(fuel => fuel.Id)]),
        new("stages", "How many stages does it fire?", ["1", "2", "modulating"]),
        new("venting", "Which venting category does the plate state?", ["I", "II", "III", "IV"], MayBeLeftOut: true),
        new("condensing", "Is it a condensing furnace?", ["yes", "no"], MayBeLeftOut: true),
        new("turn_to_raise", "Which way does the regulator screw raise the manifold pressure, as the maker says?", ["clockwise", "counter-clockwise"]),
        new("seal", "What does the maker want the test hole sealed with?", []),
    ];

    /// <summary>The answer as the sheet has it; null with a problem where it cannot be taken.</summary>
    public string? Read(string line, out string problem)
    {
        string text = line.Trim();
        problem = "";
        if (text.Length == 0)
        {
            problem = MayBeLeftOut ? "" : "This one is needed.";
            return MayBeLeftOut ? "" : null;
        }

        if (Choices.IsEmpty || Choices.Contains(text))
        {
            return text;
        }

        if (!Choices.Contains(text.ToLowerInvariant()) && Choices.FirstOrDefault(choice => string.Equals(choice, text, StringComparison.OrdinalIgnoreCase)) is { } same)
        {
            return same;
        }

        problem = $"Expected one of {string.Join(", ", Choices)}.";
        return null;
    }
}
