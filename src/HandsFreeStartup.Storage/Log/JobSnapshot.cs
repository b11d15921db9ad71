using HandsFreeStartup.Doors;
using Microsoft.Data.Sqlite;

namespace HandsFreeStartup.Storage.Log;

/// <summary>A job's file opened for reading only. The file is never touched: what a killed process left in its -wal file is read from a copy.</summary>
sealed class JobSnapshot : IDisposable
{
    /// <summary>More than any job has: its photos and recordings lie beside it.</summary>
    public const int MostBytes = 64 << 20;

    readonly ScratchFolder? _copyFolder;

    JobSnapshot(SqliteConnection connection, ScratchFolder? copyFolder)
    {
        Connection = connection;
        _copyFolder = copyFolder;
    }

    public SqliteConnection Connection { get; }

    /// <exception cref="LogException">The file is missing, in use or cannot be opened.</exception>
    public static JobSnapshot Open(string path)
    {
        FileStatus status = FileStatus.Of(path);
        if (status.Kind == FileKind.None)
        {
            throw new LogException($"There is no record {path}. Look at the name and the folder.");
        }

        if (JobLock.IsHeld(path))
        {
            throw new LogException(LogErrors.InUse(path));
        }

        ScratchFolder? copyFolder = null;
        try
        {
            RegularFile.Check(path, MostBytes, follows: false);
            RegularFile.Check($"{path}-wal", MostBytes, follows: false);
            copyFolder = FileStatus.Of($"{path}-wal").Bytes > 0 ? FolderForCopy(path) : null;
            return new JobSnapshot(copyFolder is null ? OpenUntouched(path) : OpenCopy(path, copyFolder.Path), copyFolder);
        }
        catch (Exception error) when (error is SqliteException || FileTrouble.Is(error))
        {
            copyFolder?.Dispose();
            throw LogErrors.OnOpening(path, error);
        }
    }

    public void Dispose()
    {
        Connection.Dispose();
        _copyFolder?.Dispose();
    }

    /// <summary>"immutable" keeps SQLite from making lock and index files, so a read-only folder will do.</summary>
    static SqliteConnection OpenUntouched(string path) =>
        Opened(new Uri(Path.GetFullPath(path)).AbsoluteUri + "?immutable=1", SqliteOpenMode.ReadOnly);

    static ScratchFolder FolderForCopy(string path)
    {
        try
        {
            return ScratchFolder.Make("job");
        }
        catch (Exception error) when (FileTrouble.Is(error))
        {
            throw new UnusableFileException(FileTrouble.Sentence(
                error, $"The record {path} was left by a killed program and is read from a copy, which cannot be made in {Path.GetTempPath()}", "name a folder that can be written in the variable TMPDIR"));
        }
    }

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
        LogConnection.Guard(connection);
        return connection;
    }
}
