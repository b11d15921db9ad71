namespace HandsFreeStartup.Speech.Tests.Support;

/// <summary>Small shell scripts that stand in for the system's sound programs.</summary>
public sealed class ScriptFolder : IDisposable
{
    readonly TemporaryFolder _folder = new();

    public string Path => _folder.Path;

    /// <summary>A text file that the scripts may write to; $LOG inside them.</summary>
    public string Log => System.IO.Path.Combine(Path, "log.txt");

    public string LogText => File.Exists(Log) ? File.ReadAllText(Log) : "";

    public string Add(string name, string body)
    {
        string path = System.IO.Path.Combine(Path, name);
        File.WriteAllText(path, $"#!/bin/sh\nLOG='{Log}'\n{body}\n");
        if (!OperatingSystem.IsWindows())
        {
            File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        }

        return path;
    }

    public string? Find(string name) => System.IO.Path.Combine(Path, name) is var path && File.Exists(path) ? path : null;

    public void Dispose() => _folder.Dispose();
}
