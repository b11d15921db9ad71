using HandsFreeStartup.Doors;
using Terminal.Gui.ViewBase;

namespace HandsFreeStartup.Screen;

/// <summary>A part of the screen that shows lines, made anew for its size whenever it is drawn.</summary>
/// <param name="looks">What each look is.</param>
sealed class LinesView(Looks looks) : View
{
    Func<int, int, IReadOnlyList<ShownLine>> _content = (_, _) => [];

    /// <summary>Shows other lines.</summary>
    /// <param name="content">Lines for a width and a height.</param>
    public void Show(Func<int, int, IReadOnlyList<ShownLine>> content)
    {
        _content = content;
        SetNeedsDraw();
    }

    protected override bool OnDrawingContent(DrawContext? context)
    {
        (int width, int height) = (Viewport.Width, Viewport.Height);
        IReadOnlyList<ShownLine> lines = _content(width, height);
        Look below = lines.Count > 0 && lines[0].Look == Look.Alarm ? Look.Alarm : Look.Plain;
        for (int row = 0; row < height; row++)
        {
            ShownLine line = row < lines.Count ? lines[row] : new ShownLine("", below);
            SetAttribute(looks.Of(line.Look));
            Move(0, row);
            AddStr(VisibleText.Of(line.Text.Length > width ? line.Text[..width] : line.Text.PadRight(width)));
        }

        return true;
    }
}
