using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Start;

/// <summary>What else was started up at the place of a job.</summary>
static class SamePlace
{
    /// <summary>So far back belongs to one visit.</summary>
    static readonly TimeSpan Visit = TimeSpan.FromHours(24);

    /// <summary>Everything that was started up and signed at the same address within one visit. A record that cannot be read names no furnace and is passed over.</summary>
    /// <param name="folder">The records.</param>
    /// <param name="job">The job that is to begin.</param>
    /// <param name="now">The present.</param>
    public static ImmutableArray<ApplianceBeside> Signed(string folder, JobDescription job, DateTimeOffset now)
    {
        if (!Directory.Exists(folder))
        {
            return [];
        }

        string address = AddressOf(job.Site);
        Started[] signed = [.. Directory.GetFiles(folder, "*.db").Order(StringComparer.Ordinal)
            .Where(path => now - File.GetLastWriteTimeUtc(path) < Visit && !StoredJob.IsInUse(path))
            .Select(path => SignedIn(path, now)).OfType<Started>()
            .Where(other => other.Job.JobId != job.Follows?.JobId && other.Job.Mark == job.Mark && other.Address == address)];
        return [.. signed.Where(one => signed.All(other => other.Job.Follows?.JobId != one.Job.JobId)).Select(one => new ApplianceBeside(one.Job.JobId, one.Title))];
    }

    /// <summary>Whether two sites are the same customer's at the same address, also where one was edited since.</summary>
    public static bool IsOne(FileCopy one, FileCopy other) =>
        one.Sha256 == other.Sha256 || (UserFile.ReadSite(one), UserFile.ReadSite(other)) is var (site, same) && (site.Customer, site.Address) == (same.Customer, same.Address);

    sealed record Started(JobDescription Job, string Address, string Title);

    static Started? SignedIn(string path, DateTimeOffset now)
    {
        try
        {
            IReadOnlyList<StartupEvent> events = StoredJob.Read(path).Events;
            return events is [StartupBegan { Job: { } job }, ..] && events.OfType<StartupSigned>().LastOrDefault() is { } signed && now - signed.At < Visit
                ? new Started(job, AddressOf(job.Site), UserFile.ReadApplianceSheet(job.Appliance).Title)
                : null;
        }
        catch (Exception e) when (e is LogException or ChecklistFileException)
        {
            return null;
        }
    }

    /// <summary>The address, however it is capitalized and spaced.</summary>
    static string AddressOf(FileCopy site) => string.Join(' ', UserFile.ReadSite(site).Address.ToUpperInvariant().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
