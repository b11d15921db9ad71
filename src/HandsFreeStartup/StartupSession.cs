using System.Collections.Immutable;
using System.Threading.Channels;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Phrases;
using HandsFreeStartup.Speech.Speaking;

namespace HandsFreeStartup;

/// <summary>How a session ended.</summary>
public enum SessionEnd
{
    /// <summary>The start-up is signed, or ended out of service.</summary>
    Finished,
    /// <summary>It was interrupted and can be resumed.</summary>
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
/// <param name="languages">In which everything is shown and said; null for English. The record is English in each.</param>
public sealed class StartupSession(
    StartupProcedure procedure, IEventLog log, IDisplay display, IVoice voice, IEar? ear, TimeProvider clock, LanguagesInUse? languages = null)
{
    const string PhotoCommand = "photo ";

    internal const string SaidOver = "The tool was talking: say it again.";

    internal const string MayBeCall = "It may have been a call for help: say it again.";

    const int RedsThatOpenTheKeys = 2;

    /// <summary>Lines that may wait to be taken; who types more of them waits himself.</summary>
    const int MostWaitingLines = 1000;

    /// <summary>How often an alarm is told again that stands (common practice, no source).</summary>
    static readonly TimeSpan BetweenAlarms = TimeSpan.FromSeconds(30);

    /// <summary>A file that takes longer lies on a disk that does not answer.</summary>
    static readonly TimeSpan LongestFile = TimeSpan.FromSeconds(10);

    /// <summary>The sound of a safety phrase is kept if it can be done while nobody notices.</summary>
    static readonly TimeSpan LongestKeeping = TimeSpan.FromMilliseconds(50);

    /// <summary>So many messages about the sound are said within <see cref="SoundTelling"/>.</summary>
    const int MostOfTheSound = 4;

    static readonly TimeSpan SoundTelling = TimeSpan.FromMinutes(1);

    readonly Queue<long> _soundTold = [];
    readonly Channel<Input> _inputs = System.Threading.Channels.Channel.CreateUnbounded<Input>(new UnboundedChannelOptions { SingleReader = true });
    readonly SemaphoreSlim _roomForLines = new(MostWaitingLines);
    readonly Queue<Errand> _errands = [];
    readonly LanguagesInUse _languages = languages ?? LanguagesInUse.English;
    readonly SafetyWatch _safety = new(display, voice, clock, languages ?? LanguagesInUse.English);
    readonly Mouth _mouth = new(voice, clock, (languages ?? LanguagesInUse.English).Said);
    readonly UnclearCall _unclear = new();
    HearingProfile _profile = HearingProfile.HalfDuplex;
    EarView _ear = new(ear is null ? EarState.Off : EarState.Listening);
    Task _hearing = Task.CompletedTask;
    Input.Turn? _waiting;
    Expectation _expected = Heard(procedure.Expectation, null);
    long _soundSince = clock.GetTimestamp();
    string? _insistedOn;
    long _insistedAt;
    int? _metBySpeech;
    bool _isClosed;
    int _reds;

    /// <summary>Keeps photos; null where none can be attached.</summary>
    public IPhotoShelf? Photos { get; init; }

    /// <summary>How the microphone and the voice get along now.</summary>
    public HearingProfile Profile { get => _profile; init => _profile = value; }

    /// <summary>Hands that are moved by words; null where there are none but the technician's own.</summary>
    public IHands? Hands
    {
        get;
        init
        {
            field = value;
            _expected = Awaited;
        }
    }

    /// <summary>What may be said now; may be asked from any thread.</summary>
    public Expectation Expected => Volatile.Read(ref _expected);

    /// <summary>What the tool is saying, where the microphone may hear it too; may be asked from any thread.</summary>
    public string? Saying => _profile == HearingProfile.EchoCancelled ? _mouth.Saying : null;

    /// <summary>"Stop talking" is for the voice, not for the procedure, and may be said at any time.</summary>
    internal static Expectation Heard(Expectation expectation, IHands? hands)
    {
        Expectation heard = expectation.Dictation ? expectation : expectation with { Commands = expectation.Commands.Add(CommandWord.StopTalking) };
        return hands?.With(heard) ?? heard;
    }

    Expectation Awaited => Heard(procedure.Expectation, Hands);

    Now Now => Now.Of(clock);

    /// <summary>Hands an input to the loop; without effect once the session is over. A safety order is taken before everything that waits.</summary>
    public void Post(Input input)
    {
        if (_inputs.Writer.TryWrite(input) && SafetyIn(input, Expected) is { } command)
        {
            _safety.Expect(command.Word);
        }
    }

    /// <summary>Hands a typed line to the loop, and waits where too many are waiting already.</summary>
    public async Task Type(string line, CancellationToken stop)
    {
        await _roomForLines.WaitAsync(stop);
        Post(new Input.Typed(line));
    }

    /// <summary>No more inputs will come: the loop ends after the last one.</summary>
    public void Close() => Post(new Input.Closing());

    /// <summary>Begins a new job.</summary>
    /// <param name="job">What it runs with.</param>
    /// <param name="returned">All events of the returned record that it follows; null where it follows none.</param>
    public void Begin(JobDescription job, IReadOnlyList<StartupEvent>? returned = null)
    {
        Record(procedure.Begin(job, Now, returned), null);
        TellTheLanguage();
    }

    /// <summary>Goes on with the job of the log: the same events lead to the same state.</summary>
    public void Resume()
    {
        foreach (StartupEvent happened in log.ReadAll())
        {
            procedure.Apply(happened);
        }

        Record(procedure.Run(Now), null);
        Show(null, [procedure.Resuming(Now)]);
        TellTheLanguage();
    }

    /// <summary>Takes inputs until the start-up is finished, the inputs are over or <paramref name="stop"/> asks for the end.</summary>
    public async Task<SessionEnd> Run(CancellationToken stop)
    {
        try
        {
            while (procedure.Phase != Phase.Finished)
            {
                while (_inputs.Reader.TryRead(out Input? input))
                {
                    stop.ThrowIfCancellationRequested();
                    Take(input);
                }

                if (TakeSafetyHeard() || GoOn())
                {
                    continue;
                }

                if (_isClosed && _errands.Count == 0)
                {
                    return SessionEnd.InputOver;
                }

                await _inputs.Reader.WaitToReadAsync(stop);
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
            _safety.Close();
        }
    }

    /// <summary>What cannot wait is done at once: a safety order, time, the state of the sound. Everything else is done in the order in which it came.</summary>
    void Take(Input input)
    {
        if (input is Input.Typed)
        {
            _roomForLines.Release();
        }

        if (SafetyIn(input, procedure.Expectation) is { } command)
        {
            Obey(command);
            return;
        }

        switch (input)
        {
            case Input.SpeechBegan began:
                _metBySpeech = began.IsLive ? procedure.Questions : null;
                HushFor(_profile == HearingProfile.Headset);
                Notice(_ear with { State = EarState.HearingSpeech });
                break;
            case Input.Sound sound:
                Watch(sound);
                break;
            case Input.Voice { Speaks: var speaks }:
                Notice(_ear with { IsSpeaking = speaks, IsDeaf = speaks && _profile == HearingProfile.HalfDuplex });
                break;
            case Input.Tick:
                Record(Due(), null);
                Insist();
                break;
            case Input.Closing:
                _isClosed = true;
                break;
            case Input.Spoken spoken:
                Hearing heard = new(ear!, _hearing, log.KeepClip, spoken, hearing => AwakeAfterHearing(hearing, spoken.Over)) { Met = _metBySpeech };
                _hearing = heard.Begin(Awaited);
                Notice(_ear with { State = EarState.Understanding });
                _errands.Enqueue(new Errand(() => Obey(heard)) { Heard = heard });
                break;
            case Input.Typed typed:
                Task<KeptPhoto>? photo = null;
                _errands.Enqueue(new Errand(() => Obey(typed.Line, ref photo)));
                break;
            case Input.Unusable unusable:
                _errands.Enqueue(Errand.Of(() => Refuse(unusable)));
                break;
            case Input.Pressed pressed:
                _errands.Enqueue(Errand.Of(() => Obey(CommandOf(pressed))));
                break;
            case Input.SoundEnded:
                _errands.Enqueue(Errand.Of(() => Notice(_ear with { State = EarState.Over, Level = AudioFrame.Floor })));
                break;
            case Input.Turn turn:
                _errands.Enqueue(Errand.Of(() => _waiting = turn));
                break;
        }

        GrantTurn();
    }

    /// <summary>A safety phrase does not wait for what was said before it, nor for whatever is being understood, read or kept.</summary>
    bool TakeSafetyHeard()
    {
        Errand? errand = _errands.FirstOrDefault(waiting => waiting is { IsOver: false, Heard: { Understood: Phrase.Command { IsSafetyPhrase: true } command } heard } && Counts(command, heard.Over));
        if (errand is not { Heard: { Understood: Phrase.Command said } heard })
        {
            return false;
        }

        errand.IsOver = true;
        _ear = _ear with { State = EarState.Listening };
        Obey(said with { Evidence = said.Evidence with { Clip = heard.KeepWithin(LongestKeeping) } });
        return true;
    }

    /// <summary>Does what is first in turn, as far as that goes without waiting.</summary>
    /// <returns>Whether anything was done.</returns>
    bool GoOn()
    {
        while (_errands.TryPeek(out Errand? over) && over.IsOver)
        {
            _errands.Dequeue();
        }

        if (!_errands.TryPeek(out Errand? first) || !first.IsReady)
        {
            return false;
        }

        if (first.GoOn() is { } work)
        {
            AwakeAfter(work);
            return false;
        }

        first.IsOver = true;
        GrantTurn();
        return true;
    }

    void AwakeAfter(Task work) =>
        work.ContinueWith(_ => _inputs.Writer.TryWrite(new Input.Awake()), CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);

    void AwakeAfterHearing(Task<Phrase> hearing, string? over) => hearing.ContinueWith(
        heard =>
        {
            if (heard is { IsCompletedSuccessfully: true, Result: Phrase.Command { IsSafetyPhrase: true } command } && Counts(command, over))
            {
                _safety.Expect(command.Word);
            }

            _inputs.Writer.TryWrite(new Input.Awake());
        }, CancellationToken.None, TaskContinuationOptions.None, TaskScheduler.Default);

    static Phrase.Command CommandOf(Input.Pressed pressed) => new(pressed.Word, Evidence.Typed(Commands.Of(pressed.Word).Id));

    static Phrase.Command? SafetyIn(Input input, Expectation expectation) => input switch
    {
        Input.Pressed pressed when CommandOf(pressed) is { IsSafetyPhrase: true } command => command,
        Input.Typed typed when PhraseText.Typed(typed.Line, expectation) is Phrase.Command { IsSafetyPhrase: true } command => command,
        _ => null,
    };

    /// <summary>A typed line; "photo PATH" attaches a photo.</summary>
    /// <returns>What must be waited for before it is called again; null where all is done.</returns>
    Task? Obey(string line, ref Task<KeptPhoto>? photo)
    {
        string text = line.Trim();
        if (Photos is null || procedure.Expectation.Dictation || !text.StartsWith(PhotoCommand, StringComparison.OrdinalIgnoreCase))
        {
            Obey(PhraseText.Typed(line, Awaited));
            return null;
        }

        string path = text[PhotoCommand.Length..].Trim();
        photo ??= Kept(Photos, path);
        if (!photo.IsCompleted)
        {
            return photo;
        }

        Evidence evidence = Evidence.Typed(text);
        Obey(photo.GetAwaiter().GetResult() switch
        {
            { Why: null } kept => new Phrase.Photo(kept.Name, kept.Sha256, evidence),
            { Why: var why } => new Phrase.NotUnderstood(evidence with { Certainty = Certainty.Red, Why = why }),
        });
        return null;
    }

    async Task<KeptPhoto> Kept(IPhotoShelf shelf, string path)
    {
        try
        {
            return await Beside.Run(() => shelf.Keep(path)).WaitAsync(LongestFile, clock);
        }
        catch (TimeoutException)
        {
            return new KeptPhoto("", "", $"The photo {path} cannot be read: its disk does not answer. Copy it to this computer first.");
        }
    }

    /// <summary>An utterance.</summary>
    /// <returns>What must be waited for before it is called again; null where all is done.</returns>
    Task? Obey(Hearing heard)
    {
        if (heard.PendingUnder(Awaited) is { } pending)
        {
            return pending;
        }

        Phrase phrase = _unclear.Recognized(heard.Phrase, heard.Sound, heard.Over);
        OverVoice over = Over(heard.Over);
        bool isBadAir = procedure.IsBadAir(phrase, Now);
        if (!over.Counts(phrase, isBadAir) && !IsSaidAgain(phrase, heard, over))
        {
            Drop(heard, phrase, over, isBadAir);
            return null;
        }

        // Who hears nothing for a while says it again; the second "yes" must not answer the next question.
        bool isLate = heard.Met is { } met && Hands?.AreMeant(phrase) != true && procedure.IsLate(phrase, met, Now);
        if (phrase is Phrase.NotUnderstood || isLate)
        {
            _ear = _ear with { State = EarState.Listening };
            AskAgain(phrase is Phrase.NotUnderstood ? phrase.Evidence : NotTaken(phrase, "It was said before this was asked."));
            return null;
        }

        CatchUp();

        // Only the sound of what leads to something is kept; talk during a pause is none of the tool's business. Deciding changes nothing, so it can be done again.
        if (!heard.IsKept && Hands?.AreMeant(phrase) != true && procedure.Decide(phrase, Now).Count > 0)
        {
            return heard.Keep();
        }

        _ear = _ear with { State = EarState.Listening };
        Obey(phrase with { Evidence = phrase.Evidence with { Clip = heard.Clip } });
        return null;
    }

    /// <summary>
    /// Where the tool hears itself, words of its own prompt never count; others end the prompt and are heard from then on. The screen says that they must be said again. Danger never vanishes: what
    /// may be the tool's own "room monoxide four" misheard, or somebody's "room monoxide forty", is asked for again aloud, and so is what may be a call for help.
    /// </summary>
    void Drop(Hearing heard, Phrase phrase, OverVoice over, bool isBadAir)
    {
        bool mayBeDanger = over.MayBeDanger(phrase, isBadAir), isEcho = over.IsEcho(phrase) && !mayBeDanger;
        HushFor(!isEcho);
        _ear = _ear with { State = EarState.Listening };
        if (mayBeDanger)
        {
            Record(procedure.AskAgain(phrase with { Evidence = phrase.Evidence with { Clip = heard.KeepWithin(LongestKeeping) } }, Now), null);
            AskAgainAloud(NotTaken(phrase, WhyAsked(over.Said)));
            return;
        }

        Show(isEcho || phrase is Phrase.NotUnderstood ? null : NotTaken(phrase, SaidOver), []);
    }

    bool IsSaidAgain(Phrase phrase, Hearing heard, OverVoice over) =>
        phrase is Phrase.Command { IsSafetyPhrase: true } && over.MayBeDanger(phrase, isBadAir: false) && _unclear.IsSaidAgain(phrase, heard.Sound, heard.Over);

    /// <summary>Why what may be danger is asked for again.</summary>
    /// <param name="over">What the tool was saying at the same time, or null.</param>
    internal static string WhyAsked(string? over) => over is null ? MayBeCall : SaidOver;

    static Evidence NotTaken(Phrase phrase, string why) => phrase.Evidence with { Certainty = Certainty.Red, Why = why };

    OverVoice Over(string? said) => new(_profile, said, _languages.Said);

    bool Counts(Phrase.Command call, string? said) => Over(said).Counts(call, isBadAir: false);

    /// <summary>Ends what is being said for somebody who speaks; a safety message goes on.</summary>
    void HushFor(bool speaker)
    {
        if (speaker)
        {
            _mouth.Hush(alsoUrgent: false);
        }
    }

    void Obey(Phrase phrase)
    {
        if (phrase is Phrase.Command { Word: CommandWord.StopTalking })
        {
            _mouth.Hush(alsoUrgent: true);
            Show(phrase.Evidence, []);
            return;
        }

        if (phrase is Phrase.NotUnderstood)
        {
            // A path is shown and never said.
            bool isPhoto = phrase.Evidence.Words.StartsWith(PhotoCommand, StringComparison.OrdinalIgnoreCase);
            string why = phrase.Evidence.Why;
            Show(phrase.Evidence, [new Announcement(why) { Said = isPhoto ? "The photo was not kept. The screen says why." : why }]);
            return;
        }

        _reds = 0;
        _ear = _ear with { OffersKeys = false };
        if (Hands?.AreMeant(phrase) == true)
        {
            Show(phrase.Evidence, [new Announcement(Hands.Do(phrase))]);
            return;
        }

        CatchUp();
        Record(procedure.Decide(phrase, Now), phrase.Evidence);
        if (phrase is Phrase.Command { IsSafetyPhrase: true })
        {
            _safety.CarriedOut();
        }
    }

    /// <summary>What is said after the end of a wait counts as said after it, even where no tick has told of that end yet.</summary>
    void CatchUp()
    {
        if (Due() is { Count: > 0 } due)
        {
            Record(due, null);
        }
    }

    /// <summary>What the passing of time leads to.</summary>
    IReadOnlyList<StartupEvent> Due() => procedure.Decide(new Phrase.TimePassed(), Now);

    /// <summary>Where the tool hears itself, what began while it spoke may be nothing but its own voice: nobody is asked to say that again.</summary>
    void Refuse(Input.Unusable unusable)
    {
        _ear = _ear with { State = EarState.Listening };
        string reason = Sentence(unusable.Why);
        if (reason.Length > 0 && !Over(unusable.Over).MayBeOwn)
        {
            AskAgain(new Evidence("", Procedure.Hearing.Channel.Voice, Certainty.Red) { Why = reason });
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
        if (procedure.View(Now).IsPaused)
        {
            Show(evidence, []);
            return;
        }

        AskAgainAloud(evidence);
    }

    void AskAgainAloud(Evidence evidence)
    {
        _ear = _ear with { OffersKeys = ++_reds >= RedsThatOpenTheKeys };
        Show(evidence, [new Announcement(_ear.OffersKeys ? "Say it again, or type it." : "Say it again.")]);
    }

    void Watch(Input.Sound sound)
    {
        bool changed = sound.State != _ear.Sound;
        _soundSince = changed ? clock.GetTimestamp() : _soundSince;
        _ear = _ear with { Level = sound.Level, Sound = sound.State, Message = sound.Message };
        string news = sound.State switch
        {
            SoundState.Good => "The sound is good again.",
            SoundState.Moved when _profile != HearingProfile.HalfDuplex => $"{sound.Message} It may hear the voice: nothing is heard while the tool speaks.",
            _ => sound.Message,
        };
        _profile = sound.State == SoundState.Moved ? HearingProfile.HalfDuplex : _profile;
        Show(null, changed ? [OfTheSound(news)] : []);
    }

    /// <summary>
    /// A microphone that is gated hears the voice and nothing else: each message about its silence would end it and bring the next one. Then they are only shown.
    /// </summary>
    Announcement OfTheSound(string news)
    {
        while (_soundTold.TryPeek(out long told) && clock.GetElapsedTime(told) > SoundTelling)
        {
            _soundTold.Dequeue();
        }

        if (_soundTold.Count >= MostOfTheSound)
        {
            return new Announcement(news) { Said = "" };
        }

        _soundTold.Enqueue(clock.GetTimestamp());
        return new Announcement(news);
    }

    /// <summary>What is shown and said may be in another language; what the ear hears, and what is typed, is English in each.</summary>
    void TellTheLanguage()
    {
        if (!_languages.Shown.IsEnglish)
        {
            Show(null, [new Announcement("Answer in English, with the words that stand after SAY; numbers have a decimal point.")]);
        }
    }

    void Notice(EarView ear)
    {
        _ear = ear;
        Show(null, []);
    }

    /// <summary>An alarm that nobody has answered is told again and again, the graver the sooner.</summary>
    void Insist()
    {
        if (procedure.View(Now).Alarm is not { } alarm || procedure.Phase == Phase.Finished)
        {
            _insistedOn = null;
            return;
        }

        if (_insistedOn != alarm.Title)
        {
            (_insistedOn, _insistedAt) = (alarm.Title, clock.GetTimestamp());
        }
        else if (clock.GetElapsedTime(_insistedAt) >= BetweenAlarms)
        {
            _insistedAt = clock.GetTimestamp();
            Show(null, [new Announcement($"{alarm.Title}. {alarm.Lines[0]}", IsUrgent: true)]);
        }
    }

    void Record(IReadOnlyList<StartupEvent> events, Evidence? heard)
    {
        if (events.Count > 0)
        {
            log.Append(events);
        }

        foreach (StartupEvent happened in events)
        {
            procedure.Apply(happened);
        }

        Show(heard, [.. procedure.Announce(events, Now)]);
    }

    void Show(Evidence? heard, ImmutableArray<Announcement> said)
    {
        Volatile.Write(ref _expected, Awaited);
        display.Show(new Moment(procedure.View(Now, _languages.Shown), _ear with { SoundFor = clock.GetElapsedTime(_soundSince) }, heard, [.. said.Select(announcement => announcement.In(_languages.Shown))]));
        _mouth.Say(said, answers: heard is not null);
    }

    void GrantTurn()
    {
        bool timersRun = procedure.View(Now).Timers.Any(timer => timer.Remaining > TimeSpan.Zero);
        if (_waiting is { } turn && !_mouth.IsSpeaking && !(turn.AfterTimers && timersRun))
        {
            _waiting = null;
            turn.Granted.TrySetResult();
        }
    }
}
