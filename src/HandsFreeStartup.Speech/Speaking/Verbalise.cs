using System.Collections.Immutable;
using System.Text.RegularExpressions;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Speech.Speaking;

/// <summary>Words as a voice can say them: a synthetic voice reads "CO" as a word. Numbers are parts of their own, see <see cref="SpokenMessage"/>.</summary>
static partial class Verbalise
{
    /// <summary>Units that are no words or letters of the language, so that they are said without a number too.</summary>
    static readonly ImmutableArray<string> UnitsAlone = ["in. w.c.", "Btu/ft³", "Btu/h", "ft³/h", "m³/h", "ppm", "°F", "°C", "µA", "%"];

    static readonly ImmutableDictionary<string, string> Signs = new Dictionary<string, string>
    {
        ["≤"] = "at most",
        ["≥"] = "at least",
        ["<"] = "below",
        [">"] = "above",
        ["±"] = "plus or minus",
        ["="] = "equals",
        ["×"] = "times",
        ["→"] = "to",
        ["&"] = "and",
        ["+"] = "plus",
    }.ToImmutableDictionary();

    /// <summary>What is shown but never said: an echo of it would stop the start-up.</summary>
    static readonly ImmutableArray<(string Shown, string Said)> SafetyPhrases =
        [("emergency stop", "stop"), ("gas smell", "gas"), ("stop stop stop", "stop"), ("stop everything", "stop all"), ("I smell gas", "gas"), ("I can smell gas", "gas")];

    static readonly Regex UnitAlone = new($@"(?<![\p{{L}}])({string.Join('|', UnitsAlone.Select(Regex.Escape))})(?![\p{{L}}0-9])", RegexOptions.CultureInvariant);

    /// <summary>What a voice should say for shown words.</summary>
    /// <param name="shown">The words.</param>
    /// <param name="language">Of the words and the voice.</param>
    public static string Text(string shown, Language language)
    {
        string text = string.Concat(shown.Select(letter => char.IsControl(letter) ? ' ' : letter));
        text = SafetyPhrases.Aggregate(text, (words, phrase) => Regex.Replace(words, $@"\b{phrase.Shown}\b", phrase.Said, RegexOptions.IgnoreCase | RegexOptions.CultureInvariant));
        text = UnitAlone.Replace(text, match => $" {language.Text(UnitWords.Of(match.Groups[1].Value))} ");
        text = Gas.Replace(text, match => string.Join(' ', match.Groups[1].Value.Select(letter => Letter(letter, language))));
        text = Sign.Replace(text, match => $" {language.Text(Signs[match.Value])} ");
        return text.Replace(" - ", ", ").Replace("–", ", ").Replace("—", ", ");
    }

    static string Letter(char c, Language language) => c switch
    {
        '2' or '₂' => language.IsEnglish ? "two" : "2",
        _ => c.ToString(),
    };

    [GeneratedRegex(@"(?<![\p{L}])(CO2|CO₂|CO|O2|O₂)(?![\p{L}0-9])", RegexOptions.CultureInvariant)]
    private static partial Regex Gas { get; }

    [GeneratedRegex("[≤≥<>±=×→&+]", RegexOptions.CultureInvariant)]
    private static partial Regex Sign { get; }
}
