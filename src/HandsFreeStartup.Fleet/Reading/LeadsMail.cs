using HandsFreeStartup.Doors;
using Npgsql;

namespace HandsFreeStartup.Fleet.Reading;

/// <summary>The lead's words on their way: given in the office, fetched by the van, which makes them part of the record or refuses them.</summary>
/// <param name="database">As the lead, or as the van.</param>
public sealed class LeadsMail(FleetDatabase database)
{
    /// <summary>Gives a word on a job as it is now; it waits until the van publishes next.</summary>
    /// <exception cref="FleetException">It cannot be given, another one waits, or the job has moved on.</exception>
    public Task<bool> Give(FleetJob job, DateTimeOffset at, string lead, bool isAcceptance, string remark, CancellationToken cancellation = default) => Trouble.Told(database.Address, async () =>
    {
        await using NpgsqlCommand command = new("insert into word (job, head, at, lead, outcome, remark) values ($1, $2, $3, $4, $5, $6)", database.Connection);
        foreach (object value in (object[])[job.Key, job.Head, at.ToUniversalTime(), VisibleText.Of(lead), isAcceptance ? "accepted" : "returned", VisibleText.OfLines(remark)])
        {
            command.Parameters.Add(new() { Value = value });
        }

        try
        {
            return await command.ExecuteNonQueryAsync(cancellation) == 1;
        }
        catch (PostgresException error) when (error is { SqlState: PostgresErrorCodes.UniqueViolation, ConstraintName: "word_waiting" })
        {
            throw new FleetException($"A word on the job {job.Name} is waiting for its van already: let the van publish first.", cause: error);
        }
    }, cancellation);

    /// <summary>Words that wait for this van, by the name of the job.</summary>
    /// <exception cref="FleetException">The database cannot be asked.</exception>
    public Task<IReadOnlyDictionary<string, FleetWord>> Waiting(CancellationToken cancellation = default) => Trouble.Told(database.Address, async () =>
    {
        Dictionary<string, FleetWord> words = [];
        await using NpgsqlCommand command = new(
            """
            select job_id, word, word.head, word.at, lead, outcome, remark from word join job using (job) where van = session_user and settled_at is null
            """, database.Connection);
        await using NpgsqlDataReader rows = await command.ExecuteReaderAsync(cancellation);
        while (await rows.ReadAsync(cancellation))
        {
            words[rows.GetString(0)] = new FleetWord(
                rows.GetInt64(1), rows.GetFieldValue<byte[]>(2), rows.GetFieldValue<DateTimeOffset>(3), rows.GetString(4), rows.GetString(5) == "accepted", rows.GetString(6), null);
        }

        return (IReadOnlyDictionary<string, FleetWord>)words;
    }, cancellation);

    /// <summary>Tells that a word has become part of the published record, or why it did not.</summary>
    /// <exception cref="FleetException">The database cannot be told; the word is fetched again next time.</exception>
    public Task<bool> Settle(FleetWord word, string? refusal, CancellationToken cancellation = default) => Trouble.Told(database.Address, async () =>
    {
        await using NpgsqlCommand command = new("select settle($1, $2)", database.Connection);
        command.Parameters.Add(new() { Value = word.Word });
        command.Parameters.Add(new() { NpgsqlDbType = NpgsqlTypes.NpgsqlDbType.Text, Value = (object?)refusal ?? DBNull.Value });
        await command.ExecuteNonQueryAsync(cancellation);
        return true;
    }, cancellation);
}
