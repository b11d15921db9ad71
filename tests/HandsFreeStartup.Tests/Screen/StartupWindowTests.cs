using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;
using HandsFreeStartup.Screen;
using HandsFreeStartup.Session;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;

namespace HandsFreeStartup.Tests.Screen;

/// <summary>The window without a terminal.</summary>
public sealed class StartupWindowTests
{
    [Theory]
    [InlineData(80, 24)]
    [InlineData(100, 30)]
    public void The_step_the_readings_with_their_verdicts_and_the_open_things_are_on_the_screen(int columns, int rows)
    {
        LiveJob job = new LiveJob().GoTo("combustion").Say("oxygen", 7.6m).Say("flue_co", 12m);

        string screen = Shown(job, columns, rows);

        Assert.Contains("TITLE OF COMBUSTION", screen, StringComparison.Ordinal);
        Assert.Contains("Oxygen 7.6 ", screen, StringComparison.Ordinal);
        Assert.Contains("pass", screen, StringComparison.Ordinal);
        Assert.Contains("CO air-free 19 ppm (0 to", screen, StringComparison.Ordinal);
        Assert.Contains("OPEN (2): manifold port, test hole", screen, StringComparison.Ordinal);
        Assert.Contains("flue temperature + number", screen, StringComparison.Ordinal);
    }

    [Fact]
    public void A_stop_covers_the_step_with_a_plain_instruction()
    {
        string screen = Shown(new LiveJob().GoTo("combustion").Say(CommandWord.GasSmell), 80, 24);

        Assert.Contains("GAS SMELL", screen, StringComparison.Ordinal);
        Assert.Contains("No switches", screen, StringComparison.Ordinal);
        Assert.DoesNotContain("TITLE OF COMBUSTION", screen, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_command_key_posts_its_command_and_escape_leaves_nothing()
    {
        List<Input> posted = [];
        bool left = false;
        using IApplication app = Application.Create().Init(DriverRegistry.Names.ANSI);
        using StartupWindow window = new(posted.Add, () => left = true, new Looks(hasColours: false));

        foreach (Procedure.Hearing.Command command in Procedure.Hearing.Commands.All)
        {
            Assert.True(Key.TryParse(command.Key, out Key? key));
            Assert.True(window.Take(key!));
        }

        window.Take(Key.Esc);

        Assert.Equal(Procedure.Hearing.Commands.All.Select(command => command.Word), posted.Cast<Input.Pressed>().Select(pressed => pressed.Word));
        Assert.False(left);
    }

    [Theory]
    [InlineData("")]
    [InlineData("Ctrl+Q")]
    [InlineData("Enter")]
    [InlineData("x")]
    [InlineData("Ctrl+W")]
    [InlineData("Ctrl+Q Ctrl+Q")]
    [InlineData("Enter Ctrl+Q")]
    [InlineData("Ctrl+Q Enter")]
    public void The_emergency_keys_act_in_every_state_of_the_window(string before)
    {
        Assert.All([(Key.F12, CommandWord.EmergencyStop), (Key.F11, CommandWord.GasSmell)], row =>
        {
            List<Input> posted = [];
            using IApplication app = Application.Create().Init(DriverRegistry.Names.ANSI);
            using StartupWindow window = new(posted.Add, () => { }, new Looks(hasColours: false));
            Press(window, before);
            posted.Clear();

            Assert.True(window.Take(row.Item1));

            Assert.Equal(row.Item2, Assert.IsType<Input.Pressed>(Assert.Single(posted)).Word);
        });
    }

    [Theory]
    [InlineData("Ctrl+C", true)]
    [InlineData("Ctrl+Q Ctrl+C", true)]
    [InlineData("Enter Ctrl+C", true)]
    [InlineData("Ctrl+Q y", true)]
    [InlineData("Ctrl+Q Enter", true)]
    [InlineData("Ctrl+Q", false)]
    [InlineData("Ctrl+Q Esc", false)]
    [InlineData("Ctrl+Q Esc Enter", false)]
    [InlineData("Ctrl+Q F2", false)]
    [InlineData("Ctrl+Q F2 y", false)]
    [InlineData("Enter y", false)]
    public void The_start_up_is_left_by_Ctrl_C_and_by_answering_the_question_and_by_nothing_else(string keys, bool leaves)
    {
        bool left = false;
        using IApplication app = Application.Create().Init(DriverRegistry.Names.ANSI);
        using StartupWindow window = new(_ => { }, () => left = true, new Looks(hasColours: false));

        Press(window, keys);

        Assert.Equal(leaves, left);
    }

    [Fact]
    public void A_forgotten_question_whether_to_leave_takes_no_command()
    {
        List<Input> posted = [];
        using IApplication app = Application.Create().Init(DriverRegistry.Names.ANSI);
        using StartupWindow window = new(posted.Add, () => { }, new Looks(hasColours: false));

        Press(window, "Ctrl+Q F2");

        Assert.Equal(CommandWord.Done, Assert.IsType<Input.Pressed>(Assert.Single(posted)).Word);
    }

    [Fact]
    public void The_question_whether_to_leave_and_an_urgent_sentence_are_seen_on_a_small_screen()
    {
        LiveJob job = new LiveJob().GoTo("combustion");

        Assert.Contains("Y: leave  Esc: stay", Shown(job, 80, 24, window => Press(window, "Ctrl+Q")), StringComparison.Ordinal);
        Assert.Contains("step back", Shown(job, 80, 24, window => window.Warn("Shut the burner and the gas off now, and step back.")), StringComparison.Ordinal);
    }

    [Fact]
    public void No_text_of_a_step_or_a_note_reaches_the_terminal_as_an_order()
    {
        LiveJob job = new LiveJob().GoTo("combustion");
        Evidence heard = Evidence.Typed("\u001b]0;owned\u0007\u202Eoxygen") with { Certainty = Certainty.Red };

        string screen = Shown(job, 100, 24, heard: heard);

        Assert.Contains("␛]0;owned␇\uFFFDoxygen", screen, StringComparison.Ordinal);
        Assert.DoesNotContain('\u001b', screen);
    }

    static void Press(StartupWindow window, string keys)
    {
        foreach (string name in keys.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            Assert.True(Key.TryParse(name, out Key? key), name);
            window.Take(key!);
        }
    }

    static string Shown(LiveJob job, int columns, int rows, Action<StartupWindow>? then = null, Evidence? heard = null)
    {
        using IApplication app = Application.Create().Init(DriverRegistry.Names.ANSI);
        app.Driver!.SetScreenSize(columns, rows);
        using StartupWindow window = new(_ => { }, () => { }, new Looks(hasColours: false));
        SessionToken token = app.Begin(window)!;
        window.Show(new Moment(job.View, new EarView(EarState.Listening), heard, []));
        then?.Invoke(window);
        app.LayoutAndDraw();
        string screen = app.Driver.ToString()!;
        app.End(token);
        return screen;
    }
}
