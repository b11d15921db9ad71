using System.Diagnostics;
using System.Globalization;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Rehearse;
using HandsFreeStartup.Simulation;
using HandsFreeStartup.Speech.Speaking;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.UserFiles;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Rehearse;

/// <summary>
/// The program itself, run as its user runs it, at a simulated furnace in a room: a technician hears its loudspeaker, reads what it has written down, and talks to it. It can be killed and
/// resumed.
/// </summary>
/// <param name="furnace">The furnace, of the plan that the program is started with.</param>
/// <param name="room">With the devices.</param>
/// <param name="data">Folder of the records.</param>
/// <param name="speaker">The technician's voice.</param>
sealed class ProgramInTheRoom(Furnace furnace, SoundRoom room, TemporaryFolder data, Speaker speaker) : IDisposable
{
    /// <summary>How often the same thing is said while it is not understood: it fell between two sentences of the voice, or the machine is too busy.</summary>
    const int MostTries = 8;

    static readonly TimeSpan Patience = TimeSpan.FromSeconds(15), LongPatience = TimeSpan.FromSeconds(25), LongestWay = TimeSpan.FromMinutes(20), Pause = TimeSpan.FromMilliseconds(550);

    readonly RehearsalClock _clock = new(TimeProvider.System, 1, DateTimeOffset.UnixEpoch);
    readonly Bench _bench = new(furnace);
    readonly List<string> _lines = [];
    StartupProcedure? _procedure;
    Process? _program, _ear;
    long _loudAt;
    int _seen;

    public List<StartupEvent> Log { get; } = [];

    public List<string> Wrong { get; } = [];

    public int Utterances { get; private set; }

    public Bench Bench => _bench;

    /// <summary>Whether the loudspeaker is heard at this moment.</summary>
    public bool IsLoud => Stopwatch.GetElapsedTime(Volatile.Read(ref _loudAt)) < TimeSpan.FromMilliseconds(150);

    /// <summary>Everything that the program has written to its output.</summary>
    public string Told
    {
        get
        {
            lock (_lines)
            {
                return string.Join('\n', _lines);
            }
        }
    }

    public StartupView View
    {
        get
        {
            Read();
            return _procedure!.View(Now.Of(TimeProvider.System));
        }
    }

    /// <summary>Starts the program, or resumes with it.</summary>
    public async Task Start(params string[] arguments)
    {
        _ear ??= room.Eavesdrop(() => Volatile.Write(ref _loudAt, Stopwatch.GetTimestamp()));
        _program = ProgramProcess.Start([.. arguments, "--plain", "--hearing", "echo-cancelled", "--data", data.Path], room.Lend);
        foreach (StreamReader words in (StreamReader[])[_program.StandardOutput, _program.StandardError])
        {
            _ = Task.Run(async () =>
            {
                while (await words.ReadLineAsync() is { } line)
                {
                    lock (_lines)
                    {
                        _lines.Add(line);
                    }
                }
            });
        }

        await Until(() => Told.Contains("  say: ", StringComparison.Ordinal));
        await Quiet();
    }

    /// <summary>Ends it as a power cut would.</summary>
    public async Task Kill()
    {
        Read();
        _program!.Kill(entireProcessTree: true);
        await _program.WaitForExitAsync();
        lock (_lines)
        {
            _lines.Clear();
        }
    }

    /// <summary>Waits until it has ended by itself.</summary>
    public Task Ended() => Until(() => _program!.HasExited);

    /// <summary>Lets an ideal technician go on until something is so, or the program has ended.</summary>
    public async Task GoOn(Func<StartupView, bool> until)
    {
        IdealTechnician technician = new(_bench);
        Stopwatch way = Stopwatch.StartNew();
        while (!_program!.HasExited && View is var view && !until(view))
        {
            Assert.True(way.Elapsed < LongestWay, $"The end of the way is not reached at {_bench.Step.Id}:\n{Told}");
            switch (technician.Next(view))
            {
                case Deed.ByHand hand:
                    Do(hand.Words);
                    break;
                case Deed.Patience wait:
                    _clock.Forward(TimeSpan.FromSeconds(wait.Seconds));
                    await Task.Delay(300);
                    break;
                case Deed.BySpeech speech:
                    await Say(speech.Phrase is Phrase.Reading reading ? $"{speech.Words[..speech.Words.LastIndexOf(' ')]} {SpokenNumber.Usual(reading.Value)}" : speech.Words, speech.Phrase);
                    break;
            }
        }
    }

    /// <summary>Does something with the hands.</summary>
    public void Do(string words)
    {
        _bench.Advance(_clock.Elapsed);
        _bench.Do((Act.Move)HandWords.Read(words, furnace.Plan)!);
        _clock.Forward(TimeSpan.FromSeconds(3));
    }

    /// <summary>Says words once the loudspeaker is quiet, and waits for what comes of them; says them again where they are not understood.</summary>
    public async Task Say(string words, Phrase? meant = null)
    {
        int before = Log.Count;
        bool isUnderstood = false;
        for (int tries = 0; tries < MostTries && !isUnderstood && !_program!.HasExited; tries++)
        {
            await Quiet();
            isUnderstood = await Utter(words);
        }

        foreach (ReadingEntered entered in Log.Skip(before).OfType<ReadingEntered>())
        {
            if (meant is not Phrase.Reading reading || entered.Reading.Value != reading.Value || entered.Reading.Key.FieldId != reading.Field.Id)
            {
                Wrong.Add($"{words} became {entered.Reading.Key.FieldId} {entered.Reading.Value}");
            }
        }
    }

    /// <summary>Says words at once, over whatever is being said.</summary>
    /// <returns>Whether they were understood.</returns>
    public async Task<bool> Utter(string words)
    {
        Utterances++;
        int before = Heard().Length;
        await room.Say(words, speaker);
        Stopwatch waited = Stopwatch.StartNew();
        while (waited.Elapsed < Patience && !_program!.HasExited && Heard().Length == before)
        {
            await Task.Delay(50);
        }

        await Task.Delay(150);
        Read();
        return Heard().Skip(before).Any(line => !line.Contains("not understood", StringComparison.Ordinal));
    }

    /// <summary>Waits until the record has such an event, or patience ends: another line may have been told first.</summary>
    public async Task Logged<T>()
        where T : StartupEvent
    {
        for (Stopwatch waited = Stopwatch.StartNew(); waited.Elapsed < LongPatience && !Log.OfType<T>().Any(); Read())
        {
            await Task.Delay(100);
        }
    }

    /// <summary>Its lines on what it has heard.</summary>
    string[] Heard()
    {
        lock (_lines)
        {
            return [.. _lines.Where(line => line.StartsWith("Heard", StringComparison.Ordinal))];
        }
    }

    /// <summary>Waits until the loudspeaker has been quiet for a while.</summary>
    public Task Quiet() => Until(() => Stopwatch.GetElapsedTime(Volatile.Read(ref _loudAt)) > Pause || _program!.HasExited);

    public static async Task Until(Func<bool> isSo)
    {
        Stopwatch waited = Stopwatch.StartNew();
        while (!isSo())
        {
            Assert.True(waited.Elapsed < TimeSpan.FromSeconds(90), "What the program should do does not come.");
            await Task.Delay(50);
        }
    }

    /// <summary>The record is the program's own word on where it stands; what is new in it is folded as the program folds it.</summary>
    void Read()
    {
        _bench.Advance(_clock.Elapsed);
        IReadOnlyList<StartupEvent> events = Copied();
        _procedure ??= new StartupProcedure(UserFile.PlanOf(((StartupBegan)events[0]).Job));
        foreach (StartupEvent happened in events.Skip(_seen))
        {
            _procedure.Apply(happened);
            _bench.Witness([happened]);
            Log.Add(happened);
        }

        _seen = events.Count;
    }

    /// <summary>The record belongs to the program as long as that runs: a copy is read. Only its write-ahead log grows meanwhile, and an end of that which is not whole yet is passed over.</summary>
    IReadOnlyList<StartupEvent> Copied()
    {
        string copy = Directory.CreateDirectory(Path.Combine(data.Path, "seen")).FullName;
        foreach (string file in Directory.GetFiles(copy))
        {
            File.Delete(file);
        }

        foreach (string ending in (string[])["", "-wal"])
        {
            if (File.Exists(data.Job + ending))
            {
                File.Copy(data.Job + ending, Path.Combine(copy, "seen.db" + ending));
            }
        }

        return StoredJob.Read(Path.Combine(copy, "seen.db")).Events;
    }

    public void Dispose()
    {
        foreach (Process process in ((Process?[])[_program, _ear]).OfType<Process>())
        {
            process.Kill(entireProcessTree: true);
            process.WaitForExit();
            process.Dispose();
        }
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Utterances} utterances, {Log.OfType<ReadingEntered>().Count()} readings, wrong {Wrong.Count}, end {Log.LastOrDefault()?.GetType().Name}");
}
