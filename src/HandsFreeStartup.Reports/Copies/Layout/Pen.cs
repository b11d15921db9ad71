using HandsFreeStartup.Reports.Fonts;
using PdfSharp.Drawing;

namespace HandsFreeStartup.Reports.Copies.Layout;

/// <summary>Draws on one page; all places in points from its upper left corner.</summary>
sealed class Pen(XGraphics page, Ruler ruler)
{
    public XGraphics Page => page;

    /// <summary>A line of text whose top is at <paramref name="y"/>.</summary>
    public void Text(string text, Style style, double x, double y)
    {
        if (text.Length > 0)
        {
            page.DrawString(Letters.Shown(text), style.Font, style.Brush, x, y + style.Baseline, XStringFormats.BaseLineLeft);
        }
    }

    /// <summary>A line of text that ends at <paramref name="right"/>.</summary>
    public void TextToRight(string text, Style style, double right, double y) => Text(text, style, right - ruler.Width(text, style), y);

    public void Rule(double x, double y, double width, XColor color, double weight = 0.5) => page.DrawLine(new XPen(color, weight), x, y, x + width, y);

    public void Line(double x, double y, double toX, double toY) => page.DrawLine(new XPen(Style.Ink, 0.6), x, y, toX, toY);

    public void Fill(double x, double y, double width, double height, XColor color) => page.DrawRectangle(new XSolidBrush(color), x, y, width, height);
}
