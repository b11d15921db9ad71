using Microsoft.Data.Sqlite;

namespace HandsFreeStartup.Storage.Log;

/// <summary>A job's file opened for reading only. The file is never touched: what a killed process left in its -wal file is read from a copy.</summary>
sealed class JobSnapshot : IDisposable
{
    readonly string? _copyFolder;

    JobSnapshot(SqliteConnection connection, string? copyFolder)
    {
        Connection = connection;
        _copyFolder = copyFolder;
    }

    public SqliteConnection Connection { get; }

    /// <exception cref="LogException">The file is missing, in use or cannot be opened.</exception>
    public static JobSnapshot Open(string path)
    {
        if (!File.Exists(path))
        {
            throw new LogException($"There is no record {path}. Look at the name and the folder.");
        }

        if (JobLock.IsHeld(path))
        {
            throw new LogException(LogErrors.InUse(path));
        }

        string? copyFolder = new FileInfo($"{path}-wal") is { Exists: true, Length: > 0 } ? Directory.CreateTempSubdirectory("handsfree-job-").FullName : null;
        try
        {
            return new JobSnapshot(copyFolder is null ? OpenUntouched(path) : OpenCopy(path, copyFolder), copyFolder);
        }
        catch (Exception error) when (error is SqliteException or IOException or UnauthorizedAccessException)
        {
            Remove(copyFolder);
            throw LogErrors.OnOpening(path, error);
        }
    }

    public void Dispose()
    {
        Connection.Dispose();
        Remove(_copyFolder);
    }

    /// <summary>"immutable" keeps SQLite from making lock and index files, so a read-only folder will do.</summary>
    static SqliteConnection OpenUntouched(string path) =>
        Opened(new Uri(Path.GetFullPath(path)).AbsoluteUri + "?immutable=1", SqliteOpenMode.ReadOnly);

    static SqliteConnection OpenCopy(string path, string folder)
    {
        string copy = Path.Combine(folder, "job.db");
        File.Copy(path, copy);
        File.Copy($"{path}-wal", $"{copy}-wal");
        return Opened(copy, SqliteOpenMode.ReadWrite);
    }

    static SqliteConnection Opened(string source, SqliteOpenMode mode)
    {
        SqliteConnection connection = new(new SqliteConnectionStringBuilder { DataSource = source, Mode = mode, Pooling = false, DefaultTimeout = 1 }.ToString());
        connection.Open();
        return connection;
    }

    static void Remove(string? folder)
    {
        if (folder is not null)
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
