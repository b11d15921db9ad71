using System.Threading.Channels;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Running;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Native;
using HandsFreeStartup.Speech.Speaking;
using HandsFreeStartup.Start;

namespace HandsFreeStartup.Interview;

/// <summary>The devices of questions: the same ears, microphone and voice as those of a start-up. While it speaks nothing is heard, unless the technician wears a headset.</summary>
sealed class MicrophoneListener : IListener, IAsyncDisposable
{
    static readonly TimeSpan Glance = TimeSpan.FromMilliseconds(50);

    readonly ListeningEar _ear;
    readonly LiveSound _sound;
    readonly TextWriter _output;
    readonly Channel<Input> _inputs = System.Threading.Channels.Channel.CreateUnbounded<Input>();
    readonly CancellationTokenSource _over = new();
    readonly IVoice _voice;
    readonly Mouth _mouth;
    readonly Task _hearing;
    Expectation _expected = new([], [], []);
    SoundState _state = SoundState.Good;
    bool _noLines;
    bool _hasSpoken;

    MicrophoneListener(ListeningEar ear, LiveSound sound, StartOptions options, TextWriter output)
    {
        (_ear, _sound, _output) = (ear, sound, output);
        SpeechCutter cutter = new(ear.Detector, SoundPump.Settings);
        _voice = options.Sound.Mute ? new SilentVoice() : sound.Voice(TimeProvider.System, speaking =>
        {
            cutter.Deaf = speaking && sound.Profile != HearingProfile.Headset;
            _inputs.Writer.TryWrite(new Input.Voice(speaking));
        }, Language.English);
        _mouth = new Mouth(_voice, TimeProvider.System, Language.English);
        SoundPump pump = new(cutter, ear, () => Volatile.Read(ref _expected), input => _inputs.Writer.TryWrite(input));
        _hearing = Task.Run(() => pump.Run(sound.Microphone(TimeProvider.System), _over.Token));
    }

    /// <summary>Opens them; null where only keys are used, by wish or because nothing can be heard, which is told in one sentence.</summary>
    public static MicrophoneListener? Open(StartOptions options, TextWriter output, Action<string> tell)
    {
        if (options.Sound.Keys || !options.Sound.Wav.IsEmpty)
        {
            return null;
        }

        if (CaptureCommand.Find(options.Sound.Microphone) is null)
        {
            tell(CaptureCommand.Missing(options.Sound.Microphone));
            return null;
        }

        try
        {
            ListeningEar ear = ListeningEar.Load(options.Sound.Model, options.Sound.Ears, tell);
            return new MicrophoneListener(ear, LiveSound.Open(options, tell), options, output);
        }
        catch (Exception e) when (e is ModelFileException or RecogniserUnavailableException)
        {
            tell($"{e.Message} The questions are typed.");
            return null;
        }
    }

    /// <inheritdoc/>
    public void Forget()
    {
        while (_inputs.Reader.TryRead(out _))
        {
            // It was said to another question.
        }
    }

    /// <inheritdoc/>
    public void Say(string words, bool breaksOff)
    {
        if (breaksOff)
        {
            _mouth.Hush(alsoUrgent: true);
        }

        _mouth.Say([new Announcement(Message.Written(words))], answers: false);
    }

    /// <inheritdoc/>
    public Heard Next(Expectation expectation, Expectation? words)
    {
        Volatile.Write(ref _expected, expectation);
        while (true)
        {
            if (TypedLine() is { } typed)
            {
                return typed;
            }

            if (_hasSpoken && !_mouth.IsSpeaking)
            {
                _hasSpoken = false;
                Tell("  ear: listening");
            }

            if (!_inputs.Reader.TryRead(out Input? input))
            {
                _inputs.Reader.WaitToReadAsync().AsTask().Wait(Glance);
            }
            else if (Take(input, expectation, words) is { } heard)
            {
                return heard;
            }
        }
    }

    /// <summary>Somebody types, and is waited for; the end of a pipe ends nothing here.</summary>
    Heard.Typed? TypedLine()
    {
        if (_noLines || !StandardStreams.Input.IsComing)
        {
            return null;
        }

        string? line = StandardStreams.Input.Next();
        _noLines = line is null;
        return line is null ? null : new Heard.Typed(line);
    }

    Heard.Said? Take(Input input, Expectation expectation, Expectation? words)
    {
        switch (input)
        {
            case Input.SpeechBegan:
                _mouth.Hush(alsoUrgent: false);
                return null;
            case Input.Voice { Speaks: false }:
                _hasSpoken = true;
                return null;
            case Input.Spoken spoken:
                return new Heard.Said(PhraseOf(spoken, expectation, words));
            case Input.Unusable unusable when StartupSession.Sentence(unusable.Why) is { Length: > 0 } why:
                return new Heard.Said(new Phrase.NotUnderstood(new Evidence("", Procedure.Hearing.Channel.Voice, Certainty.Red) { Why = why }));
            case Input.Sound sound when sound.State != _state:
                _state = sound.State;
                Tell(sound.Message.Length > 0 ? $"! {sound.Message}" : "The sound is good again.");
                return null;
            default:
                return null;
        }
    }

    /// <summary>What was understood while the speaker paused counts where nothing else is looked for first.</summary>
    Phrase PhraseOf(Input.Spoken spoken, Expectation expectation, Expectation? words)
    {
        try
        {
            return (words is null ? spoken.Ahead?.Under(expectation) : null) ?? Understood(_ear, spoken.Clip, expectation, words);
        }
        catch (OperationCanceledException)
        {
            return Understood(_ear, spoken.Clip, expectation, words);
        }
    }

    /// <summary>What was said: one of the words that are known, or else whatever is expected.</summary>
    internal static Phrase Understood(ListeningEar ear, SpeechClip clip, Expectation expectation, Expectation? words) =>
        words is not null && ear.Hear(clip, words) is not Phrase.NotUnderstood and var known ? known : ear.Hear(clip, expectation);

    void Tell(string line)
    {
        _output.WriteLine(line);
        _output.Flush();
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await _over.CancelAsync();
        await _hearing;
        await _voice.DisposeAsync();
        _sound.Dispose();
        _ear.Dispose();
        _over.Dispose();
    }
}
