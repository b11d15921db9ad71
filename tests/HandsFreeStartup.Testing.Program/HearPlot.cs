using ScottPlot;

namespace HandsFreeStartup.Hear;

/// <summary>Draws how many right and wrong phrases would be accepted, over the threshold of each single number of the evidence.</summary>
static class HearPlot
{
    const int Width = 1500, Height = 460;

    /// <summary>Writes the picture.</summary>
    /// <param name="rows">What was measured; a row counts with its likeliest phrase, whether the policy accepted it or not.</param>
    /// <param name="path">A PNG file.</param>
    public static void Save(IReadOnlyList<HearRow> rows, string path)
    {
        Multiplot picture = new();
        picture.AddPlots(3);
        picture.Layout = new ScottPlot.MultiplotLayouts.Columns();
        Draw(picture.GetPlot(0), rows, row => row.Score, "score: mean log-probability per token");
        Draw(picture.GetPlot(1), rows, row => row.Margin, "margin to the second meaning");
        Draw(picture.GetPlot(2), rows, row => row.Ratio, "ratio to free decoding");
        picture.SavePng(path, Width, Height);
    }

    static void Draw(Plot plot, IReadOnlyList<HearRow> rows, Func<HearRow, double> number, string label)
    {
        HearRow[] found = [.. rows.Where(row => row.Likeliest != HearRow.Nothing && double.IsFinite(number(row)))];
        double[] thresholds = [.. found.Select(number).Distinct().Order()];
        double said = Math.Max(1, rows.Count(row => row.Expected != HearRow.Nothing));
        Add("right, % of what was said", Colors.SteelBlue, row => row.IsLikeliestRight, said);
        Add("wrong, % of all recordings", Colors.FireBrick, row => !row.IsLikeliestRight, Math.Max(1, rows.Count));
        plot.XLabel($"least {label}");
        plot.YLabel("accepted, %");
        plot.Axes.SetLimitsY(0, 102);
        plot.ShowLegend(Alignment.UpperRight);

        void Add(string text, Color color, Func<HearRow, bool> counts, double total)
        {
            double[] shares = [.. thresholds.Select(threshold => 100 * found.Count(row => counts(row) && number(row) >= threshold) / total)];
            ScottPlot.Plottables.Scatter line = plot.Add.ScatterLine(thresholds, shares, color);
            line.LegendText = text;
            line.LineWidth = 2;
        }
    }
}
