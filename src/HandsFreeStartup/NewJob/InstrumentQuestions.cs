using System.Collections.Immutable;
using System.Globalization;
using System.Text.RegularExpressions;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Interview;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.NewJob;

/// <summary>Asks once for the own set of instruments: what each reads, how well, and when it was calibrated.</summary>
/// <param name="conversation">Asks.</param>
/// <param name="today">The date, for what was calibrated long ago.</param>
sealed partial class InstrumentQuestions(Conversation conversation, DateOnly today)
{
    /// <summary>After so many days a calibration is told to be old (common practice, no source).</summary>
    const int LongAgo = 365;

    /// <summary>No data sheet states more.</summary>
    const int MostDecimals = 3;

    static readonly ImmutableArray<string> NeededForMonoxide = [FieldId.RoomCo, FieldId.FlueCo, FieldId.Oxygen];

    static readonly Unit OfReading = new("% of reading", ["percent of reading"], 0.01);

    /// <summary>What shows that carbon monoxide is low is asked first, so that the rest can be left out at once.</summary>
    static readonly ImmutableArray<(string Name, ImmutableArray<string> Fields)> Set =
    [
        ("CO meter for rooms", [FieldId.RoomCo]),
        ("Combustion analyzer", [FieldId.FlueCo, FieldId.Oxygen, FieldId.FlueTemperature, FieldId.AirTemperature, FieldId.Draft, FieldId.CarbonDioxide]),
        ("Pressure gauge", [FieldId.InletPressure, FieldId.ManifoldPressure, FieldId.SupplyStatic, FieldId.ReturnStatic]),
        ("Thermometer for the ducts", [FieldId.SupplyTemperature, FieldId.ReturnTemperature]),
        ("Multimeter", [FieldId.FlameCurrent, FieldId.LineVoltage, FieldId.ControlVoltage]),
    ];

    /// <summary>The list as it stands in a site file; empty where nothing was stated.</summary>
    public string Ask()
    {
        conversation.Tell("Your instruments, asked once. Expanded uncertainty (k = 2) as their data sheets say: 0.3, or 5%, or both, typed: 20 5%. An empty line skips an instrument; its readings then have no stated uncertainty, and carbon monoxide is never proven to be low: state at least the CO meter and the analyzer.");
        Dictionary<string, string> answers = [];
        for (int at = 0; Questions(answers).Skip(at).FirstOrDefault() is { Key: { } key } question;)
        {
            string? answer = question.Field is { } field ? Doubt(field) : Date(question.Instrument);
            if (answer == Asked.Rest)
            {
                break;
            }

            answers[key] = answer ?? "";
            at = answer is null ? Math.Max(0, at - 1) : at + 1;
        }

        if (NeededForMonoxide.Any(field => answers.GetValueOrDefault(field, "").Length == 0))
        {
            conversation.Reply("The uncertainty of CO or of oxygen is missing: carbon monoxide is never proven to be low.");
        }

        string text = string.Concat(Questions(answers).Where(question => question.Field is not null && answers.GetValueOrDefault(question.Key, "").Length > 0)
            .Select(question => $"  - {{ field: {question.Key}{answers[question.Key]}, source: \"data sheet; calibrated {answers[Set[question.Instrument].Name]}\" }}\n"));
        return text.Length == 0 ? "" : $"instruments:\n{text}";
    }

    /// <summary>What there is to ask: the date of each instrument, and what it reads where it has one.</summary>
    static IEnumerable<(string Key, int Instrument, Field? Field)> Questions(Dictionary<string, string> answers)
    {
        for (int i = 0; i < Set.Length; i++)
        {
            yield return (Set[i].Name, i, null);
            foreach (string field in answers.GetValueOrDefault(Set[i].Name, "").Length == 0 ? [] : Set[i].Fields)
            {
                yield return (field, i, Fields.Find(field));
            }
        }
    }

    /// <summary>What of the set was calibrated long ago, one sentence each.</summary>
    public IEnumerable<string> Overdue(string set) => Calibrated().Matches(set)
        .Select(match => DateOnly.ParseExact(match.Groups[1].Value, "yyyy-MM-dd", CultureInfo.InvariantCulture)).Distinct()
        .Where(date => today.DayNumber - date.DayNumber > LongAgo)
        .Select(date => FormattableString.Invariant($"An instrument was calibrated on {date:yyyy-MM-dd}, {today.DayNumber - date.DayNumber} days ago. Have it calibrated; 'new instruments' takes the new date."));

    /// <returns>The bounds as they stand in a site file, empty where they were left out; null to go back.</returns>
    string? Doubt(Field field) => Answer(
        new Asked($"  {field.Label}, {field.Unit.Symbol}", Uncertainty(field)) { Says = $"{field.Label}, plus or minus how much?", Skips = "", IsInList = true },
        "It decides what a reading proves. Its data sheet states it beside the range.",
        line => Bounds(line, field.Highest - field.Lowest),
        $"Expected a number in {field.Unit.Symbol}, a share such as 5%, or both, such as 20 5%.");

    /// <summary>A number in the unit, a share of the reading, or one after the other.</summary>
    static AnswerForm Uncertainty(Field field)
    {
        const string Amount = "amount", Share = "share";
        Field Number(string id, Unit unit, decimal highest, int decimals) => new(id, id, [], unit) { Lowest = 0, Highest = highest, UsualLowest = 0, UsualHighest = highest, FewestDecimals = 0, MostDecimals = decimals };
        return new AnswerForm.Numbers(
            [new(Number(Amount, field.Unit, Math.Min(field.Highest, 1_000), MostDecimals), []), new(Number(Share, OfReading, 100, 1), [])],
            said => string.Join(' ', new[] { said.GetValueOrDefault(Amount), said.GetValueOrDefault(Share) is { } share ? $"{share}%" : null }.OfType<string>()));
    }

    /// <param name="line">As typed.</param>
    /// <param name="span">No instrument is worse than the whole range of what it reads.</param>
    static string? Bounds(string line, decimal span)
    {
        string[] words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        string text = "";
        foreach (string word in words)
        {
            string key = word.EndsWith('%') ? "expanded_percent" : "expanded";
            if (TypedNumber.Read(word.TrimEnd('%'), out _) is not { } number || number <= 0 || number > (key == "expanded" ? span : 100) || number.Scale > MostDecimals || text.Contains($"{key}:", StringComparison.Ordinal))
            {
                return null;
            }

            text += FormattableString.Invariant($", {key}: {number}");
        }

        return text.Length == 0 ? null : text;
    }

    /// <returns>The date, empty where there is no such instrument; null to go back.</returns>
    string? Date(int instrument) => Answer(
        new Asked(FormattableString.Invariant($"instrument {instrument + 1} of {Set.Length}: {Set[instrument].Name}: date of its last calibration, such as {today:yyyy-MM-dd}, or nothing for none of that kind"), new AnswerForm.Day())
        {
            Says = $"{Set[instrument].Name}: when was it calibrated?",
            Skips = "",
            IsInList = true,
        },
        "It stands on every copy, and one that is long ago is told. The sticker or the certificate of the instrument states it.",
        line => DateOnly.TryParseExact(line, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date) && date <= today ? line : null,
        FormattableString.Invariant($"Expected a date that is over, as year, month and day: {today:yyyy-MM-dd}."));

    /// <returns>What was read of the answer, empty where there was none; <see cref="Asked.Rest"/> to leave out the rest; null to go back.</returns>
    string? Answer(Asked asked, string why, Func<string, string?> read, string expected)
    {
        while (true)
        {
            string line = (conversation.Line(asked) ?? throw Conversation.Over()).Trim();
            if (line == "back")
            {
                return null;
            }

            if (Asked.IsRest(line))
            {
                return Asked.Rest;
            }

            if ((line.Length == 0 ? "" : read(line)) is { } answer)
            {
                return answer;
            }

            conversation.Reply(line == "why" ? $"  {why}" : expected);
        }
    }

    [GeneratedRegex("""calibrated (\d{4}-\d{2}-\d{2})""", RegexOptions.CultureInvariant)]
    private static partial Regex Calibrated();
}
