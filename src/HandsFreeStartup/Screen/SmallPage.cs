using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Screen;

/// <summary>Where there is hardly any room: the one thing to do, as large as it can be, and the keys that stop everything.</summary>
static class SmallPage
{
    public static IReadOnlyList<ScreenRow> Of(ConsoleState state, int width, int height) =>
        Above(state.Moment.View.Imperative, Look.Strong, state, width, height);

    public static IReadOnlyList<ScreenRow> Danger(Alarm alarm, ConsoleState state, int width, int height)
    {
        TimerLine? wait = state.Moment.View.Timers.Where(timer => timer.Remaining > TimeSpan.Zero).MinBy(timer => timer.Remaining);
        string left = wait is null ? "" : $" {Durations.Text(wait.Remaining)}";
        return Above($"{alarm.Title}{left}", Look.Alarm, state, width, height, alarm.Lines[0].Shown);
    }

    static IReadOnlyList<ScreenRow> Above(string text, Look look, ConsoleState state, int width, int height, string? first = null)
    {
        string keys = $"{Commands.Of(CommandWord.EmergencyStop).Key} {state.Moment.View.Language.Text("EMERGENCY STOP")}  {Commands.Of(CommandWord.GasSmell).Key} {state.Moment.View.Language.Text("GAS SMELL")}";
        IReadOnlyList<ScreenRow> safety = Pages.Fit([new(keys, Look.Heading)], width, Math.Max(1, Math.Min(2, height - 1)), state.Page);
        int room = height - safety.Count;
        IReadOnlyList<string> large = BigLetters.Lines(text, width);
        IReadOnlyList<ScreenRow> letters = large.Count <= room && large.All(row => row.Length <= width) && text.Split(' ').All(word => BigLetters.Width * word.Length <= width)
            ? [.. large.Select(row => ScreenRow.Of(row, look))]
            : Pages.Fit([new(text, look)], width, room, state.Page);
        IReadOnlyList<ScreenRow> below = Pages.Fit([new(first ?? "", look)], width, room - letters.Count, state.Page);
        return [.. ConsolePage.Filled([.. letters, .. below], room), .. safety];
    }
}
