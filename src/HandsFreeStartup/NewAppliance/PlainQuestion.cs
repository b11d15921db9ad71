using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Interview;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.NewAppliance;

/// <summary>A question with a text or one of a few words as its answer.</summary>
/// <param name="Key">Key of the sheet.</param>
/// <param name="Says">As it is asked.</param>
/// <param name="Choices">The words that can be answered, by their number too; empty for any text.</param>
/// <param name="MayBeLeftOut">Whether nothing is an answer.</param>
sealed record PlainQuestion(string Key, string Says, ImmutableArray<string> Choices, bool MayBeLeftOut = false)
{
    /// <summary>In so few words that it is said in four seconds.</summary>
    public required Message Spoken { get; init; }

    /// <summary>Words for the choices, where they are not said as they are written.</summary>
    public ImmutableArray<SpokenChoice> SpokenChoices { get; init; } = [];

    /// <summary>All of them, in order.</summary>
    public static ImmutableArray<PlainQuestion> All { get; } =
    [
        new("title", "What shall the furnace be called? No maker's name is needed", []) { Spoken = "What shall the furnace be called?" },
        new("fuel", "Which fuel does it burn, as it is set up now?", [.. Fuel.Presets.Select(fuel => fuel.Id)])
        {
            Spoken = "Which fuel does it burn?",
            SpokenChoices = [.. Fuel.Presets.Select(fuel => new SpokenChoice(fuel.Id, fuel.Id.Replace('-', ' ')))],
        },
        new("stages", "How many firing stages does it have?", ["1", "2", "modulating"])
        {
            Spoken = "One stage, two stages, or modulating?",
            SpokenChoices = [new("1", "one stage"), new("2", "two stages"), new("2", "two stage"), new("modulating", "modulating")],
        },
        new("venting", "Which venting category does the plate state?", ["I", "II", "III", "IV"], MayBeLeftOut: true)
        {
            Spoken = "Which venting category? Category one to four.",
            SpokenChoices = [new("I", "category one"), new("II", "category two"), new("III", "category three"), new("IV", "category four")],
        },
        new("condensing", "Is it a condensing furnace?", ["yes", "no"], MayBeLeftOut: true) { Spoken = "Is it a condensing furnace?" },
        new("turn_to_raise", "Which way does the regulator screw raise the manifold pressure, as the maker says?", ["clockwise", "counter-clockwise"])
        {
            Spoken = "Which turn raises the pressure: clockwise or counter clockwise?",
            SpokenChoices = [new("clockwise", "clockwise"), new("counter-clockwise", "counter clockwise"), new("counter-clockwise", "counterclockwise")],
        },
        new("seal", "What does the maker want the test hole sealed with?", []) { Spoken = "What is the test hole sealed with?" },
    ];

    /// <summary>What may be answered by voice.</summary>
    public AnswerForm Form => Choices.IsEmpty ? new AnswerForm.Words() : SpokenChoices.IsEmpty ? new AnswerForm.YesOrNo() : new AnswerForm.OneOf(SpokenChoices);

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
