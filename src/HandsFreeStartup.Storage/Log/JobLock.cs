using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Storage.Log;

/// <summary>Keeps a job to one process. The operating system lets go of it when the process ends, however it ends.</summary>
sealed class JobLock : IDisposable
{
    readonly FileStream _file;

    JobLock(FileStream file) => _file = file;

    public static JobLock Take(string jobPath)
    {
        if (FileStatus.Of(PathFor(jobPath)).Kind is not (FileKind.None or FileKind.Regular))
        {
            throw new LogException($"The record {jobPath} cannot be locked: what lies at {PathFor(jobPath)} is no file. Remove it and try again.");
        }

        try
        {
            return new JobLock(new FileStream(PathFor(jobPath), FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None, 1, FileOptions.DeleteOnClose));
        }
        catch (IOException error) when (error is not (DirectoryNotFoundException or FileNotFoundException))
        {
            throw new LogException(IsHeld(jobPath) ? LogErrors.InUse(jobPath) : $"The record {jobPath} cannot be locked: {error.Message.TrimEnd('.')}. Look at its folder and try again.", error);
        }
        catch (Exception error) when (error is UnauthorizedAccessException or DirectoryNotFoundException or FileNotFoundException)
        {
            throw LogErrors.OnOpening(jobPath, new UnauthorizedAccessException(error.Message, error));
        }
    }

    /// <summary>Whether a living process holds the job. A file left behind by a dead one does not count.</summary>
    public static bool IsHeld(string jobPath)
    {
        if (FileStatus.Of(PathFor(jobPath)).Kind != FileKind.Regular)
        {
            return false;
        }

        try
        {
            using FileStream probe = new(PathFor(jobPath), FileMode.Open, FileAccess.Read, FileShare.None);
            return false;
        }
        catch (Exception error) when (error is FileNotFoundException or UnauthorizedAccessException)
        {
            return false;
        }
        catch (IOException)
        {
            return true;
        }
    }

    public void Dispose() => _file.Dispose();

    static string PathFor(string jobPath) => $"{jobPath}.lock";
}
