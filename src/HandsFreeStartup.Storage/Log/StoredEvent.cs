using Microsoft.Data.Sqlite;

namespace HandsFreeStartup.Storage.Log;

/// <summary>A row of the log as the exact bytes that are stored.</summary>
/// <param name="Sequence">Its number.</param>
/// <param name="RecordedAt">UTF-8 bytes.</param>
/// <param name="Kind">UTF-8 bytes.</param>
/// <param name="Body">UTF-8 bytes.</param>
/// <param name="PreviousHash">Hash of the event before.</param>
/// <param name="Hash">Its own hash.</param>
/// <param name="HasProperTypes">Whether text is stored as text and hashes as blobs.</param>
sealed record StoredEvent(long Sequence, byte[] RecordedAt, byte[] Kind, byte[] Body, byte[] PreviousHash, byte[] Hash, bool HasProperTypes)
{
    const string Query = """
        select sequence, cast(recorded_at as blob), cast(kind as blob), cast(body as blob), cast(previous_hash as blob), cast(hash as blob),
          typeof(recorded_at)='text' and typeof(kind)='text' and typeof(body)='text' and typeof(previous_hash)='blob' and typeof(hash)='blob'
        from event not indexed order by sequence
        """;

    /// <summary>All rows in the order of their numbers.</summary>
    public static IReadOnlyList<StoredEvent> ReadAll(SqliteConnection connection)
    {
        using SqliteCommand command = connection.CreateCommand();
        command.CommandText = Query;
        using SqliteDataReader rows = command.ExecuteReader();
        List<StoredEvent> events = [];
        long bytes = 0;
        while (rows.Read())
        {
            StoredEvent stored = new(rows.GetInt64(0), Bytes(rows, 1), Bytes(rows, 2), Bytes(rows, 3), Bytes(rows, 4), Bytes(rows, 5), rows.GetInt64(6) == 1);
            bytes += stored.RecordedAt.Length + stored.Kind.Length + stored.Body.Length + stored.PreviousHash.Length + stored.Hash.Length;
            // Rows of a crafted file can share their pages and so be more than the file.
            if (bytes > JobSnapshot.MostBytes)
            {
                throw new LogException("The record holds more than its file can: it is damaged or no record of this program. Keep the file as it is.");
            }

            events.Add(stored);
        }
        return events;
    }

    internal static byte[] Bytes(SqliteDataReader rows, int column) => rows.IsDBNull(column) ? [] : rows.GetFieldValue<byte[]>(column);
}
