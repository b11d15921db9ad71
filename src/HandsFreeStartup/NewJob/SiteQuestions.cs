using System.Collections.Immutable;
using System.Text.RegularExpressions;
using HandsFreeStartup.Interview;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.NewJob;

/// <summary>Asks for a place: seven questions, those that hold for a whole region answered as the last time unless something else is typed.</summary>
/// <param name="conversation">Asks.</param>
/// <param name="last">The place of the job before, or null.</param>
sealed partial class SiteQuestions(Conversation conversation, Site? last)
{
    sealed record Question(string Key, string Says, string Why, string? Last, bool MayBeLeftOut)
    {
        public required Message Spoken { get; init; }

        public AnswerForm Form { get; init; } = new AnswerForm.Words();
    }

    /// <summary>The text of the site file.</summary>
    /// <param name="instruments">The list of the instruments, or empty.</param>
    public string Ask(string instruments)
    {
        ImmutableArray<Question> questions =
        [
            new("customer", "Who is the customer?", "The customer's copy is made out to that name.", null, false) { Spoken = "Who is the customer?" },
            new("address", "What is the street address?", "It stands on every copy.", null, false) { Spoken = "What is the street address?" },
            new("altitude_feet", "What is the elevation, in feet above sea level?", "Thin air derates a furnace, and boiling and dew points move.", Text(last?.AltitudeFeet), false) { Spoken = "What is the elevation, in feet?", Form = Number("altitude_feet", new Unit("ft", ["feet"], 0.3048), -1_000, 20_000, 0) },
            new("rooms", "Which rooms are walked for CO, in walking order, with commas between?", "Each room with people asleep in it is measured.", last is null ? null : string.Join(", ", last.Rooms), false) { Spoken = "Which rooms are walked, in walking order?", Form = new AnswerForm.Words(IsList: true) },
            new("meter_dial", "How many cubic feet is one turn of the meter's test dial?", "It is needed for the input by the meter; it stands on the dial.", Text(last?.MeterDialCubicFeet), true) { Spoken = "One turn of the test dial, in cubic feet?", Form = Number("meter_dial", new Unit("ft³", ["cubic feet", "cubic foot"], 0.0283168466), 0, 100, 2) },
            new("heating_value", "What is the gas's gross heating value, Btu per cubic foot?", "It is needed for the input; the gas supplier states it on the bill.", Text(last?.HeatingValue), true) { Spoken = "The gas's gross heating value, B T U per cubic foot?", Form = Number("heating_value", new Unit("Btu/ft³", ["B T U", "B T U per cubic foot"], 37258.9), 0, 10_000, 1) },
            new("burning_hours", "How many hours a year does the burner run, by the owner's estimate?", "It is needed for the gas used in a year, and for nothing else.", null, true) { Spoken = "How many hours a year does the burner run?", Form = Number("burning_hours", new Unit("h", ["hours"], 3600), 0, 8_784, 0) },
        ];
        Dictionary<string, string> answers = [];
        bool leavesRest = false;
        for (int i = 0; i < questions.Length; i++)
        {
            if (leavesRest && questions[i].MayBeLeftOut)
            {
                answers[questions[i].Key] = "";
                continue;
            }

            if (Answer(questions[i], FormattableString.Invariant($"place, question {i + 1} of {questions.Length}: "), answers) is not { } answer)
            {
                i = Math.Max(-1, i - 2);
                continue;
            }

            leavesRest |= Asked.IsRest(answer);
            answers[questions[i].Key] = Asked.IsRest(answer) ? "" : answer;
        }

        return TextOf(answers, instruments);
    }

    static AnswerForm Number(string key, Unit unit, decimal lowest, decimal highest, int decimals) => AnswerForm.Numbers.Of(new Field(key, key, [], unit)
    {
        Lowest = lowest,
        Highest = highest,
        UsualLowest = lowest,
        UsualHighest = highest,
        FewestDecimals = 0,
        MostDecimals = decimals,
    });

    /// <returns>The answer; null to ask the question before again.</returns>
    string? Answer(Question asked, string place, Dictionary<string, string> answers)
    {
        string hint = asked.Last is { Length: > 0 } same ? $" [{same}]" : asked.MayBeLeftOut ? " [leave empty to skip]" : "";
        while (true)
        {
            string line = (conversation.Line(new Asked($"{place}{asked.Says}{hint}", asked.Form) { Says = asked.Spoken, Skips = asked.MayBeLeftOut ? "-" : null, Last = asked.Last, IsInList = true }) ?? throw Conversation.Over()).Trim();
            switch (line)
            {
                case "back":
                    return null;
                case "why":
                    conversation.Reply($"  {asked.Why}");
                    continue;
                case "-" when asked.MayBeLeftOut:
                    return "";
                case var rest when asked.MayBeLeftOut && Asked.IsRest(rest):
                    return rest;
            }

            string answer = line.Length == 0 ? asked.Last ?? "" : Asked.IsRest(line) ? "" : line;
            if (answer.Length == 0 && !asked.MayBeLeftOut)
            {
                conversation.Reply("This one is needed. \"why\" tells the reason, \"back\" returns to the question before.");
            }
            else if (Problem(new Dictionary<string, string>(answers) { [asked.Key] = answer }) is { } problem)
            {
                conversation.Reply($"  {problem}");
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
