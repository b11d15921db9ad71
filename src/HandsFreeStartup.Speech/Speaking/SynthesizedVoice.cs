using System.Threading.Channels;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Speech.Speaking;

/// <summary>A voice made by a synthesizer and a player. One that fails is no reason to stop: it is silent, and says why in <see cref="Trouble"/>.</summary>
public sealed class SynthesizedVoice : IVoice
{
    // The shell of Windows takes seconds to start for the first time.
    static readonly TimeSpan LongestTrial = TimeSpan.FromSeconds(15);

    // Far longer than any message; a sound server that hangs must not hold the queue.
    static readonly TimeSpan LongestMessage = TimeSpan.FromSeconds(60);

    readonly Synthesizer _synthesizer;
    readonly Language _language;
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
    string? _voice;
    long _messages;

    SynthesizedVoice(Synthesizer synthesizer, Language language, PlayCommand? player, TimeProvider clock, Action<bool> speaking)
    {
        (_synthesizer, _language, _player, _clock, _speaking) = (synthesizer, language, player, clock, speaking);
        _reader = Task.Run(Read);
    }

    /// <summary>Why the last message was not heard, in one sentence; empty when it was.</summary>
    public string Trouble => _trouble;

    /// <summary>The voice of this machine, which may be a silent one.</summary>
    /// <param name="clock">Ends a player that hangs.</param>
    /// <param name="speaking">Told true before a sound is made and false after it, so that the tool does not hear itself.</param>
    /// <param name="speaker">Name of a device, or null for the system's default.</param>
    /// <param name="machine">What is installed; null for this one.</param>
    /// <param name="language">That it speaks; null for English.</param>
    public static IVoice Find(TimeProvider clock, Action<bool> speaking, string? speaker = null, Machine? machine = null, Language? language = null) =>
        Synthesizer.Find(machine ?? Machine.This) is { } synthesizer
            ? new SynthesizedVoice(synthesizer, language ?? Language.English, PlayCommand.Find(speaker, machine), clock, speaking)
            : new SilentVoice();

    /// <summary>Whether a machine has a voice for a language; it is tried. Where there is no synthesizer at all nothing is missing, for nothing is spoken.</summary>
    /// <param name="language">That is to be spoken.</param>
    /// <param name="clock">Bounds the trial.</param>
    /// <param name="machine">What is installed; null for this one.</param>
    public static async Task<bool> Speaks(Language language, TimeProvider clock, Machine? machine = null)
    {
        if (language.IsEnglish || Synthesizer.Find(machine ?? Machine.This) is not { } synthesizer)
        {
            return true;
        }

        using CancellationTokenSource late = new(LongestTrial, clock);
        try
        {
            return await synthesizer.VoiceFor(language, late.Token) is not null;
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
        words = Synthesizer.Plain(words);
        _voice ??= await _synthesizer.VoiceFor(_language, stop)
            ?? throw new IOException($"{Path.GetFileNameWithoutExtension(_synthesizer.Program)} has no voice for \"{_language.Code}\": install one, or espeak-ng");
        if (_player is null)
        {
            ProgramRun aloud = _synthesizer.Aloud(_voice) ?? throw new IOException("no player is installed");
            await Aloud(() => aloud.Finish(words, stop));
            return;
        }

        // A file of its own for each message: an old one must never be played in the place of a new one.
        string file = Path.Combine(_folder.Path, $"{++_messages}.wav");
        await _synthesizer.ToFile(_voice, file).Finish(words, stop);
        await Aloud(() => new ProgramRun(_player.Program, [.. _player.Arguments(file)]).Finish("", stop));
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

    sealed record Saying(string Words, CancellationToken Cancellation, CancellationToken Replaced)
    {
        public TaskCompletionSource Said { get; } = new(TaskCreationOptions.RunContinuationsAsynchronously);
    }
}
