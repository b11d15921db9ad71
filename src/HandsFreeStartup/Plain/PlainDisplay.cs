using System.Collections.Immutable;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Session;
using HandsFreeStartup.Showing;

namespace HandsFreeStartup.Plain;

/// <summary>The start-up as lines, for output that is no terminal and for those who want no screen: only what is new is written.</summary>
/// <param name="output">Where the lines go.</param>
public sealed class PlainDisplay(TextWriter output) : IDisplay
{
    string _step = "";
    string _say = "";
    string _open = "nothing";
    ImmutableArray<string> _exceptions = [];
    bool _markTold;

    /// <inheritdoc/>
    public void Show(Moment moment)
    {
        StartupView view = moment.View;
        if (view.Mark is { } mark && !_markTold)
        {
            _markTold = true;
            output.WriteLine($"{view.Language.Text(mark)}, {view.Language.Text("NO RECORD OF A START-UP")}");
        }

        if (moment.Heard is { } heard)
        {
            output.WriteLine(Words.Of(heard, view.Language));
        }

        WriteIfNew(ref _step, FormattableString.Invariant($"[{view.StepNumber}/{view.StepCount}] {view.Section}: {view.StepTitle}"), "");
        foreach (Announcement said in moment.Said)
        {
            output.WriteLine($"  {(said.IsUrgent ? "!!" : ">")} {said.Text}");
        }

        WriteExceptions(view.Phase == Phase.Signing ? view.Exceptions : []);
        WriteIfNew(ref _open, view.Open.IsEmpty ? "nothing" : string.Join(", ", view.Open), "  open: ");
        WriteIfNew(ref _say, string.Join(" | ", view.ListeningFor), "  say: ");
        output.Flush();
    }

    /// <inheritdoc/>
    public void Warn(string text)
    {
        output.WriteLine($"  !! {text}");
        output.Flush();
    }

    void WriteExceptions(ImmutableArray<string> exceptions)
    {
        foreach (string exception in exceptions.Except(_exceptions))
        {
            output.WriteLine($"  exception: {exception}");
        }

        _exceptions = exceptions;
    }

    void WriteIfNew(ref string last, string now, string label)
    {
        if (now != last && now.Length > 0)
        {
            output.WriteLine(label + now);
        }

        last = now;
    }
}
