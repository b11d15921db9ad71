using System.Globalization;
using System.Text;

namespace HandsFreeStartup.Doors;

/// <summary>
/// A number as it is typed, at the console, on the command line, in a YAML file or in a table: an optional sign, the digits 0 to 9, and at most one point. Anything else
/// gets a reason that shows what to type. Nothing is ever guessed: 1,2 can be 1.2 and 12, and 3-5 is no number.
/// </summary>
public static class TypedNumber
{
    /// <summary>Digits that a number may have; more than any instrument shows and no more than a decimal holds.</summary>
    public const int MostDigits = 28;

    // Below 2^53 every whole number is a double, and so is every power of ten up to 10^22: their quotient is rounded once.
    const int MostExactDigits = 15;

    const int MostLetters = 40;
    const int ShownLetters = 24;

    /// <summary>Every dash that somebody may type, or a text processor may make, for a minus.</summary>
    const string Minuses = "-\u2010\u2011\u2012\u2013\u2014\u2015\u2212\u2796\uFE58\uFE63\uFF0D";

    static readonly double[] ExactTens = [1, 10, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14];

    /// <summary>The number, with its decimals as typed (7.60 keeps its zero); null where there is none.</summary>
    /// <param name="text">As typed; white space around it does not matter.</param>
    /// <param name="reason">Why it is none and what to type, as a clause without a full stop; empty for a number.</param>
    /// <param name="example">A number as it is wanted here.</param>
    public static decimal? Read(string text, out string reason, string example = "12.3")
    {
        string? plain = Plain(text, out reason, example);
        if (plain?.Count(char.IsAsciiDigit) > MostDigits)
        {
            reason = $"{Quoted(text.Trim())} has too many digits: type what the instrument shows, such as {example}";
            return null;
        }

        return plain is null ? null : decimal.Parse(plain, NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
    }

    /// <summary>The same number as a double, which may have more digits than a decimal.</summary>
    public static double? ReadDouble(ReadOnlySpan<char> text, out string reason, string example = "12.3")
    {
        ReadOnlySpan<char> body = Unsigned(text.Trim(), out bool isNegative);
        if (IsPlain(body))
        {
            reason = "";
            double value = double.Parse(body, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
            return isNegative ? -value : value;
        }

        Plain(text.ToString(), out reason, example);
        return null;
    }

    /// <summary>The same number without white space, where its digits and its decimals are so few that one division gives the nearest double; other text says false here.</summary>
    /// <param name="text">ASCII.</param>
    /// <param name="value">The number.</param>
    public static bool TryReadShort(ReadOnlySpan<byte> text, out double value)
    {
        bool isSigned = text is [(byte)'-' or (byte)'+', ..];
        int start = isSigned ? 1 : 0, point = text.Length;
        long digits = 0;
        value = 0;
        if (text.Length - start is 0 or > MostExactDigits || (text[start] == '0' && text.Length > start + 1 && text[start + 1] != '.'))
        {
            return false;
        }

        for (int i = start; i < text.Length; i++)
        {
            uint digit = (uint)text[i] - '0';
            if (digit <= 9)
            {
                digits = 10 * digits + digit;
            }
            else if (text[i] == '.' && point == text.Length && i + 1 < text.Length)
            {
                point = i;
            }
            else
            {
                return false;
            }
        }

        double size = digits / ExactTens[Math.Max(0, text.Length - point - 1)];
        value = isSigned && text[0] == '-' ? -size : size;
        return true;
    }

    /// <summary>The same number where only a whole one will do, from <paramref name="lowest"/> to <paramref name="highest"/>.</summary>
    public static int? ReadWhole(string text, int lowest, int highest, out string reason)
    {
        string example = lowest.ToString(CultureInfo.InvariantCulture);
        if (Read(text, out reason, example) is not { } number)
        {
            return null;
        }

        if (number.Scale == 0 && number >= lowest && number <= highest)
        {
            return (int)number;
        }

        reason = string.Create(CultureInfo.InvariantCulture, $"{Quoted(text.Trim())} is no whole number from {lowest} to {highest}");
        return null;
    }

    /// <summary>Whether it is a plain number, of however many digits, above <paramref name="bound"/>: what is too much for an instrument is not too much to be true.</summary>
    /// <param name="text">As typed.</param>
    /// <param name="bound">At least 0.</param>
    public static bool IsAbove(string text, decimal bound)
    {
        string body = text.Trim().TrimStart('+').TrimStart();
        int point = body.IndexOf('.', StringComparison.Ordinal);
        ReadOnlySpan<char> whole = point < 0 ? body : body.AsSpan(0, point);
        ReadOnlySpan<char> decimals = point < 0 ? default : body.AsSpan(point + 1);
        bool isPlain = whole.Length > 0 && whole[0] != '0' && AreDigits(whole) && AreDigits(decimals) && (point < 0 || decimals.Length > 0);
        return isPlain && (whole.Length > MostDigits || (Read(text, out _) ?? decimal.Parse(whole, NumberStyles.None, CultureInfo.InvariantCulture)) > bound);
    }

    /// <summary>The number in ASCII with the point as it stands; null where there is none.</summary>
    static string? Plain(string text, out string reason, string example)
    {
        string trimmed = text.Trim();
        if (trimmed.Length == 0)
        {
            reason = $"the number is missing: type its digits, such as {example}";
            return null;
        }

        string body = Unsigned(trimmed, out bool isNegative).ToString();
        if (IsPlain(body))
        {
            reason = "";
            return isNegative ? $"-{body}" : body;
        }

        reason = $"{Quoted(trimmed)} {WhatIsWrong(body, trimmed)}, such as {example}";
        return null;
    }

    static ReadOnlySpan<char> Unsigned(ReadOnlySpan<char> trimmed, out bool isNegative)
    {
        isNegative = trimmed.Length > 0 && Minuses.Contains(trimmed[0], StringComparison.Ordinal);
        return isNegative || trimmed is ['+', ..] ? trimmed[1..].TrimStart() : trimmed;
    }

    static bool IsPlain(ReadOnlySpan<char> body)
    {
        int point = body.IndexOf('.');
        ReadOnlySpan<char> whole = point < 0 ? body : body[..point];
        ReadOnlySpan<char> decimals = point < 0 ? default : body[(point + 1)..];
        bool hasLeadingZero = whole.Length > 1 && whole[0] == '0';
        return body.Length is > 0 and <= MostLetters && !hasLeadingZero && AreDigits(whole) && AreDigits(decimals) && (point < 0 ? whole.Length > 0 : decimals.Length > 0);
    }

    static bool AreDigits(ReadOnlySpan<char> text) => text.IndexOfAnyExceptInRange('0', '9') < 0;

    static string WhatIsWrong(string body, string whole) =>
        whole.Length > MostLetters ? "is too long for a number: type what the instrument shows"
        : whole.EnumerateRunes().Any(IsSmallDigit) ? "has a raised or lowered digit: type ordinary digits"
        : whole.EnumerateRunes().Any(IsFraction) ? "is a fraction: type it with decimals"
        : whole.EnumerateRunes().Any(rune => Rune.IsDigit(rune) && !rune.IsAscii) ? "has digits of another script: type 0 to 9"
        : whole.Contains(',', StringComparison.Ordinal) || whole.Contains('\u066B', StringComparison.Ordinal) || whole.Contains('\uFF0C', StringComparison.Ordinal)
            ? "has a comma, which can mean two things: type a point before the decimals and nothing between thousands"
        : whole.AsSpan().IndexOfAny("<>=~≤≥≈") >= 0 ? "is no reading but a bound: type the number that the instrument shows"
        : body.Length == 0 ? "has no digits: type the number"
        : Minuses.Contains(body[0], StringComparison.Ordinal) || body[0] == '+' ? "has two signs: type one"
        : IsExponent(body) ? "has an exponent: type all its digits"
        : body.Count(letter => letter == '.') > 1 ? "has two points: type one"
        : body.IndexOfAny(Minuses.ToCharArray()) > 0 || body.Contains('+', StringComparison.Ordinal) ? "is no single number: type one number"
        : body.EndsWith('.') ? "has no decimals after its point: type them, or leave the point out"
        : body[0] == '0' && body.All(letter => char.IsAsciiDigit(letter) || letter == '.') ? "begins with zeros that mean nothing: look at the decimal point, and leave them out"
        : body.Any(char.IsWhiteSpace) && body.All(letter => char.IsAsciiDigit(letter) || letter == '.' || char.IsWhiteSpace(letter)) ? "has a gap: type one number without spaces"
        : "is not a number: type its digits";

    static bool IsSmallDigit(Rune rune) => rune.Value is 0xB2 or 0xB3 or 0xB9 or 0x207A or 0x207B or 0x208A or 0x208B or (>= 0x2070 and <= 0x2079) or (>= 0x2080 and <= 0x2089);

    static bool IsFraction(Rune rune) => rune.Value is '/' or 0x2044 or 0x2215 or (>= 0xBC and <= 0xBE) or (>= 0x2150 and <= 0x215F) or 0x2189;

    static bool IsExponent(string body)
    {
        int letter = body.IndexOfAny(['e', 'E']);
        return letter > 0 && letter < body.Length - 1 && body[..letter].All(one => char.IsAsciiDigit(one) || one == '.')
            && body[(letter + 1)..].TrimStart('+', '-', '\u2212') is { Length: > 0 } power && power.All(char.IsAsciiDigit);
    }

    static string Quoted(string text) => $"'{VisibleText.Of(text.Length <= ShownLetters ? text : $"{text[..ShownLetters]}...")}'";
}
