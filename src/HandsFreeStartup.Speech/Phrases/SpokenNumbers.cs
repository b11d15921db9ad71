using System.Collections.Immutable;
using System.Globalization;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Speech.Phrases;

/// <summary>Numbers as people say them, and back.</summary>
public static class SpokenNumbers
{
    /// <summary>
    /// Every number that <paramref name="words"/> can mean for <paramref name="field"/>: none, one, or several ("one one two" is 1.12 or 11.2 inches).
    /// Trailing zeros are kept as decimals.
    /// </summary>
    /// <param name="words">Number words in any case, or figures ("7.6", "-0.02").</param>
    /// <param name="field">Gives range, decimals and sign.</param>
    public static ImmutableArray<SpokenNumber> Parse(string words, Field field) => Parse(PlainWords.Of(words), field);

    internal static ImmutableArray<SpokenNumber> Parse(IEnumerable<string> words, Field field)
    {
        NumberState? state = NumberGrammar.Of(field).Start;
        foreach (string word in words)
        {
            state = NumberWord.Find(word) is { } number ? state.After(number) : null;
            if (state is null)
            {
                return [];
            }
        }

        return [.. state.Values];
    }

    /// <summary>The way the voice says a number: "three hundred twenty eight", "minus zero point zero two".</summary>
    /// <param name="value">Between -9999.999 and 9999.999; its decimals are all said.</param>
    public static string Say(decimal value) => Compose(value, Cardinal((int)Math.Truncate(Math.Abs(value))));

    /// <summary>A number digit by digit: "three two eight", "minus zero point zero two".</summary>
    /// <param name="value">Its decimals are all said.</param>
    public static string SayDigits(decimal value) => Compose(value, Singles(((int)Math.Truncate(Math.Abs(value))).ToString(CultureInfo.InvariantCulture)));

    /// <summary>Every way in which <paramref name="value"/> may be spoken for <paramref name="field"/>, except for synonyms of single words (niner, decimal).</summary>
    /// <param name="value">A legal value of the field.</param>
    /// <param name="field">Gives decimals and range.</param>
    public static ImmutableArray<string> AllSpellings(decimal value, Field field)
    {
        string sign = value < 0 ? "minus " : "";
        int whole = (int)Math.Truncate(Math.Abs(value));
        IEnumerable<string> ways = value.Scale == 0
            ? WholeWays(whole)
            : DecimalWays(whole, Decimals(value), field.FewestDecimals > 0);
        return [.. ways.Distinct().Select(way => sign + way)];
    }

    static string Compose(decimal value, string whole)
    {
        string sign = value < 0 ? "minus " : "";
        return value.Scale == 0 ? sign + whole : $"{sign}{whole} point {Singles(Decimals(value))}";
    }

    static string Decimals(decimal value) => value.ToString(CultureInfo.InvariantCulture).Split('.')[1];

    static string Singles(string digits) => string.Join(' ', digits.Select(digit => NumberWord.Ones[digit - '0']));

    static string SinglesWithOh(string digits) => Singles(digits).Replace("zero", "oh", StringComparison.Ordinal);

    static string Cardinal(int n) => n switch
    {
        < 20 => NumberWord.Ones[n],
        < 100 => NumberWord.Tens[n / 10] + (n % 10 == 0 ? "" : " " + NumberWord.Ones[n % 10]),
        < 1000 => NumberWord.Ones[n / 100] + " hundred" + (n % 100 == 0 ? "" : " " + Cardinal(n % 100)),
        _ => Cardinal(n / 1000) + " thousand" + (n % 1000 == 0 ? "" : " " + Cardinal(n % 1000)),
    };

    /// <summary>Ways to say a whole number from 0 to 9999.</summary>
    static IEnumerable<string> WholeWays(int n)
    {
        yield return Cardinal(n);
        if (n >= 10)
        {
            string digits = n.ToString(CultureInfo.InvariantCulture);
            yield return Singles(digits);
            yield return $"{NumberWord.Ones[digits[0] - '0']} {SinglesWithOh(digits[1..])}";
        }

        foreach (string way in n >= 100 ? LongWays(n) : [])
        {
            yield return way;
        }
    }

    /// <summary>"three hundred and five", "a hundred five", "three twenty eight", "three oh five", "eleven hundred", "eleven fifty", "two thousand and five".</summary>
    static IEnumerable<string> LongWays(int n)
    {
        (int head, int tail) = (n / 100, n % 100);
        if (tail > 0 && head % 10 > 0)
        {
            string hundreds = n < 1000 ? Cardinal(head) + " hundred" : Cardinal(n / 1000) + " thousand " + Cardinal(head % 10) + " hundred";
            yield return $"{hundreds} and {Cardinal(tail)}";
        }

        if (n > 1000 && n % 1000 is > 0 and < 100)
        {
            yield return $"{Cardinal(n / 1000)} thousand and {Cardinal(tail)}";
        }

        if (head is > 10 && head % 10 > 0)
        {
            yield return $"{Cardinal(head)} hundred" + (tail > 0 ? " " + Cardinal(tail) : "");
            yield return tail > 0 ? $"{Cardinal(head)} hundred and {Cardinal(tail)}" : $"{Cardinal(head)} hundred";
        }

        if (tail >= 10)
        {
            yield return $"{Cardinal(head)} {Cardinal(tail)}";
        }
        else if (tail > 0)
        {
            yield return $"{Cardinal(head)} oh {Cardinal(tail)}";
        }

        if (head == 1 || n / 1000 == 1)
        {
            yield return "a" + Cardinal(n)["one".Length..];
        }
    }

    /// <summary>"seven point six", "point oh two", "three point twenty five"; without the point only where a whole number is not legal.</summary>
    static IEnumerable<string> DecimalWays(int whole, string decimals, bool pointMayBeLeftOut)
    {
        List<string> tails = [Singles(decimals), SinglesWithOh(decimals)];
        if (decimals.Length == 2 && decimals[0] != '0')
        {
            tails.Add(Cardinal(int.Parse(decimals, CultureInfo.InvariantCulture)));
        }

        foreach (string tail in tails)
        {
            foreach (string head in WholeWays(whole).Concat(whole == 0 ? ["oh"] : []))
            {
                yield return $"{head} point {tail}";
            }

            if (whole == 0)
            {
                yield return "point " + tail;
            }

            foreach (string head in pointMayBeLeftOut && whole < 100 && (whole < 20 || whole % 10 > 0) ? WholeWays(whole) : [])
            {
                yield return $"{head} {tail}";
            }
        }
    }
}
