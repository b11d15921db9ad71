using HandsFreeStartup.Doors;
using HandsFreeStartup.Storage.Log;
using Microsoft.Data.Sqlite;

namespace HandsFreeStartup.Storage.Index;

/// <summary>
/// Remembers what was found out about jobs, so that ten thousand of them need not be read again. It is never the truth: whatever is in it can be worked out from
/// the jobs, a job that has changed is read again, and an index that is lost, damaged or of another program is begun anew.
/// </summary>
public sealed class JobIndex : IDisposable
{
    const string Schema = "create table job (path text primary key, stamp text not null, content text not null) strict, without rowid";

    /// <summary>More than a hundred thousand jobs need.</summary>
    const long MostBytes = 1L << 30;

    readonly SqliteConnection _connection;

    JobIndex(SqliteConnection connection) => _connection = connection;

    /// <summary>Opens the index, or begins it anew; where it cannot be kept, it lives only as long as the program.</summary>
    /// <param name="path">Its file.</param>
    public static JobIndex Open(string path)
    {
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(Path.GetFullPath(path))!);
            RegularFile.Check(path, MostBytes, follows: false);
            return new JobIndex(Begun(path));
        }
        catch (Exception error) when (error is SqliteException or InvalidDataException)
        {
            return new JobIndex(BegunAnew(path));
        }
        catch (Exception error) when (FileTrouble.Is(error))
        {
            return new JobIndex(Begun(":memory:"));
        }
    }

    /// <summary>Changes whenever the content of a job's file does, of what a killed process left beside it, or of one of its recordings and photos.</summary>
    /// <remarks>Sizes, times and a hash of samples of each; see <see cref="Attachment.FingerprintOf"/>. It reads a few kilobytes a file, where a verification reads everything.</remarks>
    public static string StampOf(string jobPath) => string.Join(
        ' ', Attachment.FingerprintOf(jobPath), Attachment.FingerprintOf($"{jobPath}-wal"),
        string.Join(' ', AttachmentKind.All.Select(kind => Attachment.FingerprintOfAll(kind.FolderOf(jobPath)))));

    /// <summary>Everything that it holds: stamp and content by the job's full path. Nothing, where it cannot be read.</summary>
    public IReadOnlyDictionary<string, (string Stamp, string Content)> ReadAll()
    {
        Dictionary<string, (string, string)> all = [];
        try
        {
            using SqliteCommand command = _connection.CreateCommand();
            command.CommandText = "select path, stamp, content from job";
            using SqliteDataReader rows = command.ExecuteReader();
            while (rows.Read())
            {
                all[rows.GetString(0)] = (rows.GetString(1), rows.GetString(2));
            }
        }
        catch (SqliteException)
        {
            // The jobs are read again.
            all.Clear();
        }

        return all;
    }

    /// <summary>Takes in what was found out, and lets go of jobs that are no longer there. An index that cannot be written only costs time.</summary>
    /// <param name="kept">Jobs with stamp and content.</param>
    /// <param name="gone">Jobs to let go.</param>
    public void Write(IEnumerable<(string Path, string Stamp, string Content)> kept, IEnumerable<string> gone)
    {
        try
        {
            using SqliteTransaction transaction = _connection.BeginTransaction();
            foreach ((string path, string stamp, string content) in kept)
            {
                Execute("insert or replace into job values ($1, $2, $3)", transaction, path, stamp, content);
            }

            foreach (string path in gone)
            {
                Execute("delete from job where path=$1", transaction, path);
            }

            transaction.Commit();
        }
        catch (SqliteException)
        {
            // Nothing is lost: the jobs are read again next time.
        }
    }

    /// <summary>Closes it.</summary>
    public void Dispose() => _connection.Dispose();

    void Execute(string sql, SqliteTransaction? transaction, params string[] values)
    {
        using SqliteCommand command = _connection.CreateCommand();
        command.Transaction = transaction;
        command.CommandText = sql;
        for (int i = 0; i < values.Length; i++)
        {
            command.Parameters.AddWithValue(FormattableString.Invariant($"${i + 1}"), values[i]);
        }

        command.ExecuteNonQuery();
    }

    static SqliteConnection Begun(string path)
    {
        SqliteConnection connection = new(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false, DefaultTimeout = 2 }.ToString());
        try
        {
            connection.Open();
            using SqliteCommand command = connection.CreateCommand();
            command.CommandText = $"pragma synchronous=off; pragma secure_delete=on; {(HasTable(connection) ? "" : $"{Schema};")} select count(path) + count(stamp) + count(content) from job";
            command.ExecuteScalar();
            return connection;
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }

    /// <summary>Whether its table is there. A file that holds anything else, such as a view that works without end, is begun anew before anything is asked of it.</summary>
    static bool HasTable(SqliteConnection connection)
    {
        string[] found = [.. LogConnection.Statements(connection)];
        return found.All(statement => statement == LogConnection.AsKept(Schema)) ? found.Length > 0 : throw new InvalidDataException("The index is none of this program.");
    }

    static SqliteConnection BegunAnew(string path)
    {
        try
        {
            File.Delete(path);
            return Begun(path);
        }
        catch (Exception error) when (error is SqliteException || FileTrouble.Is(error))
        {
            return Begun(":memory:");
        }
    }
}
