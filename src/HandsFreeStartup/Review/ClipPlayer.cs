using System.Diagnostics;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Speaking;
using HandsFreeStartup.Storage.Log;

namespace HandsFreeStartup.Review;

/// <summary>Plays the recordings of a job, one at a time.</summary>
/// <param name="jobPath">The job's file.</param>
/// <param name="player">The program that plays; null where none is installed.</param>
sealed class ClipPlayer(string jobPath, PlayCommand? player) : IDisposable
{
    /// <summary>A player without a speaker gives up at once.</summary>
    static readonly TimeSpan FailsWithin = TimeSpan.FromMilliseconds(300);

    readonly AttachmentStore _attachments = new(jobPath);
    Process? _playing;

    /// <summary>Begins to play a recording; what plays breaks off.</summary>
    /// <returns>One sentence that says what happens.</returns>
    public string Play(string clip)
    {
        Stop();
        if (_attachments.Find(AttachmentKind.Recording, clip) is not { } file)
        {
            return "The recording is not there: it was removed or lost.";
        }

        if (player is null)
        {
            return $"{PlayCommand.Missing(Machine.This.Platform)} The recording: {file}";
        }

        try
        {
            _playing = Process.Start(new ProcessStartInfo(player.Program, player.Arguments(file)) { CreateNoWindow = true, RedirectStandardInput = true, RedirectStandardOutput = true, RedirectStandardError = true });
            return _playing!.WaitForExit(FailsWithin) && _playing.ExitCode != 0
                ? $"It cannot be played: check the speaker. The recording: {file}"
                : "Playing.";
        }
        catch (System.ComponentModel.Win32Exception error)
        {
            return $"It cannot be played: {error.Message}.";
        }
    }

    /// <summary>Ends what plays.</summary>
    public void Dispose() => Stop();

    void Stop()
    {
        if (_playing is { HasExited: false })
        {
            _playing.Kill();
        }

        _playing?.Dispose();
        _playing = null;
    }
}
