using System.Collections.Immutable;

namespace HandsFreeStartup.Speech.Listening;

/// <summary>The systems that differ in how sound is recorded, played and spoken.</summary>
public enum Platform
{
    /// <summary>Linux, and what has its programs.</summary>
    Linux,

    /// <summary>macOS.</summary>
    MacOS,

    /// <summary>Windows.</summary>
    Windows,
}

/// <summary>A machine, as far as its sound goes through programs.</summary>
/// <param name="Platform">Its system.</param>
/// <param name="Find">Where a program of that name is installed; null where it is not.</param>
/// <param name="Own">The words that start this program once more: its path, and what goes before all arguments. Empty where it does not know its path.</param>
public sealed record Machine(Platform Platform, Func<string, string?> Find, ImmutableArray<string> Own)
{
    /// <summary>The one that this program runs on.</summary>
    public static Machine This { get; } = new(
        OperatingSystem.IsWindows() ? Platform.Windows : OperatingSystem.IsMacOS() ? Platform.MacOS : Platform.Linux,
        InstalledProgram.Find,
        OwnWords(Environment.ProcessPath, Environment.GetCommandLineArgs()[0]));

    /// <summary>Where <c>dotnet</c> runs the program from its library, that library is the first argument.</summary>
    internal static ImmutableArray<string> OwnWords(string? process, string firstWord) =>
        process is null ? []
        : Path.GetFileNameWithoutExtension(process).Equals("dotnet", StringComparison.OrdinalIgnoreCase) ? [process, Path.GetFullPath(firstWord)]
        : [process];
}
