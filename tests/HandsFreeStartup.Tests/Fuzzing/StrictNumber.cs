using System.Numerics;
using System.Text.RegularExpressions;

namespace HandsFreeStartup.Tests.Fuzzing;

/// <summary>
/// The strict reading of a number, written a second time and otherwise than the program's own: a sign or none, digits 0 to 9 without zeros before them, and a point with digits or
/// none; or a point with digits alone (".02"). What the program takes for a number must be one here, and the same.
/// </summary>
public static partial class StrictNumber
{
    public const string Signs = "[-+\u2010\u2011\u2012\u2013\u2014\u2015\u2212\u2796\uFE58\uFE63\uFF0D]";

    public const string Digits = @"(?:(?:0|[1-9][0-9]*)(?:\.[0-9]+)?|\.[0-9]+)";

    /// <summary>The number that <paramref name="text"/> is; null where it is none.</summary>
    public static decimal? Of(string text)
    {
        Match match = Whole().Match(text.Trim());
        if (!match.Success)
        {
            return null;
        }

        string digits = match.Groups["digits"].Value;
        int point = digits.IndexOf('.', StringComparison.Ordinal);
        int scale = point < 0 ? 0 : digits.Length - point - 1;
        BigInteger unscaled = 0;
        foreach (char digit in digits.Where(letter => letter != '.'))
        {
            unscaled = 10 * unscaled + (digit - '0');
        }

        bool isNegative = match.Groups["sign"].Value is { Length: > 0 } sign && sign != "+";
        return unscaled < BigInteger.Pow(2, 96) && scale <= 28
            ? new decimal((int)(uint)(unscaled & uint.MaxValue), (int)(uint)(unscaled >> 32 & uint.MaxValue), (int)(uint)(unscaled >> 64), isNegative, (byte)scale)
            : null;
    }

    /// <summary>Every number that stands by itself in a text.</summary>
    public static IReadOnlySet<decimal> AllIn(string text) => Standing().Matches(text).Select(match => Of(match.Value)).OfType<decimal>().ToHashSet();

    [GeneratedRegex($"^(?<sign>{Signs})?\\s*(?<digits>{Digits})$")]
    private static partial Regex Whole();

    [GeneratedRegex($@"(?<![\p{{L}}\p{{N}}/_]|[0-9][.,])(?:{Signs}\s*)?{Digits}(?![\p{{L}}\p{{N}}/_]|[.,][0-9])")]
    private static partial Regex Standing();
}
