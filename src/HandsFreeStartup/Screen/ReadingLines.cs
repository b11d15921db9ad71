using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Showing;

namespace HandsFreeStartup.Screen;

/// <summary>Readings, results and series of a stage, each with sign and word of its verdict. What is missing shows what is good; what was said shows its limit where there is room.</summary>
static class ReadingLines
{
    const string Steps = "▁▂▃▄▅▆▇█";
    const int MostValues = 24;

    public static IEnumerable<ShownLine> All(StartupView view, bool withLimits) =>
    [
        .. view.Phase == Phase.Signing ? view.Exceptions.Select(exception => new ShownLine($"! {exception}", Look.Caution)) : [],
        .. view.Readings.Select(reading => new ShownLine(Text(reading, withLimits, view.Language), LookOf(reading))),
        .. view.Series.Select(series => new ShownLine(Text(series, view.Language), series.IsMoving ? Look.Caution : Look.Plain)),
        .. view.Results.Select(result => new ShownLine(
            $"{Words.Sign(result.Verdict)} {result.Label} {result.Text}{(result.Judged.Length == 0 ? "" : $" - {result.Judged}")}{(withLimits && result.Limit.Length > 0 ? $": {result.Limit}" : "")}", LookOf(result.Verdict))),
    ];

    /// <summary>The sign of a reading: that of its verdict, unless it is doubtful or void.</summary>
    public static char Sign(ReadingLine reading) => reading.State switch
    {
        ReadingState.Doubtful => '?',
        ReadingState.Void => '-',
        _ => Words.Sign(reading.Verdict),
    };

    public static Look LookOf(ReadingLine reading) => reading.State switch
    {
        ReadingState.Missing => Look.Plain,
        ReadingState.Void => Look.Quiet,
        ReadingState.Doubtful => Look.Caution,
        _ => LookOf(reading.Verdict),
    };

    static string Text(ReadingLine reading, bool withLimits, Language language)
    {
        IEnumerable<string> remarks = ((string[])[reading.Judged, Words.Of(reading.State, language), reading.Found.Length == 0 ? "" : language.Text("found {0}", reading.Found)]).Where(remark => remark.Length > 0);
        string text = $"{Sign(reading)} {reading.Label} {reading.Text}{(remarks.Any() ? $" - {string.Join(", ", remarks)}" : "")}";
        return reading.State == ReadingState.Missing ? reading.Good.Length == 0 ? text : $"{Sign(reading)} {reading.Label}: {language.Text("good")}: {reading.Good}"
            : withLimits && reading.Limit.Length > 0 ? $"{text}: {reading.Limit}" : text;
    }

    /// <summary>How the values of a series went, from their lowest to their highest.</summary>
    static string Text(SeriesLine series, Language language)
    {
        double[] values = [.. series.Values.TakeLast(MostValues)];
        (double low, double high) = (values.Min(), values.Max());
        string strip = string.Concat(values.Select(value => Steps[high > low ? (int)Math.Round((value - low) / (high - low) * (Steps.Length - 1)) : Steps.Length / 2]));
        return FormattableString.Invariant($"{series.Label} {strip} {series.Values.Length} {language.Text("values")}{(series.IsMoving ? $", {language.Text("still moving")}" : "")}");
    }

    static Look LookOf(Verdict? verdict) => verdict switch
    {
        Verdict.Pass => Look.Good,
        Verdict.ConditionalPass or Verdict.CannotTell => Look.Caution,
        Verdict.ConditionalFail or Verdict.Fail => Look.Bad,
        _ => Look.Plain,
    };
}
