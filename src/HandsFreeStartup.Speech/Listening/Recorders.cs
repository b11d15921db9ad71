using System.Collections.Immutable;

namespace HandsFreeStartup.Speech.Listening;

/// <summary>The recording programs of each platform, the best first, each with the arguments that make it write 16 kHz raw sound.</summary>
static class Recorders
{
    /// <summary>What the recorders of a platform are called in messages, each with how it is got.</summary>
    public static string Remedy(Platform platform) => platform switch
    {
        Platform.Windows => "The program does not know its own path and cannot record sound: start it by its full path, or name a recording program with --microphone; until then use the keys.",
        Platform.MacOS => "No program that records sound is installed: install sox (brew install sox) or ffmpeg; until then use the keys.",
        _ => "No program that records sound is installed: install pulseaudio-utils (parec), pipewire-bin (pw-record) or alsa-utils (arecord); until then use the keys.",
    };

    /// <summary>The first that a machine has; null where it has none.</summary>
    /// <param name="machine">What is installed.</param>
    /// <param name="device">Name of a device, or null for the system's default.</param>
    public static CaptureCommand? Of(Machine machine, string? device) => machine.Platform switch
    {
        Platform.Windows => Own(machine, device),
        Platform.MacOS => First(machine, device, OfMac),
        _ => First(machine, device, OfLinux),
    };

    static readonly ImmutableArray<(string Name, Func<string?, ImmutableArray<string>> Arguments)> OfLinux =
    [
        ("parec", device => ["--raw", "--format=s16le", "--rate=16000", "--channels=1", "--latency-msec=30", "--verbose", .. Named("--device=", device)]),
        ("pw-record", device => ["--format=s16", "--rate=16000", "--channels=1", "--latency=30ms", .. Named("--target=", device), "-"]),
        ("arecord", device => ["-q", "-t", "raw", "-f", "S16_LE", "-r", "16000", "-c", "1", "--buffer-time=200000", "-D", device ?? "default"]),
    ];

    /// <summary>The system brings none.</summary>
    static readonly ImmutableArray<(string Name, Func<string?, ImmutableArray<string>> Arguments)> OfMac =
    [
        ("sox", device => ["-q", "--buffer", "1024", "-t", "coreaudio", device ?? "default", "-t", "raw", "-r", "16000", "-e", "signed-integer", "-b", "16", "-c", "1", "-L", "-"]),
        ("ffmpeg", device => ["-nostdin", "-hide_banner", "-loglevel", "error", "-f", "avfoundation", "-i", $":{device ?? "default"}", "-ac", "1", "-ar", "16000", "-f", "s16le", "-flush_packets", "1", "-"]),
    ];

    static CaptureCommand? First(Machine machine, string? device, ImmutableArray<(string Name, Func<string?, ImmutableArray<string>> Arguments)> recorders) => recorders
        .Select(recorder => machine.Find(recorder.Name) is { } path ? new CaptureCommand(path, recorder.Arguments(device)) : null)
        .FirstOrDefault(command => command is not null);

    /// <summary>In a process of its own: a driver that crashes takes the recorder with it and not the job.</summary>
    static CaptureCommand? Own(Machine machine, string? device) => machine.Own is not [var program, .. var first] ? null
        : new CaptureCommand(program, [.. first, "sound", "record", .. Named("--device=", device)]) { Name = "Windows" };

    static ImmutableArray<string> Named(string option, string? device) => device is null ? [] : [option + device];
}
