using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Speech.Speaking;

/// <summary>A message as the voice says it, part by part. Numbers of the program are said as the numbers that they are and never looked for in a sentence.</summary>
public static class SpokenMessage
{
    /// <summary>What is said.</summary>
    /// <param name="message">The message.</param>
    /// <param name="digitByDigit">For a reading that is in doubt.</param>
    public static string Of(Message message, bool digitByDigit = false)
    {
        string said = string.Concat(message.Parts.Select(part => Of(part, digitByDigit)));
        return Tidy(said);
    }

    static string Of(MessagePart part, bool digitByDigit) => part switch
    {
        MessagePart.Quantity quantity => $" {Of(quantity, digitByDigit)} ",
        MessagePart.Limit limit => $" {Of(limit)} ",
        MessagePart.Duration duration => $" {Of(duration.Span)} ",
        MessagePart.Telephone telephone => $" {Digits(telephone.Number)} ",
        MessagePart.Name name => $" {string.Concat(name.Parts.Select(word => Of(word, digitByDigit: false)))} ",
        MessagePart.Figure figure => $"{(figure.EndsRange ? " to " : "")}{Of(figure)}",
        _ => Verbalise.Text(part.Shown),
    };

    static string Of(MessagePart.Figure figure)
    {
        string said = SpokenNumber.Written(figure.Number);
        return figure.UnitSymbol.Length == 0 ? said : $"{said} {UnitWords.Of(figure.UnitSymbol, isOne: said is "one" or "minus one")} ";
    }

    static string Of(MessagePart.Quantity quantity, bool digitByDigit)
    {
        ShownValue value = quantity.Value;
        string said = WithUnit(value.Number, value.UnitSymbol, digitByDigit);
        return !quantity.TellsDoubt || value.Doubt.Length == 0 ? said
            : value.Uncertainty.Length == 0 ? $"{said}, {ShownValue.NoneStated}"
            : value.Highest.Length > 0 ? $"{said}, zero to {Number(value.Highest, digitByDigit)}"
            : $"{Number(value.Number, digitByDigit)} plus or minus {WithUnit(value.Uncertainty, value.UnitSymbol, digitByDigit)}";
    }

    static string Of(MessagePart.Limit limit) => (limit.Lower.Length, limit.Upper.Length) switch
    {
        (0, 0) => "no limit",
        (0, _) => $"at most {WithUnit(limit.Upper, limit.UnitSymbol, false)}",
        (_, 0) => $"at least {WithUnit(limit.Lower, limit.UnitSymbol, false)}",
        _ => $"{Number(limit.Lower, false)} to {WithUnit(limit.Upper, limit.UnitSymbol, false)}",
    };

    /// <summary>A number that is dialed, or whatever else stands in its place.</summary>
    static string Digits(string dialed) => string.Concat(dialed.Select(letter => char.IsAsciiDigit(letter) ? $" {SpokenNumber.Usual(letter - '0')}" : letter == '-' ? "," : $"{letter}"));

    static string Of(TimeSpan span)
    {
        int seconds = (int)Math.Min(int.MaxValue, Math.Ceiling(span.Duration().TotalSeconds));
        string[] parts = [Count(seconds / 3600, "hour"), Count(seconds / 60 % 60, "minute"), Count(seconds % 60, "second")];
        string said = string.Join(' ', parts.Where(part => part.Length > 0));
        return said.Length == 0 ? "no time" : said;
    }

    static string Count(int count, string unit) => count == 0 ? "" : $"{SpokenNumber.Usual(count)} {unit}{(count == 1 ? "" : "s")}";

    static string WithUnit(string number, string unitSymbol, bool digitByDigit)
    {
        string over = number.StartsWith("over ", StringComparison.Ordinal) ? "over " : "";
        return decimal.TryParse(number[over.Length..], System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out decimal value)
            ? over + (Unit.Find(unitSymbol) is { } unit ? Value(value, unit, digitByDigit) : Number(number[over.Length..], digitByDigit))
            : "cannot be told";
    }

    /// <summary>A value with its unit as the tool reads it back: "seven point six percent".</summary>
    /// <param name="value">Decimals as spoken.</param>
    /// <param name="unit">The unit of the field.</param>
    /// <param name="digitByDigit">For a value that is in doubt: "one five degrees" cannot be taken for "fifty".</param>
    public static string Value(decimal value, Unit unit, bool digitByDigit = false) =>
        $"{(digitByDigit ? SpokenNumber.DigitByDigit(value) : SpokenNumber.Usual(value))} {(Math.Abs(value) == 1 ? UnitWords.Singular(unit.Spoken[0]) : unit.Spoken[0])}";

    static string Number(string number, bool digitByDigit)
    {
        decimal value = decimal.Parse(number, System.Globalization.CultureInfo.InvariantCulture);
        return digitByDigit ? SpokenNumber.DigitByDigit(value) : SpokenNumber.Usual(value);
    }

    /// <summary>No blank before a stop, none twice, none at the ends.</summary>
    static string Tidy(string said)
    {
        string tidy = string.Join(' ', said.Split(' ', StringSplitOptions.RemoveEmptyEntries));
        foreach (char stop in ".,;:?!)")
        {
            tidy = tidy.Replace($" {stop}", $"{stop}", StringComparison.Ordinal);
        }

        return tidy.Replace("( ", "(", StringComparison.Ordinal);
    }
}
