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
            List(page, Sentences.ExceptionsTitle(copy.Exceptions.Length, copy.Language), [.. copy.Exceptions.Select(exception => Sentences.Of(exception, copy.Times, copy.Language))], "");
            page.Blank();
        }

        page.Line(copy.Verdict.Word.ToUpperInvariant());
        page.Line(copy.Verdict.Sentence);
        Names(page, copy);
        List(page, copy.T("To be looked at"), copy.Questions, Sentences.NothingElse(copy.Exceptions.Length, copy.Language));
        if (Sentences.CarriedOver(copy.Facts, copy.Language) is { Count: > 0 } carried)
        {
            List(page, copy.T("From the returned job"), carried, "");
        }

        if (Sentences.Beside(copy.Facts, copy.Language) is { Count: > 0 } beside)
        {
            List(page, copy.T("At the same address"), beside, "");
        }

        foreach (ReadingGroup group in copy.Groups)
        {
            page.Heading(group.Title);
            foreach (FoundAndLeft line in group.Lines)
            {
                Reading(page, copy, line);
            }
        }

        page.Line($"{copy.T("Limits set by")}: {copy.SourceLegend}.");
        page.Line(copy.T("+/-: expanded uncertainty (k = 2)"));
        List(page, copy.T("Safety and stops"), [.. Interruptions.Of(copy.Facts, copy.Language)], copy.T("None."));
        List(page, copy.T("Adjusted"), Sentences.Adjustments(copy.Facts, copy.Language), copy.T("Nothing."));
        List(page, copy.T("Opened and closed"), [.. copy.Facts.Things.Select(thing => Sentences.Of(thing, copy.Times, copy.Language))], copy.T("Nothing."));
        List(page, copy.T("Notes"), [.. copy.Facts.Notes.Select(note => $"{copy.Times.Time(note.At)} {copy.StepTitle(note.StepId)}: {note.Text}")], copy.T("None."));
        page.Heading(copy.T("Checkpoint"));
        page.Line(source.Checkpoint ?? copy.T("none that could be believed"));
        Signature(page, copy);
        Banners(page, copy);
        return Ascii.Of(page.ToString(), copy.T("? is a letter this paper has not."));
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
        (string Name, string Text)[] names =
        [
            (copy.T("Job"), copy.JobId), (copy.T("Where"), $"{copy.Plan.Site.Title}; {copy.Plan.Site.Address}"), (copy.T("Customer"), copy.Plan.Site.Customer),
            (copy.T("Technician"), copy.Facts.Job?.Technician ?? "-"), (copy.T("Begun"), copy.Times.Stamp(copy.Events[0].At)), (copy.T("Last event"), copy.Times.Stamp(copy.Events[^1].At)),
        ];
        int column = names.Max(pair => pair.Name.Length) + 2;
        foreach ((string name, string text) in names)
        {
            page.Pair(name, text, column);
        }

        page.Line($"{copy.T("All times")}: {copy.Language.Name(copy.Times.Zone)}");
        if (copy.Recorded.Length > 0)
        {
            page.Line(copy.Recorded);
        }
    }

    static void Reading(PlainPage page, CopyFacts copy, FoundAndLeft line)
    {
        page.Line($"{(line.IsResult ? "= " : "")}{line.Label}", 0, 2);
        string verdict = line.Verdict is { } judged && line.Limit is { } by ? $": {copy.T(VerdictWords.Of(judged, by))}" : "";
        page.Line(line.Left is { } left ? $"{copy.Language.Text("left {0}", copy.Whole(left))}{verdict}" : copy.Language.Text("left {0}", $"- ({line.Remark})"), 2, 4);
        if (line.Found is { } found && (line.Left is null || found.Number != line.Left.Number || !found.Stands))
        {
            page.Line(copy.Language.Text("found {0}", copy.Whole(found)), 2, 4);
        }

        if (line.Worst is { } worst)
        {
            page.Line(copy.Language.Text("worst {0}", copy.Whole(worst)), 2, 4);
        }

        if (line.Left is not null && !line.Remark.IsEmpty)
        {
            page.Line(line.Remark.Shown, 2, 4);
        }

        if (line.Limit is { } limit)
        {
            page.Line($"{copy.Told($"limit {limit}")} [{copy.Mark(limit)}]", 2, 4);
        }
    }

    static void Signature(PlainPage page, CopyFacts copy)
    {
        page.Blank();
        page.Blank();
        page.Rule('_');
        page.Line(copy.T(copy.Verdict.IsSigned ? "Technician, date" : "Seen by, date (NOT SIGNED)"));
        page.Blank();
        if (copy.Verdict.IsSigned)
        {
            page.Blank();
            page.Rule('_');
            page.Line(copy.T("Received by customer, date"));
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
