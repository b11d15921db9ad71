using System.Diagnostics;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Speaking;

namespace HandsFreeStartup.Speech.Tests.Support;

/// <summary>A test that needs a real sound server; without one it is reported as skipped.</summary>
public sealed class SoundServerFactAttribute : FactAttribute
{
    public SoundServerFactAttribute()
    {
        string[] missing = [.. ((string[])["pulseaudio", "parec", "paplay", "pactl", "espeak-ng"]).Where(program => InstalledProgram.Find(program) is null)];
        Skip = missing.Length > 0 ? $"not installed: {string.Join(", ", missing)}" : null!;
    }
}

/// <summary>
/// A sound server of the tests' own with one virtual room: what is played into it can be recorded from it. It ends with the tests.
/// </summary>
public sealed class PrivateSoundServer : IDisposable
{
    readonly TemporaryFolder _folder = new();
    readonly ScriptFolder _programs = new();
    Process? _server;

    string Address => $"unix:{Path.Combine(_folder.Path, "native")}";

    /// <summary>Finds programs as usual, but those that make or record sound are led to this server and its room.</summary>
    public string? Find(string program)
    {
        Start();
        return program switch
        {
            "parec" or "paplay" => _programs.Find(program),
            "espeak-ng" => InstalledProgram.Find(program),
            "pactl" => _programs.Find(program),
            _ => null,
        };
    }

    /// <summary>This machine, with those programs.</summary>
    public Machine Machine => Machines.Linux(Find);

    public CaptureCommand Microphone => CaptureCommand.Find(machine: Machine)!;

    /// <summary>The microphone of that name, as a user would name it.</summary>
    public CaptureCommand MicrophoneNamed(string name) => CaptureCommand.Find(name, Machine)!;

    /// <summary>Gives the server an order, and waits until it is done.</summary>
    public async Task<string> Order(params string[] words)
    {
        ProcessStartInfo start = new(InstalledProgram.Find("pactl")!, [$"--server={Address}", .. words]) { RedirectStandardOutput = true };
        using Process order = Process.Start(start)!;
        string answer = await order.StandardOutput.ReadToEndAsync();
        await order.WaitForExitAsync();
        return answer.Trim();
    }

    public Task Play(string wav, CancellationToken cancellation, string? room = null)
    {
        PlayCommand player = PlayCommand.Find(room, Machine)!;
        return Process.Start(player.Program, player.Arguments(wav)).WaitForExitAsync(cancellation);
    }

    /// <summary>Waits until the server takes orders.</summary>
    public async Task Ready()
    {
        Start();
        for (int i = 0; i < 100 && (await Order("info")).Length == 0; i++)
        {
            await Task.Delay(100);
        }
    }

    public void Stop()
    {
        _server?.Kill();
        _server?.WaitForExit();
        _server?.Dispose();
        _server = null;
    }

    public void Start()
    {
        if (_server is not null)
        {
            return;
        }

        ProcessStartInfo start = new(
            InstalledProgram.Find("pulseaudio")!,
            [
                "--daemonize=no", "--use-pid-file=no", "--exit-idle-time=-1", "-n",
                $"--load=module-native-protocol-unix socket={Path.Combine(_folder.Path, "native")} auth-anonymous=1",
                "--load=module-null-sink sink_name=room",
            ])
        {
            Environment = { ["XDG_RUNTIME_DIR"] = _folder.Path, ["HOME"] = _folder.Path, ["PULSE_SERVER"] = null },
            RedirectStandardError = true,
        };
        _server = Process.Start(start)!;
        _server.ErrorDataReceived += (_, _) => { };
        _server.BeginErrorReadLine();
        _programs.Add("parec", $"exec {InstalledProgram.Find("parec")} --server={Address} --device=room.monitor \"$@\"");
        _programs.Add("pactl", $"exec {InstalledProgram.Find("pactl")} --server={Address} \"$@\"");
        _programs.Add("paplay", $"exec {InstalledProgram.Find("paplay")} --server={Address} --device=room \"$@\"");
    }

    public void Dispose()
    {
        Stop();
        _programs.Dispose();
        _folder.Dispose();
    }
}
