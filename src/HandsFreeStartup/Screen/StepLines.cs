using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Screen;

/// <summary>The step in hand: its title, question and safety note before the instruction, and the reason last.</summary>
static class StepLines
{
    public static IEnumerable<ShownLine> Of(StartupView view) =>
    [
        new(view.StepTitle.ToUpperInvariant(), Look.Strong),
        new(view.Question is null ? "" : $"QUESTION: {view.Question}", Look.Strong),
        new(view.Caution is null ? "" : $"CAUTION: {view.Caution}", Look.Caution),
        new(view.Do),
        new(view.Why is null ? "" : $"Why: {view.Why}", Look.Quiet),
    ];

    /// <summary>A timer as text.</summary>
    public static string Text(TimerLine timer) => timer.Remaining > TimeSpan.Zero
        ? $"TIMER {timer.Title}: {Durations.Text(timer.Remaining)} left of {Durations.Text(timer.Total)}"
        : $"TIMER {timer.Title}: over";
}
