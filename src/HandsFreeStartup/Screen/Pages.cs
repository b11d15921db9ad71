using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Screen;

/// <summary>Text that does not fit into its place is shown page after page, and says so; nothing is cut.</summary>
static class Pages
{
    const int MarkWidth = 6;

    /// <summary>The page of these paragraphs whose turn it is.</summary>
    /// <param name="paragraphs">Each begins a new line.</param>
    /// <param name="width">Columns.</param>
    /// <param name="height">Rows.</param>
    /// <param name="page">Any number that grows; the pages take turns.</param>
    /// <param name="indent">Spaces before every further line of a paragraph.</param>
    /// <returns>At most <paramref name="height"/> rows.</returns>
    public static IReadOnlyList<ScreenRow> Fit(IEnumerable<ShownLine> paragraphs, int width, int height, int page, int indent = 0)
    {
        ShownLine[] all = [.. paragraphs.Where(paragraph => paragraph.Text.Length > 0)];
        if (height <= 0 || width <= 0)
        {
            return [];
        }

        IReadOnlyList<ScreenRow> rows = Wrapped(all, width, indent);
        if (rows.Count <= height)
        {
            return rows;
        }

        int narrow = Math.Max(1, width - MarkWidth);
        rows = Wrapped(all, narrow, indent);
        int pages = (rows.Count + height - 1) / height;
        int shown = page % pages;
        ScreenRow[] turn = [.. rows.Skip(shown * height).Take(height)];
        string mark = FormattableString.Invariant($"{shown + 1}/{pages} »").PadLeft(MarkWidth);
        turn[^1] = new ScreenRow([.. turn[^1].Cut(narrow).Parts, new ShownLine(mark, Look.Strong)]);
        return turn;
    }

    static ScreenRow[] Wrapped(IEnumerable<ShownLine> paragraphs, int width, int indent) =>
        [.. paragraphs.SelectMany(paragraph => TextLines.Wrap(paragraph.Text, width, indent).Select(line => ScreenRow.Of(line, paragraph.Look)))];
}
