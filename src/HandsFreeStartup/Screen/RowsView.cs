using HandsFreeStartup.Doors;
using Terminal.Gui.ViewBase;

namespace HandsFreeStartup.Screen;

/// <summary>Shows rows, made anew for its size whenever it is drawn.</summary>
/// <param name="looks">What each look is.</param>
/// <param name="content">Rows for a width and a height.</param>
sealed class RowsView(Looks looks, Func<int, int, IReadOnlyList<ScreenRow>> content) : View
{
    protected override bool OnDrawingContent(DrawContext? context)
    {
        (int width, int height) = (Viewport.Width, Viewport.Height);
        IReadOnlyList<ScreenRow> rows = content(width, height);
        for (int row = 0; row < Math.Min(height, rows.Count); row++)
        {
            Move(0, row);
            foreach (ShownLine part in rows[row].Parts)
            {
                SetAttribute(looks.Of(part.Look));
                AddStr(VisibleText.Of(part.Text));
            }
        }

        return true;
    }
}
