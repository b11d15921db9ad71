using HandsFreeStartup.Doors;
using HandsFreeStartup.Fleet.Publishing;
using Npgsql;

namespace HandsFreeStartup.Fleet.Reading;

/// <summary>Compares what the database says of a job with what its events say. The events themselves are verified like those of every record.</summary>
/// <param name="database">Where it is.</param>
public sealed class FleetVerifier(FleetDatabase database)
{
    static readonly string[] Tables = ["reading", "result", "finding", "timer"];

    bool _isReady;

    /// <summary>What differs, one sentence each; empty where everything fits.</summary>
    /// <param name="job">As the database has it.</param>
    /// <param name="expected">As it is worked out anew from the events.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <exception cref="FleetException">The database cannot be asked.</exception>
    public Task<IReadOnlyList<string>> Differences(FleetJob job, JobToPublish expected, CancellationToken cancellation = default) => Trouble.Told(database.Address, async () =>
    {
        List<string> differences = [.. Described(job, expected, await IsDayRight(job, cancellation)).Where(one => !one.IsSame).Select(one => $"{one.What} of the job {job.Name} in the database is not the one of its events: it was changed.")];
        if (job.Rules != expected.Rules)
        {
            return (IReadOnlyList<string>)differences;
        }

        if (!_isReady)
        {
            // They hide the real tables from the statements that fill those.
            await Execute(string.Concat(Tables.Select(table => $"create temporary table {table} (like handsfree.{table});")), cancellation);
            _isReady = true;
        }

        await using NpgsqlBatch batch = new(database.Connection);
        batch.BatchCommands.Add(new($"truncate {string.Join(", ", Tables.Select(table => $"pg_temp.{table}"))}"));
        foreach (NpgsqlBatchCommand command in JobRows.Derived(expected, job.Key))
        {
            command.CommandText = command.CommandText.Replace("insert into ", "insert into pg_temp.", StringComparison.Ordinal);
            batch.BatchCommands.Add(command);
        }

        await batch.ExecuteNonQueryAsync(cancellation);
        foreach (string table in Tables)
        {
            if (await Differs(table, job.Key, cancellation))
            {
                differences.Add($"A {table} of the job {job.Name} in the database is not the one that its events lead to: it was changed, added or removed.");
            }
        }

        return differences;
    }, cancellation);

    static IEnumerable<(string What, bool IsSame)> Described(FleetJob job, JobToPublish expected, bool isDayRight) =>
    [
        ("The number of events", job.Count == expected.Count),
        ("The last hash", job.Head.AsSpan().SequenceEqual(expected.Head)),
        ("The name", job.JobId == VisibleText.Of(expected.JobId)),
        ("The status", job.Rules != expected.Rules || (job.Status == expected.Status && job.MustBeLookedAt == expected.MustBeLookedAt)),
        ("The time", job.Began.EqualsExact(expected.Began) && job.Ended.EqualsExact(expected.Ended) && isDayRight),
        ("The technician", job.Technician == VisibleText.Of(expected.Technician)),
        ("The appliance", job.Model == VisibleText.Of(expected.Model) && job.Appliance == VisibleText.Of(expected.Appliance)),
    ];

    /// <summary>Whether the times by which jobs are chosen are those that are told.</summary>
    async Task<bool> IsDayRight(FleetJob job, CancellationToken cancellation)
    {
        await using NpgsqlCommand command = new("select began = $2 and ended = $3 from job where job = $1", database.Connection);
        command.Parameters.Add(new() { Value = job.Key });
        command.Parameters.Add(new() { Value = job.Began.ToUniversalTime() });
        command.Parameters.Add(new() { Value = job.Ended.ToUniversalTime() });
        return await command.ExecuteScalarAsync(cancellation) is true;
    }

    async Task<bool> Differs(string table, long key, CancellationToken cancellation)
    {
        await using NpgsqlCommand command = new(
            $"""
            select exists ((select * from handsfree.{table} where job = $1 except all select * from pg_temp.{table}) union all
              (select * from pg_temp.{table} except all select * from handsfree.{table} where job = $1))
            """, database.Connection);
        command.Parameters.Add(new() { Value = key });
        return (bool)(await command.ExecuteScalarAsync(cancellation))!;
    }

    async Task Execute(string sql, CancellationToken cancellation)
    {
        await using NpgsqlCommand command = new(sql, database.Connection);
        await command.ExecuteNonQueryAsync(cancellation);
    }
}
