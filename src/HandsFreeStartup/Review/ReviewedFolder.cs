using System.Collections.Concurrent;
using System.Text.Json;
using HandsFreeStartup.Reports.Review;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.Index;

namespace HandsFreeStartup.Review;

/// <summary>One job of a folder: what the index remembers of it.</summary>
/// <param name="Path">The job's file.</param>
/// <param name="Review">Its review without anything that was dictated freely.</param>
/// <param name="Checkpoint">Count and last hash, or null.</param>
sealed record FolderEntry(string Path, JobReview Review, string? Checkpoint);

/// <summary>All records of a folder, read through the index: only what is new or has changed is read again.</summary>
static class ReviewedFolder
{
    /// <summary>An index of another program, or of this one before it was built anew, knows other rules.</summary>
    static readonly string Rules = typeof(JobReview).Assembly.ManifestModule.ModuleVersionId.ToString("N");

    /// <summary>Reviews every record in a folder and in the folders below, in the order of their names.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="data">Where the index is kept.</param>
    /// <param name="isFresh">Whether every record is read again whatever the index knows.</param>
    public static IReadOnlyList<FolderEntry> Read(string folder, DataFolder data, bool isFresh)
    {
        using JobIndex index = JobIndex.Open(data.ReviewIndex);
        IReadOnlyDictionary<string, (string Stamp, string Content)> known = index.ReadAll();
        string[] paths = [.. RecordsIn(folder, data)];
        ConcurrentBag<(string Path, string Stamp, string Content)> learnt = [];
        FolderEntry[] entries = new FolderEntry[paths.Length];
        Parallel.For(0, paths.Length, i =>
        {
            string stamp = $"{Rules} {JobIndex.StampOf(paths[i])}";
            if (!isFresh && known.TryGetValue(paths[i], out (string Stamp, string Content) row) && row.Stamp == stamp && Remembered(row.Content) is { } entry)
            {
                entries[i] = entry;
                return;
            }

            entries[i] = Read(paths[i]);
            if (entries[i].Review.Status != JobStatus.UnderWay)
            {
                learnt.Add((paths[i], stamp, JsonSerializer.Serialize(entries[i])));
            }
        });
        string below = System.IO.Path.TrimEndingDirectorySeparator(System.IO.Path.GetFullPath(folder)) + System.IO.Path.DirectorySeparatorChar;
        string[] gone = [.. known.Keys.Where(path => path.StartsWith(below, StringComparison.Ordinal)).Except(paths)];
        if (!learnt.IsEmpty || gone.Length > 0)
        {
            index.Write(learnt, gone);
        }

        return entries;
    }

    /// <summary>The records in a folder and below, full paths in the order of their names.</summary>
    public static IEnumerable<string> RecordsIn(string folder, DataFolder data) => Directory
        .EnumerateFiles(System.IO.Path.GetFullPath(folder), "*.db", new EnumerationOptions { RecurseSubdirectories = true, IgnoreInaccessible = true })
        .Where(path => path != data.ReviewIndex)
        .Order(StringComparer.Ordinal);

    static FolderEntry Read(string path)
    {
        ReviewedRecord record = ReviewedRecord.Read(path);
        JobReview review = record.Review;
        return new FolderEntry(path, review with { Findings = [.. review.Findings.Select(finding => finding with { Quote = "" })] }, record.Checkpoint);
    }

    static FolderEntry? Remembered(string content)
    {
        try
        {
            return JsonSerializer.Deserialize<FolderEntry>(content);
        }
        catch (JsonException)
        {
            return null;
        }
    }
}
