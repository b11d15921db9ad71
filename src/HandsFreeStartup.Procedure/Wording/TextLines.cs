using System.Text;

namespace HandsFreeStartup.Procedure.Wording;

/// <summary>Breaks text into lines at blanks, so that a number is never cut in two; a word that is wider than a line is broken, and nothing is ever cut off.</summary>
public static class TextLines
{
    static readonly char[] Blanks = [' ', '\n', '\r', '\t'];

    /// <summary>The lines of <paramref name="text"/> in a type of fixed width; none for an empty text.</summary>
    /// <param name="text">One paragraph.</param>
    /// <param name="width">Columns, at least 1.</param>
    /// <param name="indent">Spaces before every line but the first.</param>
    /// <param name="first">Spaces before the first line.</param>
    public static IReadOnlyList<string> Wrap(string text, int width, int indent = 0, int first = 0)
    {
        width = Math.Max(1, width);
        indent = indent < width ? indent : 0;
        first = first < width ? first : 0;
        int longest = width - Math.Max(indent, first);
        IReadOnlyList<string> lines = Wrap(text, isFirst => width - (isFirst ? first : indent), words => words.Length, word => word.Chunk(longest).Select(part => new string(part)));
        return [.. lines.Select((line, index) => new string(' ', index == 0 ? first : indent) + line)];
    }

    /// <summary>The lines of <paramref name="text"/> in any type; none for an empty text.</summary>
    /// <param name="text">One paragraph.</param>
    /// <param name="room">Width of the first line, and of the others.</param>
    /// <param name="measure">Width of a word, and of a blank; a line is as wide as these together.</param>
    /// <param name="pieces">A word in pieces that each find room in a line.</param>
    public static IReadOnlyList<string> Wrap(string text, Func<bool, double> room, Func<string, double> measure, Func<string, IEnumerable<string>> pieces)
    {
        List<string> lines = [];
        StringBuilder line = new();
        double blank = measure(" "), full = 0;
        foreach (string word in text.Split(Blanks, StringSplitOptions.RemoveEmptyEntries).SelectMany(pieces))
        {
            double wide = measure(word);
            if (line.Length > 0 && full + blank + wide > room(lines.Count == 0))
            {
                lines.Add(line.ToString());
                line.Clear();
            }

            full = line.Length == 0 ? wide : full + blank + wide;
            line.Append(line.Length == 0 ? "" : " ").Append(word);
        }

        return line.Length > 0 ? [.. lines, line.ToString()] : lines;
    }

    /// <summary>A sentence that ends with a unit ("in. w.c.") has its full stop already.</summary>
    public static string EndedOnce(string sentence) => sentence.EndsWith("..", StringComparison.Ordinal) && !sentence.EndsWith("...", StringComparison.Ordinal) ? sentence[..^1] : sentence;

    /// <summary>At most <paramref name="height"/> lines; where some are left out, the last one says that more follows.</summary>
    public static IReadOnlyList<string> AtMost(this IReadOnlyList<string> lines, int height, int width) =>
        lines.Count <= height ? lines
        : height <= 0 ? []
        : [.. lines.Take(height - 1), $"{lines[height - 1][..Math.Min(lines[height - 1].Length, Math.Max(0, width - 4))]} ..."];
}
