using System.Globalization;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Tests.Fuzzing;

/// <summary>
/// What a number in words can mean, written a second time and otherwise than the program's own grammar: pieces below a hundred are written side by side ("three twenty eight" is
/// 328), hundreds and thousands are multiplied and added.
/// </summary>
public static class SpokenValue
{
    static readonly string[] Ones =
        ["zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen"];

    static readonly string[] Tens = ["twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

    public static IReadOnlyList<string> Words { get; } = [.. Ones, .. Tens, "oh", "niner", "fife", "hundred", "thousand", "and", "a", "point", "decimal", "negative"];

    /// <summary>Whether the last words of a line can mean that reading.</summary>
    public static bool Allows(string line, Phrase.Reading reading)
    {
        string[] words = [.. new string([.. line.ToLowerInvariant().Where(letter => letter is not ('\'' or '\u2019')).Select(letter => char.IsLetter(letter) ? letter : ' ')]).Split(' ', StringSplitOptions.RemoveEmptyEntries)];
        return reading.IsOver && line.Contains("over", StringComparison.OrdinalIgnoreCase)
            || Enumerable.Range(0, words.Length).Any(from => Enumerable.Range(from + 1, words.Length - from).Any(to => Means(words[from..to], reading)));
    }

    static bool Means(string[] words, Phrase.Reading reading)
    {
        bool isNegative = words[0] is "minus" or "negative";
        string[] rest = isNegative ? words[1..] : words;
        int point = Array.FindIndex(rest, word => word is "point" or "decimal");
        string digits = Math.Abs(reading.Value).ToString(CultureInfo.InvariantCulture);
        string[] parts = digits.Split('.');
        bool isSign = isNegative == (reading.Value < 0) || reading.Value == 0;
        return isSign && rest.Length > 0 && (reading.IsOver
            ? point < 0 && Whole(rest).Any(number => number.Length > 4)
            : point < 0 ? Whole(rest).Contains(parts.Length == 1 ? digits : digits.Replace(".", "", StringComparison.Ordinal)) || (parts.Length == 2 && Split(rest, parts))
            : parts.Length == 2 && (point == 0 ? parts[0] == "0" : Whole(rest[..point]).Contains(parts[0])) && Whole(rest[(point + 1)..]).Contains(parts[1]));
    }

    /// <summary>A number whose point was not said: "seven six" for 7.6.</summary>
    static bool Split(string[] words, string[] parts) =>
        Enumerable.Range(1, words.Length - 1).Any(at => Whole(words[..at]).Contains(parts[0]) && Whole(words[at..]).Contains(parts[1]));

    /// <summary>Every way to write the words in figures.</summary>
    static IEnumerable<string> Whole(string[] words)
    {
        if (words.Length == 0)
        {
            yield break;
        }

        int of = Array.LastIndexOf(words, "thousand") is var thousand and >= 0 ? thousand : Array.LastIndexOf(words, "hundred");
        if (of < 0)
        {
            yield return SideBySide(words);
            yield break;
        }

        int unit = words[of] == "thousand" ? 1000 : 100;
        foreach (string head in of == 1 && words[0] == "a" ? ["1"] : Whole(words[..of]))
        {
            string[] rest = [.. words[(of + 1)..].SkipWhile(word => word == "and")];
            foreach (string tail in rest.Length == 0 ? ["0"] : Whole(rest))
            {
                if (int.TryParse(head, out int times) && int.TryParse(tail, out int plus) && plus < unit && times < 1000)
                {
                    yield return (unit * times + plus).ToString(CultureInfo.InvariantCulture);
                }
            }
        }
    }

    static string SideBySide(string[] words)
    {
        string figures = "";
        for (int i = 0; i < words.Length; i++)
        {
            int ten = Array.IndexOf(Tens, words[i]);
            int one = OneOf(words[i]);
            bool joins = ten >= 0 && i + 1 < words.Length && OneOf(words[i + 1]) is > 0 and < 10;
            figures += ten >= 0 ? (10 * (ten + 2) + (joins ? OneOf(words[++i]) : 0)).ToString(CultureInfo.InvariantCulture)
                : one >= 0 ? one.ToString(CultureInfo.InvariantCulture) : "?";
        }

        return figures;
    }

    static int OneOf(string word) => word switch { "oh" or "o" => 0, "niner" => 9, "fife" => 5, _ => Array.IndexOf(Ones, word) };
}
