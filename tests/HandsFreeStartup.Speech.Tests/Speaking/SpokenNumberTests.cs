using System.Globalization;
using HandsFreeStartup.Speech.Speaking;
using Humanizer;

namespace HandsFreeStartup.Speech.Tests.Speaking;

public sealed class SpokenNumberTests
{
    [Fact]
    public void Whole_numbers_are_said_as_an_independent_library_says_them()
    {
        // Humanizer.Core 3.0.10, English, without "and" and hyphens.
        for (int number = 0; number <= 12_000; number++)
        {
            string expected = number.ToWords(addAnd: false, CultureInfo.InvariantCulture).Replace('-', ' ');
            Assert.Equal(expected, SpokenNumber.Usual(number));
        }
    }

    [Theory]
    [InlineData("-0.02", "minus zero point zero two", "minus zero point zero two")]
    [InlineData("7.6", "seven point six", "seven point six")]
    [InlineData("7.60", "seven point six zero", "seven point six zero")]
    [InlineData("12.50", "twelve point five zero", "one two point five zero")]
    [InlineData("15", "fifteen", "one five")]
    [InlineData("50", "fifty", "five zero")]
    [InlineData("328", "three hundred twenty eight", "three two eight")]
    [InlineData("1100", "one thousand one hundred", "one one zero zero")]
    [InlineData("-40", "minus forty", "minus four zero")]
    [InlineData("0", "zero", "zero")]
    public void Every_digit_that_was_written_is_said(string value, string usual, string digits)
    {
        decimal number = decimal.Parse(value, CultureInfo.InvariantCulture);

        Assert.Equal(usual, SpokenNumber.Usual(number));
        Assert.Equal(digits, SpokenNumber.DigitByDigit(number));
    }
}
