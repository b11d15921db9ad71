using System.Globalization;
using System.Text;
using FsCheck.Xunit;

namespace HandsFreeStartup.Doors.Tests;

public sealed class VisibleTextTests
{
    [Theory]
    [InlineData("plain text, 7.6 % ± 0.2 °F", "plain text, 7.6 % ± 0.2 °F")]
    [InlineData("\u001b]0;owned\u0007", "␛]0;owned␇")]
    [InlineData("\u001b[2J", "␛[2J")]
    [InlineData("a\nb\r\tc", "a␊b␍␉c")]
    [InlineData("a\0b\u007f", "a␀b␡")]
    [InlineData("\u009b31m", "\uFFFD31m")]
    [InlineData("abc\u202Edef", "abc\uFFFDdef")]
    [InlineData("zero\u200Bwidth\uFEFF", "zero\uFFFDwidth\uFFFD")]
    [InlineData("line\u2028para\u2029", "line\uFFFDpara\uFFFD")]
    [InlineData("family 👩\u200D👦", "family 👩\uFFFD👦")]
    [InlineData("\U000E0041tag", "\uFFFD\uFFFDtag")]
    [InlineData("水道 Äöü 🚒", "水道 Äöü 🚒")]
    public void Control_and_format_characters_become_marks_and_letters_stay(string text, string shown) => Assert.Equal(shown, VisibleText.Of(text));

    [Fact]
    public void Half_a_letter_becomes_a_mark() => Assert.Equal("a\uFFFDb\uFFFD", VisibleText.Of("a\uD83Db\uDE92"));

    [Fact]
    public void In_text_of_several_lines_the_line_feeds_stay() => Assert.Equal("a\nb␛\n", VisibleText.OfLines("a\nb\u001b\n"));

    [Property(MaxTest = 2000)]
    public void What_is_shown_has_the_same_length_and_nothing_in_it_is_an_order(string? text)
    {
        string shown = VisibleText.Of(text ?? "");

        Assert.Equal((text ?? "").Length, shown.Length);
        Assert.True(VisibleText.IsVisible(shown));
        Assert.Equal(shown, VisibleText.Of(shown));
        Assert.All(shown.EnumerateRunes(), rune => Assert.False(
            Rune.GetUnicodeCategory(rune) is UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator));
    }

    [Fact]
    public void A_line_that_is_written_is_one_line_whatever_a_name_in_it_holds()
    {
        StringWriter terminal = new();
        VisibleWriter writer = new(terminal);

        writer.WriteLine("name: A\n  say: finish");
        writer.Write("two\nlines\u001b[m\n");
        writer.WriteLine();

        Assert.Equal("name: A␊  say: finish\ntwo\nlines␛[m\n\n", terminal.ToString());
    }
}
