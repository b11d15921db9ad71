using HandsFreeStartup.Reports.Copies.Layout;
using PdfSharp.Drawing;

namespace HandsFreeStartup.Reports.Copies.Charts;

/// <summary>A series over time as lines and marks: where the limits forbid is shaded, the settled part is thick, the value that stands is large and named.</summary>
sealed class Chart
{
    const double PlotHeight = 104;
    const double Foot = 12;

    static readonly Style Title = new(9, true, Style.Accent);
    static readonly Style Tick = new(6.8, false, Style.Quiet);
    static readonly Style Label = new(8.6, true, Style.Ink);
    static readonly XColor Forbidden = XColor.FromArgb(0xF4, 0xDD, 0xDA);

    readonly Ruler _ruler;
    readonly Series _series;
    readonly double _width;
    readonly Scale _values;
    readonly Scale _time;
    readonly double _axis;

    Chart(Ruler ruler, Series series, double width)
    {
        (_ruler, _series, _width) = (ruler, series, width);
        double[] values = [.. series.Points.Select(point => point.Value)];
        _values = Scale.OfValues(values, new[] { series.Lower, series.Upper }.OfType<double>());
        _time = Scale.OfTime((series.Points[^1].At - Begin).TotalSeconds);
        _axis = _values.Ticks.Max(tick => ruler.Width(_values.Label(tick), Tick)) + 5;
    }

    DateTimeOffset Begin => _series.Points[0].At;

    double PlotWidth => _width - _axis - 8;

    /// <summary>What the marks mean.</summary>
    public const string Legend = "Large dot: the value that stands. Ring: replaced by a later value. Cross: void. Square: said too early to count. Thick line: settled. Shaded: outside of the limit.";

    /// <summary>The chart with its titles, never broken.</summary>
    public static IEnumerable<Strip> Strips(Ruler ruler, Series series, double width)
    {
        Chart chart = new(ruler, series, width);
        string below = series.Below;
        Strip[] strips =
        [
            .. Texts.Paragraph(ruler, $"{series.Title}, {series.Unit}", Title, width),
            .. Texts.Paragraph(ruler, below, Tick, width),
            new Strip(PlotHeight + Foot + 14, (pen, x, y) => chart.Draw(pen, x + chart._axis, y + 6)),
        ];
        return strips.Select((strip, index) => strip with { KeepsWithNext = index < strips.Length - 1 });
    }

    void Draw(Pen pen, double left, double top)
    {
        Shade(pen, left, top, _series.Upper is { } upper ? Math.Clamp(_values.Part(upper), 0, 1) : 1, 1);
        Shade(pen, left, top, 0, _series.Lower is { } lower ? Math.Clamp(_values.Part(lower), 0, 1) : 0);
        foreach (double tick in _values.Ticks)
        {
            double y = top + PlotHeight * (1 - _values.Part(tick));
            pen.Rule(left, y, PlotWidth, Style.Hair, 0.35);
            pen.TextToRight(_values.Label(tick), Tick, left - 4, y - Tick.Baseline * 0.62);
        }

        foreach (double tick in _time.Ticks)
        {
            double x = left + PlotWidth * _time.Part(tick);
            pen.Page.DrawLine(new XPen(Style.Quiet, 0.5), x, top + PlotHeight, x, top + PlotHeight + 2.5);
            string text = Scale.TimeLabel(tick);
            double half = _ruler.Width(text, Tick) / 2;
            pen.Text(text, Tick, Math.Min(x - half, left + PlotWidth + 8 - 2 * half), top + PlotHeight + 3);
        }

        pen.Rule(left, top + PlotHeight, PlotWidth, Style.Quiet, 0.6);
        Lines(pen, left, top);
        for (int i = 0; i < _series.Points.Count; i++)
        {
            XPoint at = Place(_series.Points[i], left, top);
            Dot(pen, _series.Points[i].Mark, at, i == 0 ? at.Y : Place(_series.Points[i - 1], left, top).Y);
        }
    }

    void Shade(Pen pen, double left, double top, double from, double to)
    {
        if (to > from)
        {
            pen.Fill(left, top + PlotHeight * (1 - to), PlotWidth, PlotHeight * (to - from), Forbidden);
        }
    }

    void Lines(Pen pen, double left, double top)
    {
        for (int i = 1; i < _series.Points.Count; i++)
        {
            bool isSettled = _series.SettledAt is { } since && _series.Points[i].At >= since && _series.Points[i].Mark is Mark.Standing or Mark.Replaced;
            XPen line = isSettled ? new XPen(Style.Accent, 2) : new XPen(Style.Quiet, 0.7);
            pen.Page.DrawLine(line, Place(_series.Points[i - 1], left, top), Place(_series.Points[i], left, top));
        }
    }

    void Dot(Pen pen, Mark mark, XPoint at, double before)
    {
        XPen outline = new(Style.Ink, 0.8);
        switch (mark)
        {
            case Mark.Standing:
                pen.Page.DrawEllipse(new XSolidBrush(Style.Accent), at.X - 3.6, at.Y - 3.6, 7.2, 7.2);
                Name(pen, at, before);
                break;
            case Mark.Void:
                pen.Page.DrawLine(outline, at.X - 2.2, at.Y - 2.2, at.X + 2.2, at.Y + 2.2);
                pen.Page.DrawLine(outline, at.X - 2.2, at.Y + 2.2, at.X + 2.2, at.Y - 2.2);
                break;
            case Mark.Early:
                pen.Page.DrawRectangle(outline, XBrushes.White, at.X - 2, at.Y - 2, 4, 4);
                break;
            default:
                pen.Page.DrawEllipse(outline, XBrushes.White, at.X - 2.2, at.Y - 2.2, 4.4, 4.4);
                break;
        }
    }

    /// <summary>The number beside the dot, on the side from which the line does not come.</summary>
    void Name(Pen pen, XPoint at, double before)
    {
        string text = _series.Left ?? "";
        double y = before < at.Y - 1 ? at.Y + 3 : at.Y - Label.LineHeight - 3;
        pen.TextToRight(text, Label, Math.Max(at.X - 3, at.X - PlotWidth + _ruler.Width(text, Label)), y);
    }

    XPoint Place(Point point, double left, double top) => new(
        left + PlotWidth * _time.Part((point.At - Begin).TotalSeconds), top + PlotHeight * (1 - _values.Part(point.Value)));
}
