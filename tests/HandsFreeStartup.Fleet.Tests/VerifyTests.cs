using HandsFreeStartup.Fleet.Tests.Support;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Fleet.Tests;

/// <summary>Whoever has every right on the server changes something; verify --from finds it.</summary>
[Collection(FirmServer.Name)]
public sealed class VerifyTests(PostgresServer server) : IDisposable
{
    readonly VanFolder _van = new();

    public void Dispose() => _van.Dispose();

    Task<ProgramResult> Verify(Firm firm, string login = "lead_all", params string[] more) => _van.Run(["verify", .. more, .. firm.Options("--from", login)]);

    async Task<Firm> Published()
    {
        Firm firm = await server.NewFirm();
        string photo = Path.Combine(_van.Path, "plate.jpg");
        await File.WriteAllBytesAsync(photo, new byte[1_100_000]);
        _van.AddWithPhoto("job-a", photo);
        _van.Add("job-b", 4);
        Assert.Equal(0, (await _van.Publish(firm)).ExitCode);
        return firm;
    }

    /// <summary>One byte or one word is changed in every column that holds what the office believes; the triggers and checks that would refuse it are taken away first.</summary>
    [PostgresFact]
    public async Task One_changed_byte_anywhere_is_found()
    {
        Firm firm = await Published();
        Assert.Equal((0, "2 sound, 0 wrong.\n"), ((await Verify(firm)).ExitCode, (await Verify(firm)).Output));
        await firm.Administer("alter table event disable trigger user; alter table event drop constraint event_matches_its_hash; alter table personal disable trigger user");
        string[] bytes = ["event.recorded_at", "event.body", "event.previous_hash", "event.hash", "personal.salt", "personal.content", "attachment_piece.content", "job.head"];
        string[] texts = [
            "event.kind", "personal.path", "job.job_id", "job.status", "job.technician", "job.model", "job.appliance", "reading.step", "reading.quantity", "reading.shown", "reading.unit", "reading.verdict", "reading.state",
            "reading.heard", "result.shown", "result.formula", "finding.text", "finding.at", "finding.rule", "timer.step"];
        string[] numbers = ["reading.value", "result.value", "result.uncertainty", "reading.uncertainty", "timer.planned_seconds", "timer.lasted_seconds", "job.count"];
        string[] changes =
        [
            .. bytes.Select(column => Change(column, "set_byte({0}, length({0}) / 2, get_byte({0}, length({0}) / 2) # 1)")),
            .. texts.Select(column => Change(column, "overlay({0} placing 'X' from 1 for 1)")),
            .. numbers.Select(column => Change(column, "{0} + 1")),
            Change("job.must_look", "not {0}"), Change("timer.is_short", "not {0}"), Change("finding.weight", "({0} + 1) % 3"), Change("job.began", "{0} + interval '1 day'"), Change("job.began_exact", "overlay({0} placing '09' from 12)"),
            Change("job.began_exact", "overlay({0} placing '09:00:00.0000000+01:00' from 12)"), Change("job.ended_exact", "overlay({0} placing '9' from 27)"), Change("reading.at", "{0} + interval '1 microsecond'"),
            "delete from event where (job, sequence) in (select job, sequence from event order by 1, 2 desc limit 1)",
            "delete from personal where ctid in (select ctid from personal limit 1)", "delete from reading where ctid in (select ctid from reading limit 1)",
            "delete from finding where ctid in (select ctid from finding limit 1)", "delete from timer where ctid in (select ctid from timer limit 1)",
            "delete from job_attachment", "delete from attachment_piece where number = 2",
        ];
        foreach (string change in changes)
        {
            Assert.True((int)(await firm.Value($"set session_replication_role = replica; with changed as ({change} returning 1) select count(*)::int from changed"))! > 0, change);
            ProgramResult result = await Verify(firm);
            Assert.True(result.ExitCode == 1 && result.Output.Contains("wrong: van_01/", StringComparison.Ordinal), $"{change}: {result.Output}{result.Error}");
            await Restore(firm);
        }

        Assert.Equal("2 sound, 0 wrong.\n", (await Verify(firm)).Output);
    }

    static string Change(string column, string formula)
    {
        string[] parts = column.Split('.');
        return $"update {parts[0]} set {parts[1]} = {string.Format(System.Globalization.CultureInfo.InvariantCulture, formula, parts[1])} where ctid in (select ctid from {parts[0]} where {parts[1]} is not null order by ctid limit 1)";
    }

    /// <summary>Everything is thrown away and published anew.</summary>
    async Task Restore(Firm firm)
    {
        await firm.Administer("set session_replication_role = replica; truncate job, event, personal, reading, result, finding, timer, attachment, attachment_piece, job_attachment, word");
        Assert.Equal(0, (await _van.Publish(firm)).ExitCode);
    }

    [PostgresFact]
    public async Task What_belongs_to_another_region_is_not_called_verified()
    {
        Firm firm = await Published();

        ProgramResult result = await Verify(firm, "office_south");

        Assert.Contains("2 jobs belong to another region and were not verified", result.Output, StringComparison.Ordinal);
        Assert.Contains("0 sound, 0 wrong.", result.Output, StringComparison.Ordinal);
    }

    [PostgresFact]
    public async Task One_job_is_verified_by_its_name_and_a_name_that_is_not_there_is_told()
    {
        Firm firm = await Published();

        ProgramResult one = await Verify(firm, "office_north", "van_01/job-b"), none = await Verify(firm, "office_north", "job-z");

        Assert.Equal((0, "1 sound, 0 wrong.\n"), (one.ExitCode, one.Output));
        Assert.Equal(2, none.ExitCode);
        Assert.Contains("There is no job job-z", none.Error, StringComparison.Ordinal);
    }
}
