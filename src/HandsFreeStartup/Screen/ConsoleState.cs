using System.Collections.Immutable;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Session;

namespace HandsFreeStartup.Screen;

/// <summary>What the console shows: the last moment, and what stays of those before it.</summary>
/// <param name="Moment">The last moment.</param>
/// <param name="Heard">What was said or typed last, or null.</param>
/// <param name="Messages">Everything the tool told, the newest last.</param>
/// <param name="Page">Grows with time and with the key of the next page.</param>
/// <param name="Back">How many messages the list is scrolled back.</param>
/// <param name="Hint">The line above the keys.</param>
public sealed record ConsoleState(Moment Moment, Evidence? Heard, ImmutableList<ShownLine> Messages, int Page, int Back, ShownLine Hint)
{
    const int MostMessages = 500;

    /// <summary>What can be done by keys, while nothing else stands there.</summary>
    public static ShownLine UsualHint { get; } = new("Enter: type what you would say   PgUp PgDn: messages   Ctrl+Q: leave", Look.Quiet);

    /// <summary>The first moment.</summary>
    public static ConsoleState Of(Moment moment) => new ConsoleState(moment, null, [], 0, 0, UsualHint).With(moment);

    static string Caution(StartupView view) => view.Language.Text("Caution: {0}", view.Caution ?? "");

    /// <summary>A further moment. What stands on the screen anyway is no message.</summary>
    public ConsoleState With(Moment moment)
    {
        StartupView view = moment.View;
        IEnumerable<ShownLine> news = moment.Said
            .Where(one => !one.Text.Contains(view.Do, StringComparison.Ordinal) && one.Text != Caution(view))
            .Select(one => new ShownLine($"{(one.IsUrgent ? "!!" : ">")} {one.Text}", one.IsUrgent ? Look.Bad : Look.Plain));
        ImmutableList<ShownLine> messages = Messages.AddRange(news);
        return this with
        {
            Moment = moment,
            Heard = moment.Heard ?? Heard,
            Messages = messages.Count > MostMessages ? messages.RemoveRange(0, messages.Count - MostMessages) : messages,
            Page = view.StepTitle == Moment.View.StepTitle && view.Phase == Moment.View.Phase ? Page : 0,
            Back = messages.Count > Messages.Count ? 0 : Back,
        };
    }
}
