using HandsFreeStartup.Reports.Copies.Layout;
using HandsFreeStartup.Reports.Facts;

namespace HandsFreeStartup.Reports.Copies.Parts;

/// <summary>What all copies begin with: exceptions, verdict, who and where, what must not be overlooked, readings, what was adjusted, opened and noted.</summary>
sealed class FirstPage(Ruler ruler, CopyFacts copy, double width, double size)
{
    /// <summary>Between two columns.</summary>
    public const double Gutter = 13;

    static readonly Style Verdict = new(25, true, Style.Accent);
    static readonly Style Sentence = new(11, false, Style.Ink);
    static readonly Style Appliance = new(11, true, Style.Ink);

    double ColumnWidth => (width - Gutter) / 2;

    /// <summary>Verdict, sentence, and the names that belong to the job.</summary>
    public IEnumerable<Strip> Head()
    {
        bool isAlarm = !copy.Verdict.IsSigned || copy.Verdict.Dangers.Count > 0;
        yield return new Strip(Verdict.LineHeight, (pen, x, y) => pen.Text(copy.Verdict.Word, isAlarm ? Verdict.In(Style.Alarm) : Verdict, x, y));
        foreach (Strip line in Texts.Paragraph(ruler, copy.Verdict.Sentence, Sentence, width))
        {
            yield return line;
        }

        yield return Strip.Space(5);
        foreach (Strip line in Texts.Paragraph(ruler, copy.Plan.Appliance.Title, Appliance, width))
        {
            yield return line;
        }

        yield return Strip.Space(2);
        double column = (width - 2 * Gutter) / 3;
        yield return Strip.Beside(
            (0, [.. Fact(T("Where"), [copy.Plan.Site.Title, copy.Plan.Site.Address], column)]),
            (column + Gutter, [.. Fact(T("Customer"), [copy.Plan.Site.Customer], column), .. Fact(T("Technician"), [copy.Facts.Job?.Technician ?? "–"], column)]),
            (2 * (column + Gutter), [.. Fact(T("Begun"), [copy.Times.Stamp(copy.Events[0].At)], column), .. Fact(T("Last event"), [copy.Times.Stamp(copy.Events[^1].At)], column)]));
        yield return Strip.Space(3);
    }

    /// <summary>The exceptions, each in full; nothing where there are none.</summary>
    public IEnumerable<Strip> Exceptions() => Texts.Alarming(ruler, Sentences.ExceptionsTitle(copy.Exceptions.Length, copy.Language), [.. copy.Exceptions.Select(exception => Sentences.Of(exception, copy.Times, copy.Language))], Style.Body.At(9.6), width);

    /// <summary>What else stands against the job; nothing where there is nothing.</summary>
    public IEnumerable<Strip> Questions() => Texts.Alarming(ruler, T("To be looked at"), copy.Questions, Style.Body, width);

    /// <summary>Everything in its order; the lists at the end in two columns.</summary>
    public void Place(Pagination pages, IEnumerable<Strip> afterVerdict)
    {
        pages.Add(Exceptions());
        pages.Add(Head());
        pages.Add(afterVerdict);
        pages.Add(Questions());
        pages.Add([Strip.Space(6)]);
        foreach (IEnumerable<Strip> group in new ReadingLines(ruler, copy, width, size).Write())
        {
            pages.Add(group);
        }

        pages.Add(Texts.Paragraph(ruler, Legend(), Style.Small, width));
        pages.Add([Strip.Space(4)]);
        (string Title, IReadOnlyList<string> Entries, string IfNone)[] lists =
        [
            ("From the returned job", Sentences.CarriedOver(copy.Facts, copy.Language), ""),
            ("At the same address", Sentences.Beside(copy.Facts, copy.Language), ""),
            ("Safety and stops", [.. Interruptions.Of(copy.Facts, copy.Language)], ""),
            ("Adjusted", Sentences.Adjustments(copy.Facts, copy.Language), "Nothing was adjusted."),
            ("Opened and closed", [.. copy.Facts.Things.Select(thing => Sentences.Of(thing, copy.Times, copy.Language))], "Nothing was opened."),
            ("Notes", [.. copy.Facts.Notes.Select(note => $"{copy.StepTitle(note.StepId)}: {note.Text} ({copy.Times.Time(note.At)})")], "None."),
        ];
        pages.AddInColumns(lists.Where(list => list.Entries.Count > 0 || list.IfNone.Length > 0).Select(list => List(T(list.Title), list.Entries, T(list.IfNone))), ColumnWidth + Gutter);
    }

    IEnumerable<Strip> List(string title, IReadOnlyList<string> entries, string ifNone)
    {
        yield return new Strip(Style.Strong.LineHeight + 3, (pen, x, y) =>
        {
            pen.Text(title, Style.Strong.In(Style.Accent), x, y);
            pen.Rule(x, y + Style.Strong.LineHeight + 0.5, ColumnWidth, Style.Accent, 0.8);
        })
        { KeepsWithNext = true };
        Style style = Style.Body.At(8.2);
        IReadOnlyList<string> shown = entries.Count == 0 ? [ifNone] : entries;
        foreach (Strip line in shown.SelectMany(entry => Texts.Paragraph(ruler, entry, style, ColumnWidth, entries.Count == 0 ? "" : "·", entries.Count == 0 ? 0 : 7)))
        {
            yield return line;
        }
        yield return Strip.Space(5);
    }

    string Legend() => T("U: expanded uncertainty (k = 2), or from where to where where ± would reach below zero; worst: the gravest value, where it is neither the one found nor the one left. \"was\" and \"void\" stand before numbers that no longer count, \"=\" before what was worked out; a dash: no value.")
        + (copy.Sources.Count == 0 ? "" : $" {T("Limits set by")}: {copy.SourceLegend}.")
        + (copy.Recorded.Length == 0 ? "" : $" {copy.Recorded}");

    string T(string english) => copy.Language.Text(english);

    IEnumerable<Strip> Fact(string name, IReadOnlyList<string> lines, double column) =>
    [
        .. Texts.Paragraph(ruler, name, Style.Small, column),
        .. lines.SelectMany(line => Texts.Paragraph(ruler, line.Length == 0 ? "–" : line, Style.Body, column)),
        Strip.Space(2.5),
    ];
}
