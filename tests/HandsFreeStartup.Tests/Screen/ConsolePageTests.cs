using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Screen;
using HandsFreeStartup.Session;
using HandsFreeStartup.Showing;
using Terminal.Gui.Drawing;

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

    static string Text(ConsoleState state, int width, int height) =>
        string.Concat(ConsolePage.Of(state, width, height).Select(row => $"{row.Text.TrimEnd()}\n"));
}
