using System.Collections.Frozen;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Screen;

/// <summary>Letters and digits three rows high, drawn with quarter blocks: legible from two meters where text of ordinary size is not.</summary>
public static class BigLetters
{
    /// <summary>Rows of one line of letters.</summary>
    public const int Height = 3;

    /// <summary>Columns of one letter with the gap after it.</summary>
    public const int Width = 3;

    const int Points = 5;

    /// <summary>Quarter blocks by the points that are set: 1 upper left, 2 upper right, 4 lower left, 8 lower right.</summary>
    const string Quarters = " ▘▝▀▖▌▞▛▗▚▐▜▄▙▟█";

    static readonly FrozenDictionary<char, string[]> Letters = Read();

    /// <summary>The points of a character: six rows of five; a character that is not drawn is a gap.</summary>
    public static bool IsDrawn(char letter) => letter == ' ' || Letters.ContainsKey(char.ToUpperInvariant(letter));

    /// <summary>One or more lines of letters, broken at spaces.</summary>
    /// <param name="text">Few words.</param>
    /// <param name="width">Columns.</param>
    /// <returns>Three rows a line.</returns>
    public static IReadOnlyList<string> Lines(string text, int width) =>
        [.. TextLines.Wrap(text, Math.Max(1, width / Width)).SelectMany(Line)];

    /// <summary>The same twice as large, for a screen that has the room.</summary>
    /// <returns>Six rows.</returns>
    public static IReadOnlyList<string> DoubleLine(string text) =>
        [.. Enumerable.Range(0, 2 * Height).Select(row => string.Concat(text.ToUpperInvariant().Select(letter => Letters.TryGetValue(letter, out string[]? points)
            ? $"{points[row].Replace('#', '█').Replace('.', ' ')} "
            : new string(' ', 2 * Width))))];

    /// <summary>One line of letters.</summary>
    public static IReadOnlyList<string> Line(string text) =>
        [.. Enumerable.Range(0, Height).Select(row => string.Concat(text.ToUpperInvariant().Select(letter => Cells(letter, row))))];

    static string Cells(char letter, int row) => Letters.TryGetValue(letter, out string[]? points)
        ? string.Concat(Enumerable.Range(0, Width).Select(cell => Quarters[
            Point(points, 2 * row, 2 * cell) + 2 * Point(points, 2 * row, 2 * cell + 1) + 4 * Point(points, 2 * row + 1, 2 * cell) + 8 * Point(points, 2 * row + 1, 2 * cell + 1)]))
        : new string(' ', Width);

    static int Point(string[] points, int row, int column) => column < Points && points[row][column] == '#' ? 1 : 0;

    static FrozenDictionary<char, string[]> Read()
    {
        using StreamReader file = new(typeof(BigLetters).Assembly.GetManifestResourceStream("letters.txt")!);
        return file.ReadToEnd().Split('\n').Where(line => line.Length > 1 && line[0] != '#' && line[1] == ' ')
            .ToFrozenDictionary(line => line[0], line => line[2..].TrimEnd().Split(' '));
    }
}
