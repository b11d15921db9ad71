using HandsFreeStartup.Fleet.Tests.Support;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Fleet.Tests;

/// <summary>The schema of the firm's database: who lays it out, and what a program does with one that is not its own.</summary>
[Collection(FirmServer.Name)]
public sealed class MigrationTests(PostgresServer server) : IDisposable
{
    readonly VanFolder _van = new();

    public void Dispose() => _van.Dispose();

    [PostgresFact]
    public async Task Four_programs_at_once_lay_it_out_once()
    {
        Firm firm = await server.NewEmpty();

        ProgramResult[] results = await Task.WhenAll(Enumerable.Range(0, 4).Select(_ => _van.Run(["publish", "--prepare", .. firm.Options("--to", "firm_owner")])));

        Assert.All(results, result => Assert.Equal((0, ""), (result.ExitCode, result.Error)));
        Assert.Single(results, result => result.Output.EndsWith(" now.\n", StringComparison.Ordinal));
        Assert.Equal(Schema.Migrations.All.Length, await firm.Count("migration"));
    }

    [PostgresFact]
    public async Task A_database_that_is_empty_older_newer_or_of_another_program_is_refused_with_what_to_do()
    {
        Firm firm = await server.NewEmpty();
        _van.Add("job-a");
        ProgramResult empty = await _van.Publish(firm);
        await LayOut(firm, 2);
        await firm.Administer(OldJob);
        ProgramResult older = await _van.Publish(firm), caughtUp = await _van.Run(["publish", "--prepare", .. firm.Options("--to", "firm_owner")]);
        Assert.Equal("2026-03-09", await firm.Value("select to_char(day, 'YYYY-MM-DD') from job"));
        await firm.Administer("insert into migration (number, name, checksum) values (9999, '9999-later', 'x'); grant handsfree_van to van_01");
        ProgramResult newer = await _van.Publish(firm);
        await firm.Administer("delete from migration where number = 9999; update migration set checksum = 'x' where number = 1");
        ProgramResult foreign = await _van.Publish(firm), prepare = await _van.Run(["publish", "--prepare", .. firm.Options("--to", "firm_owner")]);

        Assert.All([empty, older, newer, foreign, prepare], result => Assert.Equal((2, ""), (result.ExitCode, result.Output)));
        Assert.Contains("its owner prepares it by publish --prepare", empty.Error, StringComparison.Ordinal);
        Assert.Matches("has schema 2, and this program needs [0-9]+: its owner brings it up to date by publish --prepare", older.Error);
        Assert.Equal((0, ""), (caughtUp.ExitCode, caughtUp.Error));
        Assert.Contains("of a newer program", newer.Error, StringComparison.Ordinal);
        Assert.All([foreign, prepare], result => Assert.Contains("another program laid it out. Nothing was changed", result.Error, StringComparison.Ordinal));
    }

    /// <summary>A job as the second step of the schema kept it.</summary>
    const string OldJob = """
        insert into job (van, region, job_id, root, count, head, status, must_look, began, ended, began_exact, ended_exact, technician, model, appliance, rules)
        values ('van_02', 'north', 'job-old', sha256('a'), 1, sha256('a'), 'signed', false, '2026-03-10 05:30Z', '2026-03-10 06:30Z', '2026-03-09T23:30:00.0000000-06:00', '2026-03-10T00:30:00.0000000-06:00', 'T', 'm', 'a', 'r')
        """;

    /// <summary>Lays it out as an older program did.</summary>
    static async Task LayOut(Firm firm, int steps)
    {
        await firm.Administer("set role firm_owner; create schema handsfree; create table migration (number integer primary key, name text not null, checksum bytea not null, run_at timestamptz not null default now())");
        foreach (Schema.Migration step in Schema.Migrations.All.Take(steps))
        {
            await firm.Administer(FormattableString.Invariant($"set role firm_owner; {step.Sql}; insert into migration (number, name, checksum) values ({step.Number}, '{step.Name}', '\\x{Convert.ToHexString(step.Checksum)}')"));
        }
    }

    [PostgresFact]
    public async Task A_van_cannot_lay_it_out()
    {
        Firm firm = await server.NewEmpty();

        ProgramResult result = await _van.Run(["publish", "--prepare", .. firm.Options("--to", "van_01")]);

        Assert.Equal(2, result.ExitCode);
        Assert.Contains("has no right", result.Error, StringComparison.Ordinal);
    }
}
