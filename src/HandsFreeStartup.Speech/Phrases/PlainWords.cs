using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;

namespace HandsFreeStartup.Speech.Phrases;

/// <summary>Text as plain lower-case words: figures become number words, marks become names, spelled letters are joined ("C O two", "CO2" and "C.O. 2" are all "co two").</summary>
static partial class PlainWords
{
    /// <summary>The words of <paramref name="text"/>, in order.</summary>
    public static ImmutableArray<string> Of(string text)
    {
        string plain = text.ToLowerInvariant().Replace('\u2212', '-').Replace('\u2013', '-').Replace("'", "", StringComparison.Ordinal);
        plain = ThousandsComma().Replace(plain, "");
        plain = Sign().Replace(plain, " minus ");
        plain = Figures().Replace(plain, figure => $" {Spell(figure.Value)} ");
        plain = plain.Replace("%", " percent ", StringComparison.Ordinal);
        plain = plain.Replace("°", " degrees ", StringComparison.Ordinal);
        string[] words = NotAWord().Replace(Initials().Replace(plain, "$1 "), " ").Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return [.. JoinLetters(words)];
    }

    /// <summary>"328" as "three hundred twenty eight", "7.60" as "seven point six zero", ".02" as "point zero two", "007" digit by digit.</summary>
    static string Spell(string figures)
    {
        string[] parts = figures.Split('.');
        string whole = parts[0];
        string head = whole.Length switch
        {
            0 => "",
            > 4 => Singles(whole),
            > 1 when whole[0] == '0' => Singles(whole),
            _ => SpokenNumbers.Say(int.Parse(whole, CultureInfo.InvariantCulture)),
        };
        return parts.Length == 1 ? head : $"{head} point {Singles(parts[1])}";
    }

    static string Singles(string digits) => string.Join(' ', digits.Select(digit => NumberWord.Ones[digit - '0']));

    static IEnumerable<string> JoinLetters(string[] words)
    {
        for (int i = 0; i < words.Length;)
        {
            int end = i + 1;
            while (IsSpelled(words[i]) && end < words.Length && IsSpelled(words[end]))
            {
                end++;
            }

            yield return string.Concat(words[i..end]);
            i = end;
        }
    }

    /// <summary>A letter of a spelled name; "a" is none of them, but begins "a hundred".</summary>
    static bool IsSpelled(string word) => word.Length == 1 && word != "a";

    [GeneratedRegex(@"(?<=\b[0-9]),(?=[0-9]{3}\b)")]
    private static partial Regex ThousandsComma();

    [GeneratedRegex(@"(?<![\p{L}0-9])-\s*(?=[.0-9])")]
    private static partial Regex Sign();

    [GeneratedRegex(@"[0-9]*\.[0-9]+|[0-9]+")]
    private static partial Regex Figures();

    [GeneratedRegex(@"\b(\p{L})\.")]
    private static partial Regex Initials();

    [GeneratedRegex(@"[^\p{L}\s]|\s+")]
    private static partial Regex NotAWord();
}
