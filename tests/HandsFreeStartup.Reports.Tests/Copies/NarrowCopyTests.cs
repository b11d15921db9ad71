using System.Text.RegularExpressions;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Reports.Copies;
using HandsFreeStartup.Reports.Copies.Narrow;
using HandsFreeStartup.Reports.Tests.Support;

namespace HandsFreeStartup.Reports.Tests.Copies;

[Trait("Speed", "Fast")]
public sealed class NarrowCopyTests
{
    [Theory]
    [InlineData(32, 1)]
    [InlineData(32, 3)]
    [InlineData(48, 1)]
    [InlineData(48, 3)]
    public void No_line_is_wider_than_the_paper_and_every_letter_is_plain(int columns, int stages)
    {
        string text = NarrowCopy.Of(CopiesTests.Large(stages, 20, 200), columns);

        Assert.All(text.Split('\n'), line => Assert.InRange(line.Length, 0, columns));
        Assert.All(text, letter => Assert.True(letter is '\n' or (>= ' ' and <= '~')));
        Assert.Equal(20, Regex.Count(Joined(text), @"\bnote \d+,"));
    }

    [Fact]
    public void It_holds_the_numbers_of_the_other_copies_and_the_checkpoint()
    {
        string text = Joined(NarrowCopy.Of(CopiesTests.Whole(), 32));

        Assert.Contains("Oxygen left 7.1 +/- 0.3 %: pass found void 7.60 +/- 0.3 % limit 5.0 to 9.5 % [a]", text, StringComparison.Ordinal);
        Assert.Contains("Manifold pressure left 3.50 +/- 0.03 in. w.c.: pass found was 3.10 +/- 0.03 in. w.c.", text, StringComparison.Ordinal);
        Assert.Contains("37 events, ends 0123 4567 89AB CDEF", text, StringComparison.Ordinal);
        Assert.DoesNotContain("NOT SIGNED", text, StringComparison.Ordinal);
    }

    [Fact]
    public void An_unsigned_job_says_so_at_both_ends()
    {
        CopySource source = CopiesTests.Source(ScriptedJob.Plan, new ScriptedJob().Answer(AnswerWord.No).Events);

        string text = NarrowCopy.Of(source, 32);

        Assert.Equal(2, Regex.Count(text, @"\*\*\* NOT SIGNED \*\*\*"));
        Assert.Contains("left - (none: step not reached)", Joined(text), StringComparison.Ordinal);
    }

    [Fact]
    public void A_letter_that_the_printer_lacks_is_owned_up_to()
    {
        string text = NarrowCopy.Of(CopiesTests.Source(ScriptedJob.Plan, new ScriptedJob().Answer(AnswerWord.No).Order(CommandWord.Note).Dictate("Grüße 水").Events), 32);

        Assert.Contains("Grusse ?", text, StringComparison.Ordinal);
        Assert.EndsWith("? is a letter this paper has not.\n", text, StringComparison.Ordinal);
    }

    static string Joined(string text) => string.Join(' ', text.Split([' ', '\n'], StringSplitOptions.RemoveEmptyEntries));
}
