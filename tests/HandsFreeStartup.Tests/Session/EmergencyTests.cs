using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Speaking;
using HandsFreeStartup.Tests.Support;
using Microsoft.Extensions.Time.Testing;

namespace HandsFreeStartup.Tests.Session;

/// <summary>The emergency keys and phrases while something hangs: a file, a disk, an ear, a record. What hangs is let go only when the order has been carried out.</summary>
public sealed class EmergencyTests
{
    static readonly SpeechClip Clip = new(new float[16_000], 0, 0, 16_000);
    static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    readonly List<string> _notes = [];
    readonly ManualResetEventSlim _hold = new();
    readonly FakeTimeProvider _clock = new(Some.Morning);

    public static TheoryData<string, CommandWord> EveryDoor()
    {
        TheoryData<string, CommandWord> rows = [];
        foreach (string hangs in (string[])["photo", "ear", "clip"])
        {
            rows.Add(hangs, CommandWord.EmergencyStop);
            rows.Add(hangs, CommandWord.GasSmell);
        }

        return rows;
    }

    [Theory]
    [MemberData(nameof(EveryDoor))]
    public async Task A_key_stops_the_start_up_while_a_file_an_ear_or_a_disk_hangs(string hangs, CommandWord word)
    {
        (StartupSession session, HeldLog log) = Session(hangs);
        Task<SessionEnd> running = Task.Run(() => session.Run(CancellationToken.None));
        Hang(session, hangs);

        session.Post(new Input.Pressed(word));

        await log.Has<StartupStopped>();
        _hold.Set();
        session.Close();
        Assert.Equal(SessionEnd.InputOver, await running.WaitAsync(Patience));
    }

    [Theory]
    [InlineData("photo")]
    [InlineData("ear")]
    [InlineData("clip")]
    public async Task A_typed_safety_phrase_passes_everything_that_waits(string hangs)
    {
        (StartupSession session, HeldLog log) = Session(hangs);
        Task<SessionEnd> running = Task.Run(() => session.Run(CancellationToken.None));
        Hang(session, hangs);
        session.Post(new Input.Typed("no"));

        session.Post(new Input.Typed("gas smell"));

        await log.Has<StartupStopped>();
        Assert.Empty(log.Events.OfType<AnswerGiven>());
        _hold.Set();
        session.Close();
        await running.WaitAsync(Patience);
    }

    [Fact]
    public async Task A_spoken_safety_phrase_is_carried_out_while_a_photo_is_read_and_its_sound_is_kept()
    {
        (StartupSession session, HeldLog log) = Session("photo", new Phrase.Command(CommandWord.EmergencyStop, Some.Heard()));
        Task<SessionEnd> running = Task.Run(() => session.Run(CancellationToken.None));
        Hang(session, "photo");

        session.Post(new Input.Spoken(Clip));

        await log.Has<StartupStopped>();
        Assert.Equal("clip.wav", log.Events.OfType<StartupStopped>().Single().Evidence!.Clip);
        _hold.Set();
        session.Close();
        await running.WaitAsync(Patience);
    }

    [Fact]
    public async Task A_spoken_safety_phrase_whose_sound_cannot_be_kept_in_time_is_carried_out_without_it()
    {
        (StartupSession session, HeldLog log) = Session("clip", new Phrase.Command(CommandWord.EmergencyStop, Some.Heard()));
        Task<SessionEnd> running = Task.Run(() => session.Run(CancellationToken.None));

        session.Post(new Input.Spoken(Clip));

        await log.Has<StartupStopped>();
        Assert.Null(log.Events.OfType<StartupStopped>().Single().Evidence!.Clip);
        _hold.Set();
        session.Close();
        await running.WaitAsync(Patience);
    }

    [Fact]
    public async Task Where_the_record_itself_hangs_what_to_do_is_shown_and_said_without_it()
    {
        NotedDisplay display = new(_notes);
        (StartupSession session, HeldLog log) = Session("record", display: display);
        Task<SessionEnd> running = Task.Run(() => session.Run(CancellationToken.None));
        session.Post(new Input.Typed("no"));
        await log.Held.WaitAsync(Patience);

        session.Post(new Input.Pressed(CommandWord.GasSmell));
        for (int turn = 0; turn < 100 && !Noted("warn"); turn++)
        {
            _clock.Advance(TimeSpan.FromMilliseconds(80));
            await Task.Delay(10);
        }

        Assert.True(Noted("warn Touch no switch, leave the house"));
        _hold.Set();
        await log.Has<StartupStopped>();
        session.Close();
        await running.WaitAsync(Patience);
    }

    [Fact]
    public async Task An_order_that_is_carried_out_in_time_warns_of_nothing()
    {
        NotedDisplay display = new(_notes);
        (StartupSession session, HeldLog log) = Session("nothing", display: display);
        Task<SessionEnd> running = Task.Run(() => session.Run(CancellationToken.None));

        session.Post(new Input.Pressed(CommandWord.EmergencyStop));
        await log.Has<StartupStopped>();
        session.Post(new Input.Pressed(CommandWord.GasSmell));
        await Until(() => log.Events.OfType<StartupStopped>().Count() == 2);
        session.Close();
        await running.WaitAsync(Patience);
        _clock.Advance(TimeSpan.FromSeconds(1));

        Assert.False(Noted("warn"));
    }

    [Fact]
    public async Task A_photo_on_a_disk_that_does_not_answer_is_given_up_and_what_was_typed_after_it_is_taken()
    {
        (StartupSession session, HeldLog log) = Session("photo");
        Task<SessionEnd> running = Task.Run(() => session.Run(CancellationToken.None));
        Hang(session, "photo");
        session.Post(new Input.Typed("no"));

        await Until(() =>
        {
            _clock.Advance(TimeSpan.FromSeconds(10));
            return log.Events.OfType<AnswerGiven>().Any();
        });

        Assert.Empty(log.Events.OfType<PhotoAttached>());
        _hold.Set();
        session.Close();
        await running.WaitAsync(Patience);
    }

    [Fact]
    public async Task Time_goes_on_while_a_photo_is_read()
    {
        NotedDisplay display = new(_notes);
        (StartupSession session, _) = Session("photo", display: display);
        Task<SessionEnd> running = Task.Run(() => session.Run(CancellationToken.None));
        Hang(session, "photo");
        int shown = Count();

        session.Post(new Input.Tick());

        await Until(() => Count() > shown);
        _hold.Set();
        session.Close();
        await running.WaitAsync(Patience);

        int Count()
        {
            lock (_notes)
            {
                return _notes.Count(note => note.StartsWith("show", StringComparison.Ordinal));
            }
        }
    }

    [Fact]
    public async Task What_was_typed_and_said_is_taken_in_its_order_however_long_each_takes()
    {
        (StartupSession session, HeldLog log) = Session("clip", new Phrase.Answer(AnswerWord.No, Some.Heard()));
        Task<SessionEnd> running = Task.Run(() => session.Run(CancellationToken.None));

        session.Post(new Input.Spoken(Clip));
        session.Post(new Input.Typed("done"));
        await log.Held.WaitAsync(Patience);
        Assert.DoesNotContain(log.Events, happened => happened is AnswerGiven or StepDone);
        _hold.Set();
        session.Close();
        await running.WaitAsync(Patience);

        Assert.Equal([typeof(AnswerGiven), typeof(StepDone)], log.Events.Where(happened => happened is AnswerGiven or StepDone).Select(happened => happened.GetType()).Take(2));
    }

    (StartupSession Session, HeldLog Log) Session(string hangs, Phrase? heard = null, NotedDisplay? display = null)
    {
        HeldLog log = new(_notes, _hold) { Holds = hangs };
        HeldEar ear = new(hangs == "ear" ? _hold : null, heard ?? new Phrase.Answer(AnswerWord.No, Some.Heard()));
        StartupSession session = new(new StartupProcedure(Some.Plan()), log, display ?? new NotedDisplay(_notes), new SilentVoice(), ear, _clock)
        {
            Photos = new HeldShelf(_hold),
        };
        session.Begin(Some.Job);
        log.IsHeld = true;
        return (session, log);
    }

    static void Hang(StartupSession session, string what) => session.Post(what == "photo" ? new Input.Typed("photo /mnt/gone/a.jpg") : new Input.Spoken(Clip));

    bool Noted(string beginning)
    {
        lock (_notes)
        {
            return _notes.Any(note => note.StartsWith(beginning, StringComparison.Ordinal));
        }
    }

    static async Task Until(Func<bool> happened)
    {
        using CancellationTokenSource late = new(Patience);
        while (!happened())
        {
            await Task.Delay(5, late.Token);
        }
    }

    /// <summary>A log that hangs where it is told to, until it is let go.</summary>
    sealed class HeldLog(List<string> notes, ManualResetEventSlim hold) : IEventLog
    {
        readonly Lock _gate = new();
        readonly List<StartupEvent> _events = [];
        readonly TaskCompletionSource _held = new(TaskCreationOptions.RunContinuationsAsynchronously);

        public string Holds { get; init; } = "";

        public bool IsHeld { get; set; }

        public Task Held => _held.Task;

        public IReadOnlyList<StartupEvent> Events
        {
            get
            {
                lock (_gate)
                {
                    return [.. _events];
                }
            }
        }

        public void Append(IReadOnlyList<StartupEvent> decided)
        {
            Hold("record");
            lock (_gate)
            {
                _events.AddRange(decided);
            }

            lock (notes)
            {
                notes.Add($"log {decided[^1].GetType().Name}");
            }
        }

        public IReadOnlyList<StartupEvent> ReadAll() => Events;

        public string? KeepClip(SpeechClip clip)
        {
            Hold("clip");
            return "clip.wav";
        }

        public Task Has<T>() => Until(() => Events.OfType<T>().Any());

        void Hold(string what)
        {
            if (IsHeld && Holds == what)
            {
                _held.TrySetResult();
                hold.Wait();
            }
        }
    }

    sealed class HeldEar(ManualResetEventSlim? hold, Phrase phrase) : IEar
    {
        public Phrase Hear(SpeechClip clip, Expectation expectation, CancellationToken cancellation = default)
        {
            hold?.Wait(cancellation);
            return phrase;
        }
    }

    sealed class HeldShelf(ManualResetEventSlim hold) : IPhotoShelf
    {
        public KeptPhoto Keep(string path)
        {
            hold.Wait();
            return new KeptPhoto("a.jpg", new string('0', 64));
        }
    }
}
