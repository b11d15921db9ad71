using System.Collections.Immutable;
using System.Diagnostics;
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

/// <summary>The devices of questions: the same ears, microphone and voice as those of a start-up, and the same is heard while it speaks.</summary>
sealed class MicrophoneListener : IListener, IAsyncDisposable
{
    static readonly TimeSpan Glance = TimeSpan.FromMilliseconds(50);

    /// <summary>After the voice has ended it is deaf for a while, and what arrives late is not heard: who spoke at once would lose the beginning.</summary>
    static readonly TimeSpan DeafAfterwards = SoundPump.Settings.Guard + SoundPump.Settings.LeadIn + TimeSpan.FromMilliseconds(100);

    static readonly Expectation CallsOnly = new([], [], []);

    readonly ListeningEar _ear;
    readonly LiveSound _sound;
    readonly TextWriter _output;
    readonly Language _said;
    readonly Channel<Input> _inputs = System.Threading.Channels.Channel.CreateUnbounded<Input>();
    readonly CancellationTokenSource _over = new();
    readonly IVoice _voice;
    readonly Mouth _mouth;
    readonly Task _hearing;
    readonly List<Input.Spoken> _earlier = [];
    readonly UnclearCall _unclear = new();
    Expectation _expected = new([], [], []);
    SoundState _state = SoundState.Good;
    bool _noLines;
    long? _spokenAt;

    MicrophoneListener(ListeningEar ear, LiveSound sound, StartOptions options, TextWriter output, Language said)
    {
        (_ear, _sound, _output, _said) = (ear, sound, output, said);
        SpeechCutter cutter = new(ear.Detector, SoundPump.Settings);
        _voice = options.Sound.Mute ? new SilentVoice() : sound.Voice(TimeProvider.System, speaking =>
        {
            cutter.Deaf = speaking && sound.Profile == HearingProfile.HalfDuplex;
            _inputs.Writer.TryWrite(new Input.Voice(speaking));
        }, said);
        _mouth = new Mouth(_voice, TimeProvider.System, said);
        SoundPump pump = new(cutter, ear, () => Volatile.Read(ref _expected), input => _inputs.Writer.TryWrite(input), () => sound.Profile == HearingProfile.HalfDuplex ? null : _mouth.Saying);
        _hearing = Task.Run(() => pump.Run(sound.Microphone(TimeProvider.System), _over.Token));
    }

    /// <summary>Opens them; null where only keys are used, by wish or because nothing can be heard, which is told in one sentence.</summary>
    /// <param name="options">Which devices, models and folders.</param>
    /// <param name="output">Where the ear is told of.</param>
    /// <param name="tell">Told of what is wrong.</param>
    /// <param name="said">The language of the voice.</param>
    public static MicrophoneListener? Open(StartOptions options, TextWriter output, Action<string> tell, Language said)
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
            return new MicrophoneListener(ear, LiveSound.Open(options, tell), options, output, said);
        }
        catch (Exception e) when (e is ModelFileException or RecogniserUnavailableException)
        {
            tell($"{e.Message} The questions are typed.");
            return null;
        }
    }

    /// <inheritdoc/>
    /// <remarks>A call for help is none to a question.</remarks>
    public void Forget()
    {
        while (_inputs.Reader.TryRead(out Input? input))
        {
            _earlier.AddRange(input is Input.Spoken spoken ? [spoken] : Array.Empty<Input.Spoken>());
        }
    }

    /// <inheritdoc/>
    public void Warn(ImmutableArray<Message> sentences)
    {
        _mouth.Hush(alsoUrgent: true);
        _mouth.Say([.. sentences.Select(sentence => new Announcement(sentence, IsUrgent: true))], answers: false);
    }

    /// <inheritdoc/>
    public void Say(Message words, bool breaksOff)
    {
        if (breaksOff)
        {
            _mouth.Hush(alsoUrgent: true);
        }

        _mouth.Say([new Announcement(words)], answers: false);
    }

    /// <inheritdoc/>
    public Heard Next(Expectation expectation, Expectation? words)
    {
        (expectation, words) = (StartupSession.Heard(expectation, null), words is null ? null : StartupSession.Heard(words, null));
        Volatile.Write(ref _expected, words ?? expectation);
        if (EarlierCall() is { } call)
        {
            return call;
        }

        while (true)
        {
            if (TypedLine() is { } typed)
            {
                return typed;
            }

            if (_spokenAt is { } ended && !_mouth.IsSpeaking && Stopwatch.GetElapsedTime(ended) > DeafAfterwards)
            {
                _spokenAt = null;
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

    /// <summary>What was said to an earlier question counts as a call for help alone.</summary>
    Heard.Said? EarlierCall()
    {
        Phrase? call = _earlier.Select(spoken => PhraseOf(spoken, CallsOnly, null)).FirstOrDefault(phrase => phrase is Phrase.Command { IsSafetyPhrase: true });
        _earlier.Clear();
        return call is null ? null : new Heard.Said(call);
    }

    Heard.Said? Take(Input input, Expectation expectation, Expectation? words)
    {
        switch (input)
        {
            case Input.SpeechBegan when _sound.Profile == HearingProfile.Headset:
                _mouth.Hush(alsoUrgent: false);
                return null;
            case Input.Voice voice:
                _spokenAt = voice.Speaks ? null : Stopwatch.GetTimestamp();
                return null;
            case Input.Spoken spoken:
                return Take(spoken, expectation, words);
            case Input.Unusable unusable when !new OverVoice(_sound.Profile, unusable.Over, _said).MayBeOwn && StartupSession.Sentence(unusable.Why) is { Length: > 0 } why:
                return new Heard.Said(new Phrase.NotUnderstood(new Evidence("", Procedure.Hearing.Channel.Voice, Certainty.Red) { Why = why }));
            case Input.Sound sound when sound.State != _state:
                _state = sound.State;
                Tell(sound.Message.Length > 0 ? $"! {sound.Message}" : "The sound is good again.");
                return null;
            default:
                return null;
        }
    }

    /// <summary>Over the tool's own voice the words alone are looked for: free speech said there would not count.</summary>
    Heard.Said? Take(Input.Spoken spoken, Expectation expectation, Expectation? words)
    {
        OverVoice over = new(_sound.Profile, spoken.Over, _said);
        Phrase heard = over.MayBeOwn ? PhraseOf(spoken, words ?? expectation, null) : PhraseOf(spoken, expectation, words);
        Phrase phrase = _unclear.Recognized(heard, spoken.Clip, spoken.Over);
        bool isUnclear = over.MayBeDanger(phrase, isBadAir: false), isSaidAgain = isUnclear && _unclear.IsSaidAgain(phrase, spoken.Clip, spoken.Over);
        bool counts = isSaidAgain || over.Counts(phrase, isBadAir: false), mayBeDanger = isUnclear && !isSaidAgain;
        bool isStop = phrase is Phrase.Command { Word: CommandWord.StopTalking };
        if (isStop || mayBeDanger || (!counts && !over.IsEcho(phrase)))
        {
            _mouth.Hush(alsoUrgent: isStop);
        }

        return mayBeDanger ? new Heard.Said(new Phrase.NotUnderstood(phrase.Evidence with { Certainty = Certainty.Red, Why = StartupSession.WhyAsked(spoken.Over) }))
            : counts && !isStop ? new Heard.Said(phrase)
            : null;
    }

    /// <summary>What was said: one of the words that are known, or else whatever is expected. It may have been understood while the speaker paused.</summary>
    Phrase PhraseOf(Input.Spoken spoken, Expectation expectation, Expectation? words)
    {
        Phrase? ahead = null;
        try
        {
            ahead = spoken.Ahead?.Under(words ?? expectation);
        }
        catch (OperationCanceledException)
        {
            // Speech went on, and it is heard as a whole.
        }

        return ahead is null ? Understood(_ear, spoken.Clip, expectation, words)
            : words is not null && ahead is Phrase.NotUnderstood ? _ear.Hear(spoken.Clip, expectation)
            : ahead;
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
