using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;
using HandsFreeStartup.Screen;
using HandsFreeStartup.Session;
using Terminal.Gui.App;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;

namespace HandsFreeStartup.Tests.Screen;

/// <summary>The console under more sizes, keys and phrases than anybody gives it.</summary>
public sealed class ConsoleStormTests
{
    [Fact]
    public void A_storm_of_sizes_leaves_a_whole_screen_behind_each_time()
    {
        Random random = new(7);
        using IApplication app = Application.Create().Init(DriverRegistry.Names.ANSI);
        using StartupWindow window = new(_ => { }, () => { }, new Looks(hasColours: true));
        SessionToken token = app.Begin(window)!;
        window.Show(Situations.Of("settling").Moment);

        for (int i = 0; i < 300; i++)
        {
            app.Driver!.SetScreenSize(random.Next(1, 180), random.Next(1, 60));
            app.LayoutAndDraw();
        }

        app.Driver!.SetScreenSize(80, 24);
        app.LayoutAndDraw();
        Assert.Contains("F12 emergency stop", app.Driver.ToString()!, StringComparison.Ordinal);
        app.End(token);
    }

    [Fact]
    public void Ten_thousand_random_keys_and_phrases_leave_a_screen_that_still_takes_the_safety_keys()
    {
        Random random = new(19);
        List<Input> posted = [];
        LiveJob job = Situations.Job();
        Key[] keys = [Key.Enter, Key.Esc, Key.PageUp, Key.PageDown, Key.Q.WithCtrl, Key.Y, Key.A, Key.Space, Key.F2, Key.F3, Key.F6, Key.Tab, Key.Backspace];
        Field[] fields = [.. Fields.All];
        CommandWord[] words = [.. Commands.All.Select(command => command.Word)];
        using IApplication app = Application.Create().Init(DriverRegistry.Names.ANSI);
        app.Driver!.SetScreenSize(80, 24);
        using StartupWindow window = new(posted.Add, () => { }, new Looks(hasColours: true));
        SessionToken token = app.Begin(window)!;
        ConsoleState state = ConsoleState.Of(new Moment(job.View, new EarView(EarState.Listening), null, []));

        for (int i = 0; i < 10_000; i++)
        {
            job = job.Procedure.Phase == Phase.Finished ? Situations.Job() : job;
            switch (random.Next(6))
            {
                case 0:
                    window.Take(keys[random.Next(keys.Length)]);
                    break;
                case 1:
                    job.Say(fields[random.Next(fields.Length)].Id, random.Next(0, 100) / 10m, (Certainty)random.Next(3));
                    break;
                case 2:
                    job.Say(words[random.Next(words.Length)]);
                    break;
                case 3:
                    job.Say((AnswerWord)random.Next(3));
                    break;
                case 4:
                    job.Give(new Phrase.Dictation(Some.Heard() with { Words = "the owner asked for it" }));
                    break;
                default:
                    job.Wait(TimeSpan.FromSeconds(random.Next(400)));
                    break;
            }

            state = state.With(new Moment(job.View, new EarView(EarState.Listening), Some.Heard(), [.. job.Procedure.Announce(job.Last, job.Present)]));
            Assert.Contains("F12", string.Concat(ConsolePage.Of(state, random.Next(24, 140), random.Next(3, 50)).Select(row => row.Text)), StringComparison.Ordinal);
            if (i % 100 == 0)
            {
                window.Show(state.Moment);
                app.LayoutAndDraw();
            }
        }

        posted.Clear();
        Assert.True(window.Take(Key.F12));
        Assert.Equal(CommandWord.EmergencyStop, Assert.IsType<Input.Pressed>(Assert.Single(posted)).Word);
        app.End(token);
    }
}
