using System.Text;
using System.Text.RegularExpressions;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Reports.Copies;
using HandsFreeStartup.Reports.Facts;
using HandsFreeStartup.Reports.Tests.Support;
using UglyToad.PdfPig.Content;
using UglyToad.PdfPig.Core;

namespace HandsFreeStartup.Reports.Tests.Copies;

/// <summary>The copies as another library reads them.</summary>
public sealed class CopiesTests
{
    const string Printed = "37 events, ends 0123 4567 89AB CDEF";

    public static TheoryData<Paper, int, int, int> Jobs() => new()
    {
        { Paper.A4, 1, 0, 10 }, { Paper.Letter, 1, 60, 200 }, { Paper.A4, 2, 8, 60 }, { Paper.Letter, 3, 0, 10 }, { Paper.A4, 3, 60, 200 }, { Paper.Letter, 3, 200, 400 },
    };

    [Theory]
    [MemberData(nameof(Jobs))]
    public void Every_copy_shows_every_standing_number_and_the_checkpoint(Paper paper, int stages, int notes, int nameLength)
    {
        CopySource source = Large(stages, notes, nameLength);
        PrintedReading[] expected = Expected(source);

        foreach (byte[] copy in All(source, paper))
        {
            using PdfPages pdf = new(copy);

            Assert.Equal(expected, Sorted(pdf.Readings()));
            Assert.All(pdf.Texts, text => Assert.Contains(Printed, text, StringComparison.Ordinal));
        }
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void The_appliance_copy_leaves_nothing_out_and_no_letter_is_smaller_than_seven_points(Paper paper, int stages, int notes, int nameLength)
    {
        using PdfPages pdf = new(StartupCopies.Appliance(Large(stages, notes, nameLength), paper));

        Assert.Equal(notes, Regex.Matches(pdf.Text, @"\bnote \d+,").Count);
        Assert.All(pdf.Pages, page => Assert.True(page.GetWords().Count() > 25, $"Page {page.Number} is empty."));
        Assert.All(pdf.Pages.SelectMany(page => page.Letters), letter => Assert.True(letter.PointSize >= 6.99, $"'{letter.Value}' has {letter.PointSize} pt"));
    }

    [Theory]
    [MemberData(nameof(Jobs))]
    public void No_ink_leaves_the_margins_and_no_word_runs_into_another(Paper paper, int stages, int notes, int nameLength)
    {
        foreach (byte[] copy in All(Large(stages, notes, nameLength), paper))
        {
            using PdfPages pdf = new(copy);
            foreach (Page page in pdf.Pages)
            {
                PdfRectangle inside = new(33, 33, page.Width - 33, page.Height - 33);
                Word[] words = [.. page.GetWords()];

                Assert.All(page.Letters, letter => Assert.True(Contains(inside, letter.BoundingBox), $"'{letter.Value}' at {letter.BoundingBox} on page {page.Number}"));
                Assert.Empty(words.SelectMany((one, i) => words.Skip(i + 1).Where(other => Overlap(one.BoundingBox, other.BoundingBox)).Select(other => $"{one} and {other}, page {page.Number}")));
            }
        }
    }

    [Theory]
    [InlineData(Paper.A4)]
    [InlineData(Paper.Letter)]
    public void Every_typeface_is_embedded(Paper paper)
    {
        foreach (byte[] copy in All(Whole(), paper))
        {
            string raw = Encoding.Latin1.GetString(copy);

            Assert.Equal(2, Regex.Count(raw, "/Type/FontDescriptor"));
            Assert.Equal(2, Regex.Count(raw, "/FontFile2 "));
            Assert.All(Regex.Matches(raw, "/BaseFont/([^/ ]+)"), match => Assert.StartsWith("COPY", match.Groups[1].Value, StringComparison.Ordinal));
        }
    }

    [Fact]
    public void The_office_copy_shows_every_value_and_every_event_with_its_number()
    {
        CopySource source = Whole();
        using PdfPages pdf = new(StartupCopies.Office(source, Paper.A4));

        foreach (string text in new[] { "(6.70 ± 0.3 %) DISREGARDED", "(7.60 ± 0.3 %) VOID", "(3.10 ± 0.03 in. w.c.) REPLACED", "7.1 ± 0.3 % stands, pass", "panel is painted shut", "screw was stiff", "Say done when it is done." })
        {
            Assert.Contains(text, pdf.Text, StringComparison.Ordinal);
        }
        for (int i = 1; i <= source.Events.Count; i++)
        {
            Assert.Matches($@"(^| ){i} {Regex.Escape(LocalTime.Of(source.Events).Stamp(source.Events[i - 1].At))} ", pdf.Text);
        }
    }

    [Fact]
    public void Every_page_of_every_copy_of_an_unsigned_job_says_so()
    {
        CopySource whole = Whole();
        for (int count = 1; count < whole.Events.Count; count += 3)
        {
            CopySource source = whole with { Events = [.. whole.Events.Take(count)] };

            foreach (byte[] copy in All(source, Paper.Letter))
            {
                using PdfPages pdf = new(copy);
                Assert.All(pdf.Texts, text => Assert.Contains("NOT SIGNED", text, StringComparison.Ordinal));
            }
        }

        Assert.All(All(whole, Paper.Letter), copy =>
        {
            using PdfPages pdf = new(copy);
            Assert.DoesNotContain("NOT SIGNED", pdf.Text, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void A_port_that_is_open_makes_the_verdict_unsafe()
    {
        ScriptedJob job = new ScriptedJob().Answer(AnswerWord.No).Order(CommandWord.Done).Order(CommandWord.Done);
        using PdfPages pdf = new(StartupCopies.Customer(Source(ScriptedJob.Plan, job.Events), Paper.A4));

        Assert.Contains("Unsafe Not signed: 3 of 10 steps are done; unsafe: manifold port is open", pdf.Text, StringComparison.Ordinal);
        Assert.Contains("Do not use the furnace", pdf.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_record_that_does_not_verify_says_so_on_every_page_and_has_no_checkpoint()
    {
        CopySource source = Whole() with { Checkpoint = null, WholeCheckpoint = null, Findings = ["Event 9 was changed."] };

        Assert.All(All(source, Paper.A4), copy =>
        {
            using PdfPages pdf = new(copy);
            Assert.All(pdf.Texts, text => Assert.Contains("RECORD DOES NOT VERIFY", text, StringComparison.Ordinal));
            Assert.All(pdf.Texts, text => Assert.Contains("Event 9 was changed.", text, StringComparison.Ordinal));
            Assert.Contains("no checkpoint that could be believed", pdf.Text, StringComparison.Ordinal);
        });
    }

    [Fact]
    public void A_small_job_has_an_appliance_copy_of_one_page()
    {
        using PdfPages pdf = new(StartupCopies.Appliance(Whole(), Paper.A4));

        Assert.Single(pdf.Pages);
    }

    [Fact]
    public void The_same_record_gives_the_same_bytes() =>
        Assert.Equal(All(Whole(), Paper.A4).Select(Convert.ToHexString), All(Whole(), Paper.A4).Select(Convert.ToHexString));

    [Fact]
    public void Letters_that_the_typeface_lacks_are_spelled_out()
    {
        ScriptedJob job = new ScriptedJob().Answer(AnswerWord.No).Order(CommandWord.Note).Dictate("Grüße Ω Жук 水 \u202Ehidden\u0007");
        using PdfPages pdf = new(StartupCopies.Appliance(Source(ScriptedJob.Plan, job.Events), Paper.A4));

        Assert.Contains("Grüße Ω Жук (U+6C34) (U+202E)hidden(U+0007)", pdf.Text, StringComparison.Ordinal);
    }

    internal static CopySource Whole() => Source(ScriptedJob.Plan, ScriptedJob.Whole().Events);

    internal static CopySource Source(StartupPlan plan, IReadOnlyList<StartupEvent> events) =>
        new(plan, events, Printed, $"37 events, ends 0123456789ABCDEF{new string('0', 48)}", []);

    internal static byte[][] All(CopySource source, Paper paper) =>
        [StartupCopies.Appliance(source, paper), StartupCopies.Customer(source, paper), StartupCopies.Office(source, paper)];

    internal static CopySource Large(int stages, int notes, int nameLength)
    {
        (StartupPlan plan, ScriptedJob job) = LargeJob.Signed(stages, notes, nameLength);
        Assert.Empty(job.Events.OfType<CommandRefused>());
        Assert.IsType<StartupSigned>(job.Events[^1]);
        return Source(plan, job.Events);
    }

    internal static PrintedReading[] Sorted(IEnumerable<PrintedReading> readings) =>
        [.. readings.OrderBy(reading => reading.Label, StringComparer.Ordinal).ThenBy(reading => reading.Standing, StringComparer.Ordinal)];

    static PrintedReading[] Expected(CopySource source) => Sorted(ReadingGroups.Of(JobRecord.Of(source.Plan, source.Events)).SelectMany(group => group.Lines)
        .Select(line => new PrintedReading($"{(line.IsResult ? "= " : "")}{line.Label.Split(' ')[0]}", line.Left?.Number ?? "–")));

    static bool Contains(PdfRectangle outer, PdfRectangle inner) =>
        inner.Left >= outer.Left && inner.Right <= outer.Right && inner.Bottom >= outer.Bottom && inner.Top <= outer.Top;

    static bool Overlap(PdfRectangle one, PdfRectangle other) =>
        Math.Min(one.Right, other.Right) - Math.Max(one.Left, other.Left) > 0.2 && Math.Min(one.Top, other.Top) - Math.Max(one.Bottom, other.Bottom) > 0.2;
}
