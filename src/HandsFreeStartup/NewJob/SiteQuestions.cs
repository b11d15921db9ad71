using System.Collections.Immutable;
using System.Text.RegularExpressions;
using HandsFreeStartup.NewAppliance;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.NewJob;

/// <summary>Asks for a place: seven questions, those that hold for a whole region answered as the last time unless something else is typed.</summary>
/// <param name="conversation">Asks.</param>
/// <param name="last">The place of the job before, or null.</param>
sealed partial class SiteQuestions(Conversation conversation, Site? last)
{
    sealed record Asked(string Key, string Says, string Why, string? Last, bool MayBeLeftOut);

    /// <summary>The text of the site file.</summary>
    /// <param name="instruments">The list of the instruments, or empty.</param>
    public string Ask(string instruments)
    {
        ImmutableArray<Asked> questions =
        [
            new("customer", "Who is the customer?", "The customer's copy is made out to that name.", null, false),
            new("address", "Where does the furnace stand?", "It stands on every copy.", null, false),
            new("altitude_feet", "How high is the place, in feet above sea level?", "Thin air derates a furnace, and boiling and dew points move.", Text(last?.AltitudeFeet), false),
            new("rooms", "Which rooms are walked for CO, in walking order, with commas between?", "Each room with people asleep in it is measured.", last is null ? null : string.Join(", ", last.Rooms), false),
            new("meter_dial", "How many cubic feet is one turn of the meter's test dial?", "It is needed for the input by the meter; it stands on the dial.", Text(last?.MeterDialCubicFeet), true),
            new("heating_value", "What is the gas's gross heating value, Btu per cubic foot?", "It is needed for the input; the gas supplier states it on the bill.", Text(last?.HeatingValue), true),
            new("burning_hours", "How many hours a year does the burner run, as the owner reckons?", "It is needed for the gas used in a year, and for nothing else.", null, true),
        ];
        Dictionary<string, string> answers = [];
        for (int i = 0; i < questions.Length; i++)
        {
            if (Answer(questions[i], FormattableString.Invariant($"place, question {i + 1} of {questions.Length}: "), answers) is not { } answer)
            {
                i = Math.Max(-1, i - 2);
                continue;
            }

            answers[questions[i].Key] = answer;
        }

        return TextOf(answers, instruments);
    }

    /// <returns>The answer; null to ask the question before again.</returns>
    string? Answer(Asked asked, string place, Dictionary<string, string> answers)
    {
        string hint = asked.Last is { Length: > 0 } same ? $" [{same}]" : asked.MayBeLeftOut ? " [nothing leaves it out]" : "";
        while (true)
        {
            string line = (conversation.Line($"{place}{asked.Says}{hint}") ?? throw Conversation.Over()).Trim();
            switch (line)
            {
                case "back":
                    return null;
                case "why":
                    conversation.Tell($"  {asked.Why}");
                    continue;
                case "-" when asked.MayBeLeftOut:
                    return "";
            }

            string answer = line.Length == 0 ? asked.Last ?? "" : line;
            if (answer.Length == 0 && !asked.MayBeLeftOut)
            {
                conversation.Tell("This one is needed. \"why\" tells the reason, \"back\" returns to the question before.");
            }
            else if (Problem(new Dictionary<string, string>(answers) { [asked.Key] = answer }) is { } problem)
            {
                conversation.Tell($"  {problem}");
            }
            else
            {
                return answer;
            }
        }
    }

    /// <summary>What the reader of the files would say, with harmless answers to what was not asked yet.</summary>
    static string? Problem(Dictionary<string, string> answers)
    {
        Dictionary<string, string> whole = new() { ["customer"] = "x", ["address"] = "x", ["altitude_feet"] = "0", ["rooms"] = "x" };
        foreach ((string key, string value) in answers)
        {
            whole[key] = value;
        }

        try
        {
            UserFile.ReadSite(UserFile.Copy("place", TextOf(whole, "")));
            return null;
        }
        catch (ChecklistFileException mistakes)
        {
            return Place().Replace(mistakes.Errors[0].Message, "");
        }
    }

    static string TextOf(Dictionary<string, string> answers, string instruments)
    {
        string rooms = string.Join(", ", answers["rooms"].Split(',', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries).Select(ApplianceSheetWriter.Quoted));
        string Optional(string key) => answers.GetValueOrDefault(key, "") is { Length: > 0 } value ? $"{key}: {ApplianceSheetWriter.Quoted(value)}\n" : "";
        return $"""
            # Written by questions; it may be edited.
            id: place
            title: {ApplianceSheetWriter.Quoted($"{answers["customer"]}, {answers["address"]}")}
            customer: {ApplianceSheetWriter.Quoted(answers["customer"])}
            address: {ApplianceSheetWriter.Quoted(answers["address"])}
            altitude_feet: {ApplianceSheetWriter.Quoted(answers["altitude_feet"])}
            {Optional("meter_dial")}{Optional("heating_value")}{Optional("burning_hours")}rooms: [{rooms}]
            {instruments}
            """;
    }

    static string? Text(decimal? value) => value is { } number ? FormattableString.Invariant($"{number}") : null;

    [GeneratedRegex(@" \(line \d+\)")]
    private static partial Regex Place();
}
