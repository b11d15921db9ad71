using System.Collections.Immutable;
using System.Globalization;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Fleet.Figures;
using Npgsql;
using NpgsqlTypes;

namespace HandsFreeStartup.Fleet.Reading;

/// <summary>Reads the numbers of many jobs.</summary>
/// <param name="database">As an office or a lead.</param>
public sealed class FigureReader(FleetDatabase database)
{
    /// <summary>What is drawn over time.</summary>
    public static ImmutableArray<string> Charted { get; } = [ResultId.CoAirFree, FieldId.Oxygen, ResultId.InputRate, ResultId.TemperatureRise];

    /// <summary>What an instrument shows by itself.</summary>
    public static ImmutableArray<string> Instruments { get; } = [FieldId.Oxygen, FieldId.CarbonDioxide, FieldId.FlueCo, FieldId.FlueTemperature, FieldId.Draft, FieldId.InletPressure, FieldId.ManifoldPressure, FieldId.SupplyTemperature, FieldId.ReturnTemperature];

    const string Days = "day between $2 and $3";

    /// <summary>The values that count of some quantities, over some days, by model, quantity and stage.</summary>
    /// <exception cref="FleetException">The database cannot be asked.</exception>
    public Task<IReadOnlyList<FleetSeries>> Series(IReadOnlyCollection<string> quantities, DateOnly since, DateOnly until, CancellationToken cancellation = default) => Trouble.Told(database.Address, async () =>
    {
        await using NpgsqlCommand command = Command(
            $"""
            select model, quantity, scope, unit, job, van, at, value, shown, uncertainty, lower, upper, right(began_exact, 6) from (
              select job, at, quantity, scope, unit, value, shown, uncertainty, lower, upper from result where quantity = any ($1)
              union all select job, at, quantity, scope, unit, value, shown, uncertainty, lower, upper from reading where quantity = any ($1) and state = 'final') as one
            join job using (job) where {Days} order by model, array_position($1, quantity), scope, unit, at, job
            """, since, until, [.. quantities]);
        await using NpgsqlDataReader rows = await command.ExecuteReaderAsync(cancellation);
        List<FleetSeries> all = [];
        (string, string, string, string)? key = null;
        ImmutableArray<FleetPoint>.Builder points = ImmutableArray.CreateBuilder<FleetPoint>();
        while (await rows.ReadAsync(cancellation))
        {
            (string, string, string, string) next = (rows.GetString(0), rows.GetString(1), rows.GetString(2), rows.GetString(3));
            if (key is { } before && before != next)
            {
                all.Add(new FleetSeries(before.Item1, before.Item2, before.Item3, before.Item4, points.DrainToImmutable()));
            }

            key = next;
            points.Add(new FleetPoint(rows.GetInt64(4), rows.GetString(5), rows.GetFieldValue<DateTimeOffset>(6).ToOffset(Offset(rows.GetString(12))))
            {
                Value = Number(rows, 7),
                Shown = rows.GetString(8),
                Uncertainty = Number(rows, 9),
                Lower = Number(rows, 10),
                Upper = Number(rows, 11),
            });
        }

        if (key is { } last)
        {
            all.Add(new FleetSeries(last.Item1, last.Item2, last.Item3, last.Item4, points.DrainToImmutable()));
        }

        return (IReadOnlyList<FleetSeries>)all;
    }, cancellation);

    /// <summary>How waits were treated over some days.</summary>
    /// <exception cref="FleetException">The database cannot be asked.</exception>
    public Task<IReadOnlyList<WaitHabit>> Waits(DateOnly since, DateOnly until, CancellationToken cancellation = default) => Trouble.Told(database.Address, async () =>
    {
        await using NpgsqlCommand command = Command(
            $"""
            select technician, step, count(*)::int, count(*) filter (where is_short)::int,
              percentile_cont(0.5) within group (order by lasted_seconds / nullif(planned_seconds, 0)) filter (where is_short)
            from timer join job using (job) where $1::text[] is null and {Days} group by technician, step order by 4 desc, 1, 2
            """, since, until, null);
        await using NpgsqlDataReader rows = await command.ExecuteReaderAsync(cancellation);
        List<WaitHabit> habits = [];
        while (await rows.ReadAsync(cancellation))
        {
            habits.Add(new WaitHabit(rows.GetString(0), rows.GetString(1), rows.GetInt32(2), rows.GetInt32(3), Number(rows, 4)));
        }

        return (IReadOnlyList<WaitHabit>)habits;
    }, cancellation);

    /// <summary>All readings and results of some days, one after the other; they are never held in memory together.</summary>
    /// <param name="texts">Columns of text.</param>
    /// <param name="numbers">Columns of numbers.</param>
    /// <param name="since">First day, by the clock on the wall of each job.</param>
    /// <param name="until">Last day, by the same clock.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <exception cref="FleetException">The database cannot be asked.</exception>
    internal async IAsyncEnumerable<FleetRow> Rows(
        string[] texts, string[] numbers, DateOnly since, DateOnly until, [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancellation)
    {
        await using NpgsqlCommand command = Command(
            $"""
            select one.at, {string.Join(", ", texts)}, {string.Join(", ", numbers)} from (
              select job, ordinal, at, step, scope, quantity, value, shown, unit, uncertainty, lower, upper, limit_source, verdict, state, heard from reading
              union all select job, ordinal, at, step, scope, quantity, value, shown, unit, uncertainty, lower, upper, limit_source, verdict, 'result', formula from result) as one
            join job using (job) where $1::text[] is null and {Days}
            """, since, until, null);
        await using NpgsqlDataReader rows = await Trouble.Told(database.Address, () => command.ExecuteReaderAsync(cancellation), cancellation);
        while (await Trouble.Told(database.Address, () => rows.ReadAsync(cancellation), cancellation))
        {
            yield return new FleetRow(
                rows.GetFieldValue<DateTimeOffset>(0), [.. Enumerable.Range(1, texts.Length).Select(rows.GetString)], [.. Enumerable.Range(1 + texts.Length, numbers.Length).Select(i => Number(rows, i))]);
        }
    }

    NpgsqlCommand Command(string sql, DateOnly since, DateOnly until, string[]? quantities)
    {
        NpgsqlCommand command = new(sql, database.Connection);
        command.Parameters.Add(new() { NpgsqlDbType = NpgsqlDbType.Array | NpgsqlDbType.Text, Value = (object?)quantities ?? DBNull.Value });
        command.Parameters.Add(new() { Value = since });
        command.Parameters.Add(new() { Value = until });
        return command;
    }

    /// <summary>How far the clock on a wall is from UTC, written like +01:00.</summary>
    static TimeSpan Offset(string text) => TimeSpan.TryParseExact(text.AsSpan(1), @"hh\:mm", CultureInfo.InvariantCulture, out TimeSpan offset) && offset <= TimeSpan.FromHours(14)
        ? text[0] == '-' ? -offset : offset
        : TimeSpan.Zero;

    static double? Number(NpgsqlDataReader rows, int column) => rows.IsDBNull(column) ? null : rows.GetDouble(column);
}

/// <summary>One reading or result with what is asked for.</summary>
sealed record FleetRow(DateTimeOffset At, string[] Texts, double?[] Numbers);
