using System.Text;
using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Reports.Fonts;
using PdfSharp.Drawing;

namespace HandsFreeStartup.Reports.Copies.Layout;

/// <summary>Measures texts before there is a page.</summary>
sealed class Ruler
{
    /// <summary>More letters than any line of the smallest type holds on the widest paper.</summary>
    const int LongestLine = 400;

    readonly XGraphics _space = XGraphics.CreateMeasureContext(new XSize(1000, 1000), XGraphicsUnit.Point, XPageDirection.Downwards);

    readonly Dictionary<(XFont Font, Rune Letter), double> _widths = [];

    /// <summary>Width in points.</summary>
    /// <remarks>Letters stand side by side without kerning, so that a text is as wide as its letters together; each is measured once.</remarks>
    public double Width(string text, Style style) => Letters.Shown(text).EnumerateRunes().Sum(letter => Width(letter, style.Font));

    /// <summary>The lines of a text, none wider than <paramref name="width"/>: broken at blanks, and inside of a word that is wider by itself. At least one line.</summary>
    public IReadOnlyList<string> Wrap(string text, Style style, double width) =>
        TextLines.Wrap(Letters.Shown(text), _ => width, words => Width(words, style), word => Pieces(word, style, width)) is { Count: > 0 } lines ? lines : [""];

    double Width(Rune letter, XFont font)
    {
        if (!_widths.TryGetValue((font, letter), out double width))
        {
            width = _space.MeasureString(letter.ToString(), font).Width;
            _widths[(font, letter)] = width;
        }

        return width;
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
