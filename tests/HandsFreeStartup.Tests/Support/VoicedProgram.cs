using System.Diagnostics;
using HandsFreeStartup.Tests.Rehearse;

namespace HandsFreeStartup.Tests.Support;

/// <summary>The program itself, run in a room by somebody who hears its loudspeaker, reads its lines, and talks to it or types.</summary>
/// <param name="room">With the devices.</param>
/// <param name="speaker">Who talks.</param>
sealed class VoicedProgram(SoundRoom room, Speaker speaker) : IDisposable
{
    static readonly TimeSpan Pause = TimeSpan.FromMilliseconds(550), LongestSilence = TimeSpan.FromSeconds(2.5), Patience = TimeSpan.FromSeconds(90);

    readonly List<string> _lines = [];
    Process? _program, _ear;
    long _loudAt = Stopwatch.GetTimestamp(), _saidAt = Stopwatch.GetTimestamp();

    public int Utterances { get; private set; }

    public bool HasEnded => _program!.HasExited;

    public int ExitCode => _program!.ExitCode;

    /// <summary>Everything that it has written so far.</summary>
    public string[] Lines
    {
        get
        {
            lock (_lines)
            {
                return [.. _lines];
            }
        }
    }

    public void Start(params string[] arguments)
    {
        _ear = room.Eavesdrop(() => Volatile.Write(ref _loudAt, Stopwatch.GetTimestamp()));
        _program = ProgramProcess.Start(arguments, room.Lend);
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
    }

    /// <summary>Lets it answer what was said before, and says words once the loudspeaker has been quiet for a while.</summary>
    public async Task Say(string words)
    {
        await Until(() => Volatile.Read(ref _loudAt) > _saidAt || Stopwatch.GetElapsedTime(_saidAt) > LongestSilence || HasEnded);
        await Until(() => Stopwatch.GetElapsedTime(Volatile.Read(ref _loudAt)) > Pause || HasEnded);
        Utterances++;
        await room.Say(words, speaker);
        _saidAt = Stopwatch.GetTimestamp();
    }

    /// <summary>Says words as soon as its loudspeaker is heard, over its voice.</summary>
    /// <returns>Whether it was heard in time.</returns>
    public async Task<bool> SayOverIt(string words)
    {
        bool isLoud = await Until(() => Stopwatch.GetElapsedTime(Volatile.Read(ref _loudAt)) < TimeSpan.FromMilliseconds(150) || HasEnded, LongestSilence * 4);
        Utterances++;
        await room.Say(words, speaker);
        _saidAt = Stopwatch.GetTimestamp();
        return isLoud;
    }

    public Task Type(string line) => _program!.StandardInput.WriteLineAsync(line);

    /// <summary>Waits until the lines are as they should be.</summary>
    public Task<bool> Told(Func<string[], bool> isSo, TimeSpan? patience = null) => Until(() => isSo(Lines) || HasEnded, patience);

    static async Task<bool> Until(Func<bool> isSo, TimeSpan? patience = null)
    {
        Stopwatch waited = Stopwatch.StartNew();
        while (!isSo() && waited.Elapsed < (patience ?? Patience))
        {
            await Task.Delay(50);
        }

        return isSo();
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
}
