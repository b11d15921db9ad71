namespace HandsFreeStartup.Storage.Tests.Support;

/// <summary>A folder that cannot be written to while this lives. For the superuser no folder is read-only.</summary>
public sealed class ReadOnlyFolder : IDisposable
{
    readonly string _path;
    readonly UnixFileMode _mode;

    public ReadOnlyFolder(string path)
    {
        _path = path;
        _mode = File.GetUnixFileMode(path);
        File.SetUnixFileMode(path, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        IsEffective = !Environment.IsPrivilegedProcess;
    }

    public bool IsEffective { get; }

    public void Dispose() => File.SetUnixFileMode(_path, _mode);
}
