using System.Globalization;
using System.Text.RegularExpressions;

namespace HandsFreeStartup.Speech.Understanding;

/// <summary>Readings that are easily taken for each other.</summary>
static partial class SoundsAlike
{
    /// <summary>Whether one may have been said where the other was heard: other field, teen for ty (15, 50; 215, 250), or a number without its last digits (26, 26.8).</summary>
    public static bool Are(Meaning.Reading one, Meaning.Reading other)
    {
        if (one.Field.Id != other.Field.Id)
        {
            return true;
        }

        (string a, string b) = (Digits(one.Value), Digits(other.Value));
        return a.StartsWith(b, StringComparison.Ordinal) || b.StartsWith(a, StringComparison.Ordinal) || IsTeenForTy(a, b) || IsTeenForTy(b, a);
    }

    /// <summary>Whether they differ in one teen for a ty only (13 and 30; 12 and 20 count as well).</summary>
    public static bool AreTwins(Meaning.Reading one, Meaning.Reading other) => IsTeen(one, other) || IsTeen(other, one);

    /// <summary>Whether the first is the twin in "-teen" of the second in "-ty".</summary>
    public static bool IsTeen(Meaning.Reading one, Meaning.Reading other) =>
        one.Field.Id == other.Field.Id && IsTeenForTy(Digits(one.Value), Digits(other.Value), leastOnes: '2');

    /// <summary>The words with the last teen said as a ty or the other way round ("one thirteen" for "one thirty", "113" for "130"); null if there is none.</summary>
    public static string? TwinOf(string words)
    {
        Match last = TeenOrTy().Matches(words).LastOrDefault() ?? Match.Empty;
        if (!last.Success)
        {
            return null;
        }

        string found = last.Value.ToLowerInvariant();
        string twin = char.IsDigit(found[0]) ? found[1] == '0' ? $"1{found[0]}" : $"{found[1]}0"
            : NumberWord.Tens.IndexOf(found) is var tens and > 0 ? NumberWord.Ones[10 + tens]
            : NumberWord.Tens[NumberWord.Ones.IndexOf(found) - 10];
        return string.Concat(words.AsSpan(0, last.Index), twin, words.AsSpan(last.Index + last.Length));
    }

    /// <summary>13 to 19 and 30 to 90, in words, or as the last two figures of a group.</summary>
    [GeneratedRegex(@"\b(thirteen|fourteen|fifteen|sixteen|seventeen|eighteen|nineteen|thirty|forty|fifty|sixty|seventy|eighty|ninety)\b|(1[3-9]|[3-9]0)(?!\d)", RegexOptions.IgnoreCase)]
    private static partial Regex TeenOrTy();

    static string Digits(decimal value) => Math.Abs(value).ToString(CultureInfo.InvariantCulture).Replace(".", "", StringComparison.Ordinal);

    /// <summary>"13" against "30" anywhere in two numbers that are equal otherwise.</summary>
    static bool IsTeenForTy(string teen, string ty, char leastOnes = '0') => teen.Length == ty.Length
        && Enumerable.Range(0, teen.Length - 1).Any(i => teen[i] == '1' && teen[i + 1] >= leastOnes && ty[i + 1] == '0' && teen[i + 1] == ty[i]
            && teen[..i] == ty[..i] && teen[(i + 2)..] == ty[(i + 2)..]);
}
