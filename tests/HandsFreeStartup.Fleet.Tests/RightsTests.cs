using HandsFreeStartup.Fleet.Tests.Support;
using HandsFreeStartup.Tests.Support;
using Npgsql;

namespace HandsFreeStartup.Fleet.Tests;

/// <summary>Who may do what, asked of the server itself with the logins that people and vans have.</summary>
[Collection(FirmServer.Name)]
public sealed class RightsTests(PostgresServer server) : IDisposable
{
    readonly VanFolder _north = new();
    readonly VanFolder _south = new();

    public void Dispose()
    {
        _north.Dispose();
        _south.Dispose();
    }

    async Task<Firm> FirmWithTwoJobs()
    {
        Firm firm = await server.NewFirm();
        _north.Add("job-n");
        _south.Add("job-s", 1);
        Assert.Equal(0, (await _north.Publish(firm, "van_01")).ExitCode);
        Assert.Equal(0, (await _south.Publish(firm, "van_03")).ExitCode);
        return firm;
    }

    [PostgresFact]
    public async Task A_van_sees_its_own_records_and_no_others()
    {
        Firm firm = await FirmWithTwoJobs();

        foreach (string table in (string[])["job", "event", "personal", "reading", "result", "finding", "timer"])
        {
            Assert.Equal(await firm.Count(table, "job = (select job from job where van = 'van_01')"), await firm.As("van_01", $"select count(*) from {table}"));
            Assert.Equal(0L, await firm.As("van_02", $"select count(*) from {table}"));
        }
    }

    [PostgresFact]
    public async Task The_office_sees_every_job_and_the_personal_parts_of_its_region_only()
    {
        Firm firm = await FirmWithTwoJobs();
        string photo = Path.Combine(_north.Path, "plate.jpg");
        await File.WriteAllBytesAsync(photo, new byte[1000]);
        _north.AddWithPhoto("job-photo", photo);
        await _north.Publish(firm, "van_01");
        foreach (string table in (string[])["attachment", "attachment_piece", "job_attachment"])
        {
            Assert.Equal((1L, 0L), ((long)(await firm.As("office_north", $"select count(*) from {table}"))!, (long)(await firm.As("office_south", $"select count(*) from {table}"))!));
        }

        long north = await firm.Count("personal join job using (job)", "region = 'north'"), south = await firm.Count("personal join job using (job)", "region = 'south'");

        Assert.True(north > 0 && south > 0);
        Assert.Equal((3L, north), ((long)(await firm.As("office_north", "select count(*) from job"))!, (long)(await firm.As("office_north", "select count(*) from personal"))!));
        Assert.Equal((3L, south), ((long)(await firm.As("office_south", "select count(*) from job"))!, (long)(await firm.As("office_south", "select count(*) from personal"))!));
        Assert.Equal(north + south, await firm.As("lead_all", "select count(*) from personal"));
        Assert.Equal(0L, await firm.Count("event", "position('Quarry'::bytea in body) > 0"));
    }

    [PostgresTheory]
    [InlineData("van_01", "update event set body = body")]
    [InlineData("van_01", "delete from event")]
    [InlineData("van_01", "delete from personal")]
    [InlineData("van_01", "delete from job")]
    [InlineData("van_01", "update job set van = 'van_02'")]
    [InlineData("van_01", "insert into attachment (hash, bytes) values (sha256('x'), 1)")]
    [InlineData("van_01", "insert into word (job, head, at, lead, outcome, remark) select job, head, now(), 'me', 'accepted', '' from job")]
    [InlineData("van_01", "truncate event")]
    [InlineData("office_north", "insert into word (job, head, at, lead, outcome, remark) select job, head, now(), 'me', 'accepted', '' from job")]
    [InlineData("office_north", "update job set status = 'accepted'")]
    [InlineData("office_north", "delete from finding")]
    [InlineData("office_north", "select forget(1)")]
    [InlineData("office_north", "select * from member")]
    [InlineData("lead_all", "update event set body = body")]
    [InlineData("lead_all", "update job set must_look = false")]
    public async Task What_is_nobodys_right_the_server_refuses(string login, string sql)
    {
        Firm firm = await FirmWithTwoJobs();

        PostgresException refused = await Assert.ThrowsAsync<PostgresException>(() => firm.As(login, sql));

        Assert.Equal(PostgresErrorCodes.InsufficientPrivilege, refused.SqlState);
    }

    [PostgresFact]
    public async Task A_van_cannot_forget_or_lengthen_the_record_of_another()
    {
        Firm firm = await FirmWithTwoJobs();
        long other = (long)(await firm.Value("select job from job where van = 'van_03'"))!;

        await Assert.ThrowsAsync<PostgresException>(() => firm.As("van_01", FormattableString.Invariant($"select forget({other})")));
        await Assert.ThrowsAsync<PostgresException>(() => firm.As(
            "van_01", FormattableString.Invariant($"insert into finding (job, ordinal, rule, weight, step, text, clips, is_exception) values ({other}, 999, 'x', 0, '', '', '', false)")));
    }

    [PostgresTheory]
    [InlineData("update event set body = body || ' '::bytea")]
    [InlineData("delete from event")]
    [InlineData("truncate event cascade")]
    [InlineData("update personal set content = '\"x\"'")]
    [InlineData("insert into event select job, sequence + 1, recorded_at, kind, body, hash, hash from event order by job, sequence desc limit 1")]
    public async Task Even_the_owner_does_not_change_an_event_by_mistake(string sql)
    {
        Firm firm = await FirmWithTwoJobs();

        await Assert.ThrowsAsync<PostgresException>(() => firm.As("firm_owner", sql));
    }

    [PostgresFact]
    public async Task A_login_without_a_role_and_one_without_a_region_are_told_what_they_lack()
    {
        Firm firm = await server.NewFirm();
        _north.Add("job-n");

        ProgramResult stranger = await _north.Publish(firm, "stranger");
        await firm.Administer("delete from member where login = 'van_02'");
        ProgramResult homeless = await _north.Publish(firm, "van_02");

        Assert.Equal((2, 2), (stranger.ExitCode, homeless.ExitCode));
        Assert.Contains("has no right", stranger.Error, StringComparison.Ordinal);
        Assert.Contains("region", homeless.Error, StringComparison.Ordinal);
    }
}
