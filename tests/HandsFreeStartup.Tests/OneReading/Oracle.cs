using System.Globalization;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Tests.OneReading;

/// <summary>What a value must be told as, worked out from its event alone and without the program's wording.</summary>
static class Oracle
{
    static readonly string[] NeverNegative = ["%", "ppm", "s", "V", "µA", "Btu/h", "kW", ""];

    public static (string Number, string Doubt, string Text) Of(EnteredReading reading)
    {
        string number = reading.Value.ToString(CultureInfo.InvariantCulture);
        return reading.IsOver ? ($"over {number}", "", $"over {number} {reading.UnitSymbol}") : Told(reading.Value, number, reading.ExpandedUncertainty, reading.UnitSymbol);
    }

    public static (string Number, string Doubt, string Text) Of(CalculatedResult result)
    {
        if (result.Value is not { } value)
        {
            return ("", "", "cannot be told");
        }

        decimal? uncertainty = result.ExpandedUncertainty is > 0 and var u ? Rounded((decimal)u) : null;
        int decimals = Math.Max(result.Decimals, uncertainty is { } rounded ? Places(rounded) : 0);
        string number = Math.Round((decimal)value, decimals, MidpointRounding.AwayFromZero).ToString($"F{decimals}", CultureInfo.InvariantCulture);
        return Told(decimal.Parse(number, CultureInfo.InvariantCulture), number, (decimal?)result.ExpandedUncertainty, result.UnitSymbol);
    }

    public static string Of(Verdict? verdict, DeclaredLimit? limit) => (verdict, limit) switch
    {
        (null, _) or (_, null) => "",
        (Verdict.Pass, _) => "pass",
        (Verdict.ConditionalPass, { IsSafety: true }) => "conditional pass, NOT PROVEN: inside by less than the uncertainty",
        (Verdict.ConditionalPass, _) => "conditional pass: inside by less than the uncertainty",
        (Verdict.ConditionalFail, { IsSafety: true }) => "conditional fail, NOT PROVEN: outside by less than the uncertainty",
        (Verdict.ConditionalFail, _) => "conditional fail: outside by less than the uncertainty",
        (Verdict.Fail, _) => "FAIL",
        _ => "CANNOT TELL",
    };

    public static string Bound(decimal? bound) => bound?.ToString(CultureInfo.InvariantCulture) ?? "";

    static (string, string, string) Told(decimal value, string number, decimal? expanded, string unit)
    {
        string with = unit.Length == 0 ? "" : $" {unit}";
        if (expanded is not > 0)
        {
            return (number, "no uncertainty stated", $"{number}{with}, no uncertainty stated");
        }

        decimal uncertainty = Rounded(expanded.Value);
        string shown = Plain(uncertainty);
        return value >= 0 && value < uncertainty && NeverNegative.Contains(unit)
            ? (number, $"0 to {Plain(value + uncertainty)}", $"{number}{with} (0 to {Plain(value + uncertainty)})")
            : (number, $"± {shown}", $"{number} ± {shown}{with}");
    }

    /// <summary>Digit by digit: two digits where the first is 1 or 2, else one; up, unless what is cut off is noise.</summary>
    static decimal Rounded(decimal expanded)
    {
        decimal step = 1;
        while (expanded / step >= 10)
        {
            step *= 10;
        }

        while (expanded / step < 1)
        {
            step /= 10;
        }

        step = expanded / step < 3 ? step / 10 : step;
        return Math.Ceiling(Math.Round(expanded / step, 6)) * step;
    }

    static int Places(decimal value) => Plain(value).IndexOf('.', StringComparison.Ordinal) is >= 0 and var point ? Plain(value).Length - point - 1 : 0;

    static string Plain(decimal value) => value.ToString("0.############", CultureInfo.InvariantCulture);
}
