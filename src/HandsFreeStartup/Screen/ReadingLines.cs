using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Showing;

namespace HandsFreeStartup.Screen;

/// <summary>Readings and results of a stage, side by side, each with its verdict; limits too where there is room.</summary>
static class ReadingLines
{
    public static IReadOnlyList<ShownLine> Readings(StartupView view, int width, int height) => Fit(
        "READINGS", [.. view.Readings.Select(reading => (Text(reading), reading.Limit, LookOf(reading)))], width, height);

    public static IReadOnlyList<ShownLine> Results(StartupView view, int width, int height) => Fit(
        "RESULTS", [.. view.Results.Select(result => ($"{Words.Sign(result.Verdict)} {result.Label} {result.Text}{(result.Judged.Length == 0 ? "" : $" - {result.Judged}")}", result.Limit, LookOf(result.Verdict)))], width, height);

    static IReadOnlyList<ShownLine> Fit(string heading, IReadOnlyList<(string Text, string Limit, Look Look)> entries, int width, int height)
    {
        IReadOnlyList<ShownLine[]> full = [.. entries.Select(entry => Lines(entry.Limit.Length == 0 ? entry.Text : $"{entry.Text}: {entry.Limit}", entry.Look, width))];
        IReadOnlyList<ShownLine[]> blocks = full.Sum(block => block.Length) < height ? full : [.. entries.Select(entry => Lines(entry.Text, entry.Look, width))];
        List<ShownLine> lines = [new ShownLine(heading, Look.Heading)];
        int left = blocks.Count;
        foreach (ShownLine[] block in blocks)
        {
            if (lines.Count + block.Length + (left > 1 ? 1 : 0) > height && lines.Count + blocks.TakeLast(left).Sum(one => one.Length) > height)
            {
                lines.Add(new ShownLine($"... and {left} more", Look.Quiet));
                break;
            }

            lines.AddRange(block);
            left--;
        }

        return lines;
    }

    static ShownLine[] Lines(string text, Look look, int width) => [.. TextLines.Wrap(text, width, indent: 2).Select(line => new ShownLine(line, look))];

    static string Text(ReadingLine reading)
    {
        char sign = reading.State switch
        {
            ReadingState.Doubtful => '?',
            ReadingState.Void => '-',
            _ => Words.Sign(reading.Verdict),
        };
        IEnumerable<string> remarks = ((string[])[reading.Judged, Words.Of(reading.State)]).Where(remark => remark.Length > 0);
        return $"{sign} {reading.Label} {reading.Text}{(remarks.Any() ? $" - {string.Join(", ", remarks)}" : "")}";
    }

    static Look LookOf(ReadingLine reading) => reading.State switch
    {
        ReadingState.Missing or ReadingState.Void => Look.Quiet,
        ReadingState.Doubtful => Look.Caution,
        _ => LookOf(reading.Verdict),
    };

    static Look LookOf(Verdict? verdict) => verdict switch
    {
        Verdict.Pass => Look.Good,
        Verdict.ConditionalPass or Verdict.CannotTell => Look.Caution,
        Verdict.ConditionalFail or Verdict.Fail => Look.Bad,
        _ => Look.Plain,
    };
}
