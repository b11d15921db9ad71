using System.Globalization;

namespace HandsFreeStartup.Hear;

/// <summary>The figures of a measurement as text.</summary>
static class HearText
{
    const int MostConfusions = 40;
    const int MostReasons = 12;

    /// <summary>Prints them.</summary>
    public static void Print(HearFigures figures, TextWriter output)
    {
        foreach (HearRow row in figures.Rows.Where(row => row.IsAccepted && !row.IsRight))
        {
            output.WriteLine(FormattableString.Invariant($"WRONG {row.File}: expected {row.Expected}, accepted {row.Heard} (score {row.Score:F2}, margin {row.Margin:F1}, ratio {row.Ratio:F1})"));
        }

        foreach (HearRow row in figures.Rows.Where(row => row.IsAskedForNothing))
        {
            output.WriteLine(FormattableString.Invariant($"ASKED {row.File}: expected {row.Expected}, asked about {row.Heard} (score {row.Score:F2}, margin {row.Margin:F1}, ratio {row.Ratio:F1})"));
        }

        int nothing = figures.Cases - figures.Said;
        output.WriteLine(FormattableString.Invariant($"{figures.Cases} recordings: {figures.Said} with something said to the tool, {nothing} with nothing for it"));
        Line("right, accepted without asking", figures.Exact, figures.Said);
        Line("right, with the confirmed ones", figures.ConfirmedExact, figures.Said);
        Line("asked again or to be confirmed", figures.AskedAgain, figures.Said);
        PrintReasons(figures, output);
        Line("WRONG accepted", figures.WrongAccepted, figures.Said);
        Line("nothing said, yet accepted", figures.FalseAccepts, nothing);
        Line("nothing said, yet asked about", figures.AskedForNothing, nothing);
        if (figures.Rows.Any(row => row.Free is not null))
        {
            Line("free decoding of the same, right", figures.FreeExact, figures.Said);
            Line("free decoding of the same, WRONG", figures.FreeWrong, figures.Cases);
        }

        output.WriteLine($"right without asking beside that of the original models ({string.Join(", ", OriginalModels.Hashes.Select(hash => hash[..12]))}), each on its own recordings:");
        output.WriteLine(FormattableString.Invariant($"  {"these recordings, these models",-50} {100.0 * figures.Exact / Math.Max(1, figures.Said),6:F1} %, {figures.WrongAccepted} wrong"));
        foreach (OriginalFigure original in OriginalModels.Figures)
        {
            output.WriteLine(FormattableString.Invariant($"  {original.Recordings,-50} {original.RightPercent,6:F1} %{(original.WrongAccepted is { } wrong ? FormattableString.Invariant($", {wrong} wrong") : "")}"));
        }

        output.WriteLine(FormattableString.Invariant(
            $"latency of the decoder alone: p50 {figures.LatencyMs.P50:F0} ms, p95 {figures.LatencyMs.P95:F0} ms; {figures.RealTimeFactor:F2} of the recordings' length, {figures.Rows.Sum(row => row.Seconds) / 3600:F2} h"));
        output.WriteLine(FormattableString.Invariant(
            $"latency from the last sample of speech, with the silence that ends it: p50 {figures.LatencyWithSilenceMs.P50:F0} ms, p95 {figures.LatencyWithSilenceMs.P95:F0} ms"));
        output.WriteLine(FormattableString.Invariant(
            $"start to listening: {figures.Machine.StartToListeningMs / 1000:F1} s; memory at most {figures.Machine.PeakMemoryMb:F0} MiB; detector in silence: {100 * figures.Machine.DetectorShare:F2} % of a core"));

        void Line(string what, int count, int total)
        {
            (double low, double high) = HearFigures.Wilson(count, total);
            output.WriteLine(FormattableString.Invariant($"{what,-32} {count,5}  {100.0 * count / Math.Max(1, total),6:F1} %  (95 %: {100 * low:F1} to {100 * high:F1})"));
        }
    }

    static void PrintReasons(HearFigures figures, TextWriter output)
    {
        IGrouping<string, HearRow>[] reasons =
            [.. figures.Rows.Where(row => row.Expected != HearRow.Nothing && !row.IsAccepted).GroupBy(row => row.Why).OrderByDescending(rows => rows.Count()).ThenBy(rows => rows.Key, StringComparer.Ordinal)];
        foreach (IGrouping<string, HearRow> rows in reasons.Take(MostReasons))
        {
            output.WriteLine(FormattableString.Invariant($"  {rows.Count(),4} of them, {rows.Count(row => row.IsRight)} right: {rows.Key}"));
        }

        if (reasons.Length > MostReasons)
        {
            output.WriteLine(FormattableString.Invariant($"  {reasons.Skip(MostReasons).Sum(rows => rows.Count()),4} of them for other reasons, in --json"));
        }
    }

    /// <summary>Lists what was taken for what, accepted or not, the accepted ones first.</summary>
    public static void PrintConfusions(HearFigures figures, TextWriter output)
    {
        HearRow[] confused = [.. figures.Rows.Where(row => row.Likeliest != HearRow.Nothing && !row.IsLikeliestRight)];
        output.WriteLine($"Likeliest phrase is not what was said: {confused.Length.ToString(CultureInfo.InvariantCulture)} of {figures.Cases.ToString(CultureInfo.InvariantCulture)}");
        foreach (HearRow row in confused.OrderBy(row => row.Class == "green" ? 0 : row.Class == "amber" ? 1 : 2).ThenBy(row => row.Expected, StringComparer.Ordinal).Take(MostConfusions))
        {
            output.WriteLine($"  {row.Class,-5}  {row.Expected} -> {row.Likeliest}  ({row.File})");
        }

        if (confused.Length > MostConfusions)
        {
            output.WriteLine($"  and {(confused.Length - MostConfusions).ToString(CultureInfo.InvariantCulture)} more, in --json");
        }
    }
}
