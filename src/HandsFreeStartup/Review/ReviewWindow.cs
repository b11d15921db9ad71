using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Reports.Review;
using HandsFreeStartup.Screen;
using Terminal.Gui.Drawing;
using Terminal.Gui.Input;
using Terminal.Gui.ViewBase;
using Terminal.Gui.Views;

namespace HandsFreeStartup.Review;

/// <summary>The findings of one record: a list, the chosen one in full, and the keys to hear it, to accept and to return.</summary>
public sealed class ReviewWindow : Runnable
{
    const int DetailRows = 8;

    readonly LinesView _head;
    readonly LinesView _list;
    readonly LinesView _detail;
    readonly LinesView _message;
    readonly LinesView _prompt;
    readonly TextField _entry;
    JobReview _review;
    string _lead;
    int _chosen;
    int _clip;
    string _said = "";
    ReviewOutcome? _outcome;

    /// <summary>Shows a record.</summary>
    /// <param name="review">Its review.</param>
    /// <param name="lead">Who reviews; empty if it is still to be asked.</param>
    /// <param name="looks">Colors.</param>
    public ReviewWindow(JobReview review, string lead, Looks looks)
    {
        (_review, _lead) = (review, lead);
        BorderStyle = LineStyle.None;
        (Width, Height) = (Dim.Fill(), Dim.Fill());
        _head = new LinesView(looks) { Width = Dim.Fill(), Height = 2 };
        _list = new LinesView(looks) { Y = 2, Width = Dim.Fill(), Height = Dim.Fill(DetailRows + 3) };
        _detail = new LinesView(looks) { Y = Pos.AnchorEnd(DetailRows + 3), Width = Dim.Fill(), Height = DetailRows };
        _message = new LinesView(looks) { Y = Pos.AnchorEnd(3), Width = Dim.Fill(), Height = 2 };
        _prompt = new LinesView(looks) { Y = Pos.AnchorEnd(2), Width = 12, Height = 1, Visible = false };
        _entry = new TextField { X = 12, Y = Pos.AnchorEnd(2), Width = Dim.Fill(), Height = 1, Visible = false };
        LinesView keys = new(looks) { Y = Pos.AnchorEnd(1), Width = Dim.Fill(), Height = 1 };
        keys.Show((width, _) => [new ShownLine(" Up/Down finding  P hear it  A accept  R return  Esc leave".PadRight(width), Look.Heading)]);
        Add(_head, _list, _detail, _message, _prompt, _entry, keys);
        Show(review);
    }

    /// <summary>Begins to play a recording and says so.</summary>
    public Func<string, string> Play { get; init; } = _ => "";

    /// <summary>Asks for the end.</summary>
    public Action Leave { get; init; } = () => { };

    /// <summary>Records the lead's word and says what became of it: name, outcome, remark.</summary>
    public Func<string, ReviewOutcome, string, string> GiveWord { get; set; } = (_, _, _) => "";

    ImmutableArray<ReviewFinding> Findings => _review.Findings;

    /// <summary>Shows a record anew.</summary>
    public void Show(JobReview review)
    {
        _review = review;
        _chosen = Math.Clamp(_chosen, 0, Math.Max(0, Findings.Length - 1));
        _head.Show((width, _) => ReviewLines.Head(review, width));
        ShowChosen();
    }

    /// <summary>Takes a key before any part of the window does.</summary>
    /// <returns>Whether it was meant for the window.</returns>
    public bool Take(Key key)
    {
        if (key == Key.C.WithCtrl)
        {
            Leave();
            return true;
        }

        if (_entry.Visible)
        {
            return TakeWhileAsked(key);
        }

        if (key == Key.CursorDown || key == Key.CursorUp || key == Key.PageDown || key == Key.PageUp)
        {
            Choose(_chosen + (key == Key.CursorDown ? 1 : key == Key.CursorUp ? -1 : key == Key.PageDown ? 8 : -8));
        }
        else if (key == Key.P)
        {
            PlayNext();
        }
        else if (key == Key.A || key == Key.R)
        {
            _outcome = key == Key.A ? ReviewOutcome.Accepted : ReviewOutcome.Returned;
            Ask(_lead.Length == 0 ? "Your name:" : "Remark:");
        }
        else if (key == Key.Esc || key == Key.Q || key == Key.Q.WithCtrl)
        {
            Leave();
        }
        else
        {
            return false;
        }

        return true;
    }

    bool TakeWhileAsked(Key key)
    {
        if (key == Key.Esc)
        {
            StopAsking();
            Say("Nothing was recorded.");
            return true;
        }

        if (key != Key.Enter)
        {
            return false;
        }

        string text = _entry.Text.Trim();
        if (_lead.Length == 0)
        {
            _lead = text;
            Ask(text.Length == 0 ? "Your name:" : "Remark:");
            return true;
        }

        StopAsking();
        Say(GiveWord(_lead, _outcome!.Value, text));
        return true;
    }

    void Ask(string what)
    {
        _prompt.Show((width, _) => [new ShownLine(what.PadRight(width), Look.Strong)]);
        (_prompt.Visible, _entry.Visible) = (true, true);
        _entry.Text = "";
        _entry.SetFocus();
        Say(_outcome == ReviewOutcome.Accepted
            ? "Accept: a remark may be left empty unless a danger was found. Enter goes on, Esc records nothing."
            : "Return: say what is to be done. Enter goes on, Esc records nothing.");
    }

    void StopAsking() => (_prompt.Visible, _entry.Visible) = (false, false);

    void Choose(int index)
    {
        _chosen = Math.Clamp(index, 0, Math.Max(0, Findings.Length - 1));
        _clip = 0;
        _said = "";
        ShowChosen();
    }

    void PlayNext()
    {
        ImmutableArray<string> clips = Findings.IsEmpty ? [] : Findings[_chosen].Clips;
        Say(clips.IsEmpty ? "Nothing was recorded about this finding." : Play(clips[_clip++ % clips.Length]));
    }

    void Say(string text)
    {
        _said = text;
        ShowChosen();
    }

    void ShowChosen()
    {
        _list.Show((width, height) => ReviewLines.List(Findings, _chosen, width, height));
        _detail.Show((width, height) => Findings.IsEmpty ? [] : ReviewLines.Detail(Findings[_chosen], width, height));
        _message.Show((width, height) => ReviewLines.Message(_said, width, height));
    }
}
