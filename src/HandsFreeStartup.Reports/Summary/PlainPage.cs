using System.Text;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Reports.Summary;

/// <summary>Plain text of a fixed width. Long lines are wrapped at spaces, words that are too long are broken; nothing is ever cut off.</summary>
/// <param name="width">Characters a line.</param>
/// <param name="spelled">What is done to a text before it is broken into lines, or null.</param>
sealed class PlainPage(int width, Func<string, string>? spelled = null)
{
    readonly StringBuilder _text = new();

    public void Rule(char mark = '-') => _text.Append(mark, width).Append('\n');

    public void Blank() => _text.Append('\n');

    public void Heading(string title)
    {
        Blank();
        Line(title.ToUpperInvariant());
        Rule();
    }

    /// <summary>A text that begins at <paramref name="indent"/> and goes on at <paramref name="hanging"/>.</summary>
    public void Line(string text, int indent = 0, int? hanging = null)
    {
        IReadOnlyList<string> lines = TextLines.Wrap(VisibleText.Of((spelled?.Invoke(text) ?? text).Replace('\n', ' ').Replace('\r', ' ').Replace('\t', ' ')), width, hanging ?? indent, indent);
        _text.Append(string.Join('\n', lines)).Append('\n');
    }

    /// <summary>A name on the left and its text beside it.</summary>
    public void Pair(string name, string text, int column = 16) => Line($"{name.PadRight(column - 1, '\u00A0')} {text}", 0, column);

    /// <summary>The page; no line ends with a space.</summary>
    public override string ToString() => string.Join('\n', _text.Replace('\u00A0', ' ').ToString().Split('\n').Select(line => line.TrimEnd()));
}
