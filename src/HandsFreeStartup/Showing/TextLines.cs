namespace HandsFreeStartup.Showing;

/// <summary>Breaks text into lines at spaces, so that a number is never cut in two.</summary>
public static class TextLines
{
    /// <summary>The lines of <paramref name="text"/>.</summary>
    /// <param name="text">One paragraph.</param>
    /// <param name="width">Columns, at least 1. A single word that is longer is cut into pieces of this width.</param>
    /// <param name="indent">Spaces before every line but the first.</param>
    public static IReadOnlyList<string> Wrap(string text, int width, int indent = 0)
    {
        width = Math.Max(1, width);
        indent = indent < width ? indent : 0;
        List<string> lines = [];
        string line = "";
        foreach (string word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            ReadOnlySpan<char> rest = word;
            if (line.Trim().Length > 0 && line.Length + 1 + rest.Length <= width)
            {
                line += $" {word}";
                continue;
            }

            if (line.Trim().Length > 0)
            {
                lines.Add(line);
                line = new string(' ', indent);
            }

            while (line.Length + rest.Length > width)
            {
                lines.Add($"{line}{rest[..(width - line.Length)]}");
                rest = rest[(width - line.Length)..];
                line = new string(' ', indent);
            }

            line += rest.ToString();
        }

        return line.Trim().Length > 0 ? [.. lines, line] : lines;
    }

    /// <summary>At most <paramref name="height"/> lines; where some are left out, the last one says that more follows.</summary>
    public static IReadOnlyList<string> AtMost(this IReadOnlyList<string> lines, int height, int width) =>
        lines.Count <= height ? lines
        : height <= 0 ? []
        : [.. lines.Take(height - 1), $"{lines[height - 1][..Math.Min(lines[height - 1].Length, Math.Max(0, width - 4))]} ..."];
}
