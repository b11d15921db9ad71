using System.CommandLine;
using System.Runtime.InteropServices;
using System.Runtime.Versioning;
using HandsFreeStartup.Running;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Speaking;
using Microsoft.Win32.SafeHandles;

namespace HandsFreeStartup.Sound;

/// <summary>The hidden commands <c>sound record</c> and <c>sound play</c>: on Windows the program is its own recorder and player, each in a process of its own.</summary>
static partial class DeviceCommands
{
    static readonly Option<string?> Device = new("--device") { Description = "Name of the device; without it the default.", HelpName = "NAME" };
    static readonly Argument<string> Played = new("FILE") { Description = "A WAV file." };

    /// <summary>Writes raw 16 kHz sound to standard output until it is closed, or until standard input ends.</summary>
    public static Command BuildRecord()
    {
        Command command = new("record", "Record, as the program itself does on Windows.") { Device };
        command.Hidden = true;
        command.SetAction(async (parsed, cancellation) =>
        {
            if (!OperatingSystem.IsWindows())
            {
                throw OnWindowsOnly();
            }

            CancellationTokenSource over = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
            _ = AtEndOf(Console.OpenStandardInput(), over);
            await using FileStream output = RawOutput();
            await WindowsMicrophone.Record(parsed.GetValue(Device), output, parsed.InvocationConfiguration.Error.WriteLine, over.Token);
            return ExitCode.Done;
        });
        return command;
    }

    /// <summary>Plays one file to its end.</summary>
    public static Command BuildPlay()
    {
        Command command = new("play", "Play, as the program itself does on Windows.") { Device, Played };
        command.Hidden = true;
        command.SetAction(async (parsed, cancellation) =>
        {
            if (!OperatingSystem.IsWindows())
            {
                throw OnWindowsOnly();
            }

            await WindowsSpeaker.Play(parsed.GetValue(Device), parsed.GetRequiredValue(Played), cancellation);
            return ExitCode.Done;
        });
        return command;
    }

    /// <summary>Whoever listens holds the other end of the input: when it is gone, however it ended, nobody wants the sound.</summary>
    internal static Task AtEndOf(Stream input, CancellationTokenSource over) => Task.Factory.StartNew(
        () =>
        {
            byte[] ignored = new byte[256];
            try
            {
                while (input.Read(ignored) > 0)
                {
                }
            }
            catch (IOException)
            {
                // A broken pipe is an end too.
            }

            over.Cancel();
        },
        CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);

    /// <summary>On Windows the console's own stream takes whatever is written when nobody reads it any more; this one tells.</summary>
    [SupportedOSPlatform("windows")]
    static FileStream RawOutput() => new(new SafeFileHandle(StandardHandle(StandardOutput), ownsHandle: false), FileAccess.Write, bufferSize: 0);

    const int StandardOutput = -11;

    [LibraryImport("kernel32", EntryPoint = "GetStdHandle")]
    private static partial nint StandardHandle(int which);

    static WrongUseException OnWindowsOnly() => new("The program records and plays by itself on Windows only; sound checks microphone and speaker of this machine.");
}
