using System.Globalization;
using System.Text;
using HandsFreeStartup.Fleet.Figures;

namespace HandsFreeStartup.Fleet.Pages;

/// <summary>The values of a series over time as a picture within a page: center and control limits, the limits that judge, and every outlier linked to its job where that has a page.</summary>
static class ControlChart
{
    const int Width = 760;
    const int Height = 260;
    const int Left = 64;
    const int Right = 16;
    const int Top = 14;
    const int Bottom = 28;

    /// <summary>More points cannot be told apart in a picture.</summary>
    const int MostPoints = 400;

    /// <summary>Draws a series.</summary>
    /// <param name="series">The values.</param>
    /// <param name="title">What they are.</param>
    /// <param name="id">A word that no other chart of the page has.</param>
    /// <param name="limits">Their control limits.</param>
    /// <param name="found">The values to look at.</param>
    /// <param name="nameOf">The name of a job that has a page, or null.</param>
    public static string Of(FleetSeries series, string title, string id, ControlLimits? limits, IEnumerable<Outlier> found, Func<FleetPoint, string?> nameOf)
    {
        Dictionary<FleetPoint, string> outliers = new(found.Select(one => KeyValuePair.Create(one.Point, one.Why)).DistinctBy(one => one.Key));
        FleetPoint[] shown = [.. series.Points.TakeLast(MostPoints)];
        (double low, double high) = Range(shown, limits);
        StringBuilder svg = new();
        svg.Append(CultureInfo.InvariantCulture, $"<figure><svg viewBox=\"0 0 {Width} {Height}\" role=\"group\" aria-labelledby=\"{id}-t {id}-d\"><title id=\"{id}-t\">{Page.Text(title)}</title><desc id=\"{id}-d\">{Page.Text(Description(series, limits, outliers.Count))}</desc>\n");
        svg.Append(CultureInfo.InvariantCulture, $"<rect class=\"frame\" x=\"{Left}\" y=\"{Top}\" width=\"{Width - Left - Right}\" height=\"{Height - Top - Bottom}\"/>\n");
        if (limits is not null)
        {
            svg.Append(CultureInfo.InvariantCulture, $"<rect class=\"spread\" x=\"{Left}\" y=\"{Y(limits.Upper):0.#}\" width=\"{Width - Left - Right}\" height=\"{Math.Max(0, Y(Math.Max(low, limits.Lower)) - Y(limits.Upper)):0.#}\"/>\n");
            Line("center", limits.Centre);
            Line("control", limits.Upper);
            Line("control", Math.Max(low, limits.Lower));
        }

        foreach (double limit in shown.SelectMany(point => new[] { point.Lower, point.Upper }).OfType<double>().Distinct().Where(limit => limit >= low && limit <= high).Take(4))
        {
            Line("limit", limit);
        }

        foreach (double mark in (double[])[low, (low + high) / 2, high])
        {
            svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{Left - 8}\" y=\"{Y(mark) + 4:0.#}\" text-anchor=\"end\" aria-hidden=\"true\">{Page.Number(mark, 3)}</text>\n");
        }

        svg.Append(CultureInfo.InvariantCulture, $"<text x=\"{Left}\" y=\"{Height - 8}\" aria-hidden=\"true\">{shown[0].At:yyyy-MM-dd}</text><text x=\"{Width - Right}\" y=\"{Height - 8}\" text-anchor=\"end\" aria-hidden=\"true\">{shown[^1].At:yyyy-MM-dd}</text>\n");
        for (int i = 0; i < shown.Length; i++)
        {
            (double x, double y) = (Left + (i + 0.5) * (Width - Left - Right) / shown.Length, Y(shown[i].Value ?? high));
            string diamond = string.Create(CultureInfo.InvariantCulture, $"<path class=\"outlier\" d=\"M{x:0.#} {y - 7:0.#}l7 7-7 7-7-7z\"/>");
            svg.Append(!outliers.TryGetValue(shown[i], out string? why) ? string.Create(CultureInfo.InvariantCulture, $"<circle class=\"dot\" cx=\"{x:0.#}\" cy=\"{y:0.#}\" r=\"3\"/>\n")
                : nameOf(shown[i]) is { } name ? string.Create(CultureInfo.InvariantCulture, $"<a href=\"job-{shown[i].Job}.html\" aria-label=\"{Page.Text($"{name}, {Said(series, shown[i])}, {why}")}\">{diamond}</a>\n")
                : $"{diamond}\n");
        }

        return svg.Append(CultureInfo.InvariantCulture, $"</svg>\n<figcaption>{Page.Text(Description(series, limits, outliers.Count))}{(series.Points.Length > MostPoints ? FormattableString.Invariant($" Drawn are the last {MostPoints}.") : "")}</figcaption></figure>\n").ToString();

        double Y(double value) => Top + (Height - Top - Bottom) * (1 - (Math.Clamp(value, low, high) - low) / (high - low));

        void Line(string kind, double value) =>
            svg.Append(CultureInfo.InvariantCulture, $"<line class=\"{kind}\" x1=\"{Left}\" x2=\"{Width - Right}\" y1=\"{Y(value):0.#}\" y2=\"{Y(value):0.#}\"/>\n");
    }

    /// <summary>A value with its unit.</summary>
    public static string Said(FleetSeries series, FleetPoint point) =>
        point.Value is { } value ? $"{Page.Number(value)} {series.Unit}" : point.Shown.Length > 0 ? $"{point.Shown} {series.Unit}" : "cannot be told";

    static string Description(FleetSeries series, ControlLimits? limits, int outliers) => limits is null
        ? FormattableString.Invariant($"{series.Points.Length} values in {series.Unit}: too few for control limits. {outliers} to look at.")
        : FormattableString.Invariant($"{series.Points.Length} values in {series.Unit}: mean {Page.Number(limits.Centre)}, control limits {Page.Number(limits.Lower)} and {Page.Number(limits.Upper)} (dashed). Full lines are limits of plate or practice. {outliers} to look at.");

    static (double Low, double High) Range(FleetPoint[] shown, ControlLimits? limits)
    {
        double[] all = [.. shown.Select(point => point.Value).OfType<double>(), .. limits is null ? [] : (double[])[limits.Centre, limits.Upper, Math.Max(limits.Lower, Math.Min(0, shown.Min(point => point.Value) ?? 0))],
            .. shown.SelectMany(point => new[] { point.Lower, point.Upper }).OfType<double>()];
        (double low, double high) = all.Length == 0 ? (0, 1) : (all.Min(), all.Max());
        // Values that are all alike differ by what the machine rounds.
        double room = high - low > 1e-6 * Math.Abs(high) ? (high - low) * 0.05 : Math.Max(1, Math.Abs(high) * 0.05);
        return (low - (low == 0 ? 0 : room), high + room);
    }
}
