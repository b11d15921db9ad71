using System.Globalization;
using HandsFreeStartup.Fleet.Figures;
using HandsFreeStartup.Fleet.Pages;
using HandsFreeStartup.Fleet.Tests.Support;
using HandsFreeStartup.Tests.Support;
using Parquet;

namespace HandsFreeStartup.Fleet.Tests;

/// <summary>The pages for the office, as a browser and a screen reader take them.</summary>
[Collection(FirmServer.Name)]
public sealed class PagesTests(PostgresServer server) : IDisposable
{
    readonly VanFolder _van = new();
    readonly VanFolder _other = new();

    string Out => Path.Combine(_van.Path, "pages");

    public void Dispose()
    {
        _van.Dispose();
        _other.Dispose();
    }

    /// <summary>Twenty-odd jobs of two vans, one with a gross outlier; it is put where a hostile program would put it, into the table itself.</summary>
    async Task<(Firm Firm, string Day)> Firm()
    {
        Firm firm = await server.NewFirm();
        _van.AddMany(14, "a");
        _other.AddMany(12, "b");
        _van.Add("hostile", 3, change: job => job with { Technician = "<script>document.title='owned'</script>" });
        Assert.Equal(0, (await _van.Publish(firm)).ExitCode);
        Assert.Equal(0, (await _other.Publish(firm, "van_02")).ExitCode);
        await firm.Administer(
            """
            update result set value = value + 400, shown = 'much' where (job, ordinal) in (select job, min(ordinal) from result where quantity = 'co_air_free' and job = (select max(job) from job where van = 'van_01' and job_id like 'a%') group by job);
            update reading set value = value + 5, uncertainty = 0.3 where quantity = 'oxygen' and job in (select job from job where van = 'van_02');
            update timer set is_short = true, lasted_seconds = planned_seconds / 2;
            """);
        return (firm, (string)(await firm.Value("select to_char(max(began) at time zone 'UTC', 'YYYY-MM-DD') from job"))!);
    }

    Task<ProgramResult> Fleet(Firm firm, string day, params string[] more) => _van.Run(["fleet", .. firm.Options("--from", "office_north"), "--day", day, .. more]);

    [PostgresFact]
    public async Task Every_link_leads_somewhere_nothing_comes_from_elsewhere_and_no_name_of_a_customer_is_there()
    {
        (Firm firm, string day) = await Firm();

        ProgramResult result = await Fleet(firm, day, "--out", Out);

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        string[] pages = Directory.GetFiles(Out, "*.html");
        Assert.Contains(FormattableString.Invariant($"{pages.Length} pages: "), result.Output, StringComparison.Ordinal);
        foreach (string page in pages)
        {
            string text = await File.ReadAllTextAsync(page);
            Assert.DoesNotMatch("(?i)<script|src=|https?:|@import|url\\(", text);
            Assert.DoesNotContain("Quarry", text, StringComparison.Ordinal);
        }

        AssertLinksLead();
        string models = await File.ReadAllTextAsync(Path.Combine(Out, "model-1.html"));
        Assert.Contains("class=\"outlier\"", models, StringComparison.Ordinal);
        Assert.Contains("van_02", await File.ReadAllTextAsync(Path.Combine(Out, "instruments.html")), StringComparison.Ordinal);
        Assert.Contains("50 %", await File.ReadAllTextAsync(Path.Combine(Out, "waits.html")), StringComparison.Ordinal);
    }

    /// <summary>A thousand jobs of one day, with every value beyond its limit: put into the tables themselves, because the pages read nothing else.</summary>
    [PostgresFact]
    public async Task However_much_is_wrong_the_pages_stay_bounded_and_say_what_is_left_out()
    {
        Firm firm = await server.NewFirm();
        _van.AddMany(1);
        Assert.Equal(0, (await _van.Publish(firm)).ExitCode);
        await firm.Administer(
            """
            set session_replication_role = replica;
            insert into job (van, region, job_id, root, count, head, status, must_look, began, ended, began_exact, ended_exact, technician, model, appliance, rules)
              select van, region, 'copy-' || number, sha256(number::text::bytea), count, head, status, true, began, ended, began_exact, ended_exact, technician, model, appliance, rules from job, generate_series(1, 1200) as number;
            insert into result select copy.job, ordinal, at, step, scope, quantity, 1000 + copy.job, shown, unit, uncertainty, lower, 100, limit_source, verdict, formula
              from result join job original on original.job = result.job and original.job_id = 'job-0000', job copy where copy.job_id like 'copy-%' and quantity = 'co_air_free';
            """);
        string day = (string)(await firm.Value("select to_char(max(day), 'YYYY-MM-DD') from job"))!, gravest = $"{await firm.Value("select max(job) from job")}";

        ProgramResult result = await Fleet(firm, day, "--out", Out);

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        Assert.InRange(Directory.GetFiles(Out, "job-*.html").Length, 500, 1000);
        Assert.Equal(7, Directory.GetFiles(Out, "day-*.html").Length + 1);
        string index = await File.ReadAllTextAsync(Path.Combine(Out, "index.html")), model = await File.ReadAllTextAsync(Path.Combine(Out, "model-1.html"));
        Assert.Matches("120[01] of 1201 jobs must be looked at. [0-9]+ of them, the least grave, have no page here", index);
        Assert.Matches("And [0-9]{4} more, less grave; fleet --parquet FILE writes all values[.]", model);
        Assert.True(model.Split("above its limit</td>").Length <= 1 + FleetPages.MostRows * model.Split("<h2>").Length);
        Assert.Contains($"href=\"job-{gravest}.html\"", model, StringComparison.Ordinal);
        AssertLinksLead();
    }

    void AssertLinksLead()
    {
        foreach (string page in Directory.GetFiles(Out, "*.html"))
        {
            Assert.All(
                System.Text.RegularExpressions.Regex.Matches(File.ReadAllText(page), "href=\"([^\"#]+)").Select(match => match.Groups[1].Value).Distinct(), link => Assert.True(File.Exists(Path.Combine(Out, link)), link));
        }
    }

    [PostgresFact]
    public async Task The_table_holds_every_reading_and_result_once()
    {
        (Firm firm, string day) = await Firm();
        string table = Path.Combine(_van.Path, "values.parquet");

        ProgramResult result = await Fleet(firm, day, "--parquet", table);

        Assert.Equal((0, ""), (result.ExitCode, result.Error));
        long rows = await firm.Count("reading") + await firm.Count("result");
        Assert.StartsWith(FormattableString.Invariant($"{rows} values: "), result.Output, StringComparison.Ordinal);
        await using ParquetReader reader = await ParquetReader.CreateAsync(table);
        using ParquetRowGroupReader group = reader.OpenRowGroupReader(0);
        Assert.Equal((rows, 1), (group.RowCount, reader.RowGroupCount));
        double?[] values = new double?[rows];
        await group.ReadAsync(reader.Schema.DataFields.Single(field => field.Name == "value"), values.AsMemory());
        Assert.Equal((double)(await firm.Value("select (select sum(value) from reading) + (select sum(value) from result)"))!, values.Sum()!.Value, 1e-6);
    }

    [BrowserFact]
    public async Task A_browser_shows_them_light_and_dark_the_keyboard_reaches_every_link_and_a_screen_reader_is_told_everything()
    {
        (Firm firm, string day) = await Firm();
        await Fleet(firm, day, "--out", Out);
        await using Browser browser = await Browser.Start();
        foreach (string name in (string[])["index.html", "models.html", "model-1.html", "instruments.html", "waits.html"])
        {
            string page = Path.Combine(Out, name);
            string[] grounds = new string[2];
            foreach ((string scheme, int i) in new[] { ("light", 0), ("dark", 1) })
            {
                await browser.Show(page, scheme);
                grounds[i] = await browser.Evaluate("getComputedStyle(document.body).backgroundColor");
                Assert.True(double.Parse(await browser.Evaluate(LowestContrast), CultureInfo.InvariantCulture) >= 4.5, $"{name} {scheme}: {await browser.Evaluate(LowestContrast)}");
                Assert.True((await browser.Picture()).Length > 5000);
            }

            Assert.NotEqual(grounds[0], grounds[1]);
            Assert.DoesNotContain("owned", await browser.Evaluate("document.title"), StringComparison.Ordinal);
            Assert.Equal("0", await browser.Evaluate("document.scripts.length"));
            await AssertReachable(browser);
            await AssertTold(browser, name);
        }

        await browser.Show(Path.Combine(Out, "index.html"), "light");
        await browser.Press("Tab", 9);
        await browser.Until("document.activeElement.className", "skip");
        await browser.Press("Enter", 13);
        await browser.Until("document.activeElement.id", "content");
    }

    /// <summary>Relative luminance and contrast as WCAG 2.2 defines them, over every element that holds text of its own; 4.5 is its success criterion 1.4.3.</summary>
    const string LowestContrast = """
        (() => {
          const parse = text => text.match(/[\d.]+/g).map(Number);
          const lum = ([r, g, b]) => [r, g, b].map(c => (c /= 255) <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4).reduce((sum, c, i) => sum + c * [0.2126, 0.7152, 0.0722][i], 0);
          const ground = element => { for (; element; element = element.parentElement) { const c = parse(getComputedStyle(element).backgroundColor); if (c.length < 4 || c[3] > 0) return c; } return [255, 255, 255]; };
          let lowest = 99;
          for (const element of document.querySelectorAll('body *')) {
            if (![...element.childNodes].some(node => node.nodeType === 3 && node.textContent.trim())) continue;
            const style = getComputedStyle(element), color = parse(element instanceof SVGElement ? style.fill : style.color);
            const [a, b] = [lum(color), lum(ground(element instanceof SVGElement ? element.closest('figure') || element : element))].sort((x, y) => y - x);
            if (element.tagName !== 'title' && element.tagName !== 'desc') lowest = Math.min(lowest, (a + 0.05) / (b + 0.05));
          }
          return lowest;
        })()
        """;

    static async Task AssertReachable(Browser browser)
    {
        int links = int.Parse(await browser.Evaluate("document.querySelectorAll('a').length"), CultureInfo.InvariantCulture);
        HashSet<string> reached = [];
        for (int i = 0; i < links + 12; i++)
        {
            await browser.Press("Tab", 9);
            reached.Add(await browser.Evaluate("[...document.querySelectorAll('a')].indexOf(document.activeElement)"));
        }

        Assert.Equal(links, reached.Count(one => one != "-1"));
    }

    static async Task AssertTold(Browser browser, string name)
    {
        IReadOnlyList<(string Role, string Name)> told = await browser.Told();
        Assert.Contains(told, one => one.Role == "main");
        Assert.Contains(told, one => one is { Role: "navigation", Name: "Pages" });
        Assert.Single(told, one => one.Role == "heading" && one.Name.Length > 0 && one.Name == told.First(first => first.Role == "heading").Name);
        Assert.DoesNotContain(told, one => one.Role == "link" && one.Name.Length == 0);
        if (name == "model-1.html")
        {
            Assert.Contains(told, one => one.Role == "link" && one.Name.Contains("unlike the others", StringComparison.Ordinal) && one.Name.Contains("ppm", StringComparison.Ordinal));
            Assert.Contains(told, one => one.Role == "group" && one.Name.Contains("CO air-free", StringComparison.Ordinal));
        }

        if (name != "index.html")
        {
            return;
        }

        Assert.Contains(told, one => one.Role == "columnheader" && one.Name == "Gravest finding");
        Assert.Contains(told, one => one.Role == "rowheader" && one.Name.Contains("van_01/hostile", StringComparison.Ordinal));
    }
}

/// <summary>The figures, held against sources outside.</summary>
public sealed class FigureTests
{
    /// <summary>NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.2, the worked example of ten flow rates (printed values from memory): MR̄ 1.8778, center 50.81, limits 45.8159 and 55.8041.</summary>
    [Fact]
    public void Control_limits_are_those_of_the_handbook()
    {
        ControlLimits limits = ControlLimits.Of([49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1])!;

        Assert.Equal(50.81, limits.Centre, 0.0001);
        Assert.Equal(55.8041, limits.Upper, 0.001);
        Assert.Equal(45.8159, limits.Lower, 0.001);
    }

    [Fact]
    public void A_gross_value_does_not_hide_a_smaller_one()
    {
        double[] usual = [.. Enumerable.Range(0, 20).Select(i => 20 + i % 3)];

        ControlLimits limits = ControlLimits.Of([.. usual, 419, 40])!;

        Assert.True(limits.IsOutside(419) && limits.IsOutside(40));
        Assert.DoesNotContain(usual, limits.IsOutside);
        Assert.True(limits.Lower >= 0);
    }

    [Fact]
    public void Too_few_values_have_no_limits() => Assert.Null(ControlLimits.Of([1, 2, 3, 4, 5, 6, 7]));

    static FleetSeries Series(double shift, double? uncertainty, int count = 12) => new(
        "m", "oxygen", "high", "%",
        [.. from van in new[] { "van_01", "van_02", "van_03" } from i in Enumerable.Range(0, count)
            select new FleetPoint(i, van, DateTimeOffset.UnixEpoch.AddHours(i))
            {
                Value = 7 + (i * 7 % 12) / 10.0 + (van == "van_02" ? shift : 0),
                Shown = "",
                Uncertainty = uncertainty,
                Lower = 5,
                Upper = 9,
            }]);

    [Fact]
    public void An_instrument_that_reads_higher_than_the_others_is_named_and_no_other_one() =>
        Assert.Equal("van_02", Assert.Single(InstrumentDrift.In(Series(3, 0.3))).Van);

    [Fact]
    public void A_difference_within_chance_or_within_the_stated_uncertainty_is_none()
    {
        Assert.Empty(InstrumentDrift.In(Series(0.2, 0.3)));
        Assert.Empty(InstrumentDrift.In(Series(3, 3.1)));
        Assert.Empty(InstrumentDrift.In(Series(3, 0.3, count: 4)));
    }

    [Fact]
    public void What_is_over_the_range_or_cannot_be_told_is_never_overlooked()
    {
        FleetSeries series = new("m", "co_air_free", "high", "ppm",
            [new(1, "v", DateTimeOffset.UnixEpoch)
            {
                Value = null,
                Shown = "over 9999",
                Uncertainty = null,
                Lower = null,
                Upper = 100,
            }, new(2, "v", DateTimeOffset.UnixEpoch)
            {
                Value = null,
                Shown = "",
                Uncertainty = null,
                Lower = null,
                Upper = 100,
            }, new(3, "v", DateTimeOffset.UnixEpoch)
            {
                Value = 12,
                Shown = "12",
                Uncertainty = null,
                Lower = null,
                Upper = 100,
            }, new(4, "v", DateTimeOffset.UnixEpoch)
            {
                Value = 120,
                Shown = "120",
                Uncertainty = null,
                Lower = null,
                Upper = 100,
            }]);

        Assert.Equal(["more than the instrument shows", "cannot be told", "above its limit"], series.Outliers(null).Select(one => one.Why));
    }

    [Theory]
    [InlineData(3, 12, true)]
    [InlineData(3, 13, false)]
    [InlineData(2, 2, false)]
    public void A_habit_is_three_times_and_a_quarter(int shorts, int count, bool isHabit) => Assert.Equal(isHabit, new WaitHabit("T", "warm-up", count, shorts, 0.5).IsHabit);
}
