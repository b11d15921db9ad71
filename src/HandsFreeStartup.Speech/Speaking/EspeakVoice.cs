using System.Collections.Immutable;
using System.Diagnostics;
using System.Threading.Channels;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Speech.Speaking;

/// <summary>The voice of espeak-ng, if it is installed. A voice that fails is no reason to stop: it is silent, and says why in <see cref="Trouble"/>.</summary>
public sealed class EspeakVoice : IVoice
{
    /// <summary>How espeak-ng is asked to speak: its voice, and the usual rate of 165 words a minute.</summary>
    public static ImmutableArray<string> Manner { get; } = MannerOf(Language.English);

    /// <summary>The same in another language.</summary>
    public static ImmutableArray<string> MannerOf(Language language) => ["-v", language.Voice, "-s", "165", "--stdin"];

    static readonly TimeSpan LongestTrial = TimeSpan.FromSeconds(5);

    // Far longer than any message; a sound server that hangs must not hold the queue.
    static readonly TimeSpan LongestMessage = TimeSpan.FromSeconds(60);

    readonly string _espeak;
    readonly ImmutableArray<string> _manner;
    readonly PlayCommand? _player;
    readonly TimeProvider _clock;
    readonly Action<bool> _speaking;
    readonly ScratchFolder _folder = ScratchFolder.Make("voice");
    readonly Channel<Saying> _queue = Channel.CreateUnbounded<Saying>();
    readonly CancellationTokenSource _closing = new();
    readonly Lock _gate = new();
    readonly Task _reader;
    CancellationTokenSource _sayings = new();
    volatile string _trouble = "";
    long _messages;

    EspeakVoice(string espeak, Language language, PlayCommand? player, TimeProvider clock, Action<bool> speaking)
    {
        (_espeak, _manner, _player, _clock, _speaking) = (espeak, MannerOf(language), player, clock, speaking);
        _reader = Task.Run(Read);
    }

    /// <summary>Why the last message was not heard, in one sentence; empty when it was.</summary>
    public string Trouble => _trouble;

    /// <summary>The voice of this machine, which may be a silent one.</summary>
    /// <param name="clock">Ends a player that hangs.</param>
    /// <param name="speaking">Told true before a sound is made and false after it, so that the tool does not hear itself.</param>
    /// <param name="speaker">Name of a device, or null for the system's default.</param>
    /// <param name="find">Where a program is installed; null for <see cref="InstalledProgram.Find"/>.</param>
    /// <param name="language">That it speaks; null for English.</param>
    public static IVoice Find(TimeProvider clock, Action<bool> speaking, string? speaker = null, Func<string, string?>? find = null, Language? language = null) =>
        (find ?? InstalledProgram.Find)("espeak-ng") is { } espeak
            ? new EspeakVoice(espeak, language ?? Language.English, PlayCommand.Find(speaker, find), clock, speaking)
            : new SilentVoice();

    /// <summary>Whether this machine has a voice for a language: one word is spoken into nothing. Where there is no espeak-ng at all nothing is missing, for nothing is spoken.</summary>
    public static async Task<bool> Speaks(Language language, TimeProvider clock, Func<string, string?>? find = null)
    {
        if (language.IsEnglish || (find ?? InstalledProgram.Find)("espeak-ng") is not { } espeak)
        {
            return true;
        }

        using CancellationTokenSource late = new(LongestTrial, clock);
        try
        {
            await Run(espeak, ["-q", .. MannerOf(language)], "a", late.Token);
            return true;
        }
        catch (Exception e) when (e is IOException or System.ComponentModel.Win32Exception or InvalidOperationException or OperationCanceledException)
        {
            return false;
        }
    }

    /// <inheritdoc/>
    public ValueTask Say(string text, CancellationToken cancellation)
    {
        lock (_gate)
        {
            return Queue(text, cancellation, _sayings.Token);
        }
    }

    /// <inheritdoc/>
    public ValueTask Warn(string text, CancellationToken cancellation)
    {
        lock (_gate)
        {
            _sayings.Cancel();
            _sayings = new CancellationTokenSource();
            return Queue(text, cancellation, _sayings.Token);
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        _queue.Writer.TryComplete();
        await _closing.CancelAsync();
        await _reader;
        _folder.Dispose();
    }

    ValueTask Queue(string text, CancellationToken cancellation, CancellationToken replaced)
    {
        Saying message = new(text, cancellation, replaced);
        if (!_queue.Writer.TryWrite(message))
        {
            message.Said.TrySetResult();
        }

        return new ValueTask(message.Said.Task);
    }

    async Task Read()
    {
        await foreach (Saying message in _queue.Reader.ReadAllAsync())
        {
            using CancellationTokenSource stop = CancellationTokenSource.CreateLinkedTokenSource(message.Cancellation, message.Replaced, _closing.Token);
            using CancellationTokenSource late = new(LongestMessage, _clock);
            using CancellationTokenSource either = CancellationTokenSource.CreateLinkedTokenSource(stop.Token, late.Token);
            try
            {
                if (message.Words.Length > 0 && !stop.IsCancellationRequested)
                {
                    await Speak(message.Words, either.Token);
                    _trouble = "";
                }
            }
            catch (OperationCanceledException)
            {
                _trouble = late.IsCancellationRequested ? "The voice hung and was ended: check the sound server." : _trouble;
            }
            catch (Exception e) when (e is IOException or System.ComponentModel.Win32Exception or InvalidOperationException)
            {
                _trouble = $"The voice could not speak ({e.Message}): check the speaker; messages are still shown.";
            }

            message.Said.TrySetResult();
        }
    }

    async Task Speak(string words, CancellationToken stop)
    {
        if (_player is null)
        {
            await Aloud(() => Run(_espeak, [.. _manner], words, stop));
            return;
        }

        // A file of its own for each message: an old one must never be played in the place of a new one.
        string file = Path.Combine(_folder.Path, $"{++_messages}.wav");
        await Run(_espeak, [.. _manner, "-w", file], words, stop);
        await Aloud(() => Run(_player.Program, [.. _player.Arguments, file], "", stop));
        File.Delete(file);
    }

    async Task Aloud(Func<Task> play)
    {
        _speaking(true);
        try
        {
            await play();
        }
        finally
        {
            _speaking(false);
        }
    }

    static async Task Run(string program, string[] arguments, string input, CancellationToken stop)
    {
        ProcessStartInfo start = new(program, arguments) { RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true };
        using Process process = Process.Start(start) ?? throw new InvalidOperationException($"{program} did not start");
        try
        {
            Task<string> complaint = process.StandardError.ReadToEndAsync(stop);
            Task output = process.StandardOutput.ReadToEndAsync(stop);
            try
            {
                await process.StandardInput.WriteAsync(input.AsMemory(), stop);
                process.StandardInput.Close();
            }
            catch (IOException)
            {
                // It ended before it had read everything: its exit code and what it complained about say why, a broken pipe does not.
            }

            await Task.WhenAll(process.WaitForExitAsync(stop), complaint, output);
            if (process.ExitCode != 0)
            {
                throw new IOException($"{Path.GetFileName(program)} ended with \"{(await complaint).Trim().Split('\n')[^1]}\"");
            }
        }
        finally
        {
            EndedProcess.Kill(process);
        }
    }

    sealed record Saying(string Words, CancellationToken Cancellation, CancellationToken Replaced)
    {
        public TaskCompletionSource Said { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);
    }
}
