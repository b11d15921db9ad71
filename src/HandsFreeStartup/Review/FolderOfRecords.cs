using HandsFreeStartup.Doors;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Review;

/// <summary>The records in a folder and in the folders below. Links are not followed; a link that has the name of a record counts as one, and is told when it is read.</summary>
/// <param name="Records">Full paths in the order of their names.</param>
/// <param name="Closed">Folders that could not be looked into, each with why.</param>
sealed record FolderOfRecords(IReadOnlyList<string> Records, IReadOnlyList<(string Path, string Why)> Closed)
{
    /// <summary>Looks through a folder.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="data">Where the index lies, which is no record.</param>
    public static FolderOfRecords Of(string folder, DataFolder data)
    {
        List<string> records = [];
        List<(string, string)> closed = [];
        Stack<string> folders = new([Path.GetFullPath(folder)]);
        while (folders.TryPop(out string? path))
        {
            try
            {
                foreach (FileSystemInfo entry in new DirectoryInfo(path).EnumerateFileSystemInfos())
                {
                    Sort(entry, records, folders);
                }
            }
            catch (Exception error) when (FileTrouble.Is(error))
            {
                closed.Add((path, FileTrouble.Sentence(error, $"The folder {path} cannot be looked into", "records in it are not in this list")));
            }
        }

        records.Remove(data.ReviewIndex);
        return new FolderOfRecords([.. records.Order(StringComparer.Ordinal)], closed);
    }

    static void Sort(FileSystemInfo entry, List<string> records, Stack<string> folders)
    {
        bool isLink = entry.Attributes.HasFlag(FileAttributes.ReparsePoint);
        if (entry is DirectoryInfo && !isLink)
        {
            folders.Push(entry.FullName);
        }
        else if (entry.Name.EndsWith(".db", StringComparison.Ordinal))
        {
            records.Add(entry.FullName);
        }
    }
}
