using System.Collections.Immutable;
using System.Runtime.InteropServices;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Languages;
using HandsFreeStartup.Plain;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Running;
using HandsFreeStartup.Screen;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Native;
using HandsFreeStartup.Speech.Speaking;
using Terminal.Gui.App;
using Terminal.Gui.Input;

namespace HandsFreeStartup.Start;

/// <summary>Puts a start-up together: every device of a session is made here.</summary>
/// <param name="options">What was asked for.</param>
/// <param name="output">For the flow as lines and the paths at the end.</param>
/// <param name="error">For messages.</param>
/// <param name="clock">The present.</param>
/// <param name="stage">Puts a simulated furnace under it; null for a real one.</param>
sealed class Composition(StartOptions options, TextWriter output, TextWriter error, TimeProvider clock, IStage? stage = null)
{
    static readonly TimeSpan LongestFarewell = TimeSpan.FromSeconds(2);
    static readonly TimeSpan LongestLeave = TimeSpan.FromSeconds(20);
    static readonly TimeSpan WatchablePause = TimeSpan.FromMilliseconds(150);

    readonly bool _isPlain = options.Screen.Plain || Console.IsOutputRedirected;

    /// <summary>The time of the start-up: that of the machine, or of the rehearsal.</summary>
    TimeProvider Time => stage?.Clock ?? clock;

    /// <summary>Runs the start-up to its end.</summary>
    /// <returns>The exit code.</returns>
    public async Task<int> Run()
    {
        CheckUse();
        using CancellationTokenSource stop = new();

        // A screen whose terminal takes nothing any more may never end by itself. Each event is kept before it is shown, so that nothing is lost by ending without it.
        using ITimer end = clock.CreateTimer(_ => Environment.Exit(ExitCode.WrongUse), null, System.Threading.Timeout.InfiniteTimeSpan, System.Threading.Timeout.InfiniteTimeSpan);
        void Leave(PosixSignalContext signal)
        {
            signal.Cancel = true;
            end.Change(LongestLeave, System.Threading.Timeout.InfiniteTimeSpan);
            stop.Cancel();
        }

        using PosixSignalRegistration interrupt = PosixSignalRegistration.Create(PosixSignal.SIGINT, Leave);
        using PosixSignalRegistration terminate = PosixSignalRegistration.Create(PosixSignal.SIGTERM, Leave);
        using PosixSignalRegistration hangUp = PosixSignalRegistration.Create(PosixSignal.SIGHUP, Leave);
        using ListeningEar? ear = Ear();
        using LiveSound sound = LiveSound.Open(options, error.WriteLine);
        using OpenJob job = options.Earlier is { GoesOn: true } ? OpenJob.ToGoOn(options, Time)
            : options.Earlier is { IsFollowed: true } ? OpenJob.Following(options, ear?.Name ?? "keys", clock, output)
            : OpenJob.New(options, ear?.Name ?? "keys", Time);
        using QueuedWriter queued = new(output, stop.Cancel);
        LanguagesInUse languages = await Languages(job);
        foreach (string told in job.Others())
        {
            (_isPlain ? queued : output).WriteLine(told);
        }

        SessionEnd ended = _isPlain ? await RunPlain(job, ear, sound, languages, queued, stop) : RunOnScreen(job, ear, sound, languages, stop);
        bool hasSummary = options.IsTour || Report(job, ended, languages.Shown, queued);
        await queued.Finish(LongestFarewell, clock);
        if (queued.Gone is not null)
        {
            error.WriteLine($"Standard output is gone. Continue with 'start --resume {Path.GetFileNameWithoutExtension(job.Path)}': the start-up was stopped as by Ctrl+C, and everything so far is kept in {job.Path}.");
        }

        return hasSummary && queued.Gone is null ? ExitCode.Done : ExitCode.WrongUse;
    }

    /// <summary>What cannot work is told before a job begins.</summary>
    void CheckUse()
    {
        if (options is { Demo: true, Earlier.GoesOn: true })
        {
            throw new WrongUseException("An interrupted demonstration is resumed by keys: start --resume JOB --keys.");
        }

        if (options.Earlier is { GoesOn: true } && (options.Files != new JobFiles() || options.Technician is not null || options.Quick))
        {
            throw new WrongUseException("A job is resumed with the files, times and name that it began with: leave out --checklist, --appliance, --site, --service-type, --settings, --technician and --quick, or begin a new one.");
        }

        if (options.Sound.Keys && (options.Demo || !options.Sound.Wav.IsEmpty))
        {
            throw new WrongUseException("With --keys nothing is heard: leave out --keys, or leave out the recordings.");
        }

        WavFiles.Open(options.Sound.Wav);
        LanguageFiles.Find(options.Language);
    }

    /// <summary>The language of the command line, or else of the settings.</summary>
    Task<LanguagesInUse> Languages(OpenJob job) =>
        LanguagesInUse.Of(LanguageFiles.Find(options.Language ?? job.Plan.Settings.Language), options.Sound.Mute, clock, error.WriteLine);

    /// <summary>What hears; null where only keys are used, by wish or because nothing can be heard.</summary>
    ListeningEar? Ear()
    {
        if (options.Sound.Keys)
        {
            return null;
        }

        try
        {
            return ListeningEar.Load(options.Sound.Model, options.Sound.Ears, error.WriteLine);
        }
        catch (Exception e) when (e is ModelFileException or RecogniserUnavailableException && !options.Demo && options.Sound.Wav.IsEmpty)
        {
            error.WriteLine($"{e.Message} The start-up continues by keys.");
            return null;
        }
        catch (Exception e) when (e is ModelFileException or RecogniserUnavailableException)
        {
            throw new WrongUseException(e.Message);
        }
    }

    async Task<SessionEnd> RunPlain(OpenJob job, ListeningEar? ear, LiveSound sound, LanguagesInUse languages, TextWriter lines, CancellationTokenSource stop)
    {
        SpeechCutter? cutter = ear is null ? null : new SpeechCutter(ear.Detector, SoundPump.Settings);
        StartupSession? session = null;
        await using IVoice voice = Voice(sound, languages.Said, cutter, speaks => session?.Post(new Input.Voice(speaks)));
        PlainDisplay display = new(lines);
        session = new StartupSession(new StartupProcedure(job.Plan), stage?.Watch(job) ?? job, stage?.Beside(display, asLines: true) ?? display, voice, ear, Time, languages) { Photos = job, Profile = sound.Profile, Hands = stage };
        if (ear is null || !Console.IsInputRedirected)
        {
            _ = Task.Run(() => ReadLines(session, closes: ear is null, stop.Token));
        }

        return await Run(session, job, ear, sound, cutter, stop);
    }

    SessionEnd RunOnScreen(OpenJob job, ListeningEar? ear, LiveSound sound, LanguagesInUse languages, CancellationTokenSource stop)
    {
        SpeechCutter? cutter = ear is null ? null : new SpeechCutter(ear.Detector, SoundPump.Settings);
        StartupSession? session = null;
        IVoice voice = Voice(sound, languages.Said, cutter, speaks => session?.Post(new Input.Voice(speaks)));
        IApplication app = Application.Create().Init();
        app.Keyboard.KeyBindings.Remove(Key.Esc);
        using StartupWindow window = new(input => Post(session!, input), stop.Cancel, Looks.FromEnvironment(options.Screen.IsLight));
        app.Keyboard.KeyDown += (_, key) => key.Handled = ReferenceEquals(app.TopRunnableView, window) && window.Take(key);
        ScreenDisplay display = new(app, window);
        session = new StartupSession(new StartupProcedure(job.Plan), stage?.Watch(job) ?? job, stage?.Beside(display, asLines: false) ?? display, voice, ear, Time, languages) { Photos = job, Profile = sound.Profile, Hands = stage };
        Task<SessionEnd> running = Task.Run(async () =>
        {
            try
            {
                return await Run(session, job, ear, sound, cutter, stop);
            }
            finally
            {
                await Task.Delay(options.Demo ? 4 * WatchablePause : TimeSpan.Zero, clock);
                app.Invoke(() => app.RequestStop());
            }
        });
        app.Run(window);
        Close(app);
        stop.Cancel();
        SessionEnd end = running.GetAwaiter().GetResult();
        voice.DisposeAsync().AsTask().Wait();
        return end;
    }

    /// <summary>The library waits for its reader of keys, which never ends where the terminal is gone; the session ends without it.</summary>
    static void Close(IApplication app) => Task.Run(app.Dispose).Wait(LongestFarewell);

    async Task<SessionEnd> Run(StartupSession session, OpenJob job, ListeningEar? ear, LiveSound sound, SpeechCutter? cutter, CancellationTokenSource stop)
    {
        if (job.Begins is { } description)
        {
            session.Begin(description, job.Returned);
            if (options.Photo is { } photo)
            {
                await session.Type($"photo {photo}", stop.Token);
            }
        }
        else
        {
            session.Resume();
        }

        using CancellationTokenSource over = CancellationTokenSource.CreateLinkedTokenSource(stop.Token);
        Task ticking = Ticker.Run(session.Post, Time, over.Token);
        Task hearing = cutter is null ? Task.CompletedTask : Task.Run(() => Hear(session, sound, new SoundPump(cutter, ear!, () => session.Expected, session.Post, () => session.Saying), over.Token));
        try
        {
            using CancellationTokenSource ends = CancellationTokenSource.CreateLinkedTokenSource(stop.Token);
            Task<SessionEnd> running = session.Run(ends.Token);
            if (stage is not null && await Task.WhenAny(running, stage.Over) != running)
            {
                await ends.CancelAsync();
            }

            return await running;
        }
        finally
        {
            await over.CancelAsync();
            await Task.WhenAll(ticking, hearing);
        }
    }

    /// <summary>What the hands of a rehearsal do is none of the procedure's business.</summary>
    void Post(StartupSession session, Input input)
    {
        if (input is not Input.Typed typed || stage?.Take(typed.Line) != true)
        {
            session.Post(input);
        }
    }

    async Task Hear(StartupSession session, LiveSound sound, SoundPump pump, CancellationToken stop)
    {
        await pump.Run(Source(session, sound), stop);
        if (options.Demo || (_isPlain && !options.Sound.Wav.IsEmpty))
        {
            session.Close();
        }
    }

    IAudioSource Source(StartupSession session, LiveSound sound)
    {
        if (options.Demo)
        {
            ImmutableArray<DemoLine> script = DemoScript.Read();
            Queue<DemoLine> ahead = new(script);
            return WavFiles.Open(script.Select(line => line.Path), turn: async cancellation =>
            {
                await Turn(session, ahead.Dequeue().AfterTimers, cancellation);
                await Task.Delay(_isPlain ? TimeSpan.Zero : WatchablePause, clock, cancellation);
            });
        }

        return !options.Sound.Wav.IsEmpty
            ? WavFiles.Open(options.Sound.Wav, turn: cancellation => new ValueTask(Turn(session, false, cancellation)))
            : sound.Microphone(clock);
    }

    static async Task Turn(StartupSession session, bool afterTimers, CancellationToken cancellation)
    {
        TaskCompletionSource granted = new(TaskCreationOptions.RunContinuationsAsynchronously);
        session.Post(new Input.Turn(afterTimers, granted));
        await granted.Task.WaitAsync(cancellation);
    }

    /// <param name="session">Takes the lines.</param>
    /// <param name="closes">Whether the end of the lines is the end of all inputs.</param>
    /// <param name="stop">Ends it.</param>
    async Task ReadLines(StartupSession session, bool closes, CancellationToken stop)
    {
        try
        {
            while (!stop.IsCancellationRequested && StandardStreams.Input.Next() is { } line)
            {
                if (line.Trim().Length > 0 && stage?.Take(line) != true)
                {
                    await session.Type(line, stop);
                }
            }
        }
        catch (Exception error) when (error is OperationCanceledException || FileTrouble.Is(error))
        {
            // The session is over, or the terminal is gone: nothing more will be typed.
        }

        if (closes)
        {
            session.Close();
        }
    }

    IVoice Voice(LiveSound sound, Language language, SpeechCutter? cutter, Action<bool> tell)
    {
        if (options.Sound.Mute || options.Demo)
        {
            return new SilentVoice();
        }

        try
        {
            return sound.Voice(clock, speaking =>
            {
                if (cutter is not null)
                {
                    cutter.Deaf = speaking && sound.Profile == HearingProfile.HalfDuplex;
                }

                tell(speaking);
            }, language);
        }
        catch (Exception e) when (FileTrouble.Is(e))
        {
            error.WriteLine(FileTrouble.Sentence(e, $"Nothing is spoken, because sound cannot be kept in {Path.GetTempPath()}", "name a folder that can be written in the variable TMPDIR"));
            return new SilentVoice();
        }
    }

    /// <summary>A summary that cannot be written is told, and the record named all the same.</summary>
    /// <returns>Whether it could be written.</returns>
    bool Report(OpenJob job, SessionEnd end, Language language, TextWriter lines)
    {
        bool hasSummary = true;
        lines.WriteLine($"Record:  {job.Path}");
        try
        {
            lines.WriteLine($"Summary: {job.WriteSummary(language)}");
        }
        catch (UnusableFileException trouble)
        {
            error.WriteLine(trouble.Message);
            hasSummary = false;
        }

        if (job.Notice(language) is { } notice)
        {
            lines.Write($"\n{notice}\n");
        }

        if (end != SessionEnd.Finished)
        {
            lines.WriteLine($"Not finished. Resume it with: {(stage is null ? "start" : "rehearse")} --resume {Path.GetFileNameWithoutExtension(job.Path)}");
        }

        return hasSummary;
    }
}
