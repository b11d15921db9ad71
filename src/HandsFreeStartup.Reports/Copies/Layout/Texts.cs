namespace HandsFreeStartup.Reports.Copies.Layout;

/// <summary>Running text as strips.</summary>
static class Texts
{
    /// <summary>A text broken into lines of at most <paramref name="width"/>, with a mark in front of the first one if wanted.</summary>
    public static IEnumerable<Strip> Paragraph(Ruler ruler, string text, Style style, double width, string mark = "", double indent = 0)
    {
        IReadOnlyList<string> lines = ruler.Wrap(text, style, width - indent);
        for (int i = 0; i < lines.Count; i++)
        {
            (string line, bool isFirst) = (lines[i], i == 0);
            yield return new Strip(style.LineHeight, (pen, x, y) =>
            {
                pen.Text(isFirst ? mark : "", style, x, y);
                pen.Text(line, style, x + indent, y);
            })
            {
                KeepsWithNext = Holds(i, lines.Count),
            };
        }
    }

    /// <summary>A heading with a rule above; it stays with what follows.</summary>
    public static IEnumerable<Strip> Heading(Ruler ruler, string title, double width)
    {
        yield return Strip.Space(9) with { KeepsWithNext = true };
        foreach (Strip line in Paragraph(ruler, title, Style.Heading, width))
        {
            yield return line with { KeepsWithNext = true };
        }
        yield return new Strip(4, (pen, x, y) => pen.Rule(x, y + 1, width, Style.Accent, 0.8)) { KeepsWithNext = true };
    }

    /// <summary>Entries that must not be overlooked, with a red bar beside them; nothing where there are none.</summary>
    public static IEnumerable<Strip> Alarming(Ruler ruler, string title, IReadOnlyList<string> entries, Style style, double width)
    {
        if (entries.Count == 0)
        {
            yield break;
        }

        yield return Strip.Space(3) with { KeepsWithNext = true };
        yield return new Strip(Style.Strong.LineHeight + 1, (pen, x, y) =>
        {
            pen.Fill(x, y, 2.5, Style.Strong.LineHeight + 1, Style.Alarm);
            pen.Text(title, Style.Strong.In(Style.Alarm), x + 8, y);
        })
        { KeepsWithNext = true };
        foreach (Strip line in entries.SelectMany(entry => Paragraph(ruler, entry, style, width - 8, "·", 8)))
        {
            yield return new Strip(line.Height, (pen, x, y) =>
            {
                pen.Fill(x, y, 2.5, line.Height, Style.Alarm);
                line.Draw(pen, x + 8, y);
            })
            { KeepsWithNext = line.KeepsWithNext };
        }

        yield return Strip.Space(3);
    }

    /// <summary>Whether line <paramref name="index"/> of <paramref name="count"/> stays with the next: short texts are not broken, long ones not at their first or last line.</summary>
    public static bool Holds(int index, int count) => index < count - 1 && (count <= 5 || index == 0 || index == count - 2);
}
