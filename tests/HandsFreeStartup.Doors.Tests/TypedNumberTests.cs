using System.Globalization;
using System.Text;
using FsCheck.Xunit;

namespace HandsFreeStartup.Doors.Tests;

public sealed class TypedNumberTests
{
    [Theory]
    [InlineData("7.6", "7.6")]
    [InlineData("7.60", "7.60")]
    [InlineData(" 12 ", "12")]
    [InlineData(".02", "0.02")]
    [InlineData("0", "0")]
    [InlineData("-0.00", "0.00")]
    [InlineData("+3", "3")]
    [InlineData("-0.02", "-0.02")]
    [InlineData("- 0.02", "-0.02")]
    [InlineData("\u22120.02", "-0.02")]
    [InlineData("\u20100.02", "-0.02")]
    [InlineData("\u20110.02", "-0.02")]
    [InlineData("\u20130.02", "-0.02")]
    [InlineData("\u20140.02", "-0.02")]
    [InlineData("\uFF0D0.02", "-0.02")]
    [InlineData("\uFE630.02", "-0.02")]
    public void A_plain_number_is_read_with_its_decimals_and_every_dash_before_it_is_a_minus(string text, string number) =>
        Assert.Equal(number, TypedNumber.Read(text, out _)!.Value.ToString(CultureInfo.InvariantCulture));

    [Theory]
    [InlineData("", "missing")]
    [InlineData("   ", "missing")]
    [InlineData("1,2", "comma")]
    [InlineData("1,200", "comma")]
    [InlineData("1\uFF0C2", "comma")]
    [InlineData("1\u066B2", "comma")]
    [InlineData("3-5", "single number")]
    [InlineData("3 - 5", "single number")]
    [InlineData("3+5", "single number")]
    [InlineData("3\u20135", "single number")]
    [InlineData("3/5", "fraction")]
    [InlineData("2½", "fraction")]
    [InlineData("⅓", "fraction")]
    [InlineData("1\u20442", "fraction")]
    [InlineData("²96", "raised")]
    [InlineData("96²", "raised")]
    [InlineData("9₆", "raised")]
    [InlineData("\u207B3", "raised")]
    [InlineData("<8.4", "bound")]
    [InlineData(">8.4", "bound")]
    [InlineData("~8.4", "bound")]
    [InlineData("≤ 8.4", "bound")]
    [InlineData("1e5", "exponent")]
    [InlineData("1.5E-3", "exponent")]
    [InlineData("１２", "another script")]
    [InlineData("٧٫٦", "another script")]
    [InlineData("७", "another script")]
    [InlineData("--5", "two signs")]
    [InlineData("-+5", "two signs")]
    [InlineData("1.2.3", "two points")]
    [InlineData("7.", "no decimals after its point")]
    [InlineData(".", "no decimals after its point")]
    [InlineData("-", "no digits")]
    [InlineData("007", "zeros that mean nothing")]
    [InlineData("00.5", "zeros that mean nothing")]
    [InlineData("1 7", "gap")]
    [InlineData("1\u00A0200", "gap")]
    [InlineData("1_000", "not a number")]
    [InlineData("1'000", "not a number")]
    [InlineData("0x1F", "not a number")]
    [InlineData("NaN", "not a number")]
    [InlineData("Infinity", "not a number")]
    [InlineData("∞", "not a number")]
    [InlineData("banana", "not a number")]
    [InlineData("12%", "not a number")]
    [InlineData("$12", "not a number")]
    [InlineData("(12)", "not a number")]
    [InlineData("1\u200B2", "not a number")]
    [InlineData("1\u001b[31m2", "not a number")]
    [InlineData("1\u03002", "not a number")]
    public void Anything_else_is_refused_with_what_is_wrong_and_a_number_as_it_is_wanted(string text, string why)
    {
        Assert.Null(TypedNumber.Read(text, out string reason, "45.6"));
        Assert.Contains(why, reason, StringComparison.Ordinal);
        Assert.EndsWith("such as 45.6", reason, StringComparison.Ordinal);
        Assert.True(VisibleText.IsVisible(reason));
    }

    [Fact]
    public void A_number_with_more_digits_than_any_instrument_shows_is_refused_and_never_rounded()
    {
        Assert.Null(TypedNumber.Read("1234567890.12345678901234567890", out string reason));
        Assert.Contains("too many digits", reason, StringComparison.Ordinal);
        Assert.Null(TypedNumber.Read(new string('9', 1_000_000), out reason));
        Assert.InRange(reason.Length, 1, 200);
    }

    [Theory]
    [InlineData("9999", false)]
    [InlineData("9999.0", false)]
    [InlineData("10000", true)]
    [InlineData("+10000", true)]
    [InlineData("9999.1", true)]
    [InlineData("-10000", false)]
    [InlineData("10,000", false)]
    [InlineData("1e9", false)]
    [InlineData("00010000", false)]
    [InlineData("12345678901234567890123456789012345678901234567890", true)]
    [InlineData("0.0000000000000000000000000000000000000000000000001", false)]
    [InlineData("9.9999999999999999999999999999999999999999999999999", false)]
    [InlineData("１００００", false)]
    public void A_plain_number_of_any_size_is_known_to_be_above_a_bound(string text, bool isAbove) => Assert.Equal(isAbove, TypedNumber.IsAbove(text, 9999));

    [Theory]
    [InlineData("12", 12)]
    [InlineData("0", 0)]
    [InlineData("100", 100)]
    public void A_whole_number_within_its_bounds_is_read(string text, int number) => Assert.Equal(number, TypedNumber.ReadWhole(text, 0, 100, out _));

    [Theory]
    [InlineData("101")]
    [InlineData("-1")]
    [InlineData("1.0")]
    [InlineData("1,5")]
    [InlineData("99999999999")]
    public void A_whole_number_outside_its_bounds_or_with_decimals_is_refused(string text)
    {
        Assert.Null(TypedNumber.ReadWhole(text, 0, 100, out string reason));
        Assert.NotEmpty(reason);
    }

    [Property(MaxTest = 2000)]
    public void Whatever_is_read_is_exactly_what_stands_there(string? text)
    {
        string line = text ?? "";
        if (TypedNumber.Read(line, out string reason) is { } number)
        {
            Assert.Equal(number, decimal.Parse(line.Trim(), NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture));
        }
        else
        {
            Assert.NotEmpty(reason);
        }
    }

    [Property]
    public void A_number_written_out_is_read_back_as_it_is(int digits, byte scale)
    {
        decimal number = new(Math.Abs((long)digits) % int.MaxValue is var whole ? (int)whole : 0, 0, 0, digits < 0, (byte)(scale % 4));
        string text = number.ToString(CultureInfo.InvariantCulture);

        Assert.Equal(number == 0 ? text.TrimStart('-') : text, TypedNumber.Read(text, out _)!.Value.ToString(CultureInfo.InvariantCulture));
        Assert.Equal((double)number, TypedNumber.ReadDouble(text, out _));
    }

    [Theory]
    [InlineData("7.6", true)]
    [InlineData("-0.02", true)]
    [InlineData("+3", true)]
    [InlineData(".5", true)]
    [InlineData("-.5", true)]
    [InlineData("0", true)]
    [InlineData("0.1", true)]
    [InlineData("99999999999.999", true)]
    [InlineData("", false)]
    [InlineData("-", false)]
    [InlineData(".", false)]
    [InlineData("5.", false)]
    [InlineData("007", false)]
    [InlineData("-01.5", false)]
    [InlineData("1.2.3", false)]
    [InlineData(" 5", false)]
    [InlineData("- 5", false)]
    [InlineData("1e3", false)]
    [InlineData("/", false)]
    [InlineData(":", false)]
    [InlineData("1234567890.123456", false)]
    public void A_short_number_is_read_from_its_bytes_and_anything_else_is_left_to_others(string text, bool isShort)
    {
        Assert.Equal(isShort, TypedNumber.TryReadShort(Encoding.UTF8.GetBytes(text), out double value));
        Assert.Equal(isShort ? BitConverter.DoubleToInt64Bits(TypedNumber.ReadDouble(text, out _)!.Value) : 0, BitConverter.DoubleToInt64Bits(value));
    }

    [Fact]
    public void A_short_number_from_bytes_is_the_one_from_letters_to_the_last_bit()
    {
        const string letters = "0123456789.-+00159 e";
        Random random = new(15);
        int read = 0;
        for (int i = 0; i < 200_000; i++)
        {
            string text = string.Concat(Enumerable.Range(0, random.Next(1, 17)).Select(_ => letters[random.Next(random.Next(2) == 0 ? 11 : letters.Length)]));
            if (TypedNumber.TryReadShort(Encoding.UTF8.GetBytes(text), out double value))
            {
                read++;
                Assert.Equal(BitConverter.DoubleToInt64Bits(TypedNumber.ReadDouble(text, out _)!.Value), BitConverter.DoubleToInt64Bits(value));
            }
        }
        Assert.InRange(read, 20_000, 180_000);
    }
}
