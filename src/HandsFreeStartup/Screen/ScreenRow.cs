using System.Collections.Immutable;

namespace HandsFreeStartup.Screen;

/// <summary>One row of the console: parts side by side, each with its look.</summary>
/// <param name="Parts">From left to right.</param>
public sealed record ScreenRow(ImmutableArray<ShownLine> Parts)
{
    /// <summary>An empty row.</summary>
    public static ScreenRow Empty { get; } = Of("");

    /// <summary>All of it, without looks.</summary>
    public string Text => string.Concat(Parts.Select(part => part.Text));

    /// <summary>A row of one look.</summary>
    public static ScreenRow Of(string text, Look look = Look.Plain) => new([new ShownLine(text, look)]);

    /// <summary>Two blocks side by side.</summary>
    /// <param name="left">Rows of the left one.</param>
    /// <param name="width">Columns of the left one, the gap included.</param>
    /// <param name="right">Rows of the right one.</param>
    public static IReadOnlyList<ScreenRow> Beside(IReadOnlyList<ScreenRow> left, int width, IReadOnlyList<ScreenRow> right) =>
    [
        .. Enumerable.Range(0, Math.Max(left.Count, right.Count)).Select(row => new ScreenRow(
            [.. (row < left.Count ? left[row] : Empty).Cut(width).Parts, .. (row < right.Count ? right[row] : Empty).Parts])),
    ];

    /// <summary>Exactly so wide: what is shorter is filled up with spaces of the last look.</summary>
    public ScreenRow Cut(int width)
    {
        List<ShownLine> parts = [];
        int room = width;
        foreach (ShownLine part in Parts)
        {
            string text = part.Text.Length > room ? part.Text[..room] : part.Text;
            room -= text.Length;
            parts.Add(part with { Text = text });
        }

        Look last = parts.Count == 0 || parts[^1].Look is not (Look.Heading or Look.Alarm) ? Look.Plain : parts[^1].Look;
        return new ScreenRow([.. parts, new ShownLine(new string(' ', room), last)]);
    }
}
