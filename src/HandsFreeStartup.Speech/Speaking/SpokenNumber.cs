using System.Globalization;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Speech.Speaking;

/// <summary>Numbers as the tool says them: a form that it would also understand.</summary>
/// <remarks>
/// In another language the digits are left to its voice, which knows how they are said; only sign and point are put into words, and what stands behind the point is said digit by
/// digit. So another language needs no rules for numbers here.
/// </remarks>
public static class SpokenNumber
{
    static readonly string[] Small =
    [
        "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen",
        "sixteen", "seventeen", "eighteen", "nineteen",
    ];

    static readonly string[] Tens = ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

    /// <summary>The usual way: "three hundred twenty eight", "minus zero point zero two". Every decimal is said, zeros at the end too.</summary>
    public static string Usual(decimal value, Language? language = null)
    {
        if (language is { IsEnglish: false })
        {
            string[] written = Parts(value);
            return Sign(value, language) + written[0] + (written.Length == 1 ? "" : $" {language.Text("point")} {Spaced(written[1])}");
        }

        string[] parts = Parts(value);
        string whole = parts[0].Length > 6 ? Digits(parts[0]) : Whole(long.Parse(parts[0], CultureInfo.InvariantCulture));
        return Sign(value, null) + (parts.Length == 1 ? whole : $"{whole} point {Digits(parts[1])}");
    }

    /// <summary>Digit by digit: "three two eight", "one five", "minus zero point zero two". Tells fifteen from fifty.</summary>
    public static string DigitByDigit(decimal value, Language? language = null) => language is { IsEnglish: false }
        ? Sign(value, language) + string.Join($" {language.Text("point")} ", Parts(value).Select(Spaced))
        : Sign(value, language) + string.Join(" point ", Parts(value).Select(Digits));

    /// <summary>What is longer is no number of an instrument but somebody's file name, and a decimal does not hold it.</summary>
    const int LongestNumber = 18;

    /// <summary>The usual way for a number as somebody wrote it, and digit by digit where it is too long for one.</summary>
    internal static string Written(string number, Language? language = null) => number[0] == '-' ? $"{(language ?? Language.English).Text("minus")} {Written(number[1..], language)}"
        : number.Length <= LongestNumber ? Usual(decimal.Parse(number, CultureInfo.InvariantCulture), language)
        : language is { IsEnglish: false } ? string.Join($" {language.Text("point")} ", number.Split('.').Select(Spaced))
        : string.Join(" point ", number.Split('.').Select(Digits));

    static string Sign(decimal value, Language? language) => value < 0 ? $"{(language ?? Language.English).Text("minus")} " : "";

    static string Spaced(string digits) => string.Join(' ', digits.AsEnumerable());

    static string[] Parts(decimal value) => Math.Abs(value).ToString(CultureInfo.InvariantCulture).Split('.');

    static string Digits(string digits) => string.Join(' ', digits.Select(digit => Small[digit - '0']));

    static string Whole(long number) => number switch
    {
        < 20 => Small[number],
        < 100 => Tens[number / 10] + Rest(number % 10),
        < 1_000 => $"{Small[number / 100]} hundred{Rest(number % 100)}",
        _ => $"{Whole(number / 1_000)} thousand{Rest(number % 1_000)}",
    };

    static string Rest(long rest) => rest == 0 ? "" : $" {Whole(rest)}";
}
