using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;
using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Screen;
using HandsFreeStartup.Session;
using HandsFreeStartup.Showing;
using Terminal.Gui.App;
using Terminal.Gui.Drawing;
using Terminal.Gui.Drivers;
using Terminal.Gui.Input;

namespace HandsFreeStartup.Tests.Screen;

/// <summary>The console at every size: whole screens that somebody has looked at, and what holds for all of them.</summary>
/// <remarks>HANDSFREE_APPROVE=FOLDER writes the screens as they are now, for somebody to look at.</remarks>
[Trait("Speed", "Fast")]
public sealed class ConsolePageTests
{
    static readonly (int Width, int Height)[] Sizes = [(80, 24), (100, 30), (132, 43)];

    public static TheoryData<string> Every => [.. Situations.Names];

    [Theory]
    [MemberData(nameof(Every))]
    public void A_screen_is_as_it_was_approved(string situation)
    {
        foreach ((int width, int height) in Sizes)
        {
            string file = FormattableString.Invariant($"{situation}-{width}x{height}.txt");
            string screen = Text(Situations.Of(situation), width, height);
            if (Environment.GetEnvironmentVariable("HANDSFREE_APPROVE") is { Length: > 0 } folder)
            {
                File.WriteAllText(Path.Combine(folder, file), screen);
                continue;
            }

            Assert.Equal(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "Screen", "Approved", file)), screen);
        }
    }

    [Fact]
    public void No_two_situations_look_the_same_without_colours() =>
        Assert.All(Sizes, size => Assert.Equal(Situations.Names.Length, Situations.Names.Select(name => Text(Situations.Of(name), size.Width, size.Height)).Distinct().Count()));

    [Fact]
    public void Every_verdict_every_state_of_a_reading_and_every_class_of_hearing_has_a_word_or_sign_of_its_own()
    {
        string[] verdicts = [.. Enum.GetValues<Verdict>().Select(verdict => $"{Words.Sign(verdict)} {VerdictWords.Of(verdict)}")];
        string[] states = [.. Enum.GetValues<ReadingState>().Select(state => Words.Of(state))];
        string[] classes = [.. Enum.GetValues<Certainty>().Select(certainty => Words.Of(certainty))];
        string[] ears = [.. Enum.GetValues<EarState>().Select(state => Words.Of(new EarView(state), isPaused: false))];

        Assert.All((string[][])[verdicts, states, classes, ears], words => Assert.Equal(words.Length, words.Distinct().Count()));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Every_look_has_a_contrast_of_seven_to_one(bool isLight)
    {
        Looks looks = new(hasColours: true, isLight);

        Assert.All(Enum.GetValues<Look>(), look =>
        {
            double[] light = [Luminance(looks.Of(look).Foreground), Luminance(looks.Of(look).Background)];
            Assert.True((light.Max() + 0.05) / (light.Min() + 0.05) >= 7, $"{look}");
        });

        // WCAG 2.1, relative luminance.
        static double Luminance(Color color) => 0.2126 * Linear(color.R) + 0.7152 * Linear(color.G) + 0.0722 * Linear(color.B);
        static double Linear(byte value) => value / 255.0 <= 0.04045 ? value / 255.0 / 12.92 : Math.Pow((value / 255.0 + 0.055) / 1.055, 2.4);
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void At_any_size_every_row_is_filled_and_the_safety_keys_are_there(string situation)
    {
        ConsoleState state = Situations.Of(situation);
        for (int size = 1; size <= 160; size++)
        {
            (int width, int height) = (size, 1 + size * 7 % 60);
            IReadOnlyList<ScreenRow> rows = ConsolePage.Of(state, width, height);
            Assert.Equal(height, rows.Count);
            Assert.All(rows, row => Assert.Equal(width, row.Text.Length));
            if (width >= 24 && height >= 3)
            {
                Assert.Contains("F12", string.Concat(rows.Select(row => row.Text)), StringComparison.Ordinal);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Every))]
    public void What_must_be_known_is_never_cut_but_comes_page_by_page(string situation)
    {
        ConsoleState state = Situations.Of(situation);
        StartupView view = state.Moment.View;
        foreach ((int width, int height) in ((int, int)[])[(60, 20), (80, 24), (132, 43)])
        {
            HashSet<string> seen = [.. Enumerable.Range(0, 40).SelectMany(page => ConsolePage.Of(state with { Page = page }, width, height))
                .SelectMany(row => row.Text.Split((char[])[' ', '»'], StringSplitOptions.RemoveEmptyEntries))];
            IEnumerable<string> essential = view.Alarm is { } alarm
                ? [.. alarm.Lines.Select(line => line.Shown), view.Question ?? "", .. view.ListeningFor, .. view.Open]
                : [view.Do, view.Caution ?? "", view.Question ?? "", .. view.ListeningFor, .. view.Open, .. view.Readings.Select(reading => reading.Good)];
            Assert.All(essential.SelectMany(text => text.Split(' ', StringSplitOptions.RemoveEmptyEntries)), word =>
                Assert.Contains(seen, one => one.Contains(word, StringComparison.Ordinal)));
        }
    }

    [Fact]
    public void Before_it_is_measured_the_limit_is_shown_with_its_source_and_no_value_is()
    {
        string screen = Text(Situations.Of("before-measuring"), 80, 24);

        Assert.Contains("Manifold pressure: good:", screen, StringComparison.Ordinal);
        Assert.Contains("SAY: manifold pressure + number", screen, StringComparison.Ordinal);
        Assert.DoesNotContain("expected", screen, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Every_shipped_step_has_its_imperative_and_every_letter_of_it_can_be_drawn()
    {
        foreach (string file in (string[])["gas-furnace.yaml", "two-stage-natural-gas.yaml"])
        {
            string[] lines = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "checklists", file));
            int steps = lines.Count(line => line.StartsWith("      - id: ", StringComparison.Ordinal));
            string[] imperatives = [.. lines.Where(line => line.StartsWith("        now: ", StringComparison.Ordinal)).Select(line => line[13..].Trim('"'))];

            Assert.Equal(steps, imperatives.Length);
            Assert.All(imperatives, text => Assert.InRange(text.Length, 1, 24));
            Assert.All(imperatives.SelectMany(text => text), letter => Assert.True(BigLetters.IsDrawn(letter), $"'{letter}'"));
        }
    }

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

    static string Text(ConsoleState state, int width, int height) =>
        string.Concat(ConsolePage.Of(state, width, height).Select(row => $"{row.Text.TrimEnd()}\n"));
}
