using System.Globalization;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Session;
using HandsFreeStartup.Showing;

namespace HandsFreeStartup.Screen;

/// <summary>What stands around the step: where we are, what is open, what may be said, what was heard, how the ear does, which keys there are.</summary>
static class FrameLines
{
    const int LevelBlocks = 10;
    const int ProgressBlocks = 10;
    const double QuietestShown = -60;

    public static ScreenRow Head(StartupView view, int width)
    {
        string stage = view.Stage.Length == 0 || view.StepTitle.Contains(view.Stage, StringComparison.OrdinalIgnoreCase) ? "" : $", {view.Stage}";
        int done = (int)Math.Round((double)ProgressBlocks * (view.StepNumber - 1) / Math.Max(1, view.StepCount));
        string place = FormattableString.Invariant($" {Place(view)} [{new string('#', done)}{new string('.', ProgressBlocks - done)}] {view.Section}{stage}");
        string right = view.Mark is { } mark ? $"{view.Language.Text(mark)}, {view.Language.Text("NO RECORD")} " : $"{view.Site} ";
        int room = width - right.Length - 1;
        return ScreenRow.Of(place.Length <= room ? place.PadRight(width - right.Length) + right : view.Mark is not null ? place[..Math.Max(0, Math.Min(place.Length, room))].PadRight(width - right.Length) + right : place.PadRight(width), Look.Heading);
    }

    static string Place(StartupView view) =>
        view.Language.Text("Step {0} of {1}", view.StepNumber.ToString(CultureInfo.InvariantCulture), view.StepCount.ToString(CultureInfo.InvariantCulture));

    public static IEnumerable<ShownLine> Open(StartupView view)
    {
        Language language = view.Language;
        string exceptions = view.Exceptions.IsEmpty ? "" : FormattableString.Invariant($"  {language.Text("EXCEPTIONS")}: {view.Exceptions.Length}");
        yield return view.Open.IsEmpty
            ? new ShownLine($"{language.Text("OPEN")}: {language.Text("nothing")}{exceptions}", view.Exceptions.IsEmpty ? Look.Quiet : Look.Caution)
            : new ShownLine(FormattableString.Invariant($"{language.Text("OPEN")} ({view.Open.Length}): {string.Join(", ", view.Open)}{exceptions}"), Look.Caution);
    }

    public static IEnumerable<ShownLine> Say(StartupView view) =>
        [new ShownLine(view.ListeningFor.IsEmpty ? "" : $"{view.Language.Text("SAY")}: {string.Join(" | ", view.ListeningFor)}", Look.Strong)];

    public static IEnumerable<ShownLine> Heard(Evidence? heard, Language language) => heard is null
        ? []
        : [new ShownLine(Words.Of(heard, language), heard.Certainty switch
        {
            Certainty.Green => Look.Good,
            Certainty.Amber => Look.Caution,
            _ => Look.Bad,
        })];

    public static ShownLine Ear(EarView ear, bool isPaused, Language language)
    {
        string words = Words.Of(ear, isPaused, language);
        bool isWell = ear.Sound == Speech.Listening.SoundState.Good;
        if (ear.State is EarState.Off or EarState.Over)
        {
            return new ShownLine(words, Look.Quiet);
        }

        int blocks = (int)Math.Clamp(Math.Round((ear.Level - QuietestShown) / -QuietestShown * LevelBlocks), 0, LevelBlocks);
        return new ShownLine($"{language.Text("EAR")} [{new string('#', blocks)}{new string('.', LevelBlocks - blocks)}] {words}", isWell ? Look.Plain : Look.Bad);
    }

    public static ScreenRow Keys(int width)
    {
        CommandWord[] first = [CommandWord.EmergencyStop, CommandWord.GasSmell, CommandWord.Done, CommandWord.Next, CommandWord.Disregard, CommandWord.Help];
        string line = "";
        foreach (Command command in first.Select(Commands.Of).Concat(Commands.All.Where(command => !first.Contains(command.Word))))
        {
            string key = $" {command.Key} {command.Id} ";
            line = line.Length + key.Length <= width ? line + key : line;
        }

        return ScreenRow.Of(line.PadRight(width), Look.Heading);
    }
}
