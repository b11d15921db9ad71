using System.Diagnostics;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Rehearse;

/// <summary>A test that needs a sound server and voices; without them it is reported as skipped.</summary>
public sealed class SoundRoomFactAttribute : FactAttribute
{
    public SoundRoomFactAttribute()
    {
        string[] missing = [.. ((string[])["pulseaudio", "parec", "paplay", "pactl", "espeak-ng", "sox"]).Where(program => InstalledProgram.Find(program) is null)];
        Skip = missing.Length > 0 ? $"not installed: {string.Join(", ", missing)}" : null!;
    }
}

/// <summary>
/// A sound server of the tests' own with two devices: the air by the furnace, which the microphone of the program records, and the loudspeaker of the program, which is heard in that air
/// 10 dB lower. It ends with the test.
/// </summary>
sealed class SoundRoom : IDisposable
{
    const string Air = "air", Loudspeaker = "loudspeaker";

    readonly TemporaryFolder _folder = new();
    readonly Process _server;
    Process? _noise;

    public SoundRoom()
    {
        _server = Start("pulseaudio",
            "--daemonize=no", "--use-pid-file=no", "--exit-idle-time=-1", "-n",
            $"--load=module-native-protocol-unix socket={Path.Combine(_folder.Path, "native")} auth-anonymous=1",
            $"--load=module-null-sink sink_name={Air}",
            $"--load=module-null-sink sink_name={Loudspeaker}",
            $"--load=module-loopback source={Loudspeaker}.monitor sink={Air} latency_msec=60");
        _server.ErrorDataReceived += (_, _) => { };
        _server.BeginErrorReadLine();
    }

    string Address => $"unix:{Path.Combine(_folder.Path, "native")}";

    public CaptureCommand Microphone => new(InstalledProgram.Find("parec")!, [$"--server={Address}", $"--device={Air}.monitor", "--raw", "--rate=16000", "--channels=1", "--format=s16le", "--latency-msec=50"]);

    /// <summary>Finds programs as usual, but the player of the program plays on its loudspeaker.</summary>
    public string? Find(string program) => program switch
    {
        "espeak-ng" => InstalledProgram.Find(program),
        "paplay" => Script("paplay", $"exec {InstalledProgram.Find("paplay")} --server={Address} --device={Loudspeaker} \"$@\""),
        _ => null,
    };

    /// <summary>Waits until the devices are there, and lowers the loudspeaker in the air by 10 dB.</summary>
    public async Task Ready()
    {
        for (int tries = 0; tries < 100 && (await Order("list", "short", "sink-inputs")).Length == 0; tries++)
        {
            await Task.Delay(100);
        }

        string echo = (await Order("list", "short", "sink-inputs")).Split('\t')[0];
        await Order("set-sink-input-volume", echo, "-10dB");
    }

    /// <summary>A blower: noise that grows weaker toward the heights, at a level in dB below full scale, as long as the room lives.</summary>
    public void Blow(double level)
    {
        string wav = Path.Combine(_folder.Path, "noise.wav");
        Run("sox", "-n", "-r", "16000", "-c", "1", "-b", "16", wav, "synth", "20", "pinknoise", "lowpass", "2500", "gain", "-n", FormattableString.Invariant($"{level + 8:0.0}"));
        _noise = Start("bash", "-c", $"while :; do {InstalledProgram.Find("paplay")} --server={Address} --device={Air} {wav} || exit; done");
    }

    /// <summary>Says words into the air, and returns when the last sound is out.</summary>
    public async Task Say(string words, string voice, int pace)
    {
        string wav = Path.Combine(_folder.Path, "said.wav"), loud = Path.Combine(_folder.Path, "loud.wav");
        Run("espeak-ng", "-v", voice, "-s", FormattableString.Invariant($"{pace}"), "-w", wav, words);
        Run("sox", wav, "-r", "16000", loud, "gain", "-n", "-6");
        using Process player = Start("paplay", $"--server={Address}", $"--device={Air}", loud);
        await player.WaitForExitAsync();
    }

    /// <summary>Gives the server an order.</summary>
    public async Task<string> Order(params string[] words)
    {
        using Process order = Process.Start(new ProcessStartInfo(InstalledProgram.Find("pactl")!, [$"--server={Address}", .. words]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        string answer = await order.StandardOutput.ReadToEndAsync();
        await order.WaitForExitAsync();
        return answer.Trim();
    }

    string Script(string name, string body)
    {
        string path = Path.Combine(_folder.Path, name);
        if (!File.Exists(path) && !OperatingSystem.IsWindows())
        {
            File.WriteAllText(path, $"#!/bin/sh\n{body}\n");
            File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }

        return path;
    }

    Process Start(string program, params string[] arguments) => Process.Start(new ProcessStartInfo(InstalledProgram.Find(program)!, arguments)
    {
        Environment = { ["XDG_RUNTIME_DIR"] = _folder.Path, ["HOME"] = _folder.Path, ["PULSE_SERVER"] = null },
        RedirectStandardError = true,
    })!;

    void Run(string program, params string[] arguments)
    {
        using Process run = Start(program, arguments);
        run.WaitForExit();
    }

    public void Dispose()
    {
        foreach (Process process in ((Process?[])[_noise, _server]).OfType<Process>())
        {
            process.Kill(entireProcessTree: true);
            process.WaitForExit();
            process.Dispose();
        }

        _folder.Dispose();
    }
}
