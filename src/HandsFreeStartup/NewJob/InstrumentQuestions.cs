using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Doors;
using HandsFreeStartup.NewAppliance;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.NewJob;

/// <summary>Asks once for the own set of instruments: what each reads, how well, and when it was calibrated.</summary>
/// <param name="conversation">Asks.</param>
/// <param name="today">The date, for what was calibrated long ago.</param>
sealed partial class InstrumentQuestions(Conversation conversation, DateOnly today)
{
    /// <summary>After so many days a calibration is told to be old (common practice, no source).</summary>
    const int LongAgo = 365;

    static readonly ImmutableArray<(string Name, ImmutableArray<string> Fields)> Set =
    [
        ("Combustion analyzer", [FieldId.Oxygen, FieldId.CarbonDioxide, FieldId.FlueCo, FieldId.FlueTemperature, FieldId.AirTemperature, FieldId.Draft]),
        ("Pressure gauge", [FieldId.InletPressure, FieldId.ManifoldPressure, FieldId.SupplyStatic, FieldId.ReturnStatic]),
        ("Thermometer for the ducts", [FieldId.SupplyTemperature, FieldId.ReturnTemperature]),
        ("CO meter for rooms", [FieldId.RoomCo]),
        ("Multimeter", [FieldId.FlameCurrent, FieldId.LineVoltage, FieldId.ControlVoltage]),
    ];

    /// <summary>The list as it stands in a site file; empty where nothing was stated.</summary>
    public string Ask()
    {
        conversation.Tell("Your instruments, asked once. Expanded uncertainty (k = 2) as their data sheets say: 0.3, or 5%, or both: 20 5%. Nothing leaves one out; its readings then have no stated uncertainty, and carbon monoxide is never proven to be low: state at least the CO meter and the analyzer.");
        StringBuilder text = new();
        for (int i = 0; i < Set.Length; i++)
        {
            string date = Date(FormattableString.Invariant($"instrument {i + 1} of {Set.Length}: {Set[i].Name}: date of its last calibration, such as {today:yyyy-MM-dd}, or nothing for none of that kind"));
            foreach (string field in date.Length == 0 ? [] : Set[i].Fields)
            {
                text.Append(Entry(Fields.Find(field)!, date));
            }
        }

        return text.Length == 0 ? "" : $"instruments:\n{text}";
    }

    /// <summary>What of the set was calibrated long ago, one sentence each.</summary>
    public IEnumerable<string> Overdue(string set) => Calibrated().Matches(set)
        .Select(match => DateOnly.ParseExact(match.Groups[1].Value, "yyyy-MM-dd", CultureInfo.InvariantCulture)).Distinct()
        .Where(date => today.DayNumber - date.DayNumber > LongAgo)
        .Select(date => FormattableString.Invariant($"An instrument was calibrated on {date:yyyy-MM-dd}, {today.DayNumber - date.DayNumber} days ago. Have it calibrated; 'new instruments' takes the new date."));

    string Entry(Field field, string date)
    {
        while (true)
        {
            string line = (conversation.Line($"  {field.Label}, {field.Unit.Symbol}") ?? throw Conversation.Over()).Trim();
            if (line.Length == 0)
            {
                return "";
            }

            if (Bounds(line) is { } bounds)
            {
                return FormattableString.Invariant($"  - {{ field: {field.Id}{bounds}, source: \"data sheet; calibrated {date}\" }}\n");
            }

            conversation.Tell($"Expected a number in {field.Unit.Symbol}, a share such as 5%, or both, such as 20 5%.");
        }
    }

    static string? Bounds(string line)
    {
        string[] words = line.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        string text = "";
        foreach (string word in words)
        {
            string key = word.EndsWith('%') ? "expanded_percent" : "expanded";
            if (TypedNumber.Read(word.TrimEnd('%'), out _) is not { } number || number <= 0 || (key == "expanded_percent" && number > 100) || text.Contains($"{key}:", StringComparison.Ordinal))
            {
                return null;
            }

            text += FormattableString.Invariant($", {key}: {number}");
        }

        return text.Length == 0 ? null : text;
    }

    string Date(string prompt)
    {
        while (true)
        {
            string line = (conversation.Line(prompt) ?? throw Conversation.Over()).Trim();
            if (line.Length == 0)
            {
                return "";
            }

            if (DateOnly.TryParseExact(line, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly date) && date <= today)
            {
                return line;
            }

            conversation.Tell($"Expected a date that is over, as year, month and day: {today:yyyy-MM-dd}.");
        }
    }

    [GeneratedRegex("""calibrated (\d{4}-\d{2}-\d{2})""", RegexOptions.CultureInvariant)]
    private static partial Regex Calibrated();
}
