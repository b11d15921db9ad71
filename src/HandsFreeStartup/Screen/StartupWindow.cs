using System.Collections.Immutable;
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
    /// <summary>How long a page of a long text stays before the next one takes its turn.</summary>
    static readonly TimeSpan PageTime = TimeSpan.FromSeconds(6);

    static readonly ImmutableArray<(Key Key, CommandWord Word)> CommandKeys =
        [.. Procedure.Hearing.Commands.All.Select(command => (Key.TryParse(command.Key, out Key? key) ? key : throw new InvalidOperationException($"No such key: {command.Key}"), command.Word))];

    readonly Action<Input> _post;
    readonly Action _leave;
    readonly RowsView _page;
    readonly LinesView _prompt;
    readonly TextField _entry;
    ConsoleState? _state;
    string? _warning;
    object? _turning;
    bool _keysOffered;
    bool _asksToLeave;

    /// <summary>An empty window.</summary>
    /// <param name="post">Takes what is typed.</param>
    /// <param name="leave">Asks for the end.</param>
    /// <param name="looks">Colors.</param>
    public StartupWindow(Action<Input> post, Action leave, Looks looks)
    {
        (_post, _leave) = (post, leave);
        BorderStyle = LineStyle.None;
        (Width, Height) = (Dim.Fill(), Dim.Fill());
        _page = new RowsView(looks, Rows) { Width = Dim.Fill(), Height = Dim.Fill() };
        _prompt = new LinesView(looks) { Y = Pos.AnchorEnd(2), Width = 6, Height = 1, Visible = false };
        _entry = new TextField { X = 6, Y = Pos.AnchorEnd(2), Width = Dim.Fill(), Height = 1, Visible = false };
        _prompt.Show((_, _) => [new ShownLine($"{_state?.Moment.View.Language.Text("TYPE") ?? "TYPE"}: ", Look.Strong)]);
        Add(_page, _prompt, _entry);
    }

    /// <inheritdoc/>
    public override void EndInit()
    {
        base.EndInit();
        _turning = App?.AddTimeout(PageTime, () =>
        {
            Change(state => state with { Page = state.Page + 1 });
            return true;
        });
    }

    /// <summary>Shows a moment; on the thread of the screen only.</summary>
    public void Show(Moment moment)
    {
        _warning = null;
        _state = _state?.With(moment) ?? ConsoleState.Of(moment);
        _page.SetNeedsDraw();
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
        else if (key == Key.PageUp)
        {
            Change(state => state with { Back = Math.Min(state.Back + 1, Math.Max(0, state.Messages.Count - 1)) });
        }
        else if (key == Key.PageDown)
        {
            Change(state => state.Back > 0 ? state with { Back = state.Back - 1 } : state with { Page = state.Page + 1 });
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
        _warning = text;
        _page.SetNeedsDraw();
    }

    /// <inheritdoc/>
    protected override void Dispose(bool disposing)
    {
        if (disposing && _turning is not null)
        {
            App?.RemoveTimeout(_turning);
        }

        base.Dispose(disposing);
    }

    IReadOnlyList<ScreenRow> Rows(int width, int height) =>
        _warning is { } warning ? DangerPage.Warning(warning, width, height)
        : _state is { } state ? ConsolePage.Of(_asksToLeave ? state with { Hint = LeaveHint } : state, width, height)
        : [];

    void Change(Func<ConsoleState, ConsoleState> change)
    {
        _state = _state is null ? null : change(_state);
        _page.SetNeedsDraw();
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
        (_prompt.Visible, _entry.Visible) = (true, true);
        _entry.SetFocus();
    }

    void CloseEntry()
    {
        _entry.Text = "";
        (_prompt.Visible, _entry.Visible) = (false, false);
    }

    /// <summary>Asks in the window itself: a dialog of its own would take the keys, those of an emergency too.</summary>
    void AskToLeave()
    {
        CloseEntry();
        _asksToLeave = true;
        _page.SetNeedsDraw();
    }

    void StopAskingToLeave()
    {
        _asksToLeave = false;
        _page.SetNeedsDraw();
    }

    static ShownLine LeaveHint { get; } = new("LEAVE? All is kept; go on later with start --resume.  Y: leave  Esc: stay", Look.Caution);
}
