namespace HandsFreeStartup.Speech.Tests.Support;

/// <summary>A real folder that is gone after the test.</summary>
public sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("handsfree-").FullName;

    public string File(string name, byte[] bytes)
    {
        string path = System.IO.Path.Combine(Path, name);
        System.IO.File.WriteAllBytes(path, bytes);
        return path;
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
