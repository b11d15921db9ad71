using HandsFreeStartup.Doors;
using Npgsql;
using NpgsqlTypes;

namespace HandsFreeStartup.Fleet.Publishing;

/// <summary>
/// The rows of a job, one statement a table: each column is an array. COPY, which is a little faster, is not allowed where row-level security decides who may write what.
/// Text that was worked out is stored with marks in place of what PostgreSQL cannot keep (NUL, halves of letters); the events themselves are bytes and stay as they are.
/// </summary>
static class JobRows
{
    const NpgsqlDbType Texts = NpgsqlDbType.Array | NpgsqlDbType.Text;
    const NpgsqlDbType Bytes = NpgsqlDbType.Array | NpgsqlDbType.Bytea;
    const NpgsqlDbType Longs = NpgsqlDbType.Array | NpgsqlDbType.Bigint;
    const NpgsqlDbType Times = NpgsqlDbType.Array | NpgsqlDbType.TimestampTz;
    const NpgsqlDbType Numbers = NpgsqlDbType.Array | NpgsqlDbType.Double;

    public static NpgsqlBatchCommand Insert(string table, string columns, long job, params IEnumerable<(NpgsqlDbType Type, object Values)> arrays)
    {
        (NpgsqlDbType Type, object Values)[] given = [.. arrays];
        string unnested = string.Join(", ", given.Select((_, i) => FormattableString.Invariant($"${i + 2}")));
        NpgsqlBatchCommand command = new($"insert into {table} (job, {columns}) select $1, * from unnest({unnested})");
        command.Parameters.Add(new() { Value = job });
        foreach ((NpgsqlDbType type, object values) in given)
        {
            command.Parameters.Add(new() { Value = values, NpgsqlDbType = type });
        }

        return command;
    }

    public static IEnumerable<NpgsqlBatchCommand> Record(JobToPublish job, long key, int known)
    {
        Storage.Log.CarriedEvent[] events = [.. job.Record.Events.Skip(known)];
        if (events.Length > 0)
        {
            yield return Insert(
                "event", "sequence, recorded_at, kind, body, previous_hash, hash", key, (Longs, events.Select(one => one.Sequence).ToArray()), (Bytes, events.Select(one => one.RecordedAt).ToArray()),
                (Texts, events.Select(one => System.Text.Encoding.UTF8.GetString(one.Kind)).ToArray()), (Bytes, events.Select(one => one.Body).ToArray()),
                (Bytes, events.Select(one => one.PreviousHash).ToArray()), (Bytes, events.Select(one => one.Hash).ToArray()));
        }

        Storage.Log.CarriedPersonal[] personal = [.. job.Record.Personal.Where(part => part.Sequence > known)];
        if (personal.Length > 0)
        {
            yield return Insert(
                "personal", "sequence, path, salt, content", key, (Longs, personal.Select(one => one.Sequence).ToArray()), (Texts, personal.Select(one => one.Path).ToArray()),
                (Bytes, personal.Select(one => one.Salt).ToArray()), (Bytes, personal.Select(one => one.Content).ToArray()));
        }
    }

    public static IEnumerable<NpgsqlBatchCommand> Derived(JobToPublish job, long key)
    {
        FleetValue[] readings = [.. job.Values.Where(value => !value.IsResult)], results = [.. job.Values.Where(value => value.IsResult)];
        yield return Insert("reading", $"ordinal, {ValueColumns}, state, heard, certainty, clip", key, [
            Ordinals(readings.Length), .. Values(readings), Text(readings, one => one.State), Text(readings, one => one.Heard), Text(readings, one => one.Certainty), Text(readings, one => one.Clip)]);
        yield return Insert("result", $"ordinal, {ValueColumns}, formula", key, [Ordinals(results.Length), .. Values(results), Text(results, one => one.Heard)]);
        yield return Insert(
            "finding", "ordinal, rule, weight, at, step, text, is_exception, clips", key,
            Ordinals(job.Findings.Length), Text(job.Findings, one => one.Rule), (NpgsqlDbType.Array | NpgsqlDbType.Smallint, job.Findings.Select(one => (short)one.Weight).ToArray()),
            (Texts, job.Findings.Select(one => one.At is { } at ? Exact(at) : null).ToArray()), Text(job.Findings, one => one.Step), Text(job.Findings, one => one.Text),
            (NpgsqlDbType.Array | NpgsqlDbType.Boolean, job.Findings.Select(one => one.IsException).ToArray()), Text(job.Findings, one => string.Join('\n', one.Clips.Select(VisibleText.Of))));
        FleetTimer[] timers = [.. JobTimers.Of(job)];
        yield return Insert(
            "timer", "ordinal, step, started, planned_seconds, lasted_seconds, is_short", key,
            Ordinals(timers.Length), Text(timers, one => one.Step), (Times, timers.Select(one => one.Started.ToUniversalTime()).ToArray()),
            (Numbers, timers.Select(one => one.Planned.TotalSeconds).ToArray()), (Numbers, timers.Select(one => one.Lasted?.TotalSeconds).ToArray()),
            (NpgsqlDbType.Array | NpgsqlDbType.Boolean, timers.Select(one => one.IsShort).ToArray()));
    }

    /// <summary>A moment with all its digits.</summary>
    public static string Exact(DateTimeOffset at) => at.ToString("O", System.Globalization.CultureInfo.InvariantCulture);

    const string ValueColumns = "at, step, scope, quantity, value, shown, unit, uncertainty, lower, upper, limit_source, verdict";

    static IEnumerable<(NpgsqlDbType, object)> Values(FleetValue[] values) =>
    [
        (Times, values.Select(one => one.At.ToUniversalTime()).ToArray()), Text(values, one => one.Step), Text(values, one => one.Scope), Text(values, one => one.Quantity),
        (Numbers, values.Select(one => one.Value).ToArray()), Text(values, one => one.Shown), Text(values, one => one.Unit), (Numbers, values.Select(one => one.Uncertainty).ToArray()),
        (Numbers, values.Select(one => one.Lower).ToArray()), (Numbers, values.Select(one => one.Upper).ToArray()), Text(values, one => one.LimitSource), Text(values, one => one.Verdict),
    ];

    static (NpgsqlDbType, object) Ordinals(int count) => (NpgsqlDbType.Array | NpgsqlDbType.Integer, Enumerable.Range(1, count).ToArray());

    static (NpgsqlDbType, object) Text<T>(IEnumerable<T> rows, Func<T, string> text) => (Texts, rows.Select(row => VisibleText.OfLines(text(row))).ToArray());
}
