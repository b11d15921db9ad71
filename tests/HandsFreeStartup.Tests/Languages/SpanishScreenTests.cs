using HandsFreeStartup.Languages;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Screen;
using HandsFreeStartup.Tests.Screen;

namespace HandsFreeStartup.Tests.Languages;

/// <summary>The console in Spanish, whose texts are longer: on the smallest usual terminal nothing of what leads or warns is cut, it pages.</summary>
[Trait("Speed", "Fast")]
public sealed class SpanishScreenTests
{
    const int Width = 80;
    const int Height = 24;
    const int Pages = 12;

    static readonly Language Spanish = LanguageFiles.Find("es");

    public static TheoryData<string> Names => [.. Situations.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void Everything_that_leads_and_warns_is_shown_in_turn(string situation)
    {
        ConsoleState state = Situations.Of(situation, Spanish);
        StartupView view = state.Moment.View;

        string[] pages = [.. Enumerable.Range(0, Pages).Select(page => Text(state with { Page = page }))];

        string shown = string.Join(' ', pages);
        IEnumerable<string> needed = view.Alarm is { } alarm ? [alarm.Title, .. alarm.Lines.Select(line => line.Shown), view.Question ?? "", .. view.ListeningFor] : [view.Do, view.Question ?? "", view.Caution ?? "", .. view.ListeningFor, .. view.Open];
        Assert.DoesNotContain(needed.SelectMany(text => text.Split(' ')), word => !shown.Contains(word, StringComparison.Ordinal));
        Assert.All(pages, page => Assert.All(page.Split('\n'), row => Assert.Equal(Width, row.Length)));
        Assert.DoesNotContain("…", shown, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("gas-smell", "OLOR A GAS", "Llame desde afuera", "SIGUE: ¿Es seguro seguir?")]
    [InlineData("before-measuring", "DIGA: manifold pressure + número con", "Presión del múltiple", "bien: ")]
    [InlineData("outside", "FALLA", "DIGA: next")]
    [InlineData("timer", "TIEMPO", "quedan, de", "OÍDO [")]
    [InlineData("paused", "En pausa: solo oye", "DIGA: go ahead", "ABIERTO")]
    public void It_is_Spanish_but_for_what_is_said(string situation, params string[] texts)
    {
        ConsoleState state = Situations.Of(situation, Spanish);

        string shown = string.Join(' ', Enumerable.Range(0, Pages).Select(page => Text(state with { Page = page })));

        Assert.All(texts, text => Assert.Contains(text, shown, StringComparison.Ordinal));
    }

    static string Text(ConsoleState state) => string.Join('\n', ConsolePage.Of(state, Width, Height).Select(row => row.Text));
}
