using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Reports.Facts;
using HandsFreeStartup.Reports.Summary;

namespace HandsFreeStartup.Reports.Copies.Narrow;

/// <summary>The appliance copy as text for a pocket printer: verdict, what must not be overlooked, every reading, what was adjusted, opened and noted, the checkpoint.</summary>
public static class NarrowCopy
{
    /// <summary>The text; no line is wider than <paramref name="columns"/>, and every character is plain ASCII, because pocket printers know no other for sure.</summary>
    /// <param name="source">The job.</param>
    /// <param name="columns">Width of the paper in characters, at least 24.</param>
    public static string Of(CopySource source, int columns)
    {
        CopyFacts copy = new(source);
        PlainPage page = new(columns, Ascii.Widened);
        Banners(page, copy);
        if (!copy.Exceptions.IsEmpty)
        {
            List(page, Sentences.ExceptionsTitle(copy.Exceptions.Length), [.. copy.Exceptions.Select(exception => Sentences.Of(exception, copy.Times))], "");
            page.Blank();
        }

        page.Line(copy.Verdict.Word.ToUpperInvariant());
        page.Line(copy.Verdict.Sentence);
        Names(page, copy);
        List(page, "To be looked at", copy.Questions, Sentences.NothingElse(copy.Exceptions.Length));
        if (Sentences.CarriedOver(copy.Facts) is { Count: > 0 } carried)
        {
            List(page, "From the returned job", carried, "");
        }

        if (Sentences.Beside(copy.Facts) is { Count: > 0 } beside)
        {
            List(page, "At the same address", beside, "");
        }

        foreach (ReadingGroup group in copy.Groups)
        {
            page.Heading(group.Title);
            foreach (FoundAndLeft line in group.Lines)
            {
                Reading(page, copy, line);
            }
        }

        page.Line($"Limits set by: {copy.SourceLegend}.");
        page.Line("+/-: expanded uncertainty (k = 2)");
        List(page, "Safety and stops", [.. Interruptions.Of(copy.Facts)], "None.");
        List(page, "Adjusted", Sentences.Adjustments(copy.Facts), "Nothing.");
        List(page, "Opened and closed", [.. copy.Facts.Things.Select(thing => Sentences.Of(thing, copy.Times))], "Nothing.");
        List(page, "Notes", [.. copy.Facts.Notes.Select(note => $"{copy.Times.Time(note.At)} {copy.StepTitle(note.StepId)}: {note.Text}")], "None.");
        page.Heading("Checkpoint");
        page.Line(source.Checkpoint ?? "none that could be believed");
        Signature(page, copy);
        Banners(page, copy);
        return Ascii.Of(page.ToString());
    }

    static void Banners(PlainPage page, CopyFacts copy)
    {
        foreach ((string large, string small) in copy.Banners)
        {
            page.Rule('*');
            page.Line($"*** {large} ***");
            page.Line(small);
            page.Rule('*');
        }
    }

    static void Names(PlainPage page, CopyFacts copy)
    {
        page.Blank();
        page.Line(copy.Plan.Appliance.Title);
        page.Pair("Job", copy.JobId, 12);
        page.Pair("Where", $"{copy.Plan.Site.Title}; {copy.Plan.Site.Address}", 12);
        page.Pair("Customer", copy.Plan.Site.Customer, 12);
        page.Pair("Technician", copy.Facts.Job?.Technician ?? "-", 12);
        page.Pair("Begun", copy.Times.Stamp(copy.Events[0].At), 12);
        page.Pair("Last event", copy.Times.Stamp(copy.Events[^1].At), 12);
        page.Line($"All times: {copy.Times.Zone}");
    }

    static void Reading(PlainPage page, CopyFacts copy, FoundAndLeft line)
    {
        page.Line($"{(line.IsResult ? "= " : "")}{line.Label}", 0, 2);
        string verdict = line.Verdict is { } judged && line.Limit is { } by ? $": {VerdictWords.Of(judged, by)}" : "";
        page.Line(line.Left is { } left ? $"left {left}{verdict}" : $"left - ({line.Remark})", 2, 4);
        if (line.Found is { } found && (line.Left is null || found.Number != line.Left.Number || !found.Stands))
        {
            page.Line($"found {found}", 2, 4);
        }

        if (line.Worst is { } worst)
        {
            page.Line($"worst {worst}", 2, 4);
        }

        if (line.Left is not null && line.Remark.Length > 0)
        {
            page.Line(line.Remark, 2, 4);
        }

        if (line.Limit is { } limit)
        {
            page.Line($"limit {limit.Text.TrimEnd()} [{copy.Mark(limit)}]", 2, 4);
        }
    }

    static void Signature(PlainPage page, CopyFacts copy)
    {
        page.Blank();
        page.Blank();
        page.Rule('_');
        page.Line(copy.Verdict.IsSigned ? "Technician, date" : "Seen by, date (NOT SIGNED)");
        page.Blank();
        if (copy.Verdict.IsSigned)
        {
            page.Blank();
            page.Rule('_');
            page.Line("Received by customer, date");
        }
    }

    static void List(PlainPage page, string title, IReadOnlyList<string> entries, string ifNone)
    {
        page.Heading(title);
        foreach (string entry in entries.Count == 0 ? [ifNone] : entries)
        {
            page.Line(entries.Count == 0 ? entry : $"- {entry}", 0, 2);
        }
    }
}
