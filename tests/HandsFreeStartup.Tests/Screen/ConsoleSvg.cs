using System.Security;
using System.Text;
using HandsFreeStartup.Screen;
using Terminal.Gui.Drawing;
using TgAttribute = Terminal.Gui.Drawing.Attribute;

namespace HandsFreeStartup.Tests.Screen;

/// <summary>The console as a picture for documents: the rows of the program, blocks drawn as shapes so that no font matters.</summary>
static class ConsoleSvg
{
    const int CellWidth = 9;
    const int CellHeight = 18;
    const int Baseline = 14;
    const string Quarters = " ▘▝▀▖▌▞▛▗▚▐▜▄▙▟█";

    /// <summary>The picture.</summary>
    public static string Of(IReadOnlyList<ScreenRow> rows, Looks looks)
    {
        int width = rows.Max(row => row.Text.Length) * CellWidth, height = rows.Count * CellHeight;
        StringBuilder svg = new(FormattableString.Invariant(
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {width} {height}\" font-family=\"monospace\" font-size=\"15\">\n<rect width=\"{width}\" height=\"{height}\" fill=\"#000\"/>\n"));
        for (int row = 0; row < rows.Count; row++)
        {
            int column = 0;
            foreach (ShownLine part in rows[row].Parts.Where(part => part.Text.Length > 0))
            {
                Append(svg, part, looks.Of(part.Look), column * CellWidth, row * CellHeight);
                column += part.Text.Length;
            }
        }

        return svg.Append("</svg>\n").ToString();
    }

    static void Append(StringBuilder svg, ShownLine part, TgAttribute attribute, int x, int y)
    {
        if (Hex(attribute.Background) != "#000000")
        {
            svg.Append(FormattableString.Invariant($"<rect x=\"{x}\" y=\"{y}\" width=\"{part.Text.Length * CellWidth}\" height=\"{CellHeight}\" fill=\"{Hex(attribute.Background)}\"/>\n"));
        }

        string blocks = string.Concat(part.Text.SelectMany((letter, at) => Shapes(Quarters.IndexOf(letter, StringComparison.Ordinal), x + at * CellWidth, y)));
        if (blocks.Length > 0)
        {
            svg.Append($"<path fill=\"{Hex(attribute.Foreground)}\" d=\"{blocks}\"/>\n");
        }

        string text = string.Concat(part.Text.Select(letter => Quarters.Contains(letter, StringComparison.Ordinal) ? ' ' : letter)).TrimEnd();
        if (text.Length > 0)
        {
            svg.Append(FormattableString.Invariant(
                $"<text x=\"{x}\" y=\"{y + Baseline}\" xml:space=\"preserve\" textLength=\"{text.Length * CellWidth}\" fill=\"{Hex(attribute.Foreground)}\">{SecurityElement.Escape(text)}</text>\n"));
        }
    }

    static IEnumerable<string> Shapes(int quarters, int x, int y)
    {
        for (int quarter = 0; quarter < 4; quarter++)
        {
            if (quarters > 0 && (quarters & (1 << quarter)) != 0)
            {
                yield return FormattableString.Invariant($"M{x + quarter % 2 * CellWidth / 2.0} {y + quarter / 2 * CellHeight / 2}h{CellWidth / 2.0}v{CellHeight / 2}h-{CellWidth / 2.0}z");
            }
        }
    }

    static string Hex(Color color) => FormattableString.Invariant($"#{color.R:x2}{color.G:x2}{color.B:x2}");
}
