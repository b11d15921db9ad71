namespace HandsFreeStartup.Doors;

/// <summary>
/// A folder for what is needed only for a moment. It goes with its owner. What a killed program has left behind is told from it by a lock that only a living program holds, and can be
/// removed: it may hold names and voices of people.
/// </summary>
public sealed class ScratchFolder : IDisposable
{
    const string LockName = "in-use";

    /// <summary>Every name begins so; what it is for follows.</summary>
    static readonly string[] Beginnings = ["handsfree-job-", "handsfree-voice-"];

    /// <summary>One without a lock is just being made, or was left by an earlier program that had none.</summary>
    static readonly TimeSpan JustMade = TimeSpan.FromMinutes(1);

    readonly FileStream _lock;

    ScratchFolder(string path, FileStream held) => (Path, _lock) = (path, held);

    /// <summary>Full path.</summary>
    public string Path { get; }

    /// <summary>Makes a folder.</summary>
    /// <param name="purpose">"job" or "voice".</param>
    /// <exception cref="IOException">It cannot be made in the folder for temporary files.</exception>
    public static ScratchFolder Make(string purpose)
    {
        string path = Directory.CreateTempSubdirectory($"handsfree-{purpose}-").FullName;
        try
        {
            return new ScratchFolder(path, new FileStream(System.IO.Path.Combine(path, LockName), FileMode.CreateNew, FileAccess.ReadWrite, FileShare.None));
        }
        catch (Exception error) when (FileTrouble.Is(error))
        {
            Directory.Delete(path, recursive: true);
            throw;
        }
    }

    /// <summary>Removes everything that programs have left behind which are no more.</summary>
    /// <param name="clock">Tells how old a folder without a lock is.</param>
    /// <returns>How many folders were removed, and those that could not be.</returns>
    public static (int Removed, IReadOnlyList<string> Left) RemoveAbandoned(TimeProvider clock)
    {
        int removed = 0;
        List<string> left = [];
        foreach (string folder in Directory.EnumerateDirectories(System.IO.Path.GetTempPath(), "handsfree-*").Where(IsOurs))
        {
            try
            {
                if (IsAbandoned(folder, clock))
                {
                    Directory.Delete(folder, recursive: true);
                    removed++;
                }
            }
            catch (Exception error) when (FileTrouble.Is(error))
            {
                left.Add(folder);
            }
        }

        return (removed, left);
    }

    /// <summary>Removes the folder with everything in it.</summary>
    public void Dispose()
    {
        _lock.Dispose();
        Directory.Delete(Path, recursive: true);
    }

    static bool IsOurs(string folder) =>
        Beginnings.Any(beginning => System.IO.Path.GetFileName(folder).StartsWith(beginning, StringComparison.Ordinal)) && FileStatus.Of(folder).Kind == FileKind.Folder;

    static bool IsAbandoned(string folder, TimeProvider clock)
    {
        string held = System.IO.Path.Combine(folder, LockName);
        if (FileStatus.Of(held).Kind != FileKind.Regular)
        {
            return clock.GetUtcNow() - Directory.GetLastWriteTimeUtc(folder) > JustMade;
        }

        try
        {
            using FileStream file = new(held, FileMode.Open, FileAccess.ReadWrite, FileShare.None);
            return true;
        }
        catch (IOException)
        {
            return false;
        }
    }
}
