using HandsFreeStartup.Storage.Log;
using Npgsql;

namespace HandsFreeStartup.Fleet.Tests.Support;

/// <summary>Whether the database holds what the folders hold: every event and every personal part, byte by byte, once, and nothing else.</summary>
static class SameBytes
{
    public static async Task Assert(Firm firm, params (string Van, VanFolder Folder)[] vans)
    {
        await using NpgsqlConnection connection = await firm.Server.Administrator(firm.Name);
        foreach ((string van, VanFolder folder) in vans)
        {
            foreach (string path in folder.Records)
            {
                CarriedRecord record = CarriedRecord.Read(path);
                string job = Path.GetFileNameWithoutExtension(path);
                Xunit.Assert.Equal(
                    record.Events.Select(one => $"{one.Sequence} {Hex(one.RecordedAt)} {Hex(one.Kind)} {Hex(one.Body)} {Hex(one.PreviousHash)} {Hex(one.Hash)}"),
                    await Rows(connection, van, job, "select sequence, recorded_at, convert_to(kind, 'UTF8'), body, previous_hash, hash from event join job using (job)", "sequence"));
                Xunit.Assert.Equal(
                    record.Personal.OrderBy(one => one.Sequence).ThenBy(one => one.Path, StringComparer.Ordinal).Select(one => $"{one.Sequence} {one.Path} {Hex(one.Salt)} {Hex(one.Content)}"),
                    await Rows(connection, van, job, "select sequence, path, salt, content from personal join job using (job)", "sequence, path"));
            }
        }

        Xunit.Assert.Equal(vans.Sum(one => one.Folder.Records.Count()), await firm.Count("job"));
        Xunit.Assert.Equal(vans.Sum(one => one.Folder.Records.Sum(path => CarriedRecord.Read(path).Events.Length)), await firm.Count("event"));
    }

    static async Task<List<string>> Rows(NpgsqlConnection connection, string van, string job, string select, string order)
    {
        await using NpgsqlCommand command = new($"{select} where van = $1 and job_id = $2 order by {order}", connection);
        command.Parameters.Add(new() { Value = van });
        command.Parameters.Add(new() { Value = job });
        await using NpgsqlDataReader rows = await command.ExecuteReaderAsync();
        List<string> all = [];
        while (await rows.ReadAsync())
        {
            all.Add(string.Join(' ', Enumerable.Range(0, rows.FieldCount).Select(i => rows.GetValue(i) is byte[] bytes ? Hex(bytes) : rows.GetValue(i))));
        }

        return all;
    }

    static string Hex(byte[] bytes) => Convert.ToHexString(bytes);
}
