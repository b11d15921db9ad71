using System.Globalization;
using System.Text;

namespace HandsFreeStartup.Calculations.Tests.Outside;

public sealed class OutsideTests
{
    public static TheoryData<string> Checks() => [.. OutsideRow.All.Where(row => row.Check.Length > 0).Select(row => row.Check)];

    [Theory]
    [MemberData(nameof(Checks))]
    public void The_product_agrees_with_the_source(string check)
    {
        OutsideRow row = OutsideRow.All.Single(row => row.Check == check);
        double ours = OutsideChecks.Ask(check);

        Assert.True(Math.Abs(ours - row.Value) <= row.Tolerance, string.Create(CultureInfo.InvariantCulture,
            $"{row.Claim}: {row.Source} says {row.Value}, the product {ours:R}; allowed are ± {row.Tolerance}."));
    }

    [Fact]
    public void At_least_150_checks_are_truly_outside() => Assert.InRange(OutsideRow.All.Count(row => row.IsOutside), 150, 10_000);

    [Fact]
    public void Every_row_says_its_kind_and_what_is_not_outside_says_so()
    {
        foreach (OutsideRow row in OutsideRow.All)
        {
            Assert.Contains(row.Kind, OutsideRow.Outside.Concat(OutsideRow.NotOutside));
            Assert.Equal(row.Kind == "memory", row.Source.Contains("from memory", StringComparison.Ordinal));
            Assert.Equal(row.Kind == "upload site", row.Source.Contains("upload site", StringComparison.Ordinal));
            Assert.Equal(row.Kind == "common practice", row.Source.Contains("no source", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void No_check_stands_twice() =>
        Assert.Empty(OutsideRow.All.Where(row => row.Check.Length > 0).GroupBy(row => row.Check).Where(same => same.Count() > 1).Select(same => same.Key));

    [Fact]
    public void The_page_of_the_checks_is_fresh()
    {
        string file = Path.Combine(OutsideRow.Folder(), "README.md");
        string page = Page();
        if (!File.Exists(file) || File.ReadAllText(file) != page)
        {
            string fresh = Path.Combine(AppContext.BaseDirectory, "outside-checks.md");
            File.WriteAllText(fresh, page);
            Assert.Fail($"{file} is stale; copy {fresh} over it.");
        }
    }

    static string Page()
    {
        StringBuilder page = new();
        page.Append(CultureInfo.InvariantCulture, $"""
            # Outside checks of the numbers

            Made from outside-checks.tsv by the tests; do not edit. Every row with a formula here is asked of the product by a test.
            Truly outside: {OutsideRow.All.Count(row => row.IsOutside)} of {OutsideRow.All.Length} rows. Not counted as outside: trade pages, sites where anyone uploads
            documents, values worked out here from numbers of a source, common practice, and values from memory, which nobody has looked up yet.
            "read" means that the text or a quotation of it was read when the row was written, not more; "run" that the library named, of
            that version, was run at a point of its own when the row was written.


            """);
        foreach (IGrouping<string, OutsideRow> source in OutsideRow.All.GroupBy(row => $"{row.Kind}: {row.Source}"))
        {
            page.Append(CultureInfo.InvariantCulture, $"## {char.ToUpperInvariant(source.Key[0])}{source.Key[1..]}\n\n| claim | value | ± | asked |\n|---|---|---|---|\n");
            foreach (OutsideRow row in source)
            {
                page.Append(CultureInfo.InvariantCulture, $"| {row.Claim} | {row.Value:R} | {row.Tolerance:R} | {(row.Check.Length > 0 ? $"`{row.Check}`" : "no formula")} |\n");
            }

            page.Append('\n');
        }

        return page.ToString().TrimEnd('\n') + "\n";
    }
}
