using System.CommandLine;
using HandsFreeStartup.Running;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Native;
using HandsFreeStartup.Start;

namespace HandsFreeStartup.Hear;

/// <summary>The devices of <c>hear --live</c>.</summary>
static class LiveCommand
{
    /// <summary>Asks for phrases and keeps the verdict.</summary>
    /// <exception cref="WrongUseException">Nothing can be heard.</exception>
    public static async Task<int> Run(int phrases, string? microphone, string? model, int ears, DataFolder data, InvocationConfiguration console, CancellationToken cancellation)
    {
        if (phrases < 1 || phrases > LivePhrases.All.Length)
        {
            throw new WrongUseException($"--live asks for 1 to {LivePhrases.All.Length} phrases.");
        }

        CaptureCommand recorder = CaptureCommand.Find(microphone) ?? throw new WrongUseException(CaptureCommand.Missing(microphone));
        using ListeningEar ear = Load(model, ears, console.Error);
        LiveHearing hearing = new(ear, new SpeechCutter(ear.Detector, SoundPump.Settings), new Microphone(recorder, TimeProvider.System), TimeProvider.System, console.Output);
        LiveResult result = await hearing.Run(phrases, cancellation);
        MicrophoneNotes notes = new(data, microphone ?? $"{recorder.Name}-default");
        notes.Keep(result, TimeProvider.System.GetLocalNow());
        await console.Output.WriteLineAsync($"Kept in {notes.Path}");
        return result.IsUnfit ? ExitCode.FoundSomething : ExitCode.Done;
    }

    static ListeningEar Load(string? model, int ears, TextWriter error)
    {
        try
        {
            return ListeningEar.Load(model, ears, error.WriteLine);
        }
        catch (Exception e) when (e is ModelFileException or RecogniserUnavailableException)
        {
            throw new WrongUseException(e.Message);
        }
    }
}
