using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Session;
using HandsFreeStartup.Showing;

namespace HandsFreeStartup.Screen;

/// <summary>What stands around the step: where we are, what is open, what may be said, what was heard and said, how the ear does, which keys there are.</summary>
static class FrameLines
{
    const int LevelBlocks = 10;
    const double QuietestShown = -60;

    public static ShownLine Head(StartupView view, int width)
    {
        string place = FormattableString.Invariant($" Step {view.StepNumber} of {view.StepCount}  {view.Section}");
        string right = view.IsDemonstration ? "DEMONSTRATION, NO RECORD OF A START-UP " : $"{view.Site} ";
        int room = width - place.Length - 2;
        return new ShownLine(room < right.Length && !view.IsDemonstration ? place.PadRight(width) : place.PadRight(Math.Max(place.Length + 1, width - right.Length)) + right, Look.Heading);
    }

    public static IReadOnlyList<ShownLine> Open(StartupView view, int width, int height)
    {
        string exceptions = view.Exceptions.IsEmpty ? "" : FormattableString.Invariant($"  EXCEPTIONS: {view.Exceptions.Length}");
        if (view.Open.IsEmpty)
        {
            return [new ShownLine($"OPEN: nothing{exceptions}", view.Exceptions.IsEmpty ? Look.Quiet : Look.Caution)];
        }

        string text = FormattableString.Invariant($"OPEN ({view.Open.Length}): {string.Join(", ", view.Open)}{exceptions}");
        return [.. TextLines.Wrap(text, width).AtMost(height, width).Select(line => new ShownLine(line, Look.Caution))];
    }

    public static IReadOnlyList<ShownLine> Say(StartupView view, int width, int height) => view.ListeningFor.IsEmpty
        ? []
        : [.. TextLines.Wrap($"SAY: {string.Join(" | ", view.ListeningFor)}", width).AtMost(height, width).Select(line => new ShownLine(line, Look.Strong))];

    public static IReadOnlyList<ShownLine> Heard(Evidence? heard, int width) => heard is null
        ? []
        : [.. TextLines.Wrap(Words.Of(heard), width).AtMost(1, width).Select(line => new ShownLine(line, heard.Certainty switch
        {
            Certainty.Green => Look.Good,
            Certainty.Amber => Look.Caution,
            _ => Look.Bad,
        }))];

    /// <summary>What the tool says; the prompt of the step stands in full above and is left out.</summary>
    public static IReadOnlyList<ShownLine> Said(IEnumerable<Announcement> said, StartupView view, int width, int height)
    {
        Announcement[] news = [.. said.Where(one => !one.Text.Contains(view.Do, StringComparison.Ordinal) && one.Text != $"Caution: {view.Caution}")];
        return [.. TextLines.Wrap(string.Join(' ', news.Select(one => one.Text)), width).AtMost(height, width)
            .Select(line => new ShownLine(line, news.Any(one => one.IsUrgent) ? Look.Bad : Look.Plain))];
    }

    public static ShownLine Ear(EarView ear, bool isPaused)
    {
        string words = Words.Of(ear, isPaused);
        bool isWell = ear.Sound == Speech.Listening.SoundState.Good;
        if (ear.State is EarState.Off or EarState.Over)
        {
            return new ShownLine(words, Look.Quiet);
        }

        int blocks = (int)Math.Clamp(Math.Round((ear.Level - QuietestShown) / -QuietestShown * LevelBlocks), 0, LevelBlocks);
        return new ShownLine($"EAR [{new string('#', blocks)}{new string('.', LevelBlocks - blocks)}] {words}", isWell ? Look.Plain : Look.Bad);
    }

    public static ShownLine Keys(int width)
    {
        CommandWord[] first = [CommandWord.EmergencyStop, CommandWord.GasSmell, CommandWord.Done, CommandWord.Next, CommandWord.Disregard, CommandWord.Help];
        string line = "";
        foreach (Command command in first.Select(Commands.Of).Concat(Commands.All.Where(command => !first.Contains(command.Word))))
        {
            string key = $" {command.Key} {command.Id} ";
            line = line.Length + key.Length <= width ? line + key : line;
        }

        return new ShownLine(line.PadRight(width), Look.Heading);
    }

    public static IReadOnlyList<ShownLine> Alarm(Alarm alarm, StartupView view, int width) =>
    [
        new("", Look.Alarm),
        .. TextLines.Wrap($"*** {alarm.Title} ***", width - 4).Select(line => Inset(line)),
        new("", Look.Alarm),
        .. alarm.Lines.SelectMany((line, index) => TextLines.Wrap(FormattableString.Invariant($"{index + 1}. {line}"), width - 4, indent: 3)).Select(line => Inset(line)),
        new("", Look.Alarm),
        .. TextLines.Wrap(view.Question ?? "", width - 4).Select(line => Inset(line)),
        .. TextLines.Wrap(view.ListeningFor.IsEmpty ? "" : $"SAY: {string.Join(" | ", view.ListeningFor)}", width - 4).Select(line => Inset(line)),
        .. Open(view, width - 4, 2).Select(line => Inset(line.Text)),
    ];

    public static IReadOnlyList<ShownLine> Warning(string text, int width) => [new("", Look.Alarm), .. TextLines.Wrap(text, width - 4).Select(Inset)];

    static ShownLine Inset(string text) => new($"  {text}", Look.Alarm);
}
