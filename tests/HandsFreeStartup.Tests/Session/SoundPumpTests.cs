using System.Runtime.CompilerServices;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Tests.Session;

/// <summary>Understanding ahead while the speaker pauses, and silence that depends on the words. One letter is a frame of 32 ms: S speech, m doubtful, q quiet.</summary>
public sealed class SoundPumpTests
{
    const string Twenty = "qqqqqqqqqqqqqqqqqqqq";
    const string Word = "SSSSSSSSSS";

    readonly List<Input> _posted = [];
    readonly List<string> _heard = [];

    static Evidence Said(string words) => new(words, Channel.Voice, Certainty.Green);

    /// <summary>An ear that hears, depending on how often it was asked, one text after the other.</summary>
    SoundPump Pump(params string[] texts)
    {
        Queue<string> left = new(texts);
        return Pump((_, _) => left.TryDequeue(out string? text) ? text : texts[^1]);
    }

    SoundPump Pump(Func<SpeechClip, CancellationToken, string> hear) => new(
        new SpeechCutter(new FirstSample(), SoundPump.Settings),
        new AskedEar((clip, expectation, cancellation) =>
        {
            string text = expectation.Readings.IsEmpty ? "no call" : hear(clip, cancellation);
            lock (_heard)
            {
                _heard.Add(text);
            }

            return new Phrase.NotUnderstood(Said(text));
        }),
        () => Expectation.Open,
        _posted.Add);

    Task Run(SoundPump pump, string script, bool live = false) => pump.Run(new Script(script, live), CancellationToken.None);

    IEnumerable<Input.Spoken> Spoken => _posted.OfType<Input.Spoken>();

    /// <summary>Silence after the speech that the utterance came with, in frames.</summary>
    static long Silence(Input.Spoken spoken) => (spoken.Clip.Start + spoken.Clip.Samples.Length - spoken.Clip.SpeechEnd) / AudioFrame.Length;

    [Theory]
    [InlineData("next", 8)]
    [InlineData("Oxygen 7.6%", 8)]
    [InlineData("Oxygen 7.6", 11)]
    [InlineData("Meter 1", 22)]
    [InlineData("Oxygen 7", 22)]
    [InlineData("what a day", 22)]
    public async Task An_utterance_ends_after_a_silence_that_depends_on_its_words(string words, int frames)
    {
        await Run(Pump(words), Twenty + Word + Twenty + Twenty);

        Assert.Equal(frames, Silence(Assert.Single(Spoken)));
    }

    [Fact]
    public async Task One_and_forty_five_said_with_a_pause_are_one_utterance_and_what_was_understood_in_the_pause_is_forgotten()
    {
        await Run(Pump("Meter 1", "Meter 145 seconds"), Twenty + Word + "qqqqqqqqqqqqqqqqqqqq" + Word + Twenty + Twenty);

        Input.Spoken spoken = Assert.Single(Spoken);
        Assert.Equal(["Meter 1", "Meter 145 seconds"], _heard);
        Assert.Equal("Meter 145 seconds", spoken.Ahead!.Under(Expectation.Open)!.Evidence.Words);
        Assert.Equal(8, Silence(spoken));
    }

    [Fact]
    public async Task What_was_understood_ahead_serves_only_the_expectation_it_was_understood_under()
    {
        await Run(Pump("next"), Twenty + Word + Twenty);

        HeardAhead ahead = Assert.Single(Spoken).Ahead!;
        Assert.Equal("next", ahead.Under(Expectation.Open)!.Evidence.Words);
        Assert.Null(ahead.Under(Expectation.Open with { Answers = [AnswerWord.Yes] }));
    }

    [Fact]
    public async Task A_doubtful_sound_in_the_pause_makes_the_utterance_be_heard_again_as_a_whole()
    {
        await Run(Pump("next"), Twenty + Word + "qqqqqqm" + Twenty);

        Assert.Null(Assert.Single(Spoken).Ahead);
    }

    [Fact]
    public async Task Hearing_ahead_is_cancelled_when_speech_goes_on()
    {
        TaskCompletionSource canceled = new(TaskCreationOptions.RunContinuationsAsynchronously);
        SoundPump pump = Pump((clip, cancellation) =>
        {
            if (clip.SpeechDuration > AudioFrame.Duration * 2 * Word.Length)
            {
                return "next";
            }

            cancellation.WaitHandle.WaitOne(TimeSpan.FromSeconds(30));
            canceled.TrySetResult();
            throw new OperationCanceledException(cancellation);
        });

        await Run(pump, Twenty + Word + "qqqqqqqq" + Word + Twenty + Twenty, live: true);

        await canceled.Task.WaitAsync(TimeSpan.FromSeconds(30));
        Assert.Equal("next", Assert.Single(Spoken).Ahead!.Under(Expectation.Open)!.Evidence.Words);
    }

    [Fact]
    public async Task A_slow_ear_cuts_nothing_short()
    {
        using ManualResetEventSlim never = new();
        Task run = Run(Pump((_, _) => { never.Wait(TimeSpan.FromSeconds(30), CancellationToken.None); return "next"; }), Twenty + Word + Twenty + Twenty, live: true);

        await run;
        Assert.Equal(22, Silence(Assert.Single(Spoken)));
        never.Set();
    }

    [Fact]
    public async Task What_must_not_be_used_is_told_and_never_understood()
    {
        await Run(Pump("next"), Twenty + "SSSS" + Twenty + Twenty + new string('S', 200) + Twenty + Twenty);

        Assert.Equal([Refusal.TooShort, Refusal.TooLong], _posted.OfType<Input.Unusable>().Select(input => input.Why));
        Assert.Empty(Spoken);
        Assert.NotEmpty(_heard);
        Assert.DoesNotContain("next", _heard);
    }

    [Fact]
    public async Task A_call_for_help_in_talk_without_an_end_is_told_once_while_the_talk_goes_on()
    {
        SoundPump pump = Calling(Expectation.Open);

        await Run(pump, Twenty + new string('S', 100));

        Input.Spoken call = Assert.Single(Spoken);
        Assert.Equal(CommandWord.EmergencyStop, Assert.IsType<Phrase.Command>(call.Ahead!.Under(Expectation.Open with { Answers = [AnswerWord.Yes] })).Word);
    }

    [Fact]
    public async Task Calls_are_told_again_where_they_do_not_overlap()
    {
        await Run(Calling(Expectation.Open), Twenty + new string('S', 300));

        Assert.Equal(3, Spoken.Count());
    }

    [Fact]
    public async Task A_call_in_doubt_is_told_once_while_it_overlaps_and_a_clear_one_in_the_next_stretch_after_it()
    {
        await Run(Calling(Expectation.Open, Certainty.Amber, Certainty.Amber, Certainty.Green), Twenty + new string('S', 160));

        Assert.Equal([Certainty.Amber, Certainty.Green], Spoken.Select(call => call.Ahead!.Under(Expectation.Open)!.Evidence.Certainty));
    }

    [Fact]
    public async Task Who_goes_on_calling_unclearly_is_told_of_again_as_soon_as_it_does_not_overlap()
    {
        await Run(Calling(Expectation.Open, Certainty.Amber), Twenty + new string('S', 300));

        Assert.Equal(3, Spoken.Count());
    }

    [Fact]
    public async Task Free_speech_that_goes_on_is_searched_for_no_call()
    {
        await Run(Calling(Expectation.Open with { Dictation = true }), Twenty + new string('S', 100));

        Assert.Empty(Spoken);
    }

    /// <summary>Whatever is heard is a call where nothing else may be said, and no word under what may be said.</summary>
    SoundPump Calling(Expectation expected, params Certainty[] certainties)
    {
        Queue<Certainty> left = new(certainties);
        return new(
            new SpeechCutter(new FirstSample(), SoundPump.Settings),
            new AskedEar((_, expectation, _) => expectation.Readings.IsEmpty
                ? new Phrase.Command(CommandWord.EmergencyStop, Said("emergency stop") with { Certainty = left.TryDequeue(out Certainty next) ? next : certainties.LastOrDefault(Certainty.Green) })
                : new Phrase.NotUnderstood(Said("what a day"))),
            () => expected,
            _posted.Add);
    }

    sealed class AskedEar(Func<SpeechClip, Expectation, CancellationToken, Phrase> hear) : IEar
    {
        public Phrase Hear(SpeechClip clip, Expectation expectation, CancellationToken cancellation = default) => hear(clip, expectation, cancellation);
    }

    sealed class FirstSample : ISpeechDetector
    {
        public float Probability(ReadOnlySpan<float> frame) => frame[0];
    }

    sealed class Script(string script, bool live) : IAudioSource
    {
        public bool IsLive => live;

        public async IAsyncEnumerable<AudioFrame> Frames([EnumeratorCancellation] CancellationToken cancellation)
        {
            long position = 0;
            foreach (char letter in script)
            {
                await Task.Yield();
                float[] samples = new float[AudioFrame.Length];
                Array.Fill(samples, letter switch { 'S' => 0.9f, 'm' => 0.4f, _ => 0.1f });
                yield return new AudioFrame(position, samples);
                position += AudioFrame.Length;
            }
        }
    }
}
