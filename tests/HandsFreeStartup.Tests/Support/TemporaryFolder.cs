namespace HandsFreeStartup.Tests.Support;

/// <summary>A real folder that is gone afterwards.</summary>
public sealed class TemporaryFolder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("handsfree-").FullName;

    /// <summary>The only record in it.</summary>
    public string Job => Assert.Single(Directory.GetFiles(System.IO.Path.Combine(Path, "jobs"), "*.db"));

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
