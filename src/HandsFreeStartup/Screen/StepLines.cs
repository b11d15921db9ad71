using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Screen;

/// <summary>The step in hand: its title, question and safety note before the instruction, and the reason last.</summary>
static class StepLines
{
    public static IEnumerable<ShownLine> Of(StartupView view) =>
    [
        new(view.StepTitle.ToUpperInvariant(), Look.Strong),
        new(view.Question is null ? "" : $"{view.Language.Text("QUESTION")}: {view.Question}", Look.Strong),
        new(view.Caution is null ? "" : $"{view.Language.Text("CAUTION")}: {view.Caution}", Look.Caution),
        new(view.Do),
        new(view.Why is null ? "" : $"{view.Language.Text("Why")}: {view.Why}", Look.Quiet),
    ];

    /// <summary>A timer as text.</summary>
    public static string Text(TimerLine timer, Language language) => timer.Remaining > TimeSpan.Zero
        ? $"{language.Text("TIMER")} {timer.Title}: {language.Text("{0} left of {1}", Durations.Text(timer.Remaining), Durations.Text(timer.Total))}"
        : $"{language.Text("TIMER")} {timer.Title}: {language.Text("over")}";
}
