using HandsFreeStartup.Reports.Review;
using HandsFreeStartup.Review;
using HandsFreeStartup.Screen;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;

namespace HandsFreeStartup.Tests.Review;

/// <summary>The review's window without a terminal.</summary>
public sealed class ReviewWindowTests
{
    static readonly JobReview Review = new()
    {
        Status = JobStatus.Signed,
        JobId = "job-1",
        Began = DateTimeOffset.UnixEpoch,
        Ended = DateTimeOffset.UnixEpoch,
        Technician = "T. Tester",
        Appliance = "Furnace",
        IsDemonstration = false,
        Findings = [
            new ReviewFinding("left-open", Weight.Danger, "Still open: manifold port."),
            new ReviewFinding("skipped-step", Weight.Doubt, "Step \"look\" was skipped.") { Quote = "panel is painted shut", Clips = ["one.wav", "two.wav"], StepId = "look" },
            .. Enumerable.Range(0, 40).Select(number => new ReviewFinding("note", Weight.Note, FormattableString.Invariant($"Note number {number}."))),
        ],
        MustBeLookedAt = true,
    };

    readonly List<string> _done = [];

    [Theory]
    [InlineData(80, 24)]
    [InlineData(100, 30)]
    public void The_gravest_finding_is_chosen_first_and_stands_in_full_below(int columns, int rows)
    {
        string screen = Shown(columns, rows);

        Assert.Contains("job-1  signed  T. Tester", screen, StringComparison.Ordinal);
        Assert.Contains("MUST BE LOOKED AT  1 danger, 1 doubt, 40 notes", screen, StringComparison.Ordinal);
        Assert.Contains("> DANGER Still open: manifold port.", screen, StringComparison.Ordinal);
        Assert.Contains("P hear it", screen, StringComparison.Ordinal);
    }

    [Fact]
    public void The_next_finding_shows_what_was_dictated_and_plays_its_recordings_one_after_the_other()
    {
        string screen = Shown(80, 24, Key.CursorDown, Key.P, Key.P, Key.P);

        Assert.Contains("\"panel is painted shut\"", screen, StringComparison.Ordinal);
        Assert.Contains("DOUBT  skipped-step  look", screen, StringComparison.Ordinal);
        Assert.Equal(["play one.wav", "play two.wav", "play one.wav"], _done);
    }

    [Fact]
    public void The_list_follows_the_chosen_finding_to_its_end_and_no_further()
    {
        Key[] down = [.. Enumerable.Repeat(Key.PageDown, 20)];

        string screen = Shown(80, 24, down);
        Assert.True(screen.Contains("> note   Note number 39.", StringComparison.Ordinal), screen);
    }

    [Fact]
    public void A_record_is_returned_with_name_and_remark()
    {
        string screen = Shown(80, 24, [Key.R, .. Typed("Lead"), Key.Enter, .. Typed("again"), Key.Enter]);

        Assert.Equal(["Returned by Lead: again"], _done);
        Assert.Contains("It is recorded.", screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Escape_while_asked_records_nothing_and_escape_after_it_leaves()
    {
        string screen = Shown(80, 24, [Key.A, .. Typed("Lead"), Key.Esc, Key.Esc]);

        Assert.Equal(["leave"], _done);
        Assert.Contains("Nothing was recorded.", screen, StringComparison.Ordinal);
    }

    static IEnumerable<Key> Typed(string text) => text.Select(letter => new Key(letter));

    string Shown(int columns, int rows, params IEnumerable<Key> keys)
    {
        using IApplication app = Application.Create().Init(DriverRegistry.Names.ANSI);
        app.Keyboard.KeyBindings.Remove(Key.Esc);
        app.Driver!.SetScreenSize(columns, rows);
        using ReviewWindow window = new(Review, "", new Looks(hasColours: false))
        {
            Play = clip =>
            {
                _done.Add($"play {clip}");
                return "Playing.";
            },
            Leave = () => _done.Add("leave"),
            GiveWord = (lead, outcome, remark) =>
            {
                _done.Add($"{outcome} by {lead}: {remark}");
                return "It is recorded.";
            },
        };
        SessionToken token = app.Begin(window)!;
        foreach (Key key in keys)
        {
            if (!window.Take(key))
            {
                window.NewKeyDownEvent(key);
            }
        }

        app.LayoutAndDraw();
        string screen = app.Driver.ToString()!;
        app.End(token);
        return screen;
    }
}
