using System.Globalization;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Reports.Facts;

/// <summary>Values and verdicts in the words of the copies.</summary>
static class Words
{
    public static string Label(ReadingKey key) => $"{Fields.Find(key.FieldId)?.Label ?? key.FieldId}{In(key.Scope)}";

    public static string In(string scope) => scope.Length == 0 ? "" : $" ({scope})";

    /// <summary>As spoken, trailing zeros kept; "over" the end of the range where more was read than the field holds.</summary>
    public static string Number(EnteredReading reading) => $"{(reading.IsOver ? "over " : "")}{reading.Value.ToString(CultureInfo.InvariantCulture)}";

    /// <summary>Expanded, or empty where none is stated.</summary>
    public static string Uncertainty(EnteredReading reading) => reading.IsOver ? "" : reading.ExpandedUncertainty?.ToString("0.####", CultureInfo.InvariantCulture) ?? "";

    /// <summary>As spoken, trailing zeros kept, with the unit.</summary>
    public static string Value(EnteredReading reading) => $"{Number(reading)} {reading.UnitSymbol}";

    /// <summary>As spoken, with the expanded uncertainty where one is stated, and the unit.</summary>
    public static string WithUncertainty(EnteredReading reading) =>
        Uncertainty(reading).Length == 0 ? Value(reading) : $"{Number(reading)} ± {Uncertainty(reading)} {reading.UnitSymbol}";

    /// <summary>Rounded for showing.</summary>
    public static string Number(CalculatedResult result) => result.Value?.ToString(Format(result), CultureInfo.InvariantCulture) ?? "";

    /// <summary>Expanded and rounded up, or empty where it cannot be told.</summary>
    public static string Uncertainty(CalculatedResult result)
    {
        double step = Math.Pow(10, result.Decimals);
        return result.ExpandedUncertainty is { } expanded && double.IsFinite(expanded)
            ? (Math.Ceiling(Math.Round(expanded * step, 6)) / step).ToString(Format(result), CultureInfo.InvariantCulture)
            : "";
    }

    /// <summary>Rounded for showing, with the unit; the uncertainty is rounded up.</summary>
    public static string Value(CalculatedResult result)
    {
        if (result.Value is null)
        {
            return result.Remark.Length > 0 ? $"cannot be told: {result.Remark}" : "cannot be told";
        }

        string uncertainty = Uncertainty(result);
        return $"{Number(result)}{(uncertainty.Length == 0 ? "" : $" ± {uncertainty}")} {result.UnitSymbol}".TrimEnd();
    }

    public static bool MustBeLookedAt(Verdict? verdict, DeclaredLimit? limit) =>
        verdict is not null and not Calculations.Judgement.Verdict.Pass && limit is not null;

    public static string Verdict(Verdict verdict, DeclaredLimit limit) => verdict switch
    {
        Calculations.Judgement.Verdict.Pass => "pass",
        Calculations.Judgement.Verdict.ConditionalPass => limit.IsSafety ? "NOT PROVEN: inside by less than the uncertainty" : "pass, but inside by less than the uncertainty",
        Calculations.Judgement.Verdict.ConditionalFail => limit.IsSafety ? "NOT PROVEN: outside by less than the uncertainty" : "FAIL, but outside by less than the uncertainty",
        Calculations.Judgement.Verdict.Fail => "FAIL",
        _ => "CANNOT TELL",
    };

    static string Format(CalculatedResult result) => FormattableString.Invariant($"F{result.Decimals}");

    public static string YesNo(bool answer) => answer ? "yes" : "no";

    /// <summary>Date and time of day in UTC.</summary>
    public static string Moment(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd HH:mm:ss", CultureInfo.InvariantCulture);

    /// <summary>Date, time of day and offset from UTC.</summary>
    public static string Stamp(DateTimeOffset at) => at.ToUniversalTime().ToString("yyyy-MM-dd HH:mm:ss zzz", CultureInfo.InvariantCulture);

    public static string Time(DateTimeOffset at) => at.UtcDateTime.ToString("HH:mm:ss", CultureInfo.InvariantCulture);

    public static string Span(TimeSpan span) => span.ToString(span.TotalHours >= 1 ? @"h\:mm\:ss" : @"m\:ss", CultureInfo.InvariantCulture);

    /// <summary>How a value was heard.</summary>
    public static string Heard(Evidence evidence, bool wasReadBack)
    {
        string confirmed = wasReadBack ? ", read back and confirmed" : "";
        return evidence.Channel == Channel.Keys ? $"typed \"{evidence.Words}\"{confirmed}"
            : $"heard \"{evidence.Words}\", {(evidence.Certainty == Certainty.Green ? "sure" : $"doubtful{Why(evidence)}")}{confirmed}";
    }

    static string Why(Evidence evidence) => evidence.Why.Length == 0 ? "" : $" ({evidence.Why})";
}
