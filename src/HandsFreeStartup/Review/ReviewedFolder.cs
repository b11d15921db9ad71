using System.Collections.Concurrent;
using System.Text.Json;
using HandsFreeStartup.Reports.Review;
using HandsFreeStartup.Running;
using HandsFreeStartup.Storage.Index;
using HandsFreeStartup.Storage.Log;

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

    static readonly TimeSpan LongestRecord = TimeSpan.FromSeconds(30);

    static readonly JsonSerializerOptions Format = new() { RespectNullableAnnotations = true, RespectRequiredConstructorParameters = true };

    /// <summary>Reviews every record in a folder and in the folders below, in the order of their names.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="data">Where the index is kept.</param>
    /// <param name="isFresh">Whether every record is read again whatever the index knows.</param>
    public static IReadOnlyList<FolderEntry> Read(string folder, DataFolder data, bool isFresh)
    {
        using JobIndex index = JobIndex.Open(data.ReviewIndex);
        IReadOnlyDictionary<string, (string Stamp, string Content)> known = index.ReadAll();
        FolderOfRecords found = FolderOfRecords.Of(folder, data);
        ConcurrentBag<(string Path, string Stamp, string Content)> learnt = [];
        FolderEntry[] entries = new FolderEntry[found.Records.Count];
        Parallel.For(0, entries.Length, i =>
        {
            string path = found.Records[i];
            entries[i] = Within(LongestRecord, path, () =>
            {
                string stamp = $"{Rules} {JobIndex.StampOf(path)}";
                if (!isFresh && known.TryGetValue(path, out (string Stamp, string Content) row) && row.Stamp == stamp && Remembered(row.Content, path) is { } entry)
                {
                    return entry;
                }

                entry = Read(path);
                if (entry.Review.Status != JobStatus.UnderWay)
                {
                    learnt.Add((path, stamp, JsonSerializer.Serialize(entry, Format)));
                }

                return entry;
            });
        });
        string below = System.IO.Path.TrimEndingDirectorySeparator(System.IO.Path.GetFullPath(folder)) + System.IO.Path.DirectorySeparatorChar;
        string[] gone = [.. known.Keys.Where(path => path.StartsWith(below, StringComparison.Ordinal)).Except(found.Records)];
        if (!learnt.IsEmpty || gone.Length > 0)
        {
            index.Write(learnt, gone);
        }

        return [.. entries, .. found.Closed.Select(closed => new FolderEntry(closed.Path, JobReview.Unreadable(System.IO.Path.GetFileName(closed.Path), closed.Why), null))];
    }

    /// <summary>One record never keeps the others from being read: whatever goes wrong with it becomes its finding, and one that takes too long is left behind.</summary>
    static FolderEntry Within(TimeSpan longest, string path, Func<FolderEntry> read)
    {
        // A thread of its own, because those of the pool are waiting here.
        Task<FolderEntry> reading = Task.Factory.StartNew(read, CancellationToken.None, TaskCreationOptions.LongRunning, TaskScheduler.Default);
        try
        {
            return reading.Wait(longest) ? reading.Result : Unreadable(path, "The record takes longer to read than any record of this program, or its disk does not answer.");
        }
        catch (AggregateException failure)
        {
            return Unreadable(path, $"The record cannot be reviewed: {failure.InnerException!.Message}");
        }
    }

    static FolderEntry Unreadable(string path, string why) => new(path, JobReview.Unreadable(System.IO.Path.GetFileNameWithoutExtension(path), why), null);

    static FolderEntry Read(string path)
    {
        ReviewedRecord record = ReviewedRecord.Read(path);
        JobReview review = record.Review;
        return new FolderEntry(path, review with { Findings = [.. review.Findings.Select(finding => finding with { Quote = "" })] }, record.Checkpoint);
    }

    static FolderEntry? Remembered(string content, string path)
    {
        try
        {
            return JsonSerializer.Deserialize<FolderEntry>(content, Format) is { } entry && entry.Path == path && !entry.Review.Findings.IsDefault ? entry : null;
        }
        catch (Exception error) when (Damage.Explains(error))
        {
            return null;
        }
    }
}
