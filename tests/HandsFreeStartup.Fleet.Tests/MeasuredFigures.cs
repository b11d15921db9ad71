using System.Diagnostics;
using System.Globalization;
using HandsFreeStartup.Fleet.Publishing;
using HandsFreeStartup.Fleet.Tests.Support;
using HandsFreeStartup.Tests.Support;
using Npgsql;
using Xunit.Abstractions;

namespace HandsFreeStartup.Fleet.Tests;

/// <summary>A measurement that is asked for by the number of jobs.</summary>
public sealed class MeasuredFactAttribute : FactAttribute
{
    public const string Variable = "HANDSFREE_FLEET_FIGURES";

    public MeasuredFactAttribute() => Skip = Environment.GetEnvironmentVariable(Variable) is null ? $"a measurement: set {Variable} to a number of jobs" : null!;
}

/// <summary>How fast, how large, and how both grow; nothing here asserts a time.</summary>
[Collection(FirmServer.Name)]
public sealed class MeasuredFigures(PostgresServer server, ITestOutputHelper output) : IDisposable
{
    static readonly string[] Tables = ["job", "event", "personal", "reading", "result", "finding", "timer"];

    readonly VanFolder _van = new();

    public void Dispose() => _van.Dispose();

    static int Most => int.Parse(Environment.GetEnvironmentVariable(MeasuredFactAttribute.Variable)!, CultureInfo.InvariantCulture);

    [MeasuredFact]
    public async Task Publishing_beside_a_bare_copy_of_the_same_rows()
    {
        const int Count = 500;
        Firm firm = await server.NewFirm();
        _van.AddMany(Count);
        (double reading, JobToPublish[] jobs) = await Timed(() => Task.FromResult(_van.Records.Select(VanFolder.Job).ToArray()));
        await using FleetDatabase database = await FleetDatabase.Open(firm.Address("van_01"));
        Publisher publisher = new(database);
        (double publishing, _) = await Timed(async () =>
        {
            foreach (JobToPublish job in jobs)
            {
                await publisher.Publish(job);
            }

            return 0;
        });
        (double copying, long bytes) = await Copy(firm);
        output.WriteLine(FormattableString.Invariant(
            $"{Count} jobs: reading and verifying {Count / reading:0} jobs/s, publishing {Count / publishing:0} jobs/s, bare COPY of the same rows {Count / copying:0} jobs/s: publishing takes {publishing / copying:0.0} times as long. {bytes / Count} bytes of rows a job."));
        output.WriteLine(FormattableString.Invariant($"Size with indexes: {(long)(await firm.Value("select sum(pg_total_relation_size(c.oid))::bigint from pg_class c where relnamespace = 'handsfree'::regnamespace and relkind = 'r'"))! / Count} bytes a job."));
        Assert.Equal(Count, await firm.Count("job"));
    }

    /// <summary>The same rows into tables without keys, checks or rights.</summary>
    async Task<(double Seconds, long Bytes)> Copy(Firm firm)
    {
        await using NpgsqlConnection connection = await server.Administrator(firm.Name);
        List<(string Table, byte[] Rows)> all = [];
        foreach (string table in Tables)
        {
            // A column that the server works out is not copied.
            await using (NpgsqlCommand create = new($"create table bare_{table} (like {table}); {(table == "job" ? "alter table bare_job drop column day" : "")}", connection))
            {
                await create.ExecuteNonQueryAsync();
            }

            using MemoryStream rows = new();
            await using NpgsqlRawCopyStream from = await connection.BeginRawBinaryCopyAsync($"copy {table} to stdout (format binary)");
            await from.CopyToAsync(rows);
            all.Add((table, rows.ToArray()));
        }

        (double seconds, _) = await Timed(async () =>
        {
            foreach ((string table, byte[] rows) in all)
            {
                await using NpgsqlRawCopyStream to = await connection.BeginRawBinaryCopyAsync($"copy bare_{table} from stdin (format binary)");
                await to.WriteAsync(rows);
            }

            return 0;
        });
        return (seconds, all.Sum(one => (long)one.Rows.Length));
    }

    [MeasuredFact]
    public async Task Review_of_a_day_and_of_a_year_over_many_jobs()
    {
        Firm firm = await server.NewFirm();
        _van.AddMany(35, different: 35);
        await _van.Publish(firm);
        int there = 35;
        for (int count = Math.Max(1000, Most / 10); count <= Most; count = count == Most ? Most + 1 : Math.Min(Most, count * 3))
        {
            await Multiply(firm, there, count);
            there = count;
            string plans = string.Join(", ", await Task.WhenAll(Task.FromResult(await Review(firm, "--day", "2026-06-15")), Task.FromResult(await Review(firm, "--since", "2026-01-01", "--until", "2026-12-31"))));
            output.WriteLine(FormattableString.Invariant($"{count} jobs: {plans}"));
        }

        (double pages, ProgramResult written) = await Timed(() => ProgramProcess.Run(["fleet", "--out", Path.Combine(_van.Path, "pages"), "--day", "2026-12-31", "--days", "365", "--data", _van.Path, .. firm.Options("--from", "office_north")]));
        output.WriteLine(FormattableString.Invariant($"{there} jobs: fleet over a year {pages:0.00} s: {written.Output.Trim()}{written.Error}"));
        Assert.Equal(0, written.ExitCode);
    }

    async Task<string> Review(Firm firm, params string[] chosen)
    {
        (double seconds, ProgramResult result) = await Timed(() => ProgramProcess.Run(["review", .. chosen, "--data", _van.Path, .. firm.Options("--from", "lead_all")]));
        Assert.Equal((1, ""), (result.ExitCode, result.Error));
        return FormattableString.Invariant($"{chosen[0]} {seconds:0.00} s ({result.Output.Split('\n')[0]})");
    }

    /// <summary>The same moment as text.</summary>
    const string Told = "to_char(at at time zone 'UTC', 'YYYY-MM-DD\"T\"HH24:MI:SS.0000000+00:00')";

    /// <summary>Copies of the published jobs over the year 2026, without their events, which the review of many jobs does not read.</summary>
    static Task Multiply(Firm firm, int there, int count) => firm.Administer(FormattableString.Invariant(
        $"""
        set session_replication_role = replica;
        create temporary table more as select number, 1 + number % 35 as source from generate_series({there} + 1, {count}) as number;
        insert into job (van, region, job_id, root, count, head, status, must_look, began, ended, began_exact, ended_exact, technician, model, appliance, rules)
          select van, region, 'copy-' || number, sha256(number::text::bytea), one.count, head, status, must_look, at, at + interval '1 hour', {Told}, {Told}, technician, model, appliance, rules
          from (select *, timestamptz '2026-01-01 08:00Z' + (number % 365) * interval '1 day' + (number % 400) * interval '1 minute' as at from more) as more
          join (select row_number() over (order by job) as place, job.* from job where job_id like 'job-%') as one on place = source;
        create temporary table pair as select copy.job, original.job as source from more join job copy on copy.job_id = 'copy-' || number
          join (select row_number() over (order by job) as place, job from job where job_id like 'job-%') as original on place = more.source;
        insert into finding select pair.job, ordinal, rule, weight, at, step, text, clips, is_exception from pair join finding on finding.job = pair.source;
        insert into result select pair.job, ordinal, at, step, scope, quantity, value, shown, unit, uncertainty, lower, upper, limit_source, verdict, formula from pair join result on result.job = pair.source;
        insert into timer select pair.job, ordinal, step, started, planned_seconds, lasted_seconds, is_short from pair join timer on timer.job = pair.source;
        drop table more, pair; analyze;
        """));

    static async Task<(double Seconds, T Result)> Timed<T>(Func<Task<T>> work)
    {
        long began = Stopwatch.GetTimestamp();
        T result = await work();
        return (Stopwatch.GetElapsedTime(began).TotalSeconds, result);
    }
}
