using HandsFreeStartup.Reports.Fonts;
using PdfSharp.Drawing;

namespace HandsFreeStartup.Reports.Copies.Layout;

/// <summary>Measures texts before there is a page.</summary>
sealed class Ruler
{
    readonly XGraphics _space = XGraphics.CreateMeasureContext(new XSize(1000, 1000), XGraphicsUnit.Point, XPageDirection.Downwards);

    /// <summary>Width in points.</summary>
    public double Width(string text, Style style) => text.Length == 0 ? 0 : _space.MeasureString(Letters.Shown(text), style.Font).Width;

    /// <summary>The lines of a text, none wider than <paramref name="width"/>: broken at blanks, and inside of a word that is wider by itself. At least one line.</summary>
    public IReadOnlyList<string> Wrap(string text, Style style, double width)
    {
        List<string> lines = [];
        string line = "";
        foreach (string word in Letters.Shown(text).Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(word => Pieces(word, style, width)))
        {
            string longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && Width(longer, style) > width)
            {
                lines.Add(line);
                longer = word;
            }
            line = longer;
        }
        return line.Length > 0 || lines.Count == 0 ? [.. lines, line] : lines;
    }

    IEnumerable<string> Pieces(string word, Style style, double width)
    {
        string rest = word;
        while (Width(rest, style) > width && rest.Length > 1)
        {
            int length = Enumerable.Range(1, rest.Length - 1).TakeWhile(length => length == 1 || Width(rest[..length], style) <= width).Last();
            yield return rest[..length];
            rest = rest[length..];
        }
        yield return rest;
    }
}
