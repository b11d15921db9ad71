using System.Text;
using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Review;

/// <summary>Text that is handed on in large pieces: a year of a firm has many lines, and an output that is flushed after each of them costs more than they do.</summary>
/// <param name="output">Takes the pieces.</param>
sealed class Pieces(TextWriter output)
{
    const int Most = 1 << 16;

    readonly StringBuilder _gathered = new();

    /// <summary>Adds one line, whatever it holds.</summary>
    public void Line(string text = "") => Add($"{VisibleText.Of(text)}\n");

    /// <summary>Adds text as it is.</summary>
    public void Add(string text)
    {
        _gathered.Append(text);
        if (_gathered.Length >= Most)
        {
            HandOn();
        }
    }

    /// <summary>Hands on what is left.</summary>
    public void HandOn()
    {
        output.Write(_gathered.ToString());
        _gathered.Clear();
    }
}
