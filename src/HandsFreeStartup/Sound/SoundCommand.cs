using System.CommandLine;
using HandsFreeStartup.Running;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Speaking;

namespace HandsFreeStartup.Sound;

/// <summary>The command <c>sound</c>: microphone, level, noise and speaker before the job.</summary>
public static class SoundCommand
{
    static readonly Option<string?> Microphone = new("--microphone") { Description = "Another microphone: its name, or a whole command that writes 16 kHz raw sound.", HelpName = "NAME" };
    static readonly Option<string?> Speaker = new("--speaker") { Description = "Another speaker: its name.", HelpName = "NAME" };
    static readonly Option<bool> Mute = new("--mute") { Description = "Do not speak." };

    /// <summary>Cancelling that takes less than this away, in dB, is none.</summary>
    const double LeastCancelled = 8;

    /// <summary>The command with its options.</summary>
    public static Command Build()
    {
        Command command = new("sound", "Check microphone, level, noise and speaker before the job.") { Microphone, Speaker, Mute, DeviceCommands.BuildRecord(), DeviceCommands.BuildPlay() };
        command.SetAction(Run);
        return command;
    }

    static async Task<int> Run(ParseResult parsed, CancellationToken cancellation)
    {
        TextWriter output = parsed.InvocationConfiguration.Output;
        string? wanted = parsed.GetValue(Microphone);
        if (!parsed.GetValue(Mute) && parsed.GetValue(Speaker) is { } speaker && PlayCommand.Find(speaker) is null)
        {
            throw new WrongUseException(PlayCommand.Missing(Machine.This.Platform));
        }

        if (CaptureCommand.Find(wanted) is not { } recorder)
        {
            return wanted is null
                ? await NoRecorder(parsed.InvocationConfiguration.Error)
                : throw new WrongUseException($"The program of --microphone \"{wanted}\" is not installed; name a device or another program.");
        }

        await output.WriteLineAsync($"Microphone: {recorder.Name}{(wanted is null ? ", the system's default" : $", {wanted}")}");
        DataFolder data = DataFolder.Of(parsed);
        await using IVoice voice = parsed.GetValue(Mute) ? new SilentVoice() : SynthesizedVoice.Find(TimeProvider.System, _ => { }, parsed.GetValue(Speaker));
        SoundCheck check = new(new Microphone(recorder, TimeProvider.System), voice, TimeProvider.System, output);
        int problems = await check.Run(cancellation);
        await Choose(check, wanted, parsed.GetValue(Speaker), data, output, cancellation);
        return problems == 0 ? ExitCode.Done : ExitCode.FoundSomething;
    }

    /// <summary>Chooses how microphone and voice get along, and keeps it for the next start-up.</summary>
    static async Task Choose(SoundCheck check, string? microphone, string? speaker, DataFolder data, TextWriter output, CancellationToken cancellation)
    {
        if (check.HearsVoice is not { } echo)
        {
            return;
        }

        HearingProfile profile = echo.Level is not { } level ? HearingProfile.Headset : await Cancels(level) ? HearingProfile.EchoCancelled : HearingProfile.HalfDuplex;
        bool isKept = HearingProfiles.Keep(data, profile);
        await output.WriteLineAsync($"Profile: {HearingProfiles.WordOf(profile)}{(isKept ? "" : $", but it could not be kept in {data.Path}")}. {Meaning(profile)}");

        async Task<bool> Cancels(double before)
        {
            using EchoCanceller? canceller = EchoCanceller.Load(microphone, speaker);
            if (canceller is null || CaptureCommand.Find(canceller.Source) is not { } recorder)
            {
                return false;
            }

            await using IVoice voice = SynthesizedVoice.Find(TimeProvider.System, _ => { }, canceller.Sink);
            double? left = await new SoundCheck(new Microphone(recorder, TimeProvider.System), voice, TimeProvider.System, output).EchoOf(cancellation);
            return left is null || left < before - LeastCancelled;
        }
    }

    static string Meaning(HearingProfile profile) => profile switch
    {
        HearingProfile.Headset => "Everything is heard while the tool speaks.",
        HearingProfile.EchoCancelled => "The sound server takes the voice out of the microphone: the safety phrases and \"stop talking\" are heard over it.",
        _ => "Nothing is heard while the tool speaks; a headset, or a sound server that cancels echoes, avoids that.",
    };

    static async Task<int> NoRecorder(TextWriter error)
    {
        await error.WriteLineAsync(CaptureCommand.Missing(null));
        return ExitCode.FoundSomething;
    }
}
