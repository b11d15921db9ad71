using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Speech.Speaking;

/// <summary>A message as the voice says it, part by part. Numbers of the program are said as the numbers that they are and never looked for in a sentence.</summary>
public static class SpokenMessage
{
    /// <summary>What is said.</summary>
    /// <param name="message">The message.</param>
    /// <param name="digitByDigit">For a reading that is in doubt.</param>
    /// <param name="language">Of the voice, into which the message is put first; null for English.</param>
    public static string Of(Message message, bool digitByDigit = false, Language? language = null)
    {
        language ??= Language.English;
        string said = string.Concat(language.In(message).Parts.Select(part => Of(part, digitByDigit, language)));
        return Tidy(said);
    }

    static string Of(MessagePart part, bool digitByDigit, Language language) => part switch
    {
        MessagePart.InLanguage { Part: var inner } => Of(inner, digitByDigit, language),
        MessagePart.Quantity quantity => $" {Of(quantity, digitByDigit, language)} ",
        MessagePart.Limit limit => $" {Of(limit, language)} ",
        MessagePart.Duration duration => $" {Of(duration.Span, language)} ",
        MessagePart.Telephone telephone => $" {Digits(telephone.Number, language)} ",
        MessagePart.Name name => $" {string.Concat(name.Parts.Select(word => Of(word, digitByDigit: false, language)))} ",
        MessagePart.Form form => $" {string.Concat(form.Parts.Select(word => Of(word, digitByDigit: false, language)))} ",
        MessagePart.Figure figure => $"{(figure.EndsRange ? $" {language.Text("to")} " : "")}{Of(figure, language)}",
        _ => Verbalise.Text(part.Shown, language),
    };

    static string Of(MessagePart.Figure figure, Language language)
    {
        string said = SpokenNumber.Written(figure.Number, language);
        return figure.UnitSymbol.Length == 0 ? said : $"{said} {language.Text(UnitWords.Of(figure.UnitSymbol, isOne: figure.Number is "1" or "-1"))} ";
    }

    static string Of(MessagePart.Quantity quantity, bool digitByDigit, Language language)
    {
        ShownValue value = quantity.Value;
        string said = WithUnit(value.Number, value.UnitSymbol, digitByDigit, language);
        return !quantity.TellsDoubt || value.Doubt.Length == 0 ? said
            : value.Uncertainty.Length == 0 ? $"{said}, {language.Text(ShownValue.NoneStated)}"
            : value.Highest.Length > 0 ? $"{said}, {language.Text("{0} to {1}", Number("0", digitByDigit, language), Number(value.Highest, digitByDigit, language))}"
            : $"{Number(value.Number, digitByDigit, language)} {language.Text("plus or minus")} {WithUnit(value.Uncertainty, value.UnitSymbol, digitByDigit, language)}";
    }

    static string Of(MessagePart.Limit limit, Language language) => (limit.Lower.Length, limit.Upper.Length) switch
    {
        (0, 0) => language.Text("no limit"),
        (0, _) => language.Text("at most {0}", WithUnit(limit.Upper, limit.UnitSymbol, false, language)),
        (_, 0) => language.Text("at least {0}", WithUnit(limit.Lower, limit.UnitSymbol, false, language)),
        _ => language.Text("{0} to {1}", Number(limit.Lower, false, language), WithUnit(limit.Upper, limit.UnitSymbol, false, language)),
    };

    /// <summary>A number that is dialed, or whatever else stands in its place.</summary>
    static string Digits(string dialed, Language language) =>
        string.Concat(dialed.Select(letter => char.IsAsciiDigit(letter) ? $" {SpokenNumber.Usual(letter - '0', language)}" : letter == '-' ? "," : $"{letter}"));

    static string Of(TimeSpan span, Language language)
    {
        int seconds = (int)Math.Min(int.MaxValue, Math.Ceiling(span.Duration().TotalSeconds));
        string[] parts = [Count(seconds / 3600, "hour", language), Count(seconds / 60 % 60, "minute", language), Count(seconds % 60, "second", language)];
        string said = string.Join(' ', parts.Where(part => part.Length > 0));
        return said.Length == 0 ? language.Text("no time") : said;
    }

    static string Count(int count, string unit, Language language) =>
        count == 0 ? "" : $"{SpokenNumber.Usual(count, language)} {language.Text(count == 1 ? unit : $"{unit}s")}";

    static string WithUnit(string number, string unitSymbol, bool digitByDigit, Language language)
    {
        string over = number.StartsWith("over ", StringComparison.Ordinal) ? "over " : "";
        if (!decimal.TryParse(number[over.Length..], System.Globalization.NumberStyles.Float, System.Globalization.CultureInfo.InvariantCulture, out decimal value))
        {
            return language.Text("cannot be told");
        }

        string said = Unit.Find(unitSymbol) is { } unit ? Value(value, unit, digitByDigit, language) : Number(number[over.Length..], digitByDigit, language);
        return over.Length == 0 ? said : language.Text("over {0}", said);
    }

    /// <summary>A value with its unit as the tool reads it back: "seven point six percent".</summary>
    /// <param name="value">Decimals as spoken.</param>
    /// <param name="unit">The unit of the field.</param>
    /// <param name="digitByDigit">For a value that is in doubt: "one five degrees" cannot be taken for "fifty".</param>
    /// <param name="language">Of the voice; null for English.</param>
    public static string Value(decimal value, Unit unit, bool digitByDigit = false, Language? language = null)
    {
        language ??= Language.English;
        string number = digitByDigit ? SpokenNumber.DigitByDigit(value, language) : SpokenNumber.Usual(value, language);
        return $"{number} {language.Text(Math.Abs(value) == 1 ? UnitWords.Singular(unit.Spoken[0]) : unit.Spoken[0])}";
    }

    static string Number(string number, bool digitByDigit, Language language)
    {
        decimal value = decimal.Parse(number, System.Globalization.CultureInfo.InvariantCulture);
        return digitByDigit ? SpokenNumber.DigitByDigit(value, language) : SpokenNumber.Usual(value, language);
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
