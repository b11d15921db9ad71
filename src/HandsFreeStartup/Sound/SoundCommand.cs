using System.CommandLine;
using HandsFreeStartup.Running;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Speaking;

namespace HandsFreeStartup.Sound;

/// <summary>The command <c>sound</c>: microphone, level, noise and speaker before the job.</summary>
public static class SoundCommand
{
    static readonly Option<string?> Microphone = new("--microphone") { Description = "Another microphone: its name, or a whole command that writes 16 kHz raw sound.", HelpName = "NAME" };
    static readonly Option<string?> Speaker = new("--speaker") { Description = "Another speaker: its name.", HelpName = "NAME" };
    static readonly Option<bool> Mute = new("--mute") { Description = "Do not speak." };

    /// <summary>The command with its options.</summary>
    public static Command Build()
    {
        Command command = new("sound", "Check microphone, level, noise and speaker before the job.") { Microphone, Speaker, Mute };
        command.SetAction(Run);
        return command;
    }

    static async Task<int> Run(ParseResult parsed, CancellationToken cancellation)
    {
        TextWriter output = parsed.InvocationConfiguration.Output;
        string? wanted = parsed.GetValue(Microphone);
        if (CaptureCommand.Find(wanted) is not { } recorder)
        {
            return wanted is null
                ? await NoRecorder(parsed.InvocationConfiguration.Error)
                : throw new WrongUseException($"The program of --microphone \"{wanted}\" is not installed; name a device or another program.");
        }

        await output.WriteLineAsync($"Microphone: {recorder.Name}{(wanted is null ? ", the system's default" : $", {wanted}")}");
        await using IVoice voice = parsed.GetValue(Mute) ? new SilentVoice() : EspeakVoice.Find(TimeProvider.System, _ => { }, parsed.GetValue(Speaker));
        SoundCheck check = new(new Microphone(recorder, TimeProvider.System), voice, TimeProvider.System, output);
        return await check.Run(cancellation) == 0 ? ExitCode.Done : ExitCode.FoundSomething;
    }

    static async Task<int> NoRecorder(TextWriter error)
    {
        await error.WriteLineAsync(CaptureCommand.NoneInstalled);
        return ExitCode.FoundSomething;
    }
}
