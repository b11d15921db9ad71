using System.Collections.Immutable;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Speech.Speaking;

/// <summary>A program that plays a WAV file.</summary>
/// <param name="Program">Full path.</param>
/// <param name="Arguments">What goes before the file's name.</param>
public sealed record PlayCommand(string Program, ImmutableArray<string> Arguments)
{
    static readonly ImmutableArray<(string Name, Func<string?, ImmutableArray<string>> Arguments)> Players =
    [
        ("paplay", device => device is null ? [] : [$"--device={device}"]),
        ("pw-play", device => device is null ? [] : [$"--target={device}"]),
        ("aplay", device => ["-q", "-D", device ?? "default"]),
    ];

    /// <summary>The first player that is installed, or null.</summary>
    /// <param name="speaker">Name of a device, or null for the system's default.</param>
    /// <param name="find">Where a program is installed; null for <see cref="InstalledProgram.Find"/>.</param>
    public static PlayCommand? Find(string? speaker = null, Func<string, string?>? find = null) => Players
        .Select(player => (find ?? InstalledProgram.Find)(player.Name) is { } path ? new PlayCommand(path, player.Arguments(speaker)) : null)
        .FirstOrDefault(command => command is not null);
}
