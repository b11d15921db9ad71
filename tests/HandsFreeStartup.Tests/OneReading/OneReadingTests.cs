using System.Text.Json;
using System.Text.RegularExpressions;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Reports.Review;

namespace HandsFreeStartup.Tests.OneReading;

/// <summary>Screen, summary, copies, review and tables of one job tell the same: number, uncertainty, verdict, words.</summary>
public sealed partial class OneReadingTests
{
    static readonly TimeSpan West = TimeSpan.FromHours(-5);

    public static TheoryData<string, bool> Jobs
    {
        get
        {
            TheoryData<string, bool> jobs = [];
            foreach (string name in JobTable.All.Keys)
            {
                jobs.Add(name, false);
                jobs.Add(name, true);
            }

            return jobs;
        }
    }

    [Fact]
    public void The_table_holds_forty_jobs_or_more() => Assert.True(Jobs.Count() >= 40);

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Whatever_tells_of_a_job_tells_the_same(string name, bool isMetric)
    {
        TableJob job = new(isMetric ? JobTable.Metric : Settings.Default);
        JobTable.All[name](job);
        IReadOnlyList<StartupEvent> events = job.Events(West);
        JobRecord record = JobRecord.Of(job.Plan, events);
        Told told = Told.Of(job.Plan, events);
        List<string> contradictions = [];

        foreach (Value value in Values(record))
        {
            contradictions.AddRange(value.Missing(told));
        }

        contradictions.AddRange(Verdict(told));
        contradictions.AddRange(Exceptions(record, told));
        contradictions.AddRange(Times(record, told));
        contradictions.AddRange(Strangers(record, told));
        contradictions.AddRange(Stops(job.Plan, events, told));
        contradictions.AddRange(OnTheScreen(job.Plan, events));
        Assert.True(contradictions.Count == 0, string.Join('\n', contradictions));
    }

    static IEnumerable<Value> Values(JobRecord record) =>
    [
        .. record.Readings.Select(fate => new Value(
            $"{Fields.Find(fate.Reading.Key.FieldId)!.Label}{In(fate.Reading.Key.Scope)}", fate.Reading.Key.FieldId, fate.Reading.Key.Scope, Oracle.Of(fate.Reading), fate.Reading.UnitSymbol, fate.Reading.Verdict,
            fate.Reading.Limit, fate.Counts, fate.End.ToString().ToLowerInvariant(), "")),
        .. record.Results.Select(fate => new Value(
            $"{fate.Result.Label}{In(fate.Scope)}", fate.Result.Id, fate.Scope, Oracle.Of(fate.Result), fate.Result.UnitSymbol, fate.Result.Verdict, fate.Result.Limit, true, "result", fate.Result.Remark.Shown)),
    ];

    static string In(string scope) => scope.Length == 0 ? "" : $" ({scope})";

    /// <summary>One value with what every reader must be told of it.</summary>
    sealed record Value(
        string Label, string Id, string Scope, (string Number, string Doubt, string Text) Is, string Unit, Verdict? Verdict, DeclaredLimit? Limit, bool Counts, string State, string Remark)
    {
        string Judged => Oracle.Of(Verdict, Limit);

        public IEnumerable<string> Missing(Told told)
        {
            string text = Is.Number.Length == 0 && Remark.Length > 0 ? $"cannot be told: {Remark}" : Remark.Length > 0 ? $"{Is.Text}, {Remark}" : Is.Text;
            string verdict = Counts && Judged.Length > 0 ? $" - {Judged}" : "";
            if (!told.Summary.Contains($"{Label}: {text}{verdict}", StringComparison.Ordinal))
            {
                yield return $"summary: {Label}: {text}{verdict}";
            }

            if (!Told.HoldsInACell(told.Copies["office copy"], Counts ? text : $"({Is.Text})"))
            {
                yield return $"office copy: {Label} {text}";
            }

            if (Counts && Is.Number.Length > 0)
            {
                string doubt = Is.Doubt == "no uncertainty stated" ? "none stated" : Is.Doubt;
                foreach ((string copy, string printed) in told.Copies.Where(copy => !$" {copy.Value} ".Contains($" {Is.Number} {doubt} {Unit}".Replace("  ", " ", StringComparison.Ordinal).TrimEnd() + " ", StringComparison.Ordinal)))
                {
                    yield return $"{copy}: {Label} {Is.Number} {doubt} {Unit}";
                }

                string narrow = Told.Narrowed($"left {Is.Text}{(Judged.Length == 0 ? "" : $": {Judged}")}");
                if (!told.Narrow.Contains(narrow, StringComparison.Ordinal))
                {
                    yield return $"narrow: {Label} {narrow}";
                }
            }

            string finding = $"{Label} {text}: {Judged} (";
            if (Counts && Verdict is not null and not Calculations.Judgement.Verdict.Pass && Limit is not null && Id != "fuel_factor" && !told.JsonFindings.Any(one => one.StartsWith(finding, StringComparison.Ordinal)))
            {
                yield return $"json: {Label} {text}: {Judged}";
            }

            if (Counts && Verdict is not null and not Calculations.Judgement.Verdict.Pass && Limit is not null && Id != "fuel_factor"
                && !told.Findings.Findings.Any(finding => finding.Text.StartsWith($"{Label} {text}: {Judged} (", StringComparison.Ordinal)))
            {
                yield return $"review: {Label} {text}: {Judged}";
            }

            TableRow? row = told.Table.FirstOrDefault(row => row["quantity"] == Id && row["scope"] == Scope && row["state"] == State && row["value"] == Is.Number && row["unit"] == Unit);
            string plus = Is.Doubt.StartsWith("± ", StringComparison.Ordinal) ? Is.Doubt[2..] : "";
            if (row is null || (plus.Length > 0 && row["expanded_uncertainty"] != plus) || (Is.Doubt == "no uncertainty stated" && row["expanded_uncertainty"].Length > 0))
            {
                yield return $"table: {Label} {Is.Text}, was {row?["value"]} ± {row?["expanded_uncertainty"]}";
            }
            else if (!string.Equals(row["verdict"], Judged.Split(',', ':')[0], StringComparison.OrdinalIgnoreCase) && (Limit is not null || row["verdict"].Length > 0))
            {
                yield return $"table: {Label} {Judged}, was {row["verdict"]}";
            }
            else if (Limit is not null && (row["lower"], row["upper"]) != (Oracle.Bound(Limit.Lower), Oracle.Bound(Limit.Upper)))
            {
                yield return $"table: {Label} limit {Limit.Lower} to {Limit.Upper}, was {row["lower"]} to {row["upper"]}";
            }
        }
    }

    /// <summary>One sentence over the job, everywhere.</summary>
    static IEnumerable<string> Verdict(Told told)
    {
        Match sentence = Sentence().Match(told.Summary);
        if (!sentence.Success)
        {
            yield return "summary: no verdict";
            yield break;
        }

        string verdict = sentence.Groups["sentence"].Value.Trim();
        foreach ((string copy, string text) in told.Copies.Append(new("narrow", told.Narrow)))
        {
            if (!text.Contains(copy == "narrow" ? Told.Narrowed(verdict) : verdict, StringComparison.Ordinal))
            {
                yield return $"{copy}: {verdict}";
            }
        }
    }

    static IEnumerable<string> Exceptions(JobRecord record, Told told)
    {
        foreach (JobException exception in record.Exceptions)
        {
            string text = string.Join(' ', exception.Text.Split(' ', StringSplitOptions.RemoveEmptyEntries));
            foreach ((string reader, string printed) in told.Copies.Append(new("summary", told.Summary)).Where(copy => !copy.Value.Contains(text, StringComparison.Ordinal)))
            {
                yield return $"{reader}: {text}";
            }

            if (!told.Narrow.Contains(Told.Narrowed(text), StringComparison.Ordinal))
            {
                yield return $"narrow: {text}";
            }

            string subject = $"{exception.Subject.Shown.TrimEnd('.')}.";
            if (!told.Findings.Findings.Any(finding => finding.Text == subject && finding.Quote == exception.Reason))
            {
                yield return $"review: {subject}";
            }
        }

        foreach (ReviewFinding finding in told.Findings.Findings)
        {
            using JsonDocument json = JsonDocument.Parse(told.Json);
            if (!json.RootElement.GetProperty("jobs")[0].GetProperty("findings").EnumerateArray().Any(one => one.GetProperty("text").GetString() == finding.Text))
            {
                yield return $"json: {finding.Text}";
            }

            if (!told.Review.Contains(string.Join(' ', finding.Text.Split(' ', StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal))
            {
                yield return $"review text: {finding.Text}";
            }
        }
    }

    /// <summary>All by the clock on the wall.</summary>
    static IEnumerable<string> Times(JobRecord record, Told told)
    {
        string began = record.Began!.Value.ToOffset(West).ToString("yyyy-MM-dd HH:mm:ss", System.Globalization.CultureInfo.InvariantCulture);
        foreach ((string reader, string text) in told.Copies.Append(new("summary", told.Summary)).Append(new("narrow", told.Narrow)))
        {
            if (!text.Contains($"{began} -05:00", StringComparison.Ordinal))
            {
                yield return $"{reader}: begun {began} -05:00";
            }
        }

        if (told.Copies.Values.Any(copy => copy.Contains("+00:00", StringComparison.Ordinal)) || told.Summary.Contains("+00:00", StringComparison.Ordinal))
        {
            yield return "copies: a time in UTC";
        }

        if (told.Copies.Values.Append(told.Summary).Any(text => text.Contains("+00:00", StringComparison.Ordinal)))
        {
            yield return "copies: a time in UTC";
        }

        if (!told.Json.Contains("\"began\": \"2031-03-04T03:00:00-05:00\"", StringComparison.Ordinal))
        {
            yield return "json: began";
        }

        if (told.Table.Any(row => !row["at"].EndsWith("-05:00", StringComparison.Ordinal)))
        {
            yield return "table: offset";
        }
    }

    /// <summary>No sentence ends twice, also where a unit that ends with a stop is its last word; and where there are exceptions nobody says that nothing is to be looked at.</summary>
    static IEnumerable<string> Stops(StartupPlan plan, IReadOnlyList<StartupEvent> events, Told told)
    {
        (string Reader, string Text)[] texts =
        [
            .. told.Copies.Select(copy => (copy.Key, copy.Value)), ("summary", told.Summary), ("narrow", told.Narrow), ("review", told.Review), ("json", told.Json),
            .. Told.Screens(plan, events).Select(shown => ("announcement", shown.Said)),
        ];
        foreach ((string reader, string text) in texts.Where(one => TwoStops().IsMatch(one.Text)))
        {
            yield return $"{reader}: two stops in: {TwoStops().Match(text).Value}";
        }

        foreach ((string reader, string text) in texts.Where(one => one.Text.Contains("read these first", StringComparison.Ordinal) && NothingToLookAt().IsMatch(one.Text)))
        {
            yield return $"{reader}: exceptions, and nothing to be looked at: {text.Length}";
        }
    }

    /// <summary>No text holds a value with a doubt that is none of the job's.</summary>
    static IEnumerable<string> Strangers(JobRecord record, Told told)
    {
        HashSet<string> known = [.. record.Readings.Select(fate => Oracle.Of(fate.Reading).Text), .. record.AllResults.Select(fate => Oracle.Of(fate.Result).Text)];
        return from reader in new[] { ("summary", told.Summary), ("office copy", told.Copies["office copy"]), ("review", told.Review) }
               from Match match in Doubted().Matches(reader.Item2)
               where !known.Any(text => text.StartsWith(match.Value, StringComparison.Ordinal))
               select $"{reader.Item1}: {match.Value} is told of nothing in the record";
    }

    /// <summary>The screen, at the moment of the entry.</summary>
    static IEnumerable<string> OnTheScreen(StartupPlan plan, IReadOnlyList<StartupEvent> events)
    {
        foreach ((StartupEvent happened, StartupView view, string said) in Told.Screens(plan, events))
        {
            if (happened is ReadingEntered { Reading: { } reading } && view.Alarm is null && reading.Key.Scope != "after the alarm")
            {
                (string Number, string Doubt, string Text) expected = Oracle.Of(reading);
                ReadingLine? line = view.Readings.FirstOrDefault(line => line.Label == Fields.Find(reading.Key.FieldId)!.Label);
                if (line?.Text != expected.Text || (!reading.IsEarly && line.Judged != Oracle.Of(reading.Verdict, reading.Limit)) || !said.Contains($"{expected.Number} {reading.UnitSymbol}".TrimEnd(), StringComparison.Ordinal))
                {
                    yield return $"screen: {expected.Text} {Oracle.Of(reading.Verdict, reading.Limit)}, was {line?.Text} {line?.Judged}; said {said}";
                }
            }

            foreach (CalculatedResult result in happened is ResultsComputed computed ? computed.Results : [])
            {
                string text = Oracle.Of(result).Text;
                ResultLine? line = view.Results.FirstOrDefault(line => line.Label == result.Label);
                if (line?.Text.StartsWith(text, StringComparison.Ordinal) != true || line.Judged != Oracle.Of(result.Verdict, result.Limit) || !said.Contains(text, StringComparison.Ordinal))
                {
                    yield return $"screen: {text} {Oracle.Of(result.Verdict, result.Limit)}, was {line?.Text} {line?.Judged}; said {said}";
                }
            }
        }
    }

    [GeneratedRegex(@".{0,40}(?<!\.)\.\.(?!\.)")]
    private static partial Regex TwoStops();

    [GeneratedRegex("(?i)to be looked at[ -]+Nothing\\.")]
    private static partial Regex NothingToLookAt();

    [GeneratedRegex(@"(SIGNED|NOT SIGNED|STOPPED|UNSAFE) (?<sentence>.+?) Job job-1")]
    private static partial Regex Sentence();

    [GeneratedRegex(@"(?<![\d.])-?\d+(\.\d+)? ± \d+(\.\d+)?( (%|ppm|°F|°C|in\. w\.c\.|Pa|V|s|kW|Btu/h)|(?= |,|;|\)))")]
    private static partial Regex Doubted();
}
