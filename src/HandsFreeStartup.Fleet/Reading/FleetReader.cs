using System.Collections.Immutable;
using System.Globalization;
using System.Runtime.InteropServices;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Fleet.Publishing;
using HandsFreeStartup.Storage.Log;
using Npgsql;
using NpgsqlTypes;

namespace HandsFreeStartup.Fleet.Reading;

/// <summary>Reads what the database holds, as far as the login may.</summary>
/// <param name="database">As an office, a lead or a van.</param>
public sealed class FleetReader(FleetDatabase database)
{
    const string Selection = """
        ($1::date is null or day >= $1) and ($2::date is null or day <= $2)
        and ($3::text is null or van = $3) and ($4::text is null or technician = $4) and ($5::text is null or model = $5) and ($6::text is null or job_id = $6)
        """;

    /// <summary>The event that accepts or returns the job is not the word of a lead's login: somebody gave it at the van. Only who sees the words of a region can tell.</summary>
    const string WithoutLead = """
        status in ('accepted', 'returned') and coalesce((select my_region()) in (region, '*'), false) and not exists (
          select from word where word.job = job.job and outcome = status and refusal is null and word.head =
            (select previous_hash from event where event.job = job.job and kind = 'record-reviewed' order by sequence desc limit 1))
        """;

    /// <summary>Jobs with their findings, by time.</summary>
    /// <exception cref="FleetException">The database cannot be asked.</exception>
    public Task<IReadOnlyList<FleetJob>> Jobs(FleetFilter filter, CancellationToken cancellation = default) => Trouble.Told(database.Address, async () =>
    {
        // Both questions are asked of one state of the database.
        await using NpgsqlTransaction transaction = await database.Connection.BeginTransactionAsync(System.Data.IsolationLevel.RepeatableRead, cancellation);
        Dictionary<long, ImmutableArray<FleetFinding>.Builder> findings = await Findings(filter, cancellation);
        Dictionary<long, FleetWord> words = await Words(filter, cancellation);
        await using NpgsqlCommand command = Command(
            $"""
            select job, van, job_id, status, must_look, began_exact, ended_exact, technician, model, appliance, count, head, rules, coalesce((select my_region()) in (region, '*'), false),
              {WithoutLead} from job where {Selection} order by began, van, job_id
            """, filter);
        await using NpgsqlDataReader rows = await command.ExecuteReaderAsync(cancellation);
        List<FleetJob> jobs = [];
        while (await rows.ReadAsync(cancellation))
        {
            long key = rows.GetInt64(0);
            jobs.Add(new FleetJob
            {
                Key = key,
                Van = rows.GetString(1),
                JobId = rows.GetString(2),
                Status = rows.GetString(3),
                MustBeLookedAt = rows.GetBoolean(4),
                Began = Exact(rows, 5),
                Ended = Exact(rows, 6),
                Technician = rows.GetString(7),
                Model = rows.GetString(8),
                Appliance = rows.GetString(9),
                Count = rows.GetInt32(10),
                Head = rows.GetFieldValue<byte[]>(11),
                Rules = rows.GetString(12),
                IsInRegion = rows.GetBoolean(13),
                IsWithoutLead = rows.GetBoolean(14),
                Findings = findings.TryGetValue(key, out ImmutableArray<FleetFinding>.Builder? found) ? found.DrainToImmutable() : [],
                Word = words.GetValueOrDefault(key),
            });
        }

        return (IReadOnlyList<FleetJob>)jobs;
    }, cancellation);

    /// <summary>Lays the record of a job down as a file, byte by byte, with its recordings and photos beside it.</summary>
    /// <param name="job">The job.</param>
    /// <param name="path">The file; it must not exist.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <exception cref="FleetException">The database cannot be asked.</exception>
    /// <exception cref="LogException">What it holds is no record.</exception>
    public Task<bool> LayDown(FleetJob job, string path, CancellationToken cancellation = default) => Trouble.Told(database.Address, async () =>
    {
        List<CarriedEvent> events = [];
        await foreach (NpgsqlDataReader row in Rows("select sequence, recorded_at, convert_to(kind, 'UTF8'), body, previous_hash, hash from event where job = $1 order by sequence", job.Key, cancellation))
        {
            events.Add(new CarriedEvent(row.GetInt64(0), Bytes(row, 1), Bytes(row, 2), Bytes(row, 3), Bytes(row, 4), Bytes(row, 5)));
        }

        List<CarriedPersonal> personal = [];
        await foreach (NpgsqlDataReader row in Rows("select sequence, path, salt, content from personal where job = $1", job.Key, cancellation))
        {
            personal.Add(new CarriedPersonal(row.GetInt64(0), row.GetString(1), Bytes(row, 2), Bytes(row, 3)));
        }

        CarriedRecord.LayDown(path, events, personal);
        await LayDownFiles(job, path, cancellation);
        return true;
    }, cancellation);

    async Task LayDownFiles(FleetJob job, string path, CancellationToken cancellation)
    {
        List<(string Folder, string Name, byte[] Hash)> files = [];
        await foreach (NpgsqlDataReader row in Rows("select folder, name, hash from job_attachment where job = $1", job.Key, cancellation))
        {
            files.Add((row.GetString(0), row.GetString(1), Bytes(row, 2)));
        }

        foreach ((string folder, string name, byte[] hash) in files)
        {
            Directory.CreateDirectory(path + folder);
            // A name that leads elsewhere is none that a van has given.
            await using FileStream file = new(Path.Combine(path + folder, Path.GetFileName(name)), FileMode.Create, FileAccess.Write);
            await foreach (NpgsqlDataReader row in Rows("select content from attachment_piece where hash = $1 order by number", hash, cancellation))
            {
                await row.GetStream(0).CopyToAsync(file, cancellation);
            }
        }
    }

    async Task<Dictionary<long, ImmutableArray<FleetFinding>.Builder>> Findings(FleetFilter filter, CancellationToken cancellation)
    {
        Dictionary<long, ImmutableArray<FleetFinding>.Builder> all = [];
        // Most findings are told in the same words as another one.
        Dictionary<string, string> texts = [];
        await using NpgsqlCommand command = Command(
            $"select job, rule, weight, finding.at, step, text, clips, is_exception from finding join job using (job) where {Selection} order by job, ordinal", filter);
        await using NpgsqlDataReader rows = await command.ExecuteReaderAsync(cancellation);
        while (await rows.ReadAsync(cancellation))
        {
            ref ImmutableArray<FleetFinding>.Builder? found = ref CollectionsMarshal.GetValueRefOrAddDefault(all, rows.GetInt64(0), out _);
            found ??= ImmutableArray.CreateBuilder<FleetFinding>();
            string clips = rows.GetString(6);
            found.Add(new FleetFinding(
                Shared(rows.GetString(1)), rows.GetInt16(2), rows.IsDBNull(3) ? null : Exact(rows, 3), Shared(rows.GetString(4)), Shared(rows.GetString(5)),
                clips.Length == 0 ? [] : [.. clips.Split('\n')], rows.GetBoolean(7)));
        }

        return all;

        string Shared(string text) => CollectionsMarshal.GetValueRefOrAddDefault(texts, text, out _) ??= text;
    }

    async Task<Dictionary<long, FleetWord>> Words(FleetFilter filter, CancellationToken cancellation)
    {
        Dictionary<long, FleetWord> words = [];
        await using NpgsqlCommand command = Command(
            $"""
            select distinct on (job) job, word, word.head, word.at, lead, outcome, remark, refusal, settled_at is null or refusal is not null
            from word join job using (job) where {Selection} order by job, word desc
            """, filter);
        await using NpgsqlDataReader rows = await command.ExecuteReaderAsync(cancellation);
        while (await rows.ReadAsync(cancellation))
        {
            if (rows.GetBoolean(8))
            {
                words[rows.GetInt64(0)] = new FleetWord(
                    rows.GetInt64(1), Bytes(rows, 2), Time(rows, 3), rows.GetString(4), rows.GetString(5) == "accepted", rows.GetString(6), rows.IsDBNull(7) ? null : rows.GetString(7));
            }
        }

        return words;
    }

    NpgsqlCommand Command(string sql, FleetFilter filter)
    {
        NpgsqlCommand command = new(sql, database.Connection);
        command.Parameters.Add(new() { NpgsqlDbType = NpgsqlDbType.Date, Value = (object?)filter.Since ?? DBNull.Value });
        command.Parameters.Add(new() { NpgsqlDbType = NpgsqlDbType.Date, Value = (object?)filter.Until ?? DBNull.Value });
        foreach (string? text in (string?[])[filter.Van, filter.Technician, filter.Model, filter.JobId])
        {
            command.Parameters.Add(new() { NpgsqlDbType = NpgsqlDbType.Text, Value = text is null ? DBNull.Value : VisibleText.Of(text) });
        }

        return command;
    }

    async IAsyncEnumerable<NpgsqlDataReader> Rows(string sql, object key, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancellation)
    {
        await using NpgsqlCommand command = new(sql, database.Connection);
        command.Parameters.Add(new() { Value = key });
        await using NpgsqlDataReader rows = await command.ExecuteReaderAsync(System.Data.CommandBehavior.SequentialAccess, cancellation);
        while (await rows.ReadAsync(cancellation))
        {
            yield return rows;
        }
    }

    static byte[] Bytes(NpgsqlDataReader row, int column) => row.GetFieldValue<byte[]>(column);

    /// <summary>A moment that was kept as text; one that somebody has made unreadable is no moment of any job, and verify tells of it.</summary>
    static DateTimeOffset Exact(NpgsqlDataReader row, int column) =>
        DateTimeOffset.TryParseExact(row.GetString(column), "O", CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind, out DateTimeOffset at) ? at : default;

    static DateTimeOffset Time(NpgsqlDataReader row, int column) => row.GetFieldValue<DateTimeOffset>(column);
}
