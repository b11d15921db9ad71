using HandsFreeStartup.Procedure;

namespace HandsFreeStartup.Screen;

/// <summary>The whole console as rows, for any size: pure, so that it is the same on every terminal and in every test.</summary>
public static class ConsolePage
{
    /// <summary>Below this many columns only the large line and the safety line are left.</summary>
    public const int LeastWidth = 60;

    /// <summary>Below this many rows only the large line and the safety line are left.</summary>
    public const int LeastHeight = 20;

    const int Roomy = 24;
    const int Spacious = 36;
    const int RowsBelow = 4;

    /// <summary>The rows.</summary>
    /// <param name="state">What is shown.</param>
    /// <param name="width">Columns.</param>
    /// <param name="height">Rows.</param>
    /// <returns>Exactly <paramref name="height"/> rows of <paramref name="width"/> columns.</returns>
    public static IReadOnlyList<ScreenRow> Of(ConsoleState state, int width, int height)
    {
        (width, height) = (Math.Max(0, width), Math.Max(0, height));
        bool isSmall = width < LeastWidth || height < LeastHeight;
        IReadOnlyList<ScreenRow> rows = state.Moment.View.Alarm is { } alarm
            ? isSmall ? SmallPage.Danger(alarm, state, width, height) : DangerPage.Of(alarm, state, width, height)
            : isSmall ? SmallPage.Of(state, width, height) : Working(state, width, height);
        return [.. rows.Concat(Enumerable.Repeat(ScreenRow.Empty, height)).Take(height).Select(row => row.Cut(width))];
    }

    static IReadOnlyList<ScreenRow> Working(ConsoleState state, int width, int height)
    {
        StartupView view = state.Moment.View;
        int page = state.Page;
        bool isRoomy = height >= Roomy;
        bool isDouble = height >= Spacious && 2 * BigLetters.Width * view.Imperative.Length < width;
        ScreenRow[] large = [.. (isDouble ? BigLetters.DoubleLine(view.Imperative) : BigLetters.Lines(view.Imperative, width - 1).Take(2 * BigLetters.Height)).Select(row => ScreenRow.Of($" {row}", Look.Strong))];
        IReadOnlyList<ScreenRow> open = Pages.Fit(FrameLines.Open(view), width, isRoomy ? 2 : 1, page);
        IReadOnlyList<ScreenRow> say = Pages.Fit(FrameLines.Say(view), width, isRoomy ? 2 : 1, page);
        int room = height - 1 - large.Length - open.Count - say.Count - RowsBelow;
        int messages = Math.Clamp(room / 4, 1, 8);
        int most = room - messages;
        int numbers = NumberBlock.Rows(view, width, most - 2);
        IReadOnlyList<ScreenRow> step = Pages.Fit(StepLines.Of(view), width, most - numbers, page);
        int rest = most - step.Count;
        return
        [
            FrameLines.Head(view, width),
            .. large,
            .. step,
            .. Filled(NumberBlock.Of(view, width, rest, page), rest),
            .. open,
            .. say,
            .. Filled(MessageList.Of(state, width, messages), messages),
            .. Filled(Pages.Fit(FrameLines.Heard(state.Heard, view.Language), width, 1, page), 1),
            .. Filled(Pages.Fit([FrameLines.Ear(state.Moment.Ear, view.IsPaused, view.Language)], width, 1, page), 1),
            ScreenRow.Of(view.Language.Text(state.Hint.Text), state.Hint.Look),
            FrameLines.Keys(width),
        ];
    }

    /// <summary>Exactly so many rows.</summary>
    internal static IEnumerable<ScreenRow> Filled(IReadOnlyList<ScreenRow> rows, int height) =>
        rows.Concat(Enumerable.Repeat(ScreenRow.Empty, Math.Max(0, height))).Take(Math.Max(0, height));
}
