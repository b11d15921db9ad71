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

    const string JobColumns = "job_id, root, count, head, status, must_look, began, ended, began_exact, ended_exact, technician, model, appliance, rules";
    const string JobValues = "'job-x', sha256('x'), 1, sha256('x'), 'signed', false, '2026-03-10 05:30Z', '2026-03-10 06:30Z', '2026-03-10T05:30:00.0000000+00:00', '2026-03-10T06:30:00.0000000+00:00', 'T', 'm', 'a', 'r'";
    const string Sealed = "sha256('\\x01'::bytea || sha256('b') || int8send(5001) || int8send(0) || int8send(1) || convert_to('x', 'UTF8') || int8send(0))";

    /// <summary>A van of the south against the firm: OWN is its job, OTHER one of the north, with a photo whose hash PHOTO everybody in an office can read.</summary>
    [PostgresTheory]
    [InlineData("a job under the name of another van", $"insert into job (van, region, {JobColumns}) values ('van_01', 'north', {JobValues})")]
    [InlineData("a job in another region", $"insert into job (region, {JobColumns}) values ('north', {JobValues})")]
    [InlineData("numbers that later jobs would get", $"insert into job (job, {JobColumns}) overriding system value select job + 1, {JobValues} from job")]
    [InlineData("a job without events, for one whose beginning another van would then be refused", $"insert into job ({JobColumns}) values ({JobValues})")]
    [InlineData("an acceptance without an event", "update job set status = 'accepted', must_look = false where job = OWN")]
    [InlineData("a word of the lead", "insert into word (job, head, at, lead, outcome, remark) select job, head, now(), 'L. Ead', 'accepted', '' from job")]
    [InlineData("another end of its record", "update job set head = sha256('x') where job = OWN")]
    [InlineData("fewer events than there are", "update job set count = count - 1, head = (select hash from event where job = OWN and sequence = count - 1) where job = OWN")]
    [InlineData("another day", "update job set began = began + interval '3 days' where job = OWN")]
    [InlineData("a text that is no time, which would stop the office's pages", "update job set began_exact = 'yesterday' where job = OWN")]
    [InlineData("an earlier publishing", "update job set published_at = '2001-01-01' where job = OWN")]
    [InlineData("an event in another record", "insert into event select OTHER, sequence + 1000, recorded_at, kind, body, previous_hash, hash from event limit 1")]
    [InlineData("a personal part in another record", "insert into personal values (OTHER, 1, 'x', sha256('x'), '')")]
    [InlineData("a gap, past a table of its own that stands in for the real one",
        "create temporary table event (like handsfree.event); insert into pg_temp.event values (OWN, 5000, '', 'x', '', sha256('a'), sha256('b'))", $"insert into handsfree.event values (OWN, 5001, '', 'x', '', sha256('b'), {Sealed})")]
    [InlineData("another van's findings thrown away", "select clear_worked_out(OTHER)")]
    [InlineData("findings deleted", "delete from finding")]
    [InlineData("a table locked for everybody", "lock table handsfree.finding in access exclusive mode")]
    [InlineData("another van's names forgotten", "select forget(OTHER)")]
    [InlineData("a photo linked by its hash, so that the office of the south can read it", "select link_attachment(OWN, '.photos', 'x.jpg', PHOTO, sha256('x'))")]
    [InlineData("the same past the function", "insert into job_attachment values (OWN, '.photos', 'x.jpg', PHOTO)")]
    [InlineData("another content under the hash of a photo to come", "select begin_attachment(sha256('theirs'), 3)", "insert into attachment_piece values (sha256('theirs'), 1, 'bad')")]
    [InlineData("the hash of a photo to come, without a content", "select begin_attachment(sha256('theirs'), 3)")]
    [InlineData("a content that fills the disk of who looks at it", "select begin_attachment(sha256('x'), 100000000000)")]
    [InlineData("a piece added to a photo", "insert into attachment_piece values (PHOTO, 99, 'x')")]
    [InlineData("the role of a lead", "set role handsfree_lead")]
    [InlineData("the login of a lead", "set session authorization lead_all")]
    [InlineData("every region", "insert into member values (session_user, '*')")]
    [InlineData("triggers off", "alter table event disable trigger all")]
    [InlineData("checks off", "set session_replication_role = replica")]
    [InlineData("a function of its own in the firm's schema", "create function handsfree.sees(text) returns boolean language sql as 'select true'")]
    public async Task A_van_that_attacks_is_refused_and_nothing_has_changed(string wish, params string[] statements)
    {
        Firm firm = await server.NewFirm();
        string photo = Path.Combine(_north.Path, "plate.jpg");
        await File.WriteAllBytesAsync(photo, [1, 2, 3]);
        _north.AddWithPhoto("job-n", photo);
        _south.Add("job-s", 1);
        await _north.Publish(firm, "van_01");
        await _south.Publish(firm, "van_03");
        string own = $"{await firm.Value("select job from job where van = 'van_03'")}", other = $"{await firm.Value("select job from job where van = 'van_01'")}";
        string before = await Everything(firm);

        PostgresException refused = await Assert.ThrowsAsync<PostgresException>(async () =>
        {
            await using FleetDatabase database = await FleetDatabase.Open(firm.Address("van_03"));
            foreach (string statement in (string[])["begin", .. statements, "commit"])
            {
                await using NpgsqlCommand command = new(
                    statement.Replace("OWN", own, StringComparison.Ordinal).Replace("OTHER", other, StringComparison.Ordinal).Replace("PHOTO", "sha256('\\x010203')", StringComparison.Ordinal), database.Connection);
                await command.ExecuteNonQueryAsync();
            }
        });

        Assert.True(refused.SqlState is PostgresErrorCodes.InsufficientPrivilege or PostgresErrorCodes.RaiseException or PostgresErrorCodes.CheckViolation or PostgresErrorCodes.InvalidTextRepresentation, $"{wish}: {refused.SqlState} {refused.MessageText}");
        Assert.Equal(before, await Everything(firm));
        Assert.Equal((0L, 0L), ((long)(await firm.As("van_03", $"select count(*) from personal where job = {other}"))!, (long)(await firm.As("office_south", "select count(*) from attachment_piece"))!));
    }

    /// <summary>Every row that counts, as one text.</summary>
    static async Task<string> Everything(Firm firm) => string.Join('\n', await Task.WhenAll(((string[])["job", "event", "personal", "finding", "word", "attachment_piece", "job_attachment", "member"])
        .Select(async table => $"{table} {await firm.Value($"select md5(string_agg(one::text, ',' order by one::text)) from {table} as one")}")));

    [PostgresFact]
    public async Task A_van_does_not_settle_the_word_on_the_record_of_another()
    {
        Firm firm = await FirmWithTwoJobs();
        await _north.Run(["review", "van_01/job-n", "--return", "--lead", "L. Ead", "--remark", "again", .. firm.Options("--from", "lead_all")]);

        await firm.As("van_03", "select settle(word, 'never') from generate_series(1, 20) as word");

        Assert.Equal(1, await firm.Count("word", "settled_at is null and refusal is null"));
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
