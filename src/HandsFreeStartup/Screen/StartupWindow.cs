using System.Collections.Immutable;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Session;
using Terminal.Gui.Drawing;
using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;

namespace HandsFreeStartup.Screen;

/// <summary>The one window: shows moments, and posts what is typed. It never answers anything.</summary>
public sealed class StartupWindow : Runnable
{
    const int LowerRows = 8;

    static readonly ImmutableArray<(Key Key, CommandWord Word)> CommandKeys =
        [.. Procedure.Hearing.Commands.All.Select(command => (Key.TryParse(command.Key, out Key? key) ? key : throw new InvalidOperationException($"No such key: {command.Key}"), command.Word))];

    readonly Action<Input> _post;
    readonly Action _leave;
    readonly LinesView _head;
    readonly LinesView _step;
    readonly LinesView _open;
    readonly LinesView _readings;
    readonly LinesView _results;
    readonly LinesView _say;
    readonly LinesView _heard;
    readonly LinesView _said;
    readonly LinesView _ear;
    readonly LinesView _hint;
    readonly LinesView _alarm;
    readonly LinesView _prompt;
    readonly TextField _entry;
    Evidence? _lastHeard;
    ImmutableArray<Announcement> _lastSaid = [];
    bool _keysOffered;
    bool _asksToLeave;

    /// <summary>An empty window.</summary>
    /// <param name="post">Takes what is typed.</param>
    /// <param name="leave">Asks for the end.</param>
    /// <param name="looks">Colours.</param>
    public StartupWindow(Action<Input> post, Action leave, Looks looks)
    {
        (_post, _leave) = (post, leave);
        BorderStyle = LineStyle.None;
        (Width, Height) = (Dim.Fill(), Dim.Fill());
        _head = new LinesView(looks) { Width = Dim.Fill(), Height = 1 };
        _step = new LinesView(looks) { Y = 1, Width = Dim.Fill(), Height = Dim.Percent(33) };
        _open = new LinesView(looks) { Y = Pos.Bottom(_step), Width = Dim.Fill(), Height = 2 };
        _readings = new LinesView(looks) { Y = Pos.Bottom(_open), Width = Dim.Percent(50), Height = Dim.Fill(LowerRows) };
        _results = new LinesView(looks) { X = Pos.Right(_readings), Y = Pos.Top(_readings), Width = Dim.Fill(), Height = Dim.Fill(LowerRows) };
        _say = new LinesView(looks) { Y = Pos.AnchorEnd(8), Width = Dim.Fill(), Height = 2 };
        _heard = new LinesView(looks) { Y = Pos.AnchorEnd(6), Width = Dim.Fill(), Height = 1 };
        _said = new LinesView(looks) { Y = Pos.AnchorEnd(5), Width = Dim.Fill(), Height = 2 };
        _ear = new LinesView(looks) { Y = Pos.AnchorEnd(3), Width = Dim.Fill(), Height = 1 };
        _hint = new LinesView(looks) { Y = Pos.AnchorEnd(2), Width = Dim.Fill(), Height = 1 };
        _prompt = new LinesView(looks) { Y = Pos.AnchorEnd(2), Width = 6, Height = 1, Visible = false };
        _entry = new TextField { X = 6, Y = Pos.AnchorEnd(2), Width = Dim.Fill(), Height = 1, Visible = false };
        _alarm = new LinesView(looks) { Width = Dim.Fill(), Height = Dim.Fill(6), Visible = false };
        LinesView keys = new(looks) { Y = Pos.AnchorEnd(1), Width = Dim.Fill(), Height = 1 };
        keys.Show((width, _) => [FrameLines.Keys(width)]);
        ShowHint();
        _prompt.Show((_, _) => [new ShownLine("TYPE: ", Look.Strong)]);
        Add(_head, _step, _open, _readings, _results, _say, _heard, _said, _ear, _hint, _prompt, _entry, keys, _alarm);
    }

    /// <summary>Shows a moment; on the thread of the screen only.</summary>
    public void Show(Moment moment)
    {
        StartupView view = moment.View;
        _lastHeard = moment.Heard ?? _lastHeard;
        if (moment.Heard is not null || !moment.Said.IsEmpty)
        {
            _lastSaid = moment.Said;
        }

        _head.Show((width, _) => [FrameLines.Head(view, width)]);
        _step.Show((width, height) => StepLines.Of(view, width, height));
        _open.Show((width, height) => FrameLines.Open(view, width, height));
        _readings.Show((width, height) => ReadingLines.Readings(view, width - 1, height));
        _results.Show((width, height) => ReadingLines.Results(view, width, height));
        _say.Show((width, height) => FrameLines.Say(view, width, height));
        _heard.Show((width, _) => FrameLines.Heard(_lastHeard, width));
        _said.Show((width, height) => FrameLines.Said(_lastSaid, view, width, height));
        _ear.Show((_, _) => [FrameLines.Ear(moment.Ear, view.IsPaused)]);
        _alarm.Visible = view.Alarm is not null;
        if (view.Alarm is { } alarm)
        {
            _alarm.Show((width, _) => FrameLines.Alarm(alarm, view, width));
        }

        if (moment.Ear.OffersKeys && !_keysOffered)
        {
            OpenEntry();
        }

        _keysOffered = moment.Ear.OffersKeys;
    }

    /// <summary>Takes a key before any part of the window does.</summary>
    /// <returns>Whether it was meant for the window.</returns>
    public bool Take(Key key)
    {
        if (key == Key.C.WithCtrl)
        {
            _leave();
            return true;
        }

        CommandWord? order = CommandKeys.Where(known => known.Key == key).Select(known => (CommandWord?)known.Word).FirstOrDefault();
        if (_asksToLeave && !(order is { } safety && Procedure.Hearing.Commands.Of(safety).IsSafetyPhrase))
        {
            StopAskingToLeave();
            if (key == Key.Enter || key == Key.Y || key == Key.Y.WithShift)
            {
                _leave();
                return true;
            }

            if (key == Key.Esc)
            {
                return true;
            }
        }

        if (order is { } word)
        {
            _post(new Input.Pressed(word));
        }
        else if (key == Key.Q.WithCtrl)
        {
            AskToLeave();
        }
        else if (key == Key.Esc)
        {
            CloseEntry();
        }
        else if (key == Key.Enter)
        {
            Enter();
        }
        else if (!_entry.Visible && key.AsRune is { Value: > 32 } rune)
        {
            OpenEntry();
            _entry.Text = rune.ToString();
            _entry.MoveEnd();
        }
        else
        {
            return false;
        }

        return true;
    }

    /// <summary>Shows one urgent sentence over everything until the next moment is shown; on the thread of the screen only.</summary>
    public void Warn(string text)
    {
        _alarm.Show((width, _) => FrameLines.Warning(text, width));
        _alarm.Visible = true;
    }

    void Enter()
    {
        if (!_entry.Visible)
        {
            OpenEntry();
            return;
        }

        string line = _entry.Text.Trim();
        CloseEntry();
        if (line.Length > 0)
        {
            _post(new Input.Typed(line));
        }
    }

    void OpenEntry()
    {
        (_prompt.Visible, _entry.Visible, _hint.Visible) = (true, true, false);
        _entry.SetFocus();
    }

    void CloseEntry()
    {
        _entry.Text = "";
        (_prompt.Visible, _entry.Visible, _hint.Visible) = (false, false, true);
    }

    /// <summary>Asks in the window itself: a dialog of its own would take the keys, those of an emergency too.</summary>
    void AskToLeave()
    {
        CloseEntry();
        _asksToLeave = true;
        _hint.Show((_, _) => [new ShownLine("LEAVE? All is kept; go on later with start --resume.  Y: leave  Esc: stay", Look.Caution)]);
    }

    void StopAskingToLeave()
    {
        _asksToLeave = false;
        ShowHint();
    }

    void ShowHint() => _hint.Show((_, _) => [new ShownLine("Enter: type what you would say   Ctrl+W: tell me more   Ctrl+Q: leave", Look.Quiet)]);
}
