using System.Globalization;
using System.Text.RegularExpressions;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Reports.Copies;
using HandsFreeStartup.Reports.Copies.Narrow;
using HandsFreeStartup.Storage.Log;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Tests.OneReading;

/// <summary>
/// A whole job of format 2, and the narrow copy that was printed of it then. Both were written by the program of commit b1c9f89 (26 November 2026), before the record had one reading: the shipped demonstration
/// furnace, typed, with short timers. Its numbers, units, verdicts and limits were right and stay; its uncertainties were rounded otherwise ("4.92"), so that some results have a decimal more today, and its times were told in UTC.
/// </summary>
public sealed partial class OlderRecordTests
{
    static readonly string Fixtures = Path.Combine(AppContext.BaseDirectory, "Fixtures");

    static readonly Checkpoint Printed = Checkpoint.Parse("160 events, ends FE55 00DC 3B67 C854")!;

    [Fact]
    public void It_reads_and_verifies_with_the_checkpoint_that_was_printed_then()
    {
        StoredJob job = StoredJob.Read(Path.Combine(Fixtures, "format-2.db"));

        Assert.Equal(160, job.Events.Count);
        Assert.IsType<StartupSigned>(job.Events[^1]);
        Assert.Empty(job.Verification.Findings);
        Assert.Empty(StartupLogVerifier.Verify(job.Path, Printed).Findings);
    }

    [Fact]
    public void It_prints_the_values_units_verdicts_and_limits_that_it_printed_then()
    {
        StoredJob job = StoredJob.Read(Path.Combine(Fixtures, "format-2.db"));
        CopySource source = new(UserFile.PlanOf(((StartupBegan)job.Events[0]).Job), job.Events, Printed.ToString(), null, []);
        Entry[] before = [.. Told(File.ReadAllText(Path.Combine(Fixtures, "format-2-narrow.txt")))], now = [.. Told(NarrowCopy.Of(source, 48))];

        Assert.True(before.Length > 40, $"{before.Length} values are none of a whole job.");
        Assert.Equal(before, now.Zip(before, (one, then) => one with { Number = one.As(then) }));
        Assert.Equal(before.Length, now.Length);
    }

    /// <summary>A value that was left, or a limit, without the uncertainty and the mark of the source.</summary>
    sealed record Entry(string What, string Number, string Unit, string Verdict)
    {
        /// <summary>The number with the decimals that it had then.</summary>
        public string As(Entry then) => What == "left" && decimal.TryParse(Number, NumberStyles.Float, CultureInfo.InvariantCulture, out decimal number)
            ? Math.Round(number, decimal.Parse(then.Number, CultureInfo.InvariantCulture).Scale, MidpointRounding.AwayFromZero).ToString(CultureInfo.InvariantCulture)
            : Number;
    }

    static IEnumerable<Entry> Told(string narrow) =>
        from Match line in Line().Matches(narrow)
        select new Entry(line.Groups["what"].Value, line.Groups["number"].Value, line.Groups["unit"].Value, line.Groups["verdict"].Value);

    [GeneratedRegex(@"^  (?<what>left|limit) (?<number>-?[\d.]+( to -?[\d.]+)?|at (most|least) -?[\d.]+)( \+/- [\d.]+)? (?<unit>deg F|in\. w\.c\.|ppm|%|V|uA|s|Btu/h|°F)?( \([^)]*\)|, no uncertainty stated)?(: (?<verdict>.+?))?( \[[a-z]\])?\r?$", RegexOptions.Multiline)]
    private static partial Regex Line();
}
