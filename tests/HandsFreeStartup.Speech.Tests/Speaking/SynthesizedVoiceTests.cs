using System.Collections.Concurrent;
using HandsFreeStartup.Speech.Speaking;
using HandsFreeStartup.Speech.Tests.Support;

namespace HandsFreeStartup.Speech.Tests.Speaking;

/// <summary>Shell scripts stand in for espeak-ng and the player: the "sound" is the text itself, and the player writes down what it plays.</summary>
public sealed class SynthesizedVoiceTests : IDisposable
{
    static readonly TimeSpan Long = TimeSpan.FromSeconds(30);

    const string Synthesis = """
        while [ $# -gt 1 ]; do if [ "$1" = -w ]; then file="$2"; fi; shift; done
        cat > "$file"
        """;

    const string Player = """
        for file; do :; done
        case "$(cat "$file")" in *forever*) echo "begins: $(cat "$file")" >> "$LOG"; exec sleep 60;; esac
        echo "said: $(cat "$file")" >> "$LOG"
        """;

    readonly ScriptFolder _programs = new();
    readonly ConcurrentQueue<bool> _speaking = new();

    public SynthesizedVoiceTests()
    {
        _programs.Add("espeak-ng", Synthesis);
        _programs.Add("paplay", Player);
    }

    public void Dispose() => _programs.Dispose();

    IVoice Voice() => SynthesizedVoice.Find(TimeProvider.System, _speaking.Enqueue, machine: Machines.Linux(_programs.Find));

    [Fact]
    public async Task Messages_are_said_in_order()
    {
        await using IVoice voice = Voice();

        await Task.WhenAll(Enumerable.Range(1, 3).Select(i => voice.Say($"C O {i} P P M", default).AsTask())).WaitAsync(Long);

        Assert.Equal("said: C O 1 P P M\nsaid: C O 2 P P M\nsaid: C O 3 P P M\n", _programs.LogText);
    }

    [Fact]
    public async Task It_tells_before_and_after_that_it_makes_a_sound()
    {
        await using IVoice voice = Voice();

        await voice.Say("oxygen", default).AsTask().WaitAsync(Long);

        Assert.Equal([true, false], _speaking);
    }

    [Fact]
    public async Task A_warning_breaks_off_what_is_being_said_and_drops_what_waits()
    {
        await using IVoice voice = Voice();
        Task running = voice.Say("this goes on forever", default).AsTask();
        Task waiting = voice.Say("never said", default).AsTask();
        await Eventually.True(() => _programs.LogText.Contains("begins"));

        await voice.Warn("Leave the building", default).AsTask().WaitAsync(Long);
        await Task.WhenAll(running, waiting).WaitAsync(Long);

        Assert.Equal("begins: this goes on forever\nsaid: Leave the building\n", _programs.LogText);
        Assert.Equal([true, false, true, false], _speaking);
    }

    [Fact]
    public async Task A_cancelled_message_is_silenced_and_the_next_one_is_said()
    {
        await using IVoice voice = Voice();
        using CancellationTokenSource cancel = new();
        Task running = voice.Say("this goes on forever", cancel.Token).AsTask();
        await Eventually.True(() => _programs.LogText.Contains("begins"));

        await cancel.CancelAsync();
        await running.WaitAsync(Long);
        await voice.Say("next", default).AsTask().WaitAsync(Long);

        Assert.EndsWith("said: next\n", _programs.LogText);
    }

    [Fact]
    public async Task A_voice_that_fails_is_silent_and_says_why_and_never_plays_an_old_message()
    {
        await using IVoice voice = Voice();
        await voice.Say("first", default).AsTask().WaitAsync(Long);
        _programs.Add("espeak-ng", "echo 'no voice data' >&2; exit 1");

        await voice.Say("second", default).AsTask().WaitAsync(Long);

        Assert.Equal("said: first\n", _programs.LogText);
        Assert.Equal("The voice could not speak (espeak-ng ended with \"no voice data\"): check the speaker; messages are still shown.", ((SynthesizedVoice)voice).Trouble);
    }

    [Fact]
    public async Task Without_a_synthesizer_the_voice_is_silent()
    {
        await using IVoice voice = SynthesizedVoice.Find(TimeProvider.System, _speaking.Enqueue, machine: Machines.Linux(_ => null));

        await voice.Say("oxygen", default);

        Assert.IsType<SilentVoice>(voice);
        Assert.Empty(_speaking);
    }

    [Fact]
    public async Task Closing_silences_it_at_once()
    {
        IVoice voice = Voice();
        Task running = voice.Say("this goes on forever", default).AsTask();
        await Eventually.True(() => _programs.LogText.Contains("begins"));

        await voice.DisposeAsync().AsTask().WaitAsync(Long);

        Assert.True(running.IsCompletedSuccessfully);
    }
}
