using System.Diagnostics;
using System.Runtime.InteropServices;
using HandsFreeStartup.Hear;
using HandsFreeStartup.Running;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests.Rehearse;

/// <summary>A test that needs a sound server and voices; without them it is reported as skipped.</summary>
public class SoundRoomFactAttribute : FactAttribute
{
    public SoundRoomFactAttribute()
    {
        string[] missing = [.. ((string[])["pulseaudio", "parec", "paplay", "pactl", "espeak-ng", "flite", "sox"]).Where(program => InstalledProgram.Find(program) is null)];
        Skip = missing.Length > 0 ? $"not installed: {string.Join(", ", missing)}" : null!;
    }
}

/// <summary>Somebody who speaks: a voice of espeak-ng with its words a minute, or one of flite.</summary>
/// <param name="Voice">Its name, "flite:" before one of flite; slt and awb of those are strangers to the recognizer.</param>
/// <param name="Pace">Words a minute; flite has its own.</param>
readonly record struct Speaker(string Voice, int Pace = 160)
{
    const string Flite = "flite:";

    /// <summary>The command that says words into a file.</summary>
    public (string Program, string[] Arguments) Says(string words, string wav) => Voice.StartsWith(Flite, StringComparison.Ordinal)
        ? ("flite", ["-voice", Voice[Flite.Length..], "-t", words, "-o", wav])
        : ("espeak-ng", ["-v", Voice, "-s", FormattableString.Invariant($"{Pace}"), "-w", wav, words]);
}

/// <summary>
/// A sound server of the tests' own with two devices: the air by the furnace, which the microphone of the program records, and the loudspeaker of the program, which is heard in that air
/// 10 dB lower. It ends with the test.
/// </summary>
/// <param name="rate">Words a minute of the program's voice, which may be more than anybody could follow: nobody but its own microphone listens to it, and a test has no time.</param>
sealed class SoundRoom(int rate = SoundRoom.Hurried) : IDisposable
{
    /// <summary>As fast as the voice can.</summary>
    public const int Hurried = 900;

    const string Air = "air", Loudspeaker = "loudspeaker";

    const string Plain = "rate=16000 channels=1 channel_map=mono";

    /// <summary>How loud everybody speaks, dB of full scale over the frames with speech.</summary>
    public const double SpeechLevel = -22;

    /// <summary>A sound server that takes longer hangs, and a test that waited for it would never end.</summary>
    static readonly TimeSpan Longest = TimeSpan.FromMinutes(2);

    readonly TemporaryFolder _folder = new();
    readonly SileroDetector _levels = Detector();
    readonly List<Process> _noises = [];
    Process? _server;
    string _device = "", _echo = "";

    /// <summary>A detector of speech for one listener alone.</summary>
    public static SileroDetector Detector() => SileroDetector.Load(new ModelFiles(ShippedFiles.Models).Checked(ModelFiles.Detector).Path);

    string Address => $"unix:{Path.Combine(_folder.Path, "native")}";

    public CaptureCommand Microphone => new(InstalledProgram.Find("parec")!, [$"--server={Address}", $"--device={Air}.monitor", "--raw", "--rate=16000", "--channels=1", "--format=s16le", "--latency-msec=50"]);

    /// <summary>Finds programs as usual, but the player of the program plays on its loudspeaker.</summary>
    public string? Find(string program) => program switch
    {
        "espeak-ng" => Script("espeak-ng", FormattableString.Invariant($"exec {InstalledProgram.Find("espeak-ng")} \"$@\" -s {rate}")),
        "paplay" => Script("paplay", $"exec {InstalledProgram.Find("paplay")} --server={Address} --device={Loudspeaker} \"$@\""),
        _ => null,
    };

    /// <summary>Lets a program that is started find this room, and no other device.</summary>
    public void Lend(ProcessStartInfo start)
    {
        start.Environment["PULSE_SERVER"] = Address;
        start.Environment["PATH"] = $"{Path.GetDirectoryName(Find("espeak-ng"))}:{Environment.GetEnvironmentVariable("PATH")}";
    }

    /// <summary>Listens to the loudspeaker alone; ends with the server.</summary>
    /// <param name="loud">Told of every twentieth of a second in which something was said.</param>
    public Process Eavesdrop(Action loud)
    {
        const short Loud = 300;
        Process ear = Process.Start(new ProcessStartInfo(InstalledProgram.Find("parec")!, [$"--server={Address}", $"--device={Loudspeaker}.monitor", "--raw", "--rate=16000", "--channels=1", "--format=s16le", "--latency-msec=50"]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        _ = Task.Run(() =>
        {
            byte[] samples = new byte[1600];
            while (ear.StandardOutput.BaseStream.ReadAtLeast(samples, samples.Length, throwOnEndOfStream: false) == samples.Length)
            {
                if (MemoryMarshal.Cast<byte, short>(samples).ContainsAnyExceptInRange((short)-Loud, Loud))
                {
                    loud();
                }
            }
        });
        return ear;
    }

    /// <summary>Opens the room: the devices are there, and the loudspeaker is 10 dB lower in the air.</summary>
    public async Task Open()
    {
        _server = Start("pulseaudio",
            "--daemonize=no", "--use-pid-file=no", "--exit-idle-time=-1", "-n",
            $"--load=module-native-protocol-unix socket={Path.Combine(_folder.Path, "native")} auth-anonymous=1",
            $"--load=module-null-sink sink_name={Loudspeaker} {Plain}");
        await Until(async () => (await Order("list", "short", "sinks")).Length > 0);
        await GiveDevice();
        await Order("set-default-sink", Loudspeaker);
        await Order("set-default-source", $"{Air}.monitor");
    }

    /// <summary>Plugs the microphone in: its air is there, and the loudspeaker is heard in it.</summary>
    public async Task GiveDevice()
    {
        _device = await Order(["load-module", "module-null-sink", $"sink_name={Air}", .. Plain.Split(' ')]);
        _echo = await Order("load-module", "module-loopback", $"source={Loudspeaker}.monitor", $"sink={Air}", "latency_msec=60");
        await Until(async () => (await Order("list", "short", "sink-inputs")).Length > 0);
        await Order("set-sink-input-volume", (await Order("list", "short", "sink-inputs")).Split('\t')[0], "-10dB");
    }

    /// <summary>Pulls the microphone out. Who listened to it is sent away: the server would give him another device instead.</summary>
    public async Task LoseDevice()
    {
        End(_noises);
        await Order("unload-module", _echo);
        await Order("unload-module", _device);
        foreach (string line in (await Order("list", "short", "source-outputs")).Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            await Order("kill-source-output", line.Split('\t')[0]);
        }
    }

    /// <summary>A blower: noise that grows weaker toward the heights, so many dB below the speech of everybody here, as long as the device is there.</summary>
    /// <param name="below">Mean square over the frames with speech beside that of the noise, dB.</param>
    public void Blow(double below)
    {
        string wav = Path.Combine(_folder.Path, "noise.wav");
        if (!File.Exists(wav))
        {
            Run("sox", "-n", "-r", "16000", "-c", "1", "-b", "16", wav, "synth", "60", "pinknoise", "lowpass", "2500", "gain", "-6");
            float[] noise = WavFile.Read(wav);
            Loud(noise, noise.Sum(sample => (double)sample * sample) / noise.Length, SpeechLevel - below);
            WavFile.Write(wav, noise);
        }

        _noises.Add(Start("bash", "-c", $"while :; do {InstalledProgram.Find("paplay")} --server={Address} --device={Air} {wav} || exit; done"));
    }

    /// <summary>Says words into the air, and returns when the last sound is out.</summary>
    public Task Say(string words, Speaker speaker) => Play(Speech(words, speaker));

    /// <summary>Makes the sound of words, as loud as everybody speaks here; it ends with the last of them, and no silence after it.</summary>
    /// <returns>A file that the next words take the place of.</returns>
    public string Speech(string words, Speaker speaker)
    {
        string wav = Path.Combine(_folder.Path, "said.wav");
        (string program, string[] arguments) = speaker.Says(words, wav);
        Run(program, arguments);
        float[] sound = WavFile.Read(wav);
        float end = sound.Max(Math.Abs) / 50;
        sound = sound[..(Array.FindLastIndex(sound, sample => Math.Abs(sample) > end) + 1)];
        Loud(sound, NoiseMix.SpeechPower(sound, _levels) ?? 1, SpeechLevel);
        WavFile.Write(wav, sound);
        return wav;
    }

    /// <summary>Plays a file into the air, and returns when the last sound is out.</summary>
    public async Task Play(string wav)
    {
        using Process player = Start("paplay", $"--server={Address}", $"--device={Air}", wav);
        await Ended(player);
    }

    /// <summary>Gives the server an order.</summary>
    public async Task<string> Order(params string[] words)
    {
        using Process order = Process.Start(new ProcessStartInfo(InstalledProgram.Find("pactl")!, [$"--server={Address}", .. words]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        Task<string> answer = order.StandardOutput.ReadToEndAsync();
        await Ended(order);
        return (await answer).Trim();
    }

    static async Task Ended(Process process)
    {
        try
        {
            await process.WaitForExitAsync().WaitAsync(Longest);
        }
        finally
        {
            process.Kill(entireProcessTree: true);
        }
    }

    static async Task Until(Func<Task<bool>> isSo)
    {
        for (int tries = 0; tries < 100 && !await isSo(); tries++)
        {
            await Task.Delay(100);
        }
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

    /// <summary>Nothing of this room keeps the output of the tests open when it outlives them.</summary>
    Process Start(string program, params string[] arguments)
    {
        Process process = Process.Start(new ProcessStartInfo(InstalledProgram.Find(program)!, arguments)
        {
            Environment = { ["XDG_RUNTIME_DIR"] = _folder.Path, ["HOME"] = _folder.Path, ["PULSE_SERVER"] = null },
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        return process;
    }

    void Run(string program, params string[] arguments)
    {
        using Process run = Start(program, arguments);
        run.WaitForExit();
    }

    static void End(List<Process> processes)
    {
        foreach (Process process in processes)
        {
            process.Kill(entireProcessTree: true);
            process.WaitForExit();
            process.Dispose();
        }

        processes.Clear();
    }

    static void Loud(float[] sound, double power, double decibels)
    {
        float gain = (float)Math.Sqrt(Math.Pow(10, decibels / 10) / power);
        for (int i = 0; i < sound.Length; i++)
        {
            sound[i] *= gain;
        }
    }

    public void Dispose()
    {
        End(_noises);
        End([.. ((Process?[])[_server]).OfType<Process>()]);
        _levels.Dispose();
        _folder.Dispose();
    }
}
