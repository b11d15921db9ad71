namespace HandsFreeStartup.Speech.Listening;

/// <summary>Programs of the system, looked for as a shell would.</summary>
public static class InstalledProgram
{
    /// <summary>The full path of a program, or null when it is not installed.</summary>
    /// <param name="name">A name to be found on the search path, or a path.</param>
    public static string? Find(string name) =>
        name.Contains('/')
            ? (IsExecutable(name) ? Path.GetFullPath(name) : null)
            : (Environment.GetEnvironmentVariable("PATH") ?? "")
                .Split(Path.PathSeparator, StringSplitOptions.RemoveEmptyEntries)
                .Select(folder => Path.Combine(folder, name))
                .FirstOrDefault(IsExecutable);

    static bool IsExecutable(string path) =>
        File.Exists(path)
        && (OperatingSystem.IsWindows()
            || (File.GetUnixFileMode(path) & (UnixFileMode.UserExecute | UnixFileMode.GroupExecute | UnixFileMode.OtherExecute)) != 0);
}
