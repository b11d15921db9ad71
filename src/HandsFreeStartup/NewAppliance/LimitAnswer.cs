using System.Globalization;
using System.Text.RegularExpressions;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.NewAppliance;

/// <summary>Bounds as they were typed, brought to the unit of the files.</summary>
/// <param name="Lower">Lower bound, or null.</param>
/// <param name="Upper">Upper bound, or null.</param>
/// <param name="Remark">How the source states them where it does so in another way; else empty.</param>
sealed partial record LimitAnswer(decimal? Lower, decimal? Upper, string Remark)
{
    /// <summary>Reads "3.35 3.65", "3.35 to 3.65", "3.35-3.65", "max 170", "min 0.5", "8.3 9.1 mbar", "co2 7.4 9.1".</summary>
    /// <param name="line">As typed.</param>
    /// <param name="question">What was asked.</param>
    /// <param name="unit">Unit of the files.</param>
    /// <param name="fuelId">Fuel, for carbon dioxide.</param>
    /// <param name="problem">What is wrong and what to type instead; empty where it is right.</param>
    public static LimitAnswer? Read(string line, LimitQuestion question, string unit, string fuelId, out string problem)
    {
        problem = "";
        Match match = Form().Match(string.Join(' ', line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)));
        if (!match.Success)
        {
            problem = WhyNoNumber(line) is { } reason ? $"{reason}." : $"Expected {Example(question)}; leave it empty to skip.";
            return null;
        }

        decimal first = Number(match, "first");
        decimal? second = match.Groups["second"].Success ? Number(match, "second") : null;
        if (match.Groups["dash"].Success && first < 0)
        {
            problem = "A hyphen after a number with a minus can mean two things: type 'to' between the numbers.";
            return null;
        }

        string bound = match.Groups["bound"].Value.ToLowerInvariant();
        string written = match.Groups["unit"].Value.Trim();
        if (second is null && bound.Length == 0 && question.HasLower)
        {
            problem = $"Expected the lowest and the highest, {Example(question)}. For one bound alone type min or max before it.";
            return null;
        }

        if (second is not null && (bound.Length > 0 || !question.HasLower))
        {
            problem = $"Expected one number, {Example(question)}.";
            return null;
        }

        (decimal? Lower, decimal? Upper) bounds = second is not null ? (first, second) : bound == "min" ? (first, null) : (null, first);
        return match.Groups["co2"].Success
            ? InOxygen(bounds, question, fuelId, out problem)
            : InUnit(bounds, written, unit, question, out problem);
    }

    static LimitAnswer? InUnit((decimal? Lower, decimal? Upper) bounds, string written, string unit, LimitQuestion question, out string problem)
    {
        problem = "";
        if (written.Length == 0 || written == unit || OtherUnits.IsSpelling(written, unit))
        {
            return new LimitAnswer(bounds.Lower, bounds.Upper, "");
        }

        bool isDifference = question.BaseName == ResultId.TemperatureRise;
        if (OtherUnits.Convert(bounds.Lower ?? bounds.Upper!.Value, written, unit, isDifference) is null)
        {
            problem = TextLines.EndedOnce($"The unit {written} is not known here. Type the number as {unit}.");
            return null;
        }

        string stated = string.Join(" to ", new[] { bounds.Lower, bounds.Upper }.OfType<decimal>().Select(Text));
        return new LimitAnswer(
            bounds.Lower is { } lower ? OtherUnits.Convert(lower, written, unit, isDifference) : null,
            bounds.Upper is { } upper ? OtherUnits.Convert(upper, written, unit, isDifference) : null,
            $"stated there as {stated} {written}");
    }

    /// <summary>O2 = x(O2 of air) (1 − CO2/CO2max): dilution of the stoichiometric dry flue with air; the two bounds change places.</summary>
    static LimitAnswer? InOxygen((decimal? Lower, decimal? Upper) bounds, LimitQuestion question, string fuelId, out string problem)
    {
        problem = "";
        double most = 100 * Stoichiometry.Of(Fuel.Find(fuelId)!, DryAir.Conventional).CarbonDioxideMaximum;
        if (question.BaseName != FieldId.Oxygen || bounds is not ({ } low, { } high) || low < 0 || low > high || high >= (decimal)most)
        {
            problem = question.BaseName != FieldId.Oxygen
                ? "Carbon dioxide is no answer here."
                : FormattableString.Invariant($"Expected the lowest and the highest CO2 in percent, below the {most:0.0} that this fuel can reach at most, such as co2 7.4 9.1.");
            return null;
        }

        decimal Oxygen(decimal carbonDioxide) => Math.Round((decimal)(100 * DryAir.Conventional.Oxygen * (1 - (double)carbonDioxide / most)), 1);
        return new LimitAnswer(Oxygen(high), Oxygen(low), $"stated there as CO2 {Text(low)} to {Text(high)} %");
    }

    static string Example(LimitQuestion question) => question.HasLower ? "two numbers such as 3.2 3.8" : "one number such as 150";

    static string Text(decimal value) => value.ToString(CultureInfo.InvariantCulture);

    static decimal Number(Match match, string group) => TypedNumber.Read(match.Groups[group].Value, out _)!.Value;

    /// <summary>What is wrong with the first of the words that has digits and is no number; null where each is one.</summary>
    static string? WhyNoNumber(string line)
    {
        foreach (string word in line.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Where(word => word.Any(char.IsNumber) && !word.StartsWith("co2", StringComparison.OrdinalIgnoreCase)))
        {
            if (TypedNumber.Read(word, out string reason, "3.5") is null)
            {
                return reason;
            }
        }

        return null;
    }

    [GeneratedRegex("""^(?<co2>co2 )?((?<bound>min|max) )?(?<first>[-+\u2010-\u2015\u2212]?(0|[1-9][0-9]{0,8})(\.[0-9]{1,6})?)(( ?(to|\.\.) ?|(?<dash>(?<=[0-9])[-\u2010-\u2015](?=[0-9]))| )(?<second>[-+\u2010-\u2015\u2212]?(0|[1-9][0-9]{0,8})(\.[0-9]{1,6})?))?(?<unit> ?[\p{L}°%][^0-9]*[0-9]?)?$""", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant)]
    private static partial Regex Form();
}
