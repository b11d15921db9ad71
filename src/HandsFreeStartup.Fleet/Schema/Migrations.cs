using System.Collections.Immutable;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Npgsql;

namespace HandsFreeStartup.Fleet.Schema;

/// <summary>One step of the schema: plain SQL, run once, never changed afterwards.</summary>
/// <param name="Number">From 1, without gaps.</param>
/// <param name="Name">File name without its end.</param>
/// <param name="Sql">Its statements.</param>
sealed record Migration(int Number, string Name, string Sql)
{
    public byte[] Checksum => SHA256.HashData(Encoding.UTF8.GetBytes(Sql));
}

/// <summary>The schema of the firm's database: steps that only go forward, each run once in a transaction of its own, remembered with its checksum.</summary>
static class Migrations
{
    public const string SchemaName = "handsfree";

    /// <summary>Any number will do that no other program uses for its own advisory lock ("HFSF").</summary>
    const long Lock = 0x48465346;

    const string Table = $"""
        create schema if not exists {SchemaName};
        create table if not exists {SchemaName}.migration (number integer primary key, name text not null, checksum bytea not null, run_at timestamptz not null default now());
        """;

    public static ImmutableArray<Migration> All { get; } = [.. typeof(Migrations).Assembly.GetManifestResourceNames()
        .Where(name => name.EndsWith(".sql", StringComparison.Ordinal)).Order(StringComparer.Ordinal).Select(Read)];

    /// <summary>Refuses a schema that is not this program's.</summary>
    /// <exception cref="FleetException">It is older, newer, or of another program.</exception>
    public static async Task<int> Check(NpgsqlConnection connection, CancellationToken cancellation)
    {
        IReadOnlyList<(int Number, byte[] Checksum)> run = await Exists(connection, cancellation) ? await AlreadyRun(connection, cancellation) : [];
        RefuseForeign(connection, run);
        return run.Count == All.Length ? run.Count : throw new FleetException(run.Count == 0
            ? $"The database {connection.Database} holds no records yet: its owner prepares it by publish --prepare --to ADDRESS."
            : string.Create(CultureInfo.InvariantCulture, $"The database {connection.Database} has schema {run.Count}, and this program needs {All.Length}: its owner brings it up to date by publish --prepare --to ADDRESS."));
    }

    /// <summary>Runs what has not been run yet. Two programs at once do it one after the other.</summary>
    public static async Task<string> Run(NpgsqlConnection connection, CancellationToken cancellation)
    {
        await Execute(connection, string.Create(CultureInfo.InvariantCulture, $"select pg_advisory_lock({Lock})"), cancellation);
        if (!await Exists(connection, cancellation))
        {
            await Execute(connection, Table, cancellation);
        }

        IReadOnlyList<(int Number, byte[] Checksum)> run = await AlreadyRun(connection, cancellation);
        RefuseForeign(connection, run);
        foreach (Migration migration in All.Skip(run.Count))
        {
            await using NpgsqlTransaction transaction = await connection.BeginTransactionAsync(cancellation);
            await Execute(connection, migration.Sql, cancellation);
            await using NpgsqlCommand note = new($"insert into {SchemaName}.migration (number, name, checksum) values ($1, $2, $3)", connection, transaction);
            note.Parameters.Add(new() { Value = migration.Number });
            note.Parameters.Add(new() { Value = migration.Name });
            note.Parameters.Add(new() { Value = migration.Checksum });
            await note.ExecuteNonQueryAsync(cancellation);
            await transaction.CommitAsync(cancellation);
        }

        return FormattableString.Invariant($"The database {connection.Database} has schema {All.Length} {(run.Count == All.Length ? "already" : "now")}.");
    }

    static void RefuseForeign(NpgsqlConnection connection, IReadOnlyList<(int Number, byte[] Checksum)> run)
    {
        if (run.Count > All.Length)
        {
            throw new FleetException(string.Create(CultureInfo.InvariantCulture,
                $"The database {connection.Database} has schema {run.Count} of a newer program, and this one knows schemas up to {All.Length}: install the newer program on this machine."));
        }

        for (int i = 0; i < run.Count; i++)
        {
            if (run[i].Number != All[i].Number || !run[i].Checksum.AsSpan().SequenceEqual(All[i].Checksum))
            {
                throw new FleetException(string.Create(CultureInfo.InvariantCulture,
                    $"Step {i + 1} of the schema of the database {connection.Database} is not the one that this program knows: another program laid it out. Nothing was changed; look at the address."));
            }
        }
    }

    static async Task<bool> Exists(NpgsqlConnection connection, CancellationToken cancellation)
    {
        await using NpgsqlCommand command = new($"select to_regclass('{SchemaName}.migration') is not null", connection);
        return (bool)(await command.ExecuteScalarAsync(cancellation))!;
    }

    static async Task<IReadOnlyList<(int Number, byte[] Checksum)>> AlreadyRun(NpgsqlConnection connection, CancellationToken cancellation)
    {
        await using NpgsqlCommand command = new($"select number, checksum from {SchemaName}.migration order by number", connection);
        await using NpgsqlDataReader rows = await command.ExecuteReaderAsync(cancellation);
        List<(int, byte[])> run = [];
        while (await rows.ReadAsync(cancellation))
        {
            run.Add((rows.GetInt32(0), rows.GetFieldValue<byte[]>(1)));
        }

        return run;
    }

    static async Task Execute(NpgsqlConnection connection, string sql, CancellationToken cancellation)
    {
        await using NpgsqlCommand command = new(sql, connection);
        await command.ExecuteNonQueryAsync(cancellation);
    }

    static Migration Read(string resource)
    {
        using StreamReader reader = new(typeof(Migrations).Assembly.GetManifestResourceStream(resource)!);
        string name = Path.GetFileNameWithoutExtension(resource);
        return new Migration(int.Parse(name[..4], CultureInfo.InvariantCulture), name, reader.ReadToEnd().ReplaceLineEndings("\n"));
    }
}
