namespace HandsFreeStartup.Reports.Copies.Layout;

/// <summary>A column of a table.</summary>
/// <param name="Title">In its head.</param>
/// <param name="Share">Part of the table's width.</param>
sealed record Column(string Title, double Share);

/// <summary>A cell: its text, and how it looks.</summary>
sealed record Cell(string Text, Style Style)
{
    public static implicit operator Cell(string text) => new(text, Table.CellStyle);
}

/// <summary>A table whose rows may be of any height; its head is drawn again on every page.</summary>
sealed class Table(Ruler ruler, double width, params Column[] columns)
{
    const double Gap = 7;
    const double Above = 2.2;

    static readonly Style HeadStyle = new(7.2, true, Style.Quiet);

    public static Style CellStyle { get; } = new(8.2, false, Style.Ink);

    readonly double[] _widths = [.. columns.Select(column => column.Share * width / columns.Sum(other => other.Share))];

    /// <summary>The head and all rows.</summary>
    public IEnumerable<Strip> Rows(IEnumerable<Cell[]> rows)
    {
        Strip? head = columns.All(column => column.Title.Length == 0) ? null : Head();
        if (head is not null)
        {
            yield return head with { KeepsWithNext = true };
        }

        foreach (Cell[] row in rows)
        {
            foreach (Strip strip in Row(row))
            {
                yield return strip with { Head = head };
            }
        }
    }

    Strip Head()
    {
        IReadOnlyList<string>[] titles = [.. columns.Select((column, i) => ruler.Wrap(column.Title, HeadStyle, _widths[i] - Gap))];
        return new(titles.Max(lines => lines.Count) * HeadStyle.LineHeight + Above, (pen, x, y) =>
        {
            for (int i = 0; i < columns.Length; i++)
            {
                for (int line = 0; line < titles[i].Count; line++)
                {
                    pen.Text(titles[i][line], HeadStyle, x + _widths[..i].Sum(), y + line * HeadStyle.LineHeight);
                }
            }
        });
    }

    IEnumerable<Strip> Row(Cell[] cells)
    {
        IReadOnlyList<string>[] lines = [.. cells.Select((cell, i) => ruler.Wrap(cell.Text, cell.Style, _widths[i] - Gap))];
        int count = lines.Max(text => text.Count);
        double height = cells.Max(cell => cell.Style.LineHeight);
        for (int i = 0; i < count; i++)
        {
            (int line, double above) = (i, i == 0 ? Above : 0);
            yield return new Strip(height + above + (i == count - 1 ? Above : 0), (pen, x, y) =>
            {
                if (line == 0)
                {
                    pen.Rule(x, y, width, Style.Hair);
                }

                for (int c = 0; c < cells.Length; c++)
                {
                    pen.Text(line < lines[c].Count ? lines[c][line] : "", cells[c].Style, x + _widths[..c].Sum(), y + above);
                }
            })
            {
                KeepsWithNext = Texts.Holds(i, count),
            };
        }
    }
}
