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
        await _van.Run(["publish", "--prepare", .. firm.Options("--to", "firm_owner")]);
        await firm.Administer("delete from migration where number > 1; drop index reading_quantity; drop index result_quantity");
        ProgramResult older = await _van.Publish(firm), caughtUp = await _van.Run(["publish", "--prepare", .. firm.Options("--to", "firm_owner")]);
        await firm.Administer("insert into migration (number, name, checksum) values (9999, '9999-later', 'x'); grant handsfree_van to van_01");
        ProgramResult newer = await _van.Publish(firm);
        await firm.Administer("delete from migration where number = 9999; update migration set checksum = 'x' where number = 1");
        ProgramResult foreign = await _van.Publish(firm), prepare = await _van.Run(["publish", "--prepare", .. firm.Options("--to", "firm_owner")]);

        Assert.All([empty, older, newer, foreign, prepare], result => Assert.Equal((2, ""), (result.ExitCode, result.Output)));
        Assert.Contains("its owner prepares it by publish --prepare", empty.Error, StringComparison.Ordinal);
        Assert.Matches("has schema 1, and this program needs [0-9]+: its owner brings it up to date by publish --prepare", older.Error);
        Assert.Equal((0, ""), (caughtUp.ExitCode, caughtUp.Error));
        Assert.Contains("of a newer program", newer.Error, StringComparison.Ordinal);
        Assert.All([foreign, prepare], result => Assert.Contains("another program laid it out. Nothing was changed", result.Error, StringComparison.Ordinal));
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
