using System.Collections.Immutable;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Speech.Speaking;

/// <summary>A program that plays a WAV file.</summary>
/// <param name="Program">Full path.</param>
/// <param name="Before">What goes before the file's name.</param>
/// <param name="After">What goes after it.</param>
public sealed record PlayCommand(string Program, ImmutableArray<string> Before, ImmutableArray<string> After)
{
    static readonly ImmutableArray<(string Name, Func<string?, ImmutableArray<string>> Before)> OfLinux =
    [
        ("paplay", device => device is null ? [] : [$"--device={device}"]),
        ("pw-play", device => device is null ? [] : [$"--target={device}"]),
        ("aplay", device => ["-q", "-D", device ?? "default"]),
    ];

    /// <summary>What to say where <see cref="Find"/> finds none.</summary>
    /// <param name="platform">The system of the machine.</param>
    public static string Missing(Platform platform) => platform switch
    {
        Platform.Windows => "The program does not know its own path and cannot play sound: start it by its full path.",
        Platform.MacOS => "Nothing that plays to a speaker by its name is installed: install sox (brew install sox), or choose the speaker in the system's settings.",
        _ => "No player is installed: install pulseaudio-utils (paplay), pipewire-bin (pw-play) or alsa-utils (aplay).",
    };

    /// <summary>The arguments that play a file.</summary>
    /// <param name="file">Its full path.</param>
    public string[] Arguments(string file) => [.. Before, file, .. After];

    /// <summary>The first player that is installed, or null.</summary>
    /// <param name="speaker">Name of a device, or null for the system's default.</param>
    /// <param name="machine">What is installed; null for this one.</param>
    public static PlayCommand? Find(string? speaker = null, Machine? machine = null) => Of(machine ?? Machine.This, speaker);

    static PlayCommand? Of(Machine machine, string? speaker) => machine.Platform switch
    {
        Platform.Windows => machine.Own is [var own, .. var first] ? new PlayCommand(own, [.. first, "sound", "play", .. speaker is null ? [] : (string[])[$"--device={speaker}"]], []) : null,
        // What the system brings plays to the default speaker alone.
        Platform.MacOS when speaker is null => machine.Find("afplay") is { } afplay ? new PlayCommand(afplay, [], []) : null,
        Platform.MacOS => machine.Find("sox") is { } sox ? new PlayCommand(sox, ["-q"], ["-t", "coreaudio", speaker]) : null,
        _ => OfLinux
            .Select(player => machine.Find(player.Name) is { } path ? new PlayCommand(path, player.Before(speaker), []) : null)
            .FirstOrDefault(command => command is not null),
    };
}
