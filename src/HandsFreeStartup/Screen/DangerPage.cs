using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Screen;

/// <summary>Danger takes the whole screen: what it is and how long to wait in large letters, then what to do, in order, and what leads on.</summary>
static class DangerPage
{
    const int Margin = 2;
    const int Gap = 4;
    const int RowsBelow = 3;

    public static IReadOnlyList<ScreenRow> Of(Alarm alarm, ConsoleState state, int width, int height)
    {
        StartupView view = state.Moment.View;
        int inner = width - 2 * Margin;
        IReadOnlyList<ScreenRow> title = Title(alarm, view, inner);
        IReadOnlyList<ScreenRow> next = Pages.Fit(
        [
            new(view.Question is null ? "" : $"{view.Language.Text("NEXT")}: {view.Question}", Look.Alarm),
            .. FrameLines.Say(view).Select(line => line with { Look = Look.Alarm }),
        ], inner, Math.Max(2, height / 6), state.Page);
        IReadOnlyList<ScreenRow> open = Pages.Fit(FrameLines.Open(view), inner, 2, state.Page);
        int room = height - title.Count - next.Count - open.Count - RowsBelow - 3;
        IReadOnlyList<ScreenRow> lines = Pages.Fit(
            [.. alarm.Lines.Select((line, index) => new ShownLine(FormattableString.Invariant($"{index + 1}. {line}"))), .. state.Messages.Skip(state.Messages.Count - 1)],
            inner, room, state.Page, indent: 3);
        ScreenRow[] above = [.. ((ScreenRow[])[ScreenRow.Empty, .. title, ScreenRow.Empty, .. lines, ScreenRow.Empty, .. next, .. open]).Select(row => Red(row, width))];
        return
        [
            .. above,
            .. Enumerable.Repeat(Red(ScreenRow.Empty, width), Math.Max(0, height - above.Length - RowsBelow)),
            .. ConsolePage.Filled(Pages.Fit([FrameLines.Ear(state.Moment.Ear, view.IsPaused, view.Language)], width, 1, state.Page), 1),
            ScreenRow.Of(view.Language.Text(state.Hint.Text), state.Hint.Look),
            FrameLines.Keys(width),
        ];
    }

    /// <summary>One urgent sentence.</summary>
    public static IReadOnlyList<ScreenRow> Warning(string text, int width, int height)
    {
        IReadOnlyList<ScreenRow> lines = Pages.Fit([new(text)], Math.Max(1, width - 2 * Margin), Math.Max(1, height - 1), 0);
        ScreenRow[] above = [Red(ScreenRow.Empty, width), .. lines.Select(row => Red(row, width))];
        return [.. above, .. Enumerable.Repeat(Red(ScreenRow.Empty, width), Math.Max(0, height - above.Length - 1)), FrameLines.Keys(width)];
    }

    static IReadOnlyList<ScreenRow> Title(Alarm alarm, StartupView view, int width)
    {
        ScreenRow[] name = [ScreenRow.Of($"*** {alarm.Title} ***"), .. BigLetters.Lines(alarm.Title, width).Select(row => ScreenRow.Of(row))];
        if (view.Timers.Where(timer => timer.Remaining > TimeSpan.Zero).MinBy(timer => timer.Remaining) is not { } wait)
        {
            return name;
        }

        ScreenRow[] count = [ScreenRow.Of($"{wait.Title}, {view.Language.Text("left")}:"), .. BigLetters.Line(Durations.Text(wait.Remaining)).Select(row => ScreenRow.Of(row))];
        int left = name.Max(row => row.Text.Length) + Gap;
        return left + count.Max(row => row.Text.Length) <= width ? ScreenRow.Beside(name, left, count) : [.. name, .. count];
    }

    static ScreenRow Red(ScreenRow row, int width) => ScreenRow.Of($"{new string(' ', Margin)}{row.Text}".PadRight(width), Look.Alarm);
}
