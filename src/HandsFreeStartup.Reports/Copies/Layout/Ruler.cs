using HandsFreeStartup.Reports.Fonts;
using PdfSharp.Drawing;

namespace HandsFreeStartup.Reports.Copies.Layout;

/// <summary>Measures texts before there is a page.</summary>
sealed class Ruler
{
    /// <summary>More letters than any line of the smallest type holds on the widest paper.</summary>
    const int LongestLine = 400;

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

    /// <summary>The pieces of a word, each as long as finds room. Only so much is ever measured as a line can hold, so that a long word takes no more time a letter than a short one.</summary>
    IEnumerable<string> Pieces(string word, Style style, double width)
    {
        int at = 0;
        while (word.Length - at > LongestLine || Width(word[at..], style) > width)
        {
            int length = Fitting(word.Substring(at, Math.Min(LongestLine, word.Length - at)), style, width);
            if (at + length >= word.Length)
            {
                break;
            }

            yield return word.Substring(at, length);
            at += length;
        }

        yield return word[at..];
    }

    /// <summary>How many letters of a word find room; one at least.</summary>
    int Fitting(string word, Style style, double width)
    {
        int fits = 1;
        int tooLong = word.Length + 1;
        while (tooLong - fits > 1)
        {
            int middle = (fits + tooLong) / 2;
            (fits, tooLong) = Width(word[..middle], style) <= width ? (middle, tooLong) : (fits, middle);
        }

        return fits;
    }
}
