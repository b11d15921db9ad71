using System.Globalization;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Phrases;
using HandsFreeStartup.Speech.Tests.Support;

namespace HandsFreeStartup.Speech.Tests.Understanding;

/// <summary>The ways of speaking are those agreed for this product (common practice, no source); the odd cases follow everyday and radio English.</summary>
public sealed class SpokenNumbersTests
{
    [Theory]
    [InlineData("oxygen", "seven point six", "7.6")]
    [InlineData("oxygen", "seven decimal six", "7.6")]
    [InlineData("oxygen", "fife point niner", "5.9")]
    [InlineData("oxygen", "oh point six", "0.6")]
    [InlineData("oxygen", "point six", "0.6")]
    [InlineData("oxygen", "seven six", "7.6")]
    [InlineData("oxygen", "seventeen six", "17.6")]
    [InlineData("oxygen", "twenty point nine", "20.9")]
    [InlineData("oxygen", "7.6", "7.6")]
    [InlineData("draft", "point oh two", "0.02")]
    [InlineData("draft", "minus point zero two", "-0.02")]
    [InlineData("draft", "negative zero point oh two five", "-0.025")]
    [InlineData("draft", "-0.02", "-0.02")]
    [InlineData("draft", "−.020", "-0.020")]
    [InlineData("flue_temperature", "three twenty eight", "328")]
    [InlineData("flue_temperature", "three hundred twenty eight", "328")]
    [InlineData("flue_temperature", "three hundred and twenty eight", "328")]
    [InlineData("flue_temperature", "Three-Hundred Twenty-Eight", "328")]
    [InlineData("flue_temperature", "three two eight", "328")]
    [InlineData("flue_temperature", "three oh five", "305")]
    [InlineData("flue_temperature", "328", "328")]
    [InlineData("flue_temperature", "a hundred and five", "105")]
    [InlineData("meter_time", "one oh five", "105")]
    [InlineData("meter_time", "one forty five", "145")]
    [InlineData("meter_time", "forty five point two", "45.2")]
    [InlineData("flue_co", "eleven hundred", "1100")]
    [InlineData("flue_co", "twenty one hundred and eleven", "2111")]
    [InlineData("flue_co", "eleven fifty", "1150")]
    [InlineData("flue_co", "twelve oh five", "1205")]
    [InlineData("flue_co", "two thousand and five", "2005")]
    [InlineData("flue_co", "two thousand one hundred and five", "2105")]
    [InlineData("flue_co", "1,100", "1100")]
    [InlineData("flue_co", "zero", "0")]
    [InlineData("manifold_pressure", "three point five zero", "3.50")]
    [InlineData("manifold_pressure", "three point fifty", "3.50")]
    [InlineData("manifold_pressure", "three fifty", "3.50")]
    [InlineData("manifold_pressure", "three point twenty five", "3.25")]
    [InlineData("air_temperature", "minus five", "-5")]
    [InlineData("supply_static", "zero point four one", "0.41")]
    public void Words_mean_one_number_with_its_decimals(string field, string words, string expected)
    {
        SpokenNumber only = Assert.Single(SpokenNumbers.Parse(words, Fields.Find(field)!));
        Assert.Equal(expected, only.Value.ToString(CultureInfo.InvariantCulture));
    }

    [Theory]
    [InlineData("manifold_pressure", "one one two", "1.12 11.2")]
    [InlineData("inlet_pressure", "one two five", "1.25 12.5")]
    public void Words_that_mean_two_numbers_give_both(string field, string words, string expected) =>
        Assert.Equal(expected, string.Join(' ', SpokenNumbers.Parse(words, Fields.Find(field)!).Select(number => number.Value).Order().Select(value => value.ToString(CultureInfo.InvariantCulture))));

    [Theory]
    [InlineData("oxygen", "seven", "a bare whole number has lost its tail")]
    [InlineData("oxygen", "seven point", "the decimal is missing")]
    [InlineData("oxygen", "twenty one point zero", "above the range")]
    [InlineData("oxygen", "seven point six five", "too many decimals")]
    [InlineData("oxygen", "minus seven point six", "no sign here")]
    [InlineData("oxygen", "seventy six", "out of range, and nobody means 7.6 by it")]
    [InlineData("oxygen", "point", "no digits")]
    [InlineData("flue_temperature", "oh", "a lone oh is no number")]
    [InlineData("flue_temperature", "three hundred and", "unfinished")]
    [InlineData("flue_temperature", "three twenty eight point six", "no decimals here")]
    [InlineData("flue_temperature", "twenty hundred", "nobody says so")]
    [InlineData("flue_temperature", "nine hundred one", "above the range")]
    [InlineData("flue_temperature", "thirty twenty", "above the range")]
    [InlineData("flue_temperature", "five thousand", "above the range")]
    [InlineData("flue_co", "hundred thousand", "no instrument shows it")]
    [InlineData("draft", "point five one", "above the range")]
    [InlineData("draft", "point two", "too few decimals")]
    [InlineData("oxygen", "", "nothing")]
    [InlineData("oxygen", "seven point banana", "no number word")]
    public void Words_that_are_no_legal_number_of_the_field_give_none(string field, string words, string because) =>
        Assert.True(SpokenNumbers.Parse(words, Fields.Find(field)!).IsEmpty, because);

    [Fact]
    public void A_left_out_point_is_marked_and_a_spoken_one_is_not()
    {
        Assert.True(Assert.Single(SpokenNumbers.Parse("seven six", Fields.Find("oxygen")!)).PointImplied);
        Assert.False(Assert.Single(SpokenNumbers.Parse("seven point six", Fields.Find("oxygen")!)).PointImplied);
    }

    [Theory]
    [InlineData("7.60", "seven point six zero", "seven point six zero")]
    [InlineData("-0.02", "minus zero point zero two", "minus zero point zero two")]
    [InlineData("328", "three hundred twenty eight", "three two eight")]
    [InlineData("15", "fifteen", "one five")]
    [InlineData("0", "zero", "zero")]
    [InlineData("2105", "two thousand one hundred five", "two one zero five")]
    public void The_voice_says_a_number_whole_and_digit_by_digit(string value, string whole, string digits)
    {
        decimal number = decimal.Parse(value, CultureInfo.InvariantCulture);
        Assert.Equal(whole, SpokenNumbers.Say(number));
        Assert.Equal(digits, SpokenNumbers.SayDigits(number));
    }

    public static TheoryData<string> FieldIds => [.. Fields.All.Select(each => each.Id)];

    [Theory]
    [MemberData(nameof(FieldIds))]
    public void Every_value_in_every_way_of_speaking_is_read_back_as_itself(string id)
    {
        Field field = Fields.Find(id)!;
        foreach (decimal value in FieldValues.All(field))
        {
            foreach (string words in SpokenNumbers.AllSpellings(value, field).Append(SpokenNumbers.Say(value)).Append(SpokenNumbers.SayDigits(value)).Append(value.ToString(CultureInfo.InvariantCulture)))
            {
                var read = SpokenNumbers.Parse(words, field);
                Assert.True(read.Any(number => number.Value == value && number.Value.Scale == value.Scale), $"{field.Id} {value}: \"{words}\" gave [{string.Join(' ', read)}]");
                Assert.True(read.Length == 1 || read.All(number => number.PointImplied), $"{field.Id} {value}: \"{words}\" is ambiguous: [{string.Join(' ', read)}]");
            }
        }
    }

    [Theory]
    [MemberData(nameof(FieldIds))]
    public void Nothing_outside_range_or_decimals_is_ever_read(string id)
    {
        Field field = Fields.Find(id)!;
        Random random = new(7);
        string[] vocabulary = [.. NumberWord.All.Select(word => word.Text)];
        int read = 0;
        for (int i = 0; i < 20_000; i++)
        {
            string words = string.Join(' ', Enumerable.Range(0, random.Next(1, 6)).Select(_ => vocabulary[random.Next(vocabulary.Length)]));
            foreach (SpokenNumber number in SpokenNumbers.Parse(words, field))
            {
                read++;
                Assert.True((field.IsPossible(number.Value) || field.MayBeOver && number.Value > field.Highest) && number.Value.Scale >= field.FewestDecimals && number.Value.Scale <= field.MostDecimals, $"\"{words}\" gave {number.Value}");
            }
        }

        Assert.True(read > 20, $"only {read} of the random texts were numbers: the check would be empty");
    }
}
