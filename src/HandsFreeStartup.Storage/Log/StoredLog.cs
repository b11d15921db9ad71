using System.Text;
using HandsFreeStartup.Procedure.Events;
using Microsoft.Data.Sqlite;

namespace HandsFreeStartup.Storage.Log;

/// <summary>A personal part as the exact bytes that are stored.</summary>
sealed record StoredPersonal(long Sequence, string Path, byte[] Salt, byte[] Content)
{
    public string Commitment => PersonalParts.CommitmentOf(Salt, Content);
}

/// <summary>Everything that a job's file holds, with the rules of its format.</summary>
sealed record StoredLog(LogFormat Format, IReadOnlyList<StoredEvent> Events, IReadOnlyDictionary<(long Sequence, string Path), StoredPersonal> Personal)
{
    /// <exception cref="LogException">Its tables are not those of its format.</exception>
    public static StoredLog Read(SqliteConnection connection, LogFormat format)
    {
        LogConnection.RequireTables(connection, format);
        return new(format, StoredEvent.ReadAll(connection), format.IsSealed ? ReadPersonal(connection) : new Dictionary<(long, string), StoredPersonal>());
    }

    /// <summary>The event of a row, its personal parts put back.</summary>
    /// <exception cref="LogException">It cannot be read.</exception>
    public StartupEvent EventOf(StoredEvent stored)
    {
        string kind = Encoding.UTF8.GetString(stored.Kind);
        string body = Encoding.UTF8.GetString(stored.Body);
        try
        {
            return EventFormat.Read(kind, Format.IsSealed ? PersonalParts.PutBack(kind, body, path => ContentOf(stored.Sequence, path)) : body);
        }
        catch (Exception error) when (Damage.Explains(error))
        {
            throw new LogException($"A personal part of the event of kind '{kind}' cannot be read: {error.Message}", error);
        }
    }

    string? ContentOf(long sequence, string path) => Personal.TryGetValue((sequence, path), out StoredPersonal? part) ? Encoding.UTF8.GetString(part.Content) : null;

    static Dictionary<(long, string), StoredPersonal> ReadPersonal(SqliteConnection connection)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = "select coalesce(sequence, 0), coalesce(cast(path as text), ''), cast(salt as blob), cast(content as blob) from personal";
        using SqliteDataReader rows = command.ExecuteReader();
        Dictionary<(long, string), StoredPersonal> parts = [];
        while (rows.Read())
        {
            StoredPersonal part = new(rows.GetInt64(0), rows.GetString(1), StoredEvent.Bytes(rows, 2), StoredEvent.Bytes(rows, 3));
            parts[(part.Sequence, part.Path)] = part;
        }

        return parts;
    }
}
