using HandsFreeStartup.Fleet.Tests.Support;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Fleet.Tests;

/// <summary>The lead reads in the office what the vans have published, and gives a word that travels back.</summary>
[Collection(FirmServer.Name)]
public sealed class FleetReviewTests(PostgresServer server) : IDisposable
{
    readonly VanFolder _van = new();
    readonly VanFolder _south = new();

    public void Dispose()
    {
        _van.Dispose();
        _south.Dispose();
    }

    Task<ProgramResult> Review(Firm firm, string login, params string[] more) => _south.Run(["review", .. more, .. firm.Options("--from", login)]);

    /// <summary>The office is told when a word was given without the login of a lead.</summary>
    const string AtTheVan = "van_01/job-0003: accepted at van_01 itself, and not with the login of a lead.\n";

    string AsThere(string output) => output.Replace($"{_van.Jobs}/", "van_01/", StringComparison.Ordinal).Replace(".db\n", "\n", StringComparison.Ordinal);

    [PostgresFact]
    public async Task The_list_and_each_job_are_told_in_the_same_words_with_the_same_exit_code_as_from_the_folder()
    {
        Firm firm = await server.NewFirm();
        _van.AddMany(8, different: 8);
        await _van.Run("review", "job-0003", "--accept", "--lead", "L. Ead", "--remark", "fine");
        await _van.Publish(firm);

        ProgramResult here = await _van.Run("review"), there = await Review(firm, "lead_all");
        Assert.Equal((here.ExitCode, $"{AsThere(here.Output)}{AtTheVan}", ""), (there.ExitCode, there.Output, there.Error));
        foreach (string job in _van.Records.Select(path => Path.GetFileNameWithoutExtension(path)))
        {
            ProgramResult one = await _van.Run("review", job, "--plain"), same = await Review(firm, "lead_all", job);
            Assert.Equal((one.ExitCode, $"{AsThere(one.Output)}{(job == "job-0003" ? AtTheVan : "")}", ""), (same.ExitCode, same.Output, same.Error));
        }

        ProgramResult json = await _van.Run("review", "--json"), sameJson = await Review(firm, "lead_all", "--json");
        Assert.Equal(AsThere(json.Output).Replace(".db\"", "\"", StringComparison.Ordinal), sameJson.Output);
        Assert.Equal(0, (await Review(firm, "lead_all", "job-0003")).ExitCode);
    }

    [PostgresFact]
    public async Task Jobs_are_chosen_by_day_crew_technician_and_model()
    {
        Firm firm = await server.NewFirm();
        _van.Add("job-a");
        _van.Add("job-b", change: job => job with { Technician = "S. Econd" });
        _south.Add("job-c", 1);
        await _van.Publish(firm);
        await _south.Publish(firm, "van_03");
        string day = (string)(await firm.Value("select to_char(min(began) at time zone 'UTC', 'YYYY-MM-DD') from job"))!, model = (string)(await firm.Value("select min(model) from job"))!;

        async Task<int> Jobs(params string[] chosen) =>
            (await Review(firm, "office_north", chosen)).Output.Split('\n').Count(line => line.Contains(" signed ", StringComparison.Ordinal));

        Assert.Equal(3, await Jobs());
        Assert.Equal(3, await Jobs("--day", day));
        Assert.Equal(0, await Jobs("--day", "2001-01-01"));
        Assert.Equal(0, await Jobs("--until", "2001-01-01"));
        Assert.Equal(3, await Jobs("--since", "2001-01-01"));
        Assert.Equal(2, await Jobs("--van", "van_01"));
        Assert.Equal(1, await Jobs("--technician", "S. Econd"));
        Assert.Equal((3, 0), (await Jobs("--model", model), await Jobs("--model", "no-such")));
        Assert.Contains("is no day", (await Review(firm, "office_north", "--day", "yesterday")).Error, StringComparison.Ordinal);
    }

    /// <summary>The two jobs are an hour apart: one begins before midnight in the west, the other after midnight in the east, and by UTC the days are the other way round.</summary>
    [PostgresFact]
    public async Task A_day_is_the_one_on_the_wall_of_the_job()
    {
        Firm firm = await server.NewFirm();
        _van.AddAt("job-east", new DateTimeOffset(2026, 3, 10, 0, 30, 0, TimeSpan.FromHours(2)));
        _van.AddAt("job-west", new DateTimeOffset(2026, 3, 9, 23, 30, 0, TimeSpan.FromHours(-6)), 1);
        Assert.Equal(0, (await _van.Publish(firm)).ExitCode);

        ProgramResult ninth = await Review(firm, "lead_all", "--day", "2026-03-09"), tenth = await Review(firm, "lead_all", "--day", "2026-03-10"), since = await Review(firm, "lead_all", "--since", "2026-03-10");
        string pages = Path.Combine(_south.Path, "pages");
        ProgramResult fleet = await _south.Run(["fleet", "--out", pages, "--day", "2026-03-10", "--days", "1", .. firm.Options("--from", "lead_all")]);
        string day = await File.ReadAllTextAsync(Path.Combine(pages, "index.html"));

        Assert.All([ninth, tenth, since, fleet], result => Assert.Equal("", result.Error));
        Assert.Contains("job-west               2026-03-09 23:30 -06:00", ninth.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("job-east", ninth.Output, StringComparison.Ordinal);
        Assert.All([tenth, since], result => Assert.Contains("job-east               2026-03-10 00:30 +02:00", result.Output, StringComparison.Ordinal));
        Assert.All([tenth, since], result => Assert.DoesNotContain("job-west", result.Output, StringComparison.Ordinal));
        Assert.Contains("2026-03-10 00:30 +02:00", day, StringComparison.Ordinal);
        Assert.DoesNotContain("job-west", day, StringComparison.Ordinal);
        Assert.Equal("2 sound, 0 wrong.\n", (await _south.Run(["verify", .. firm.Options("--from", "lead_all")])).Output);
    }

    [PostgresFact]
    public async Task Hostile_words_of_the_lead_travel_and_are_shown_with_marks()
    {
        const string Hostile = "'); drop table word; -- \u001b[31m\u202e <script>";
        Firm firm = await server.NewFirm();
        _van.Add("job-a");
        await _van.Publish(firm);

        ProgramResult given = await Review(firm, "lead_all", "job-a", "--return", "--lead", Hostile, "--remark", Hostile);
        ProgramResult waiting = await Review(firm, "lead_all"), published = await _van.Publish(firm), after = await Review(firm, "lead_all", "job-a");

        Assert.All([given, waiting, published, after], result => Assert.Equal("", result.Error));
        Assert.All([given, waiting, published, after], result => Assert.DoesNotContain('\u001b', result.Output));
        Assert.Contains("drop table word", published.Output, StringComparison.Ordinal);
        Assert.Contains("returned", after.Output, StringComparison.Ordinal);
        await SameBytes.Assert(firm, ("van_01", _van));
    }

    [PostgresFact]
    public async Task A_job_of_another_region_is_told_without_anything_personal()
    {
        Firm firm = await server.NewFirm();
        _van.Add("job-a");
        await _van.Publish(firm);

        ProgramResult own = await Review(firm, "office_north", "job-a"), other = await Review(firm, "office_south", "job-a"), word = await Review(firm, "office_south", "job-a", "--return", "--lead", "X", "--remark", "y");

        Assert.Contains("Mrs. Quarry", own.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("Quarry", other.Output, StringComparison.Ordinal);
        Assert.Equal(own.ExitCode, other.ExitCode);
        Assert.Equal(own.Output.Split('\n').Where(line => !line.StartsWith($"{new string(' ', 19)}\"", StringComparison.Ordinal)), other.Output.Split('\n'));
        Assert.Equal(2, word.ExitCode);
        Assert.Contains("belongs to another region", word.Error, StringComparison.Ordinal);
    }

    [PostgresFact]
    public async Task A_word_travels_to_the_van_becomes_part_of_its_record_and_comes_back()
    {
        Firm firm = await server.NewFirm();
        _van.Add("job-a");
        _van.Add("job-b", 1);
        await _van.Publish(firm);

        ProgramResult given = await Review(firm, "lead_all", "job-a", "--accept", "--lead", "L. Ead", "--remark", "seen; Mrs. Quarry called");
        ProgramResult twice = await Review(firm, "lead_all", "job-a", "--accept", "--lead", "L. Ead");
        ProgramResult waiting = await Review(firm, "lead_all");
        ProgramResult published = await _van.Publish(firm);
        ProgramResult after = await Review(firm, "lead_all", "job-a");

        Assert.Equal((0, ""), (given.ExitCode, given.Error));
        Assert.Contains("it becomes part of the record when van_01 publishes next", given.Output, StringComparison.Ordinal);
        Assert.Equal(2, twice.ExitCode);
        Assert.Contains("is waiting for its van already", twice.Error, StringComparison.Ordinal);
        Assert.Contains("van_01/job-a: accepted by L. Ead, and waiting for van_01 to publish.", waiting.Output, StringComparison.Ordinal);
        Assert.Contains("accepted  job-a", published.Output, StringComparison.Ordinal);
        Assert.Equal(0, after.ExitCode);
        Assert.DoesNotContain("login of a lead", after.Output, StringComparison.Ordinal);
        StoredJob stored = StoredJob.Read(_van.File("job-a"));
        Assert.Empty(stored.Verification.Findings);
        Assert.Equal(("L. Ead", ReviewOutcome.Accepted, "seen; Mrs. Quarry called"), stored.Events[^1] is RecordReviewed word ? (word.Lead, word.Outcome, word.Remark) : default);
        Assert.Equal((0L, 0L), (await firm.Count("word", "settled_at is null"), await firm.Count("word", "remark <> ''")));
        await SameBytes.Assert(firm, ("van_01", _van));
        Assert.Contains("2 there already", (await _van.Publish(firm)).Output, StringComparison.Ordinal);
    }

    [PostgresFact]
    public async Task A_word_on_a_record_that_has_moved_on_since_is_refused_and_the_lead_reads_why()
    {
        Firm firm = await server.NewFirm();
        _van.Add("job-a");
        await _van.Publish(firm);
        await Review(firm, "lead_all", "job-a", "--return", "--lead", "L. Ead", "--remark", "measure again");
        await _van.Run("review", "job-a", "--accept", "--lead", "O. Ther");

        ProgramResult published = await _van.Publish(firm);
        ProgramResult after = await Review(firm, "lead_all");

        Assert.Contains("1 continued", published.Output, StringComparison.Ordinal);
        Assert.Equal("O. Ther", StoredJob.Read(_van.File("job-a")).Events[^1] is RecordReviewed word ? word.Lead : "");
        Assert.Contains("the word of L. Ead did not become part of the record: the record has grown since", after.Output, StringComparison.Ordinal);
    }

    [PostgresFact]
    public async Task A_word_that_was_kept_but_not_told_is_not_kept_twice()
    {
        Firm firm = await server.NewFirm();
        _van.Add("job-a");
        await _van.Publish(firm);
        await Review(firm, "lead_all", "job-a", "--return", "--lead", "L. Ead", "--remark", "measure again");
        await firm.Administer("create function settle_later() returns trigger language plpgsql as $$ begin raise exception 'not now'; end $$; create trigger later before update on word for each row execute function settle_later()");
        ProgramResult broken = await _van.Publish(firm);
        await firm.Administer("drop trigger later on word");

        ProgramResult again = await _van.Publish(firm);

        Assert.Equal((2, 0), (broken.ExitCode, again.ExitCode));
        Assert.Single(StoredJob.Read(_van.File("job-a")).Events.OfType<RecordReviewed>());
        Assert.Equal((0L, 0L), (await firm.Count("word", "settled_at is null"), await firm.Count("word", "refusal is not null")));
        await SameBytes.Assert(firm, ("van_01", _van));
    }

    [PostgresTheory]
    [InlineData("by name", "--accept")]
    [InlineData("what is to be done", "--return", "--lead", "L. Ead")]
    [InlineData("either accepted or returned", "--accept", "--return", "--lead", "L. Ead", "--remark", "x")]
    public async Task A_word_that_lacks_something_is_refused_in_the_same_words(string why, params string[] options)
    {
        Firm firm = await server.NewFirm();
        _van.Add("job-a");
        await _van.Publish(firm);

        ProgramResult result = await Review(firm, "lead_all", ["job-a", .. options]);

        Assert.Equal(2, result.ExitCode);
        Assert.Contains(why, result.Error, StringComparison.Ordinal);
    }
}
