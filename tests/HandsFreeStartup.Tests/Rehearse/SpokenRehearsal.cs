using System.Diagnostics;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Rehearse;
using HandsFreeStartup.Session;
using HandsFreeStartup.Simulation;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Speaking;

namespace HandsFreeStartup.Tests.Rehearse;

/// <summary>
/// A start-up by voice alone: a technician at a simulated furnace says what the displays show into the air, the program listens there, answers on its loudspeaker, and the technician goes on
/// from what the program shows and says. No key is pressed. So many readings of oxygen as there are slips are first said wrongly and taken back at once.
/// </summary>
/// <param name="furnace">The furnace.</param>
/// <param name="ear">Understands.</param>
/// <param name="detector">Finds speech, for this rehearsal alone.</param>
/// <param name="room">With the devices.</param>
/// <param name="speaker">The technician's voice.</param>
/// <param name="slips">Readings that are said wrongly and taken back.</param>
/// <param name="loses">The step at which the microphone is pulled out until a phrase has been typed; null where it stays.</param>
sealed class SpokenRehearsal(Furnace furnace, IEar ear, SileroDetector detector, SoundRoom room, Speaker speaker, int slips = 0, string? loses = null) : IDisplay, IEventLog
{
    const string Typed = "typed: ";

    static readonly TimeSpan Patience = TimeSpan.FromSeconds(10), LongestWay = TimeSpan.FromMinutes(20);

    readonly List<StartupEvent> _log = [];
    readonly Lock _gate = new();
    readonly RehearsalStage _stage = new(new Bench(furnace), new RehearsalClock(TimeProvider.System, 1, new DateTimeOffset(2026, 1, 5, 8, 0, 0, TimeSpan.Zero)));
    Phrase.Reading? _before, _now;
    Moment? _last;
    Evidence? _heardLast;
    string _answer = "";
    CountedVoice? _mouth;
    StartupEvent[] _taken = [];
    StartupSession? _session;
    bool _hasLost;
    int _heard;
    int _slipped;
    long _heardAt;

    public int Utterances { get; private set; }

    public int Readings { get; private set; }

    /// <summary>Utterances that it took to enter the readings: said, said again, confirmed, denied.</summary>
    public int ForReadings { get; private set; }

    public List<string> Wrong { get; } = [];

    /// <summary>What was asked about or not understood, with the reason.</summary>
    public List<string> Again { get; } = [];

    public List<double> Latencies { get; } = [];

    /// <summary>What the tool said of its sound, and what was typed meanwhile.</summary>
    public List<string> OfTheDevice { get; } = [];

    /// <summary>Whether it was told that the microphone is gone, a typed phrase was taken, and it was told that the microphone is back, in this order.</summary>
    public bool HasLostAndFound => OfTheDevice.FindIndex(told => told.StartsWith("No sound from the microphone", StringComparison.Ordinal)) is >= 0 and var lost
        && OfTheDevice.FindIndex(lost, told => told.StartsWith(Typed, StringComparison.Ordinal)) is >= 0 and var typed && OfTheDevice.FindIndex(typed, told => told == "The sound is good again.") >= 0;

    public IReadOnlyList<StartupEvent> Log => _log;

    /// <summary>Runs until the procedure is finished, or until that step is reached.</summary>
    public async Task<SessionEnd> Run(string? until = null)
    {
        using CancellationTokenSource stop = new();
        SpeechCutter cutter = new(detector, SoundPump.Settings);
        StartupSession? session = null;
        await using CountedVoice mouth = new(SynthesizedVoice.Find(TimeProvider.System, speaks =>
        {
            cutter.Deaf = speaks;
            session?.Post(new Input.Voice(speaks));
        }, machine: new Machine(Platform.Linux, room.Find, [])));
        _mouth = mouth;
        _session = session = new StartupSession(new StartupProcedure(furnace.Plan), _stage.Watch(this), _stage.Beside(this, asLines: false), mouth, ear, _stage.Clock);
        FileCopy none = new("", "", "");
        session.Begin(new JobDescription("spoken", none, none, none)
        {
            Technician = "Synthetic",
            ProgramVersion = "0",
            Recogniser = "synthetic speech",
            IsDemonstration = true,
            TimerFactor = 1,
        });
        Task ticking = Ticker.Run(session.Post, _stage.Clock, stop.Token);
        Task hearing = Task.Run(() => new SoundPump(cutter, ear, () => session.Expected, session.Post).Run(new Microphone(room.Microphone, TimeProvider.System), stop.Token));
        Task<SessionEnd> running = Task.Run(() => session.Run(stop.Token));
        try
        {
            await Lead(running, until);
        }
        finally
        {
            await stop.CancelAsync();
            await Task.WhenAll(ticking, hearing);
        }

        return await running;
    }

    async Task Lead(Task running, string? until)
    {
        IdealTechnician technician = new(_stage.Bench);
        Stopwatch way = Stopwatch.StartNew();
        while (!running.IsCompleted && _stage.Bench.Step.Id != until)
        {
            Assert.True(way.Elapsed < LongestWay, $"The end of the way is not reached at {_stage.Bench.Step.Id}.");
            await Quiet();
            Deed deed;
            lock (_gate)
            {
                deed = technician.Next(_last!.View);
            }

            switch (deed)
            {
                case Deed.ByHand hand:
                    Assert.True(_stage.Take(hand.Words), hand.Words);
                    _stage.Take("wait 3 seconds");
                    break;
                case Deed.Patience wait:
                    _stage.Take(FormattableString.Invariant($"wait {wait.Seconds * (_stage.Bench.Step.Timer is null ? 1 : 2):0} seconds"));
                    await Task.Delay(300);
                    break;
                case Deed.BySpeech speech when !_hasLost && _stage.Bench.Step.Id == loses:
                    _hasLost = true;
                    await TypeWithoutDevice(speech);
                    break;
                case Deed.BySpeech speech:
                    await Slip(speech);
                    await Say(speech, running);
                    break;
            }
        }
    }

    /// <summary>The microphone is gone: the tool says so, the keys work; it comes back, and the tool says that too.</summary>
    async Task TypeWithoutDevice(Deed.BySpeech speech)
    {
        await room.LoseDevice();
        await Until(() => _last!.Ear.Sound == SoundState.Lost, "lost");
        OfTheDevice.Add(_last!.Ear.Message);
        int before = _log.Count;
        _session!.Post(new Input.Typed(speech.Words));
        await Until(() => _log.Count > before, "typed");
        OfTheDevice.Add(Typed + speech.Words);
        await room.GiveDevice();
        room.Blow(ClosedLoopTests.BlowerBelowSpeech);
        await Until(() => _last!.Ear.Sound == SoundState.Good, "good again");
    }

    static async Task Until(Func<bool> isSo, string what)
    {
        Stopwatch waited = Stopwatch.StartNew();
        while (!isSo())
        {
            Assert.True(waited.Elapsed < TimeSpan.FromSeconds(90), $"The device should be {what}.");
            await Task.Delay(50);
        }
    }

    async Task Slip(Deed.BySpeech speech)
    {
        if (_slipped < slips && speech.Phrase is Phrase.Reading { Field.Id: FieldId.Oxygen } meant && _last!.View.Phase != Phase.Confirming)
        {
            _slipped++;
            await UtterUntil<ReadingEntered>(Words(speech with { Phrase = meant with { Value = meant.Value + 0.1m } }));
            await UtterUntil<ReadingScratched>("disregard");
            await Quiet();
        }
    }

    /// <summary>Says it again until it is taken. The tool is deaf for a moment after its voice, and that is waited out as it is before every other word.</summary>
    async Task UtterUntil<T>(string words)
        where T : StartupEvent
    {
        for (int tries = 0; tries < 4; tries++)
        {
            await Quiet();
            await Utter(words);
            if (_taken.OfType<T>().Any())
            {
                return;
            }
        }
    }

    /// <summary>Says it until the program has taken something of it; a read-back that is not what was meant is denied.</summary>
    async Task Say(Deed.BySpeech speech, Task running)
    {
        (_before, _now) = speech.Phrase is Phrase.Reading next && next != _now ? (_now, next) : (_before, _now);
        for (int tries = 0; tries < 4 && !running.IsCompleted; tries++)
        {
            if (_last!.View.Phase == Phase.Confirming && speech.Phrase is Phrase.Reading meant && _last.View.Readings.FirstOrDefault(line => line.State == ReadingState.Doubtful) is { } doubtful)
            {
                await Utter(doubtful.Value == meant.Value.ToString(System.Globalization.CultureInfo.InvariantCulture) ? "confirm" : "no");
            }
            else
            {
                await Utter(Words(speech, tries));
            }

            ForReadings += speech.Phrase is Phrase.Reading ? 1 : 0;
            if (_taken.OfType<ReadingEntered>().LastOrDefault() is { } entered && speech.Phrase is Phrase.Reading said)
            {
                Readings++;

                // On a loaded machine a reading is understood, and entered, while the next one is being said.
                if (!Is(entered, said) && !Is(entered, _before))
                {
                    Wrong.Add($"{said.Field.Id} {said.Value} became {entered.Reading.Key.FieldId} {entered.Reading.Value}");
                }
            }

            if (_taken.Length > 0 && _last.View.Phase != Phase.Confirming)
            {
                return;
            }

            Again.Add($"{Words(speech)}: {_answer}");
        }
    }

    static bool Is(ReadingEntered entered, Phrase.Reading? said) => said is not null && entered.Reading.Value == said.Value && entered.Reading.Key.FieldId == said.Field.Id;

    async Task Utter(string words)
    {
        await Quiet();
        int before = _log.Count, heard = Volatile.Read(ref _heard);
        Utterances++;
        await room.Say(words, speaker);
        long said = Stopwatch.GetTimestamp();
        while (Stopwatch.GetElapsedTime(said) < Patience && Volatile.Read(ref _heard) == heard)
        {
            await Task.Delay(20);
        }

        _answer = Volatile.Read(ref _heard) == heard ? "not heard" : $"{_heardLast?.Words} {_heardLast?.Why}";
        _taken = [.. _log.GetRange(before, _log.Count - before)];
        if (_taken.Length > 0)
        {
            Latencies.Add((_heardAt - said) * 1000.0 / Stopwatch.Frequency);
        }
    }

    /// <summary>Waits until the program has nothing more to say.</summary>
    async Task Quiet()
    {
        Stopwatch waited = Stopwatch.StartNew();
        for (int quiet = 0; quiet < 6; quiet = _last?.Ear.IsSpeaking == false && !_mouth!.IsSpeaking ? quiet + 1 : 0)
        {
            Assert.True(waited.Elapsed < LongestWay, "The program does not stop talking.");
            await Task.Delay(50);
        }
    }

    /// <summary>As it is said. Who is not understood takes the other word for an answer, as people do.</summary>
    static string Words(Deed.BySpeech speech, int tries = 0) => speech.Phrase switch
    {
        Phrase.Reading reading => $"{speech.Words[..speech.Words.LastIndexOf(' ')]} {SpokenNumber.Usual(reading.Value)}",
        Phrase.Answer answer => Answers.Of(answer.Word).Ways[tries % Answers.Of(answer.Word).Ways.Length],
        _ => speech.Words,
    };

    public void Show(Moment moment)
    {
        lock (_gate)
        {
            _last = moment;
            OfTheDevice.AddRange(moment.Said.Select(said => said.Text).Where(text => text.Contains("sound", StringComparison.OrdinalIgnoreCase) && text.Contains("good again", StringComparison.Ordinal)));
            if (moment.Heard is not null)
            {
                _heardAt = Stopwatch.GetTimestamp();
                _heardLast = moment.Heard;
                Interlocked.Increment(ref _heard);
            }
        }
    }

    public void Warn(string text)
    {
    }

    public void Append(IReadOnlyList<StartupEvent> decided) => _log.AddRange(decided);

    public IReadOnlyList<StartupEvent> ReadAll() => [.. _log];

    public string? KeepClip(SpeechClip clip) => null;

    /// <summary>A voice of which is known whether it has anything to say, also while it takes breath.</summary>
    sealed class CountedVoice(IVoice voice) : IVoice
    {
        int _open;

        public bool IsSpeaking => Volatile.Read(ref _open) > 0;

        public ValueTask Say(string text, CancellationToken cancellation) => Counted(voice.Say(text, cancellation));

        public ValueTask Warn(string text, CancellationToken cancellation) => Counted(voice.Warn(text, cancellation));

        public ValueTask DisposeAsync() => voice.DisposeAsync();

        async ValueTask Counted(ValueTask said)
        {
            Interlocked.Increment(ref _open);
            await said;
            Interlocked.Decrement(ref _open);
        }
    }
}
