using System.Collections.Immutable;

namespace HandsFreeStartup.Speech.Listening;

/// <summary>Programs of the system, looked for as a shell would, and where their installers put them.</summary>
public static class InstalledProgram
{
    /// <summary>Batch files do not count: they read their arguments by rules of their own, and a name could become an order.</summary>
    static readonly ImmutableArray<string> WindowsEndings = [".exe", ".com"];

    /// <summary>The installer of espeak-ng leaves the search path as it is.</summary>
    static readonly ImmutableArray<(string Variable, string Folder)> WindowsFolders =
        [("ProgramFiles", @"eSpeak NG"), ("ProgramFiles(x86)", @"eSpeak NG"), ("SystemRoot", @"System32\WindowsPowerShell\v1.0")];

    /// <summary>The package collections of macOS; what is not started from a shell does not have them on its search path.</summary>
    static readonly ImmutableArray<string> MacFolders = ["/opt/homebrew/bin", "/usr/local/bin", "/opt/local/bin"];

    /// <summary>The full path of a program, or null when it is not installed.</summary>
    /// <param name="name">A name to be found on the search path, or a path; on Windows with or without <c>.exe</c>.</param>
    public static string? Find(string name) =>
        Places(name, Machine.This.Platform, Environment.GetEnvironmentVariable).FirstOrDefault(IsExecutable) is { } path ? Path.GetFullPath(path) : null;

    /// <summary>Where a program of that name may be, the likeliest first.</summary>
    internal static IEnumerable<string> Places(string name, Platform platform, Func<string, string?> variable)
    {
        bool isWindows = platform == Platform.Windows;
        string[] names = !isWindows || WindowsEndings.Any(ending => name.EndsWith(ending, StringComparison.OrdinalIgnoreCase)) ? [name] : [.. WindowsEndings.Select(ending => name + ending)];
        if (name.Contains('/') || (isWindows && name.Contains('\\')))
        {
            return names;
        }

        char slash = isWindows ? '\\' : '/';
        IEnumerable<string> searched = (variable("PATH") ?? "").Split(isWindows ? ';' : ':', StringSplitOptions.RemoveEmptyEntries).Select(folder => isWindows ? folder.Trim('"') : folder);
        IEnumerable<string> usual = platform switch
        {
            Platform.Windows => WindowsFolders.Where(place => variable(place.Variable) is { Length: > 0 }).Select(place => $@"{variable(place.Variable)}\{place.Folder}"),
            Platform.MacOS => MacFolders,
            _ => [],
        };
        return from folder in searched.Concat(usual) from file in names select $"{folder.TrimEnd(slash)}{slash}{file}";
    }

    static bool IsExecutable(string path) =>
        File.Exists(path)
        && (OperatingSystem.IsWindows()
            || (File.GetUnixFileMode(path) & (UnixFileMode.UserExecute | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute)) != 0);
}
