using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Showing;

namespace HandsFreeStartup.Screen;

/// <summary>The last value and the running timer in large digits, and beside them every reading and result of the stage with its limits.</summary>
static class NumberBlock
{
    const int DigitRows = BigLetters.Height + 2;
    const int LeastColumn = 26;
    const int TimerColumn = 20;

    /// <summary>Rows it would like, at most <paramref name="most"/>.</summary>
    public static int Rows(StartupView view, int width, int most)
    {
        int list = Pages.Fit(ReadingLines.All(view, withLimits: true), Math.Max(1, width - Left(view)), int.MaxValue, 0, indent: 2).Count;
        return Math.Clamp(Math.Max(Left(view) > 0 ? DigitRows : 0, list), 0, Math.Max(0, Math.Max(Left(view) > 0 ? DigitRows : 0, most / 2)));
    }

    /// <summary>The block.</summary>
    public static IReadOnlyList<ScreenRow> Of(StartupView view, int width, int height, int page)
    {
        int left = Left(view);
        int room = width - left;
        IReadOnlyList<ScreenRow> list = Pages.Fit(ReadingLines.All(view, withLimits: true), room, height, page, indent: 2);
        bool isCrowded = Pages.Fit(ReadingLines.All(view, withLimits: true), room, int.MaxValue, page, indent: 2).Count > height;
        return ScreenRow.Beside(Digits(view, height), left, isCrowded ? Pages.Fit(ReadingLines.All(view, withLimits: false), room, height, page, indent: 2) : list);
    }

    static int Left(StartupView view) => ValueColumn(view) + (First(view) is null ? 0 : TimerColumn);

    static int ValueColumn(StartupView view) => view.Last is { } last ? Math.Max(Math.Max(LeastColumn, BigLetters.Width * last.Value.Length + 2), Label(last).Length + 2) : 0;

    static string Label(ReadingLine last) => $"{last.Label.ToUpperInvariant()}, {last.UnitSymbol}";

    /// <summary>The timer that ends first among those that run, or one that is over.</summary>
    static TimerLine? First(StartupView view) =>
        view.Timers.Where(timer => timer.Remaining > TimeSpan.Zero).MinBy(timer => timer.Remaining) ?? view.Timers.FirstOrDefault();

    static IReadOnlyList<ScreenRow> Digits(StartupView view, int height)
    {
        IReadOnlyList<ScreenRow> value = view.Last is { } last ? Value(last, ValueColumn(view), height, view.Language) : [];
        return First(view) is { } timer ? ScreenRow.Beside(value, ValueColumn(view), Timer(timer, view)) : value;
    }

    static IReadOnlyList<ScreenRow> Value(ReadingLine last, int width, int height, Language language)
    {
        Look look = ReadingLines.LookOf(last);
        string verdict = string.Join(", ", ((string[])[last.Judged, Words.Of(last.State, language)]).Where(word => word.Length > 0));
        return
        [
            ScreenRow.Of(Label(last), Look.Strong),
            .. BigLetters.Line(last.Value).Select(row => ScreenRow.Of(row, look)),
            .. Pages.Fit([new($"{ReadingLines.Sign(last)} {verdict}".TrimEnd(), look)], width - 2, Math.Max(1, height - BigLetters.Height - 1), 0),
        ];
    }

    static IReadOnlyList<ScreenRow> Timer(TimerLine timer, StartupView view) =>
    [
        .. Pages.Fit([new($"{view.Language.Text("TIMER")} {timer.Title}", Look.Strong)], TimerColumn - 2, 1, 0),
        .. BigLetters.Line(Durations.Text(timer.Remaining)).Select(row => ScreenRow.Of(row, Look.Strong)),
        ScreenRow.Of(timer.Remaining > TimeSpan.Zero ? view.Language.Text("left of {0}", Durations.Text(timer.Total)) : view.Language.Text("over"), Look.Strong),
        .. view.Timers.Where(other => other != timer).SelectMany(other => Pages.Fit([new(StepLines.Text(other, view.Language))], TimerColumn - 2, 2, 0)),
    ];
}
