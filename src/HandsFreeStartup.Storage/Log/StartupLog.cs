using System.Globalization;
using System.Text;
using HandsFreeStartup.Procedure.Events;
using Microsoft.Data.Sqlite;

namespace HandsFreeStartup.Storage.Log;

/// <summary>
/// The record of one job: events in the order in which they happened, one SQLite row and one transaction each, on the disk before <see cref="Append"/> returns,
/// chained by hashes, never changed. One process at a time.
/// </summary>
public sealed class StartupLog : IDisposable
{
    readonly SqliteConnection _connection;
    readonly JobLock _lock;
    readonly TimeProvider _clock;
    readonly SqliteCommand _insert;
    long _count;
    byte[] _lastHash;
    bool _hasFailed;

    StartupLog(string path, SqliteConnection connection, JobLock jobLock, TimeProvider clock, long count, byte[] lastHash)
    {
        Path = path;
        _connection = connection;
        _lock = jobLock;
        _clock = clock;
        _count = count;
        _lastHash = lastHash;
        _insert = connection.CreateCommand();
        _insert.CommandText = "insert into event (sequence, recorded_at, kind, body, previous_hash, hash) values ($sequence, $recorded_at, $kind, $body, $previous_hash, $hash)";
        foreach (string name in new[] { "$sequence", "$recorded_at", "$kind", "$body", "$previous_hash", "$hash" })
        {
            _insert.Parameters.Add(new SqliteParameter { ParameterName = name });
        }
    }

    /// <summary>The file.</summary>
    public string Path { get; }

    /// <summary>Count and last hash; print it outside of the log. Null while the log is empty.</summary>
    public Checkpoint? Checkpoint => _count == 0 ? null : new Checkpoint((int)_count, Convert.ToHexString(_lastHash));

    /// <summary>Begins the record of a new job.</summary>
    /// <param name="path">The file; it must not exist, its folder must.</param>
    /// <param name="clock">Tells when an event was recorded; the system's if null.</param>
    /// <exception cref="LogException">The file exists, or cannot be written.</exception>
    public static StartupLog Create(string path, TimeProvider? clock = null)
    {
        JobLock jobLock = JobLock.Take(path);
        try
        {
            return File.Exists(path)
                ? throw new LogException($"The record {path} exists already. Go on with it by start --resume, or choose another name.")
                : Begin(path, jobLock, clock ?? TimeProvider.System, isNew: true);
        }
        catch
        {
            jobLock.Dispose();
            throw;
        }
    }

    /// <summary>Opens the record of a job to go on with it.</summary>
    /// <exception cref="LogException">It is missing, in use, read-only, newer than this program, damaged or changed.</exception>
    public static StartupLog Open(string path, TimeProvider? clock = null)
    {
        JobLock jobLock = JobLock.Take(path);
        try
        {
            return File.Exists(path)
                ? Begin(path, jobLock, clock ?? TimeProvider.System, isNew: false)
                : throw new LogException($"There is no record {path}. Look at the name and the folder.");
        }
        catch
        {
            jobLock.Dispose();
            throw;
        }
    }

    /// <summary>Records one event durably.</summary>
    /// <exception cref="LogException">It was not recorded; the log takes no further event, those before are safe.</exception>
    public void Append(StartupEvent happened)
    {
        if (_hasFailed)
        {
            throw new LogException($"The record {Path} takes no further event, because one before could not be recorded. Go on with start --resume.");
        }

        long sequence = _count + 1;
        string recordedAt = _clock.GetUtcNow().ToString("O", CultureInfo.InvariantCulture);
        string kind = EventFormat.KindOf(happened);
        string body = EventFormat.BodyOf(happened);
        byte[] hash = HashChain.OfEvent(_lastHash, sequence, Encoding.UTF8.GetBytes(recordedAt), Encoding.UTF8.GetBytes(kind), Encoding.UTF8.GetBytes(body));
        Insert(sequence, recordedAt, kind, body, hash);
        _count = sequence;
        _lastHash = hash;
    }

    /// <summary>All events, first to last.</summary>
    public IReadOnlyList<StartupEvent> ReadAll()
    {
        using SqliteCommand command = _connection.CreateCommand();
        command.CommandText = "select kind, body from event order by sequence";
        using SqliteDataReader rows = command.ExecuteReader();
        List<StartupEvent> events = [];
        while (rows.Read())
        {
            events.Add(EventFormat.Read(rows.GetString(0), rows.GetString(1)));
        }
        return events;
    }

    /// <summary>Closes the file; nothing is lost without it.</summary>
    public void Dispose()
    {
        _insert.Dispose();
        _connection.Dispose();
        _lock.Dispose();
    }

    void Insert(long sequence, string recordedAt, string kind, string body, byte[] hash)
    {
        object[] values = [sequence, recordedAt, kind, body, _lastHash, hash];
        for (int i = 0; i < values.Length; i++)
        {
            _insert.Parameters[i].Value = values[i];
        }

        try
        {
            _insert.ExecuteNonQuery();
        }
        catch (SqliteException error)
        {
            _hasFailed = true;
            throw LogErrors.OnAppending(Path, sequence, error);
        }
    }

    static StartupLog Begin(string path, JobLock jobLock, TimeProvider clock, bool isNew)
    {
        SqliteConnection connection = new(new SqliteConnectionStringBuilder
        {
            DataSource = path,
            Mode = isNew ? SqliteOpenMode.ReadWriteCreate : SqliteOpenMode.ReadWrite,
            Pooling = false,
            DefaultTimeout = 1,
        }.ToString());
        try
        {
            connection.Open();
            if (isNew)
            {
                LogConnection.Prepare(connection);
                LogConnection.LayDown(connection);
                return new StartupLog(path, connection, jobLock, clock, 0, HashChain.Origin(LogFormat.Version));
            }

            LogConnection.RefuseForeign(connection, path);
            LogConnection.Prepare(connection);
            IReadOnlyList<StoredEvent> stored = StoredEvent.ReadAll(connection);
            ChainResult chain = StartupLogVerifier.CheckChain(stored);
            return chain.FirstWrong is null
                ? new StartupLog(path, connection, jobLock, clock, stored.Count, chain.LastHash)
                : throw new LogException($"The record {path} was changed or damaged: {chain.FirstWrong.Message} Keep the file as it is, run verify on it, and begin a new job.");
        }
        catch (Exception error) when (error is SqliteException or IOException or UnauthorizedAccessException)
        {
            connection.Dispose();
            throw LogErrors.OnOpening(path, error);
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }
}
