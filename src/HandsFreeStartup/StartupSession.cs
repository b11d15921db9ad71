using System.Collections.Immutable;
using System.Threading.Channels;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Speaking;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup;

/// <summary>How a session ended.</summary>
public enum SessionEnd
{
    /// <summary>The start-up is signed, or ended out of service.</summary>
    Finished,
    /// <summary>It was broken off and can go on later.</summary>
    BrokenOff,
    /// <summary>Nothing more will be said or typed; it can go on later.</summary>
    InputOver,
}

/// <summary>The one loop through which everything goes: decide, append, apply, show.</summary>
/// <remarks>Inputs may be posted from any thread; they are taken one after the other by whoever runs <see cref="Run"/>.</remarks>
/// <param name="procedure">Decides; changed by events only.</param>
/// <param name="log">Where each event is written before it counts.</param>
/// <param name="display">Shows.</param>
/// <param name="voice">Speaks.</param>
/// <param name="ear">Understands utterances; null when only keys are used.</param>
/// <param name="clock">The present.</param>
/// <param name="photos">Keeps photos; null where none can be attached.</param>
public sealed class StartupSession(
    StartupProcedure procedure, IEventLog log, IDisplay display, IVoice voice, IEar? ear, TimeProvider clock, IPhotoShelf? photos = null)
{
    const string PhotoCommand = "photo ";

    const int RedsThatOpenTheKeys = 2;

    readonly Channel<Input> _inputs = System.Threading.Channels.Channel.CreateUnbounded<Input>(new UnboundedChannelOptions { SingleReader = true });
    readonly Mouth _mouth = new(voice);
    EarView _ear = new(ear is null ? EarState.Off : EarState.Listening);
    Input.Turn? _waiting;
    Expectation _expected = procedure.Expectation;
    int _reds;

    /// <summary>What may be said now; may be asked from any thread.</summary>
    public Expectation Expected => Volatile.Read(ref _expected);

    /// <summary>Hands an input to the loop; without effect once the session is over.</summary>
    public void Post(Input input) => _inputs.Writer.TryWrite(input);

    /// <summary>No more inputs will come: the loop ends after the last one.</summary>
    public void Close() => _inputs.Writer.TryComplete();

    /// <summary>Begins a new job.</summary>
    public void Begin(JobDescription job) => Record(procedure.Begin(job, clock.GetUtcNow()), null);

    /// <summary>Goes on with the job of the log: the same events lead to the same state.</summary>
    public void Resume()
    {
        foreach (StartupEvent happened in log.ReadAll())
        {
            procedure.Apply(happened);
        }

        StartupView view = procedure.View(clock.GetUtcNow());
        Show(null, [new Announcement($"Going on. {view.StepTitle}. {view.Do} {view.Question}".TrimEnd())]);
    }

    /// <summary>Takes inputs until the start-up is finished, the inputs are over or <paramref name="stop"/> asks for the end.</summary>
    public async Task<SessionEnd> Run(CancellationToken stop)
    {
        try
        {
            while (procedure.Phase != Phase.Finished)
            {
                if (!await _inputs.Reader.WaitToReadAsync(stop))
                {
                    return SessionEnd.InputOver;
                }

                while (procedure.Phase != Phase.Finished && !stop.IsCancellationRequested && _inputs.Reader.TryRead(out Input? input))
                {
                    Take(input);
                }
            }

            await _mouth.Finish(stop);
            return SessionEnd.Finished;
        }
        catch (OperationCanceledException)
        {
            return procedure.Phase == Phase.Finished ? SessionEnd.Finished : SessionEnd.BrokenOff;
        }
        finally
        {
            _inputs.Writer.TryComplete();
        }
    }

    void Take(Input input)
    {
        switch (input)
        {
            case Input.SpeechBegan:
                Notice(_ear with { State = EarState.HearingSpeech });
                break;
            case Input.Spoken spoken:
                Hear(spoken);
                break;
            case Input.Unusable unusable:
                Refuse(unusable.Why);
                break;
            case Input.Typed typed:
                Obey(Read(typed.Line));
                break;
            case Input.Pressed pressed:
                Obey(new Phrase.Order(pressed.Word, Evidence.Typed(Commands.Of(pressed.Word).Id)));
                break;
            case Input.Sound sound:
                Watch(sound);
                break;
            case Input.SoundEnded:
                Notice(_ear with { State = EarState.Over, Level = AudioFrame.Floor });
                break;
            case Input.Tick:
                Record(procedure.Decide(new Phrase.TimePassed(), clock.GetUtcNow()), null);
                break;
            case Input.Turn turn:
                _waiting = turn;
                break;
        }

        GrantTurn();
    }

    /// <summary>A typed line; "photo PATH" attaches a photo.</summary>
    Phrase Read(string line)
    {
        string text = line.Trim();
        if (photos is null || procedure.Expectation.Dictation || !text.StartsWith(PhotoCommand, StringComparison.OrdinalIgnoreCase))
        {
            return PhraseText.Typed(line, procedure.Expectation);
        }

        Evidence evidence = Evidence.Typed(text);
        return photos.Keep(text[PhotoCommand.Length..].Trim()) switch
        {
            { Why: null } kept => new Phrase.Photo(kept.Name, kept.Sha256, evidence),
            { Why: var why } => new Phrase.NotUnderstood(evidence with { Certainty = Certainty.Red, Why = why }),
        };
    }

    void Hear(Input.Spoken spoken)
    {
        Notice(_ear with { State = EarState.Understanding });
        Phrase phrase = spoken.Ahead?.Under(procedure.Expectation) ?? ear!.Hear(spoken.Clip, procedure.Expectation);
        _ear = _ear with { State = EarState.Listening };
        if (phrase is Phrase.NotUnderstood)
        {
            AskAgain(phrase.Evidence);
            return;
        }

        Obey(phrase, spoken.Clip);
    }

    void Obey(Phrase phrase, SpeechClip? clip = null)
    {
        if (phrase is Phrase.NotUnderstood)
        {
            Show(phrase.Evidence, [new Announcement(phrase.Evidence.Why)]);
            return;
        }

        _reds = 0;
        _ear = _ear with { OffersKeys = false };
        DateTimeOffset now = clock.GetUtcNow();
        IReadOnlyList<StartupEvent> events = procedure.Decide(phrase, now);
        if (clip is not null && events.Count > 0)
        {
            // Only the sound of what led to something is kept; talk during a pause is none of the tool's business. Deciding changes nothing, so it can be done again.
            phrase = phrase with { Evidence = phrase.Evidence with { Clip = log.KeepClip(clip) } };
            events = procedure.Decide(phrase, now);
        }

        Record(events, phrase.Evidence);
    }

    void Refuse(Refusal why)
    {
        _ear = _ear with { State = EarState.Listening };
        string reason = Sentence(why);
        if (reason.Length > 0)
        {
            AskAgain(new Evidence("", Procedure.Hearing.Channel.Voice, Certainty.Red, Why: reason));
        }
        else
        {
            Show(null, []);
        }
    }

    /// <summary>Why speech was refused; empty for a sound that was no word.</summary>
    internal static string Sentence(Refusal why) => why switch
    {
        Refusal.TooLong => "too long: say one reading at a time",
        Refusal.BeginningLost => "its beginning was not heard",
        Refusal.SpokenOver => "the tool spoke at the same time",
        Refusal.SoundLost => "the sound broke off",
        _ => "",
    };

    // Nothing is entered, and nothing is recorded. During a pause other talk is none of the tool's business.
    void AskAgain(Evidence evidence)
    {
        if (procedure.View(clock.GetUtcNow()).IsPaused)
        {
            Show(evidence, []);
            return;
        }

        _ear = _ear with { OffersKeys = ++_reds >= RedsThatOpenTheKeys };
        Show(evidence, [new Announcement(_ear.OffersKeys ? "Say it again, or type it." : "Say it again.")]);
    }

    void Watch(Input.Sound sound)
    {
        bool changed = sound.State != _ear.Sound;
        _ear = _ear with { Level = sound.Level, Sound = sound.State, Message = sound.Message };
        Show(null, changed ? [new Announcement(sound.State == SoundState.Good ? "The sound is good again." : sound.Message)] : []);
    }

    void Notice(EarView ear)
    {
        _ear = ear;
        Show(null, []);
    }

    void Record(IReadOnlyList<StartupEvent> events, Evidence? heard)
    {
        foreach (StartupEvent happened in events)
        {
            log.Append(happened);
            procedure.Apply(happened);
        }

        Show(heard, [.. procedure.Announce(events, clock.GetUtcNow())]);
    }

    void Show(Evidence? heard, ImmutableArray<Announcement> said)
    {
        Volatile.Write(ref _expected, procedure.Expectation);
        display.Show(new Moment(procedure.View(clock.GetUtcNow()), _ear, heard, said));
        _mouth.Say(said, answers: heard is not null);
    }

    void GrantTurn()
    {
        bool timersRun = procedure.View(clock.GetUtcNow()).Timers.Any(timer => timer.Remaining > TimeSpan.Zero);
        if (_waiting is { } turn && !_mouth.IsSpeaking && !(turn.AfterTimers && timersRun))
        {
            _waiting = null;
            turn.Granted.TrySetResult();
        }
    }
}
