using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Screen;

/// <summary>The step in hand. Where room is short the reason goes first, then the end of the instruction; the safety note and the question stay.</summary>
static class StepLines
{
    public static IReadOnlyList<ShownLine> Of(StartupView view, int width, int height)
    {
        ShownLine[] title = Lines(view.StepTitle.ToUpperInvariant(), Look.Strong, width);
        ShownLine[] caution = Lines(view.Caution is null ? "" : $"CAUTION: {view.Caution}", Look.Caution, width);
        ShownLine[] question = Lines(view.Question is null ? "" : $"QUESTION: {view.Question}", Look.Strong, width);
        ShownLine[] timers = [.. view.Timers.SelectMany(timer => Lines(Timer(timer), Look.Strong, width))];
        int room = Math.Max(1, height - title.Length - caution.Length - question.Length - timers.Length);
        ShownLine[] work = [.. TextLines.Wrap(view.Do, width).AtMost(room, width).Select(text => new ShownLine(text))];
        ShownLine[] why = Lines(view.Why is null ? "" : $"Why: {view.Why}", Look.Quiet, width);
        ShownLine[] must = [.. title, .. work, .. caution, .. question, .. timers];
        return must.Length + why.Length <= height ? [.. must, .. why] : must;
    }

    static string Timer(TimerLine timer) => timer.Remaining > TimeSpan.Zero
        ? $"TIMER {timer.Title}: {Durations.Text(timer.Remaining)} left of {Durations.Text(timer.Total)}"
        : $"TIMER {timer.Title}: over";

    static ShownLine[] Lines(string text, Look look, int width) => [.. TextLines.Wrap(text, width).Select(line => new ShownLine(line, look))];
}
