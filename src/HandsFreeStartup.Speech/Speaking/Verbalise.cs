using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Speech.Speaking;

/// <summary>Turns what is shown into what a voice can say: a synthetic voice reads "-0.02" as "dash zero point zero two" and "CO" as a word.</summary>
public static partial class Verbalise
{
    /// <summary>Units that readings do not have but messages do. Those of the fields come from the fields.</summary>
    static readonly ImmutableArray<(string Symbol, string Spoken)> OtherUnits =
    [
        ("°C", "degrees Celsius"), ("uA", "microamps"), ("min", "minutes"), ("ms", "milliseconds"), ("h", "hours"), ("Pa", "pascals"), ("mbar", "millibars"),
        ("Btu/h", "B T U per hour"), ("Btu/ft³", "B T U per cubic foot"), ("kW", "kilowatts"), ("ft³/h", "cubic feet per hour"), ("m³/h", "cubic meters per hour"),
        ("ft", "feet"), ("m", "meters"), ("in.", "inches"),
    ];

    static readonly ImmutableDictionary<string, string> Units = Fields.All
        .Select(field => (field.Unit.Symbol, Spoken: field.Unit.Spoken[0]))
        .Concat(OtherUnits)
        .DistinctBy(unit => unit.Symbol)
        .ToImmutableDictionary(unit => unit.Symbol, unit => unit.Spoken);

    /// <summary>Units that are no words or letters of the language, so that they are said without a number too.</summary>
    static readonly ImmutableArray<string> UnitsAlone = ["in. w.c.", "°F", "°C", "ppm", "%", "µA", "Btu/h", "Btu/ft³", "ft³/h", "m³/h"];

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

    static readonly Regex UnitAfterNumber = new($@"^\s?({Alternatives(Units.Keys)})(?![\p{{L}}0-9])", RegexOptions.CultureInvariant);
    static readonly Regex UnitAlone = new($@"(?<![\p{{L}}])({Alternatives(UnitsAlone)})(?![\p{{L}}0-9])", RegexOptions.CultureInvariant);

    /// <summary>What a voice should say for a shown text.</summary>
    /// <param name="shown">Text with numbers, units and trade abbreviations, as on the screen.</param>
    /// <param name="digitByDigit">For a reading that is in doubt.</param>
    public static string Text(string shown, bool digitByDigit = false)
    {
        shown = shown.Replace(Mark, ' ');
        shown = SafetyPhrases.Aggregate(shown, (words, phrase) => Regex.Replace(words, $@"\b{phrase.Shown}\b", phrase.Said, RegexOptions.IgnoreCase | RegexOptions.CultureInvariant));
        string text = Number.Replace(shown, match => SayNumber(match, shown, digitByDigit));
        text = WithUnits(text);
        text = UnitAlone.Replace(text, match => $" {Units[match.Groups[1].Value]} ");
        text = Gas.Replace(text, match => string.Join(' ', match.Groups[1].Value.Select(Letter)));
        text = Sign.Replace(text, match => $" {Signs[match.Value]} ");
        text = text.Replace(" - ", ", ").Replace("–", ", ").Replace("—", ", ");
        return SpaceBeforeStop.Replace(Spaces.Replace(text, " "), "$1").Trim();
    }

    /// <summary>A value with its unit as the tool reads it back: "seven point six percent".</summary>
    /// <param name="value">Decimals as spoken.</param>
    /// <param name="unit">The unit of the field.</param>
    /// <param name="digitByDigit">For a value that is in doubt: "one five degrees" cannot be taken for "fifty".</param>
    public static string Value(decimal value, Unit unit, bool digitByDigit = false) =>
        $"{(digitByDigit ? SpokenNumber.DigitByDigit(value) : SpokenNumber.Usual(value))} {(Math.Abs(value) == 1 ? Singular(unit.Spoken[0]) : unit.Spoken[0])}";

    // A number is left between two marks until its unit is known.
    const char Mark = '\u0001';

    /// <summary>What is longer is no number of an instrument but somebody's file name, and a decimal does not hold it.</summary>
    const int LongestNumber = 18;

    static string SayNumber(Match match, string shown, bool digitByDigit)
    {
        string written = match.Groups["number"].Value.Replace(",", "");
        string digits = written[0] == '.' ? $"0{written}" : written;
        string words = digitByDigit || digits.Length > LongestNumber ? SpokenNumber.DigitByDigit(digits) : SpokenNumber.Usual(decimal.Parse(digits, CultureInfo.InvariantCulture));
        bool signed = match.Groups["sign"].Success;
        bool range = signed && match.Index > 0 && char.IsAsciiDigit(shown[match.Index - 1]);
        return $"{(range ? " to " : "")}{Mark}{(signed && !range ? "minus " : "")}{words}{Mark}";
    }

    static string WithUnits(string text)
    {
        string[] parts = text.Split(Mark);
        for (int i = 1; i < parts.Length; i += 2)
        {
            string words = parts[i];
            parts[i + 1] = UnitAfterNumber.Replace(parts[i + 1], match =>
                $" {(words is "one" or "minus one" ? Singular(Units[match.Groups[1].Value]) : Units[match.Groups[1].Value])} ");
        }

        return string.Concat(parts);
    }

    static string Singular(string unit) => unit switch
    {
        "inches" => "inch",
        "feet" => "foot",
        "hours" or "minutes" or "seconds" or "volts" or "degrees" or "microamps" or "pascals" => unit[..^1],
        _ => unit,
    };

    static string Letter(char c) => c switch
    {
        '2' or '₂' => "two",
        _ => c.ToString(),
    };

    static string Alternatives(IEnumerable<string> symbols) => string.Join('|', symbols.OrderByDescending(symbol => symbol.Length).Select(Regex.Escape));

    // A sign belongs to a number at the start of a word; between two digits it is a range. "O2" and "F2" hold no number.
    [GeneratedRegex(@"(?<![\p{L}0-9.,₂])(?<number>[0-9]{1,3}(,[0-9]{3})+(\.[0-9]+)?|[0-9]+(\.[0-9]+)?|\.[0-9]+)(?![0-9])|(?<=(^|[\s(≤≥<>±=])|[0-9])(?<sign>[-−–])(?<number>[0-9]{1,3}(,[0-9]{3})+(\.[0-9]+)?|[0-9]+(\.[0-9]+)?|\.[0-9]+)", RegexOptions.CultureInvariant)]
    static partial Regex Number { get; }

    [GeneratedRegex(@"(?<![\p{L}])(CO2|CO₂|CO|O2|O₂)(?![\p{L}0-9])", RegexOptions.CultureInvariant)]
    static partial Regex Gas { get; }

    [GeneratedRegex("[≤≥<>±=×→&+]", RegexOptions.CultureInvariant)]
    static partial Regex Sign { get; }

    [GeneratedRegex(@"\s+", RegexOptions.CultureInvariant)]
    static partial Regex Spaces { get; }

    [GeneratedRegex(@"\s+([.,;:?!)])", RegexOptions.CultureInvariant)]
    static partial Regex SpaceBeforeStop { get; }
}
