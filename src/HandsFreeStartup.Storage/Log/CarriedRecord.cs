using System.Collections.Immutable;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Procedure.Events;
using Microsoft.Data.Sqlite;

namespace HandsFreeStartup.Storage.Log;

/// <summary>An event as the exact bytes that are stored; whoever carries it elsewhere changes none of them.</summary>
/// <param name="Sequence">Its number, from 1.</param>
/// <param name="RecordedAt">UTF-8 bytes.</param>
/// <param name="Kind">UTF-8 bytes.</param>
/// <param name="Body">UTF-8 bytes of its JSON.</param>
/// <param name="PreviousHash">Hash of the event before.</param>
/// <param name="Hash">Its own hash.</param>
public sealed record CarriedEvent(long Sequence, byte[] RecordedAt, byte[] Kind, byte[] Body, byte[] PreviousHash, byte[] Hash);

/// <summary>A personal part as the exact bytes that are stored.</summary>
/// <param name="Sequence">Number of its event.</param>
/// <param name="Path">Where in the event it belongs.</param>
/// <param name="Salt">32 random bytes.</param>
/// <param name="Content">UTF-8 bytes of its JSON.</param>
public sealed record CarriedPersonal(long Sequence, string Path, byte[] Salt, byte[] Content);

/// <summary>A recording or photo beside a job.</summary>
/// <param name="Folder">The end of its folder's name: <c>.clips</c> or <c>.photos</c>.</param>
/// <param name="Name">Its file name.</param>
/// <param name="Path">Where it lies.</param>
public sealed record CarriedFile(string Folder, string Name, string Path)
{
    /// <summary>More than any recording or photo of a sound record has.</summary>
    public const long MostBytes = Attachment.MostBytes;

    /// <summary>Ends of the names of the folders beside a job.</summary>
    public static ImmutableArray<string> Folders { get; } = [.. AttachmentKind.All.Select(kind => kind.Ending)];

    /// <summary>Opens it for reading; no link is followed.</summary>
    /// <exception cref="IOException">It cannot be opened.</exception>
    public FileStream Open() => RegularFile.Open(Path, MostBytes, follows: false);
}

/// <summary>A record as it is carried from one place to another: the bytes of its events, its personal parts, and what the verification has shown.</summary>
/// <param name="Events">First to last.</param>
/// <param name="Personal">What is left of them.</param>
/// <param name="Verification">Whether they can be believed.</param>
/// <param name="Happened">The same events as they are read.</param>
public sealed record CarriedRecord(
    ImmutableArray<CarriedEvent> Events, ImmutableArray<CarriedPersonal> Personal, Verification Verification, IReadOnlyList<StartupEvent> Happened)
{
    /// <summary>Reads and verifies a record, which is not touched.</summary>
    /// <param name="path">The job's file.</param>
    /// <exception cref="LogException">It is missing, in use, cannot be read, or of an earlier format, whose events hold names.</exception>
    public static CarriedRecord Read(string path)
    {
        try
        {
            using JobSnapshot snapshot = JobSnapshot.Open(path);
            LogFormat format = LogConnection.FormatOf(snapshot.Connection, path);
            StoredLog log = StoredLog.Read(snapshot.Connection, format);
            return format.IsSealed
                ? new CarriedRecord(
                    [.. log.Events.Select(one => new CarriedEvent(one.Sequence, one.RecordedAt, one.Kind, one.Body, one.PreviousHash, one.Hash))],
                    [.. log.Personal.Values.Select(one => new CarriedPersonal(one.Sequence, one.Path, one.Salt, one.Content))],
                    StartupLogVerifier.Verify(path, snapshot.Connection, null), [.. log.Events.Select(log.EventOf)])
                : throw new LogException($"The record {path} is of an earlier program, which kept names within the events: it stays where it is.");
        }
        catch (SqliteException error)
        {
            throw LogErrors.OnOpening(path, error);
        }
        catch (Exception error) when (Damage.Explains(error))
        {
            throw Damage.In(path, error);
        }
    }

    /// <summary>Recordings and photos that the events name and that are still there, in the order of their names.</summary>
    /// <param name="path">The job's file.</param>
    public IReadOnlyList<CarriedFile> Files(string path)
    {
        HashSet<string> named = [.. Events.Zip(Happened).SelectMany(one => AttachmentStore.NamedBy(one.First.Body, one.Second)).Select(one => one.Name)];
        return
        [
            .. from folder in CarriedFile.Folders
               where Directory.Exists(path + folder)
               from file in Directory.EnumerateFiles(path + folder).Order(StringComparer.Ordinal)
               where named.Contains(System.IO.Path.GetFileName(file))
               select new CarriedFile(folder, System.IO.Path.GetFileName(file), file),
        ];
    }

    /// <summary>Lays the record down as a job's file, byte by byte, for whoever wants to verify or review it there. Nothing is checked.</summary>
    /// <param name="path">The file; it must not exist.</param>
    /// <param name="events">Its events.</param>
    /// <param name="personal">Its personal parts.</param>
    /// <exception cref="LogException">It cannot be written, or the events are none that a record can hold.</exception>
    public static void LayDown(string path, IReadOnlyList<CarriedEvent> events, IReadOnlyList<CarriedPersonal> personal)
    {
        try
        {
            using SqliteConnection connection = new(new SqliteConnectionStringBuilder { DataSource = path, Pooling = false }.ToString());
            connection.Open();
            // It is a copy that is thrown away: whatever a power cut takes is laid down again.
            LogConnection.Execute(connection, "pragma synchronous=off");
            LogConnection.LayDown(connection);
            using SqliteTransaction transaction = connection.BeginTransaction();
            ILookup<long, CarriedPersonal> parts = personal.ToLookup(part => part.Sequence);
            foreach (CarriedEvent one in events)
            {
                foreach (CarriedPersonal part in parts[one.Sequence])
                {
                    Insert(connection, "insert into personal values ($1, $2, $3, cast($4 as text))", part.Sequence, part.Path, part.Salt, part.Content);
                }

                Insert(
                    connection, "insert into event values ($1, cast($2 as text), cast($3 as text), cast($4 as text), $5, $6)",
                    one.Sequence, one.RecordedAt, one.Kind, one.Body, one.PreviousHash, one.Hash);
            }

            transaction.Commit();
            if (parts.Select(part => part.Key).Except(events.Select(one => one.Sequence)).Any())
            {
                throw new LogException("A personal part belongs to no event of the record: it was added, or its event was removed.");
            }
        }
        catch (SqliteException error)
        {
            throw new LogException($"The record cannot be laid down in {path}: {error.Message.TrimEnd('.')}. Events were removed, inserted or damaged.", error);
        }
    }

    static void Insert(SqliteConnection connection, string sql, params object[] values)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = sql;
        for (int i = 0; i < values.Length; i++)
        {
            command.Parameters.AddWithValue(FormattableString.Invariant($"${i + 1}"), values[i]);
        }

        command.ExecuteNonQuery();
    }
}
