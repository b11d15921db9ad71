using System.Text.Json;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Reports.Copies;
using HandsFreeStartup.Reports.Copies.Narrow;
using HandsFreeStartup.Reports.Review;
using HandsFreeStartup.Reports.Summary;
using HandsFreeStartup.Review;
using UglyToad.PdfPig;

namespace HandsFreeStartup.Tests.OneReading;

/// <summary>Everything that is told of a job, as its readers see it; line breaks are taken out.</summary>
sealed record Told(string Summary, IReadOnlyDictionary<string, string> Copies, string Narrow, string Review, string Json, IReadOnlyList<TableRow> Table, JobReview Findings)
{
    public static Told Of(StartupPlan plan, IReadOnlyList<StartupEvent> events)
    {
        CopySource source = new(plan, events, "9 events, ends 0123 4567 89AB CDEF", $"9 events, ends {new string('0', 64)}", []);
        JobReview review = JobReview.Of(plan, events, RecordState.Sound);
        StringWriter text = new(), json = new();
        ReviewJson.Write([new FolderEntry("job.db", review, null)], json);
        ReviewText.Write(new ReviewedRecord("job.db", review, null, null, plan), text);
        return new Told(
            Joined(StartupSummary.Of(plan, events, null)),
            new Dictionary<string, string>
            {
                ["appliance copy"] = TextOf(StartupCopies.Appliance(source, Paper.Letter)),
                ["customer copy"] = TextOf(StartupCopies.Customer(source, Paper.A4)),
                ["office copy"] = TextOf(StartupCopies.Office(source, Paper.Letter)),
            },
            Joined(NarrowCopy.Of(source, 48)), Joined(text.ToString()), json.ToString(), TableRow.Of(ReadingsCsv.Of(ReadingRow.Of(plan, events))), review);
    }

    /// <summary>The findings as a program reads them.</summary>
    public IEnumerable<string> JsonFindings
    {
        get
        {
            using JsonDocument document = JsonDocument.Parse(Json);
            return [.. document.RootElement.GetProperty("jobs")[0].GetProperty("findings").EnumerateArray().Select(one => one.GetProperty("text").GetString()!)];
        }
    }

    /// <summary>What the screen showed of each value at the moment when it was entered or worked out.</summary>
    public static IEnumerable<(StartupEvent Happened, StartupView View, string Said)> Screens(StartupPlan plan, IReadOnlyList<StartupEvent> events)
    {
        StartupProcedure procedure = new(plan);
        foreach (StartupEvent happened in events.Where(happened => happened is not RecordReviewed))
        {
            procedure.Apply(happened);
            yield return (happened, procedure.View(happened.At), string.Join(' ', procedure.Announce([happened], happened.At).Select(said => said.Text)));
        }
    }

    /// <summary>A text as a pocket printer has it.</summary>
    public static string Narrowed(string text) => text.Replace("°", "deg ", StringComparison.Ordinal).Replace("±", "+/-", StringComparison.Ordinal).Replace('µ', 'u').Replace('–', '-');

    /// <summary>Whether a cell of a table holds a text: where it has several lines, the lines of its neighbors stand between them.</summary>
    public static bool HoldsInACell(string table, string text)
    {
        string[] words = table.Split(' '), wanted = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return Enumerable.Range(0, words.Length).Where(at => words[at] == wanted[0]).Any(at =>
        {
            int found = 0;
            foreach (string word in words.Skip(at).Take(WordsOfARow))
            {
                found += found < wanted.Length && word == wanted[found] ? 1 : 0;
            }

            return found == wanted.Length;
        });
    }

    const int WordsOfARow = 60;

    static string TextOf(byte[] pdf)
    {
        using PdfDocument document = PdfDocument.Open(pdf);
        return string.Join(' ', document.GetPages().SelectMany(page => page.GetWords()).Select(word => word.Text));
    }

    static string Joined(string text) => string.Join(' ', text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
