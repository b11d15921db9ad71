using System.Security.Cryptography;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Storage.Log;
using Npgsql;
using NpgsqlTypes;

namespace HandsFreeStartup.Fleet.Publishing;

/// <summary>Brings verified records to the firm's database, one transaction a job. What was interrupted leaves nothing; what was done already is not done again.</summary>
/// <param name="database">As a van.</param>
public sealed class Publisher(FleetDatabase database)
{
    const int PieceBytes = 1 << 20;

    readonly NpgsqlConnection _connection = database.Connection;

    /// <summary>What the database holds of this van, by the name of the job.</summary>
    /// <exception cref="FleetException">It cannot be asked.</exception>
    public Task<IReadOnlyDictionary<string, PublishedHead>> Heads(CancellationToken cancellation = default) => Trouble.Told(database.Address, async () =>
    {
        Dictionary<string, PublishedHead> heads = [];
        await using NpgsqlCommand command = new("select job_id, count, head, rules from job where van = session_user", _connection);
        await using NpgsqlDataReader rows = await command.ExecuteReaderAsync(cancellation);
        while (await rows.ReadAsync(cancellation))
        {
            heads[rows.GetString(0)] = new PublishedHead(rows.GetInt32(1), Convert.ToHexString(rows.GetFieldValue<byte[]>(2)), rows.GetString(3));
        }

        return (IReadOnlyDictionary<string, PublishedHead>)heads;
    }, cancellation);

    /// <summary>How far the clock of this machine is ahead of the server's; negative where it is behind.</summary>
    /// <param name="clock">The clock of this machine.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <exception cref="FleetException">It cannot be asked.</exception>
    public Task<TimeSpan> ClockAhead(TimeProvider clock, CancellationToken cancellation = default) => Trouble.Told(database.Address, async () =>
    {
        await using NpgsqlCommand command = new("select clock_timestamp()", _connection);
        DateTime there = (DateTime)(await command.ExecuteScalarAsync(cancellation))!;
        return clock.GetUtcNow() - there;
    }, cancellation);

    /// <summary>Brings a job there, or what was added to it since.</summary>
    /// <exception cref="FleetRecordException">The database holds another record under the same job, or something of this one cannot be sent; the others can.</exception>
    /// <exception cref="FleetException">The database cannot be reached, or refuses; nothing of the job was changed there.</exception>
    public async Task<PublishOutcome> Publish(JobToPublish job, CancellationToken cancellation = default)
    {
        if (!job.Record.Verification.IsSound)
        {
            throw new FleetRecordException($"The record {job.Path} does not verify and is not published: {job.Record.Verification.Findings[0].Message}");
        }

        // Another program at the same job, or another van with the same photo, is met once in a while; the second try then finds what that one has done.
        const int Tries = 3;
        for (int attempt = 1; ; attempt++)
        {
            try
            {
                return await Trouble.Told(database.Address, () => Try(job, cancellation), cancellation);
            }
            catch (FleetException error) when (Trouble.IsCollision(error.InnerException) && attempt < Tries)
            {
                // Again.
            }
            catch (FleetException error) when (error.InnerException is PostgresException { ConstraintName: "job_root_key" })
            {
                throw new FleetRecordException($"Conflict: the record {job.Path} is in the database already, under another van or another name. It was not changed: a record belongs to one van.");
            }
        }
    }

    async Task<PublishOutcome> Try(JobToPublish job, CancellationToken cancellation)
    {
        await using NpgsqlTransaction transaction = await _connection.BeginTransactionAsync(cancellation);
        Found? found = await Find(job, cancellation);
        if (found is not null && found.Count == job.Count && found.Rules == job.Rules)
        {
            return PublishOutcome.Unchanged;
        }

        long key = found?.Key ?? await Begin(job, cancellation);
        await using NpgsqlBatch batch = new(_connection, transaction);
        foreach (NpgsqlBatchCommand command in Statements(job, key, found))
        {
            batch.BatchCommands.Add(command);
        }

        await batch.ExecuteNonQueryAsync(cancellation);
        await SendFiles(job, key, cancellation);
        await transaction.CommitAsync(cancellation);
        return found is null ? PublishOutcome.Sent : PublishOutcome.Continued;
    }

    sealed record Found(long Key, int Count, string Rules);

    /// <summary>What the database holds of this job, locked; null where it is new.</summary>
    async Task<Found?> Find(JobToPublish job, CancellationToken cancellation)
    {
        await using NpgsqlCommand command = new(
            """
            select job, count, rules, root, (select hash from event where event.job = job.job and sequence = least(job.count, $2)) from job where van = session_user and job_id = $1 for update
            """, _connection);
        command.Parameters.Add(new() { Value = VisibleText.Of(job.JobId) });
        command.Parameters.Add(new() { Value = job.Count });
        await using NpgsqlDataReader rows = await command.ExecuteReaderAsync(cancellation);
        if (!await rows.ReadAsync(cancellation))
        {
            return null;
        }

        Found found = new(rows.GetInt64(0), rows.GetInt32(1), rows.GetString(2));
        byte[] same = job.Record.Events[Math.Min(found.Count, job.Count) - 1].Hash;
        bool isSame = rows.GetFieldValue<byte[]>(3).AsSpan().SequenceEqual(job.Record.Events[0].Hash) && !rows.IsDBNull(4) && rows.GetFieldValue<byte[]>(4).AsSpan().SequenceEqual(same);
        return !isSame ? throw new FleetRecordException($"Conflict: under the job {job.JobId} the database holds another record than {job.Path}. Neither was changed: keep both, and let the lead find out which one is true.")
            : found.Count > job.Count ? throw new FleetRecordException(FormattableString.Invariant(
                $"Conflict: the database holds {found.Count} events of the job {job.JobId}, and {job.Path} only {job.Count} of them: it is an older copy, or its end was cut off. Nothing was changed there."))
            : found;
    }

    async Task<long> Begin(JobToPublish job, CancellationToken cancellation)
    {
        await using NpgsqlCommand command = new(
            """
            insert into job (job_id, root, count, head, status, must_look, began, ended, began_exact, ended_exact, technician, model, appliance, rules)
            values ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14) returning job
            """, _connection);
        command.Parameters.Add(new() { Value = VisibleText.Of(job.JobId) });
        command.Parameters.Add(new() { Value = job.Record.Events[0].Hash });
        Describe(command.Parameters, job);
        return (long)(await command.ExecuteScalarAsync(cancellation))!;
    }

    static void Describe(NpgsqlParameterCollection parameters, JobToPublish job)
    {
        foreach (object value in (object[])[
            job.Count, job.Head, job.Status, job.MustBeLookedAt, job.Began.ToUniversalTime(), job.Ended.ToUniversalTime(), JobRows.Exact(job.Began), JobRows.Exact(job.Ended), VisibleText.Of(job.Technician), VisibleText.Of(job.Model),
            VisibleText.Of(job.Appliance), job.Rules])
        {
            parameters.Add(new NpgsqlParameter { Value = value });
        }
    }

    static IEnumerable<NpgsqlBatchCommand> Statements(JobToPublish job, long key, Found? found)
    {
        foreach (NpgsqlBatchCommand command in JobRows.Record(job, key, found?.Count ?? 0))
        {
            yield return command;
        }

        if (found is not null)
        {
            yield return Statement("select clear_worked_out($1)", key);
            NpgsqlBatchCommand update = Statement(
                """
                update job set count = $2, head = $3, status = $4, must_look = $5, began = $6, ended = $7, began_exact = $8, ended_exact = $9, technician = $10, model = $11, appliance = $12,
                  rules = $13 where job = $1
                """, key);
            Describe(update.Parameters, job);
            yield return update;
            if (job.Record.Verification.Redaction is not null)
            {
                yield return Statement("select forget($1)", key);
            }
        }

        foreach (NpgsqlBatchCommand command in JobRows.Derived(job, key))
        {
            yield return command;
        }
    }

    static NpgsqlBatchCommand Statement(string sql, long key)
    {
        NpgsqlBatchCommand command = new(sql);
        command.Parameters.Add(new() { Value = key });
        return command;
    }

    /// <summary>Sends recordings and photos in the order of their hashes, so that two vans with the same ones wait for each other and never in a circle.</summary>
    async Task SendFiles(JobToPublish job, long key, CancellationToken cancellation)
    {
        List<(byte[] Hash, byte[] Proof, CarriedFile File)> files = [];
        foreach (CarriedFile file in job.Record.Files(job.Path))
        {
            await using FileStream content = Opened(job, file);
            (byte[] hash, byte[] proof) = await Hashed(job.Record.Events[0].Hash, content, cancellation);
            files.Add((hash, proof, file));
        }

        foreach ((byte[] hash, byte[] proof, CarriedFile file) in files.OrderBy(one => Convert.ToHexString(one.Hash), StringComparer.Ordinal))
        {
            await using FileStream content = Opened(job, file);
            await Send(hash, content, cancellation);
            await using NpgsqlCommand link = new("select link_attachment($1, $2, $3, $4, $5)", _connection);
            foreach (object value in (object[])[key, file.Folder, file.Name, hash, proof])
            {
                link.Parameters.Add(new() { Value = value });
            }

            await link.ExecuteNonQueryAsync(cancellation);
        }
    }

    /// <summary>The hash of a content, and the proof that this van has it: the hash of the beginning of its record and the content.</summary>
    static async Task<(byte[] Hash, byte[] Proof)> Hashed(byte[] root, Stream content, CancellationToken cancellation)
    {
        using IncrementalHash hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256), proof = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        proof.AppendData(root);
        byte[] piece = new byte[PieceBytes];
        while (await content.ReadAsync(piece, cancellation) is var read and > 0)
        {
            hash.AppendData(piece, 0, read);
            proof.AppendData(piece, 0, read);
        }

        return (hash.GetHashAndReset(), proof.GetHashAndReset());
    }

    static FileStream Opened(JobToPublish job, CarriedFile file)
    {
        try
        {
            return file.Open();
        }
        catch (Exception error) when (FileTrouble.Is(error))
        {
            throw new FleetRecordException($"Nothing of the job {job.JobId} was published: {FileTrouble.Sentence(error, $"the recording or photo {file.Path} cannot be read", "run verify on the job")}");
        }
    }

    /// <summary>Sends a content piece by piece, unless the database has it.</summary>
    internal async Task Send(byte[] hash, Stream content, CancellationToken cancellation)
    {
        await using NpgsqlCommand begin = new("select begin_attachment($1, $2)", _connection);
        begin.Parameters.Add(new() { Value = hash });
        begin.Parameters.Add(new() { Value = content.Length });
        if (!(bool)(await begin.ExecuteScalarAsync(cancellation))!)
        {
            return;
        }

        byte[] piece = new byte[PieceBytes];
        await using NpgsqlCommand insert = new("insert into attachment_piece (hash, number, content) values ($1, $2, $3)", _connection);
        insert.Parameters.Add(new() { Value = hash });
        insert.Parameters.Add(new() { NpgsqlDbType = NpgsqlDbType.Integer });
        insert.Parameters.Add(new() { NpgsqlDbType = NpgsqlDbType.Bytea });
        using IncrementalHash sent = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        for (int number = 1; await content.ReadAtLeastAsync(piece, PieceBytes, throwOnEndOfStream: false, cancellation) is var read and > 0; number++)
        {
            sent.AppendData(piece, 0, read);
            insert.Parameters[1].Value = number;
            insert.Parameters[2].Value = piece.AsMemory(0, read);
            await insert.ExecuteNonQueryAsync(cancellation);
        }

        if (!sent.GetHashAndReset().AsSpan().SequenceEqual(hash))
        {
            throw new FleetRecordException("A recording or photo was exchanged while it was sent: nothing of this job was published. Run verify on it.");
        }
    }
}
