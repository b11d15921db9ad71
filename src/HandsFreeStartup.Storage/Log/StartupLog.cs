using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Procedure.Events;
using Microsoft.Data.Sqlite;

namespace HandsFreeStartup.Storage.Log;

/// <summary>
/// The record of one job: events in the order in which they happened, one SQLite row each and one transaction for each decision, on the disk before <see cref="Append(StartupEvent)"/> returns,
/// chained by hashes, never changed. One process at a time.
/// </summary>
public sealed class StartupLog : IDisposable
{
    readonly SqliteConnection _connection;
    readonly JobLock _lock;
    readonly TimeProvider _clock;
    readonly SqliteCommand _insert;
    readonly SqliteCommand _insertPersonal;
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
        _insert = Insertion(connection, "event", "sequence", "recorded_at", "kind", "body", "previous_hash", "hash");
        _insertPersonal = Insertion(connection, "personal", "sequence", "path", "salt", "content");
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
                ? throw new LogException($"The record {path} exists already. Resume it with start --resume, or choose another name.")
                : Begin(path, jobLock, clock ?? TimeProvider.System, isNew: true);
        }
        catch
        {
            jobLock.Dispose();
            throw;
        }
    }

    /// <summary>Opens the record of a job to resume it.</summary>
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
    public void Append(StartupEvent happened) => Append([happened]);

    /// <summary>Records the events of one decision durably, all or none: a power cut leaves no half of it.</summary>
    /// <exception cref="LogException">None was recorded; the log takes no further event, those before are safe.</exception>
    public void Append(IReadOnlyList<StartupEvent> decided)
    {
        if (decided.Count == 0)
        {
            return;
        }

        if (_hasFailed)
        {
            throw new LogException($"The record {Path} takes no further event, because one before could not be recorded. Continue with start --resume.");
        }

        (long count, byte[] lastHash) = (_count, _lastHash);
        try
        {
            using SqliteTransaction transaction = _connection.BeginTransaction();
            foreach (StartupEvent happened in decided)
            {
                (count, lastHash) = (count + 1, Insert(happened, count + 1, lastHash, transaction));
            }

            transaction.Commit();
        }
        catch (SqliteException error)
        {
            _hasFailed = true;
            throw LogErrors.OnAppending(Path, _count + 1, error);
        }

        (_count, _lastHash) = (count, lastHash);
    }

    /// <returns>The hash of the event.</returns>
    byte[] Insert(StartupEvent happened, long sequence, byte[] previousHash, SqliteTransaction transaction)
    {
        string recordedAt = _clock.GetUtcNow().ToString("O", CultureInfo.InvariantCulture);
        string kind = EventFormat.KindOf(happened);
        (string body, ImmutableArray<PersonalPart> personal) = PersonalParts.TakeOut(kind, EventFormat.BodyOf(happened));
        byte[] hash = HashChain.OfEvent(previousHash, sequence, Encoding.UTF8.GetBytes(recordedAt), Encoding.UTF8.GetBytes(kind), Encoding.UTF8.GetBytes(body));
        foreach (PersonalPart part in personal)
        {
            Execute(_insertPersonal, [sequence, part.Path, part.Salt, part.Content], transaction);
        }

        Execute(_insert, [sequence, recordedAt, kind, body, previousHash, hash], transaction);
        return hash;
    }

    /// <summary>All events, first to last.</summary>
    public IReadOnlyList<StartupEvent> ReadAll()
    {
        try
        {
            StoredLog log = StoredLog.Read(_connection, LogFormat.Current);
            return [.. log.Events.Select(log.EventOf)];
        }
        catch (SqliteException error)
        {
            throw LogErrors.OnOpening(Path, error);
        }
    }

    /// <summary>
    /// Removes what is personal in all events so far: names of customer and house, free speech, recordings. The log stays whole and verifiable; that, when and by
    /// whom it was done becomes an event of it. An interrupted removal is finished.
    /// </summary>
    /// <param name="by">Who does it.</param>
    /// <returns>Number of texts and of recordings removed; none where nothing was left to remove.</returns>
    /// <exception cref="LogException">It cannot be written.</exception>
    public Forgotten ForgetPersonalData(string by)
    {
        int texts = StoredLog.Read(_connection, LogFormat.Current).Personal.Count;
        AttachmentStore attachments = new(Path);
        int files = AttachmentKind.All.Sum(attachments.Count);

        // Told first: a removal that the power cuts off is then seen by verify, and an unfinished one is never mistaken for tampering.
        if (texts + files > 0 && LogConnection.Text(_connection, "select count(*) from event where kind='personal-data-forgotten' and sequence=(select max(sequence) from event)") == "0")
        {
            Append(new PersonalDataForgotten(_clock.GetUtcNow(), by, attachments.Count(AttachmentKind.Recording)));
        }

        try
        {
            // Even where no row is left: an earlier removal may have been cut off before the file was written anew.
            LogConnection.Execute(_connection, "delete from personal");
            LogConnection.Checkpoint(_connection);
            // Cells move between pages while a job grows; only a file that is written anew holds no stale copy of them.
            LogConnection.Execute(_connection, "vacuum");
            LogConnection.Checkpoint(_connection);
            (AttachmentKind Kind, int Removed, IReadOnlyList<string> Left)[] removed = [.. AttachmentKind.All.Select(kind => PersonalFiles.RemoveFolder(kind.FolderOf(Path)) switch { var (count, left) => (kind, count, left) })];
            return new Forgotten(texts, removed.Where(one => one.Kind == AttachmentKind.Recording).Sum(one => one.Removed), removed.Where(one => one.Kind == AttachmentKind.Photo).Sum(one => one.Removed), [.. removed.SelectMany(one => one.Left)]);
        }
        catch (Exception error) when (error is SqliteException || FileTrouble.Is(error))
        {
            throw new LogException($"Not everything could be removed from {Path}: {error.Message.TrimEnd('.')}. Put it right and run forget again.", error);
        }
    }

    /// <summary>Closes the file; nothing is lost without it.</summary>
    public void Dispose()
    {
        _insert.Dispose();
        _insertPersonal.Dispose();
        _connection.Dispose();
        _lock.Dispose();
    }

    static void Execute(SqliteCommand insertion, object[] values, SqliteTransaction transaction)
    {
        insertion.Transaction = transaction;
        for (int i = 0; i < values.Length; i++)
        {
            insertion.Parameters[i].Value = values[i];
        }

        insertion.ExecuteNonQuery();
    }

    static SqliteCommand Insertion(SqliteConnection connection, string table, params string[] columns)
    {
        SqliteCommand insertion = connection.CreateCommand();
        insertion.CommandText = $"insert into {table} ({string.Join(", ", columns)}) values ({string.Join(", ", columns.Select(column => $"${column}"))})";
        foreach (string column in columns)
        {
            insertion.Parameters.Add(new SqliteParameter { ParameterName = $"${column}" });
        }

        return insertion;
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
            RegularFile.Check(path, JobSnapshot.MostBytes, follows: false);
            RegularFile.Check($"{path}-wal", JobSnapshot.MostBytes, follows: false);
            connection.Open();
            if (isNew)
            {
                LogConnection.Prepare(connection);
                LogConnection.LayDown(connection);
                return new StartupLog(path, connection, jobLock, clock, 0, HashChain.Origin(LogFormat.Current.Version));
            }

            LogConnection.RefuseForeign(connection, path);
            LogConnection.Prepare(connection);
            LogConnection.Checkpoint(connection);
            StoredLog log = StoredLog.Read(connection, LogFormat.Current);
            ChainResult chain = StartupLogVerifier.CheckChain(log);
            return chain.FirstWrong is null
                ? new StartupLog(path, connection, jobLock, clock, log.Events.Count, chain.LastHash)
                : throw new LogException($"The record {path} was changed or damaged: {chain.FirstWrong.Message} Keep the file as it is, run verify on it, and begin a new job.");
        }
        catch (Exception error) when (error is SqliteException || FileTrouble.Is(error))
        {
            connection.Dispose();
            throw LogErrors.OnOpening(path, error);
        }
        catch (Exception error) when (Damage.Explains(error))
        {
            connection.Dispose();
            throw Damage.In(path, error);
        }
        catch
        {
            connection.Dispose();
            throw;
        }
    }
}

/// <summary>What was removed of a record.</summary>
/// <param name="Texts">Names, addresses and free speech.</param>
/// <param name="Recordings">Files of recordings, unfinished ones too.</param>
/// <param name="Photos">Files of photos, unfinished ones too.</param>
/// <param name="OutOfReach">What could not be removed, as parts of a sentence.</param>
public sealed record Forgotten(int Texts, int Recordings, int Photos, IReadOnlyList<string> OutOfReach);
