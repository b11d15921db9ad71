using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Wording;

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
        MessagePart.Limit limit => $" {Of(limit.Declared)} ",
        MessagePart.Duration duration => $" {Of(duration.Span)} ",
        MessagePart.Name name => $" {Verbalise.Text(name.Words)} ",
        _ => Words(part.Shown),
    };

    /// <summary>What people wrote: its blanks at both ends divide it from its neighbors.</summary>
    static string Words(string written)
    {
        string said = Verbalise.Text(written);
        return $"{(written.StartsWith(' ') ? " " : "")}{said}{(written.EndsWith(' ') ? " " : "")}";
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

    static string Of(DeclaredLimit limit)
    {
        string low = limit.Lower is { } lower ? DeclaredLimit.Shown(lower) : "", high = limit.Upper is { } upper ? DeclaredLimit.Shown(upper) : "";
        return (low.Length, high.Length) switch
        {
            (0, 0) => "no limit",
            (0, _) => $"at most {WithUnit(high, limit.UnitSymbol, false)}",
            (_, 0) => $"at least {WithUnit(low, limit.UnitSymbol, false)}",
            _ => $"{Number(low, false)} to {WithUnit(high, limit.UnitSymbol, false)}",
        };
    }

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
            ? over + (Unit.Find(unitSymbol) is { } unit ? Verbalise.Value(value, unit, digitByDigit) : Number(number[over.Length..], digitByDigit))
            : "cannot be told";
    }

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
