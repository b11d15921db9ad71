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
        Assert.Contains("Oxygen 7.6 %", screen, StringComparison.Ordinal);
        Assert.Contains("good", screen, StringComparison.Ordinal);
        Assert.Contains("CO air-free 19 ±", screen, StringComparison.Ordinal);
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

    static string Shown(LiveJob job, int columns, int rows)
    {
        using IApplication app = Application.Create().Init(DriverRegistry.Names.ANSI);
        app.Driver!.SetScreenSize(columns, rows);
        using StartupWindow window = new(_ => { }, () => { }, new Looks(hasColours: false));
        SessionToken token = app.Begin(window)!;
        window.Show(new Moment(job.View, new EarView(EarState.Listening), null, []));
        app.LayoutAndDraw();
        string screen = app.Driver.ToString()!;
        app.End(token);
        return screen;
    }
}
