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
using HandsFreeStartup.Start;

namespace HandsFreeStartup.Tests.Rehearse;

/// <summary>
/// A start-up by voice alone: a technician at a simulated furnace says what the displays show into the air, the program listens there, answers on its loudspeaker, and the technician goes on
/// from what the program shows and says. No key is pressed. So many readings of oxygen as there are slips are first said wrongly and taken back at once.
/// </summary>
sealed class SpokenRehearsal(Furnace furnace, ListeningEar ear, SoundRoom room, string voice, int pace, int slips = 0) : IDisplay, IEventLog
{
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(20);

    readonly List<StartupEvent> _log = [];
    readonly Lock _gate = new();
    readonly RehearsalStage _stage = new(new Bench(furnace), new RehearsalClock(TimeProvider.System, 1, new DateTimeOffset(2026, 1, 5, 8, 0, 0, TimeSpan.Zero)));
    Moment? _last;
    int _heard;
    long _heardAt;

    public int Utterances { get; private set; }

    public int Readings { get; private set; }

    public List<string> Wrong { get; } = [];

    public List<string> Again { get; } = [];

    public List<double> Latencies { get; } = [];

    public IReadOnlyList<StartupEvent> Log => _log;

    /// <summary>Runs until the procedure is finished, or until that step is reached.</summary>
    public async Task<SessionEnd> Run(string? until = null)
    {
        using CancellationTokenSource stop = new();
        SpeechCutter cutter = new(ear.Detector, SoundPump.Settings);
        StartupSession? session = null;
        await using IVoice mouth = EspeakVoice.Find(TimeProvider.System, speaks =>
        {
            cutter.Deaf = speaks;
            session?.Post(new Input.Voice(speaks));
        }, find: room.Find);
        session = new StartupSession(new StartupProcedure(furnace.Plan), _stage.Watch(this), _stage.Beside(this, asLines: false), mouth, ear, _stage.Clock);
        FileCopy none = new("", "", "");
        session.Begin(new JobDescription("spoken", none, none, none, "Synthetic", "0", ear.Name, true, 1));
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
        while (!running.IsCompleted && _stage.Bench.Step.Id != until)
        {
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
                case Deed.BySpeech speech:
                    await Slip(speech);
                    await Say(speech, running);
                    break;
            }
        }
    }

    async Task Slip(Deed.BySpeech speech)
    {
        if (_slipped < slips && speech.Phrase is Phrase.Reading { Field.Id: FieldId.Oxygen } meant && _last!.View.Phase != Phase.Confirming)
        {
            _slipped++;
            await Utter(Words(speech with { Phrase = meant with { Value = meant.Value + 0.1m } }));
            await Utter("disregard");
        }
    }

    int _slipped;

    /// <summary>Says it until the program has taken something of it; a read-back that is not what was meant is denied.</summary>
    async Task Say(Deed.BySpeech speech, Task running)
    {
        for (int tries = 0; tries < 4 && !running.IsCompleted; tries++)
        {
            if (_last!.View.Phase == Phase.Confirming && speech.Phrase is Phrase.Reading meant && _last.View.Readings.FirstOrDefault(line => line.State == ReadingState.Doubtful) is { } doubtful)
            {
                await Utter(doubtful.Value == meant.Value.ToString(System.Globalization.CultureInfo.InvariantCulture) ? "confirm" : "no");
            }
            else
            {
                await Utter(Words(speech));
            }

            if (_taken.OfType<ReadingEntered>().LastOrDefault() is { } entered && speech.Phrase is Phrase.Reading said)
            {
                Readings++;
                if (entered.Reading.Value != said.Value || entered.Reading.Key.FieldId != said.Field.Id)
                {
                    Wrong.Add($"{said.Field.Id} {said.Value} became {entered.Reading.Key.FieldId} {entered.Reading.Value}");
                }
            }

            if (_taken.Length > 0 && _last.View.Phase != Phase.Confirming)
            {
                return;
            }

            Again.Add(Words(speech));
        }
    }

    StartupEvent[] _taken = [];

    async Task Utter(string words)
    {
        await Quiet();
        int before = _log.Count, heard = Volatile.Read(ref _heard);
        Utterances++;
        await room.Say(words, voice, pace);
        long said = Stopwatch.GetTimestamp();
        while (Stopwatch.GetElapsedTime(said) < Patience && Volatile.Read(ref _heard) == heard)
        {
            await Task.Delay(20);
        }

        _taken = [.. _log.GetRange(before, _log.Count - before)];
        if (_taken.Length > 0)
        {
            Latencies.Add((_heardAt - said) * 1000.0 / Stopwatch.Frequency);
        }
    }

    /// <summary>Waits until the program has nothing more to say.</summary>
    async Task Quiet()
    {
        for (int quiet = 0; quiet < 12; quiet = _last?.Ear.IsSpeaking == false ? quiet + 1 : 0)
        {
            await Task.Delay(50);
        }
    }

    static string Words(Deed.BySpeech speech) => speech.Phrase is Phrase.Reading reading
        ? $"{speech.Words[..speech.Words.LastIndexOf(' ')]} {SpokenNumber.Usual(reading.Value)}"
        : speech.Words;

    public void Show(Moment moment)
    {
        lock (_gate)
        {
            _last = moment;
            if (moment.Heard is not null)
            {
                _heardAt = Stopwatch.GetTimestamp();
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
}
