using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Speech.Speaking;

namespace HandsFreeStartup.Speech.Tests.Speaking;

/// <summary>Text that somebody wrote, taken into parts where it comes in, as the voice says it.</summary>
public sealed class WrittenWordsTests
{
    [Theory]
    [InlineData("Draft -0.02 in. w.c.", "Draft minus zero point zero two inches")]
    [InlineData("Oxygen 7.6 %", "Oxygen seven point six percent")]
    [InlineData("Oxygen 7.6%", "Oxygen seven point six percent")]
    [InlineData("CO in flue: 12 ppm.", "C O in flue: twelve P P M.")]
    [InlineData("O2 7.60 %, CO2 7.5 %", "O two seven point six zero percent, C O two seven point five percent")]
    [InlineData("CO₂ and O₂", "C O two and O two")]
    [InlineData("Flue temperature 328 °F", "Flue temperature three hundred twenty eight degrees")]
    [InlineData("Set 3.2–3.8 in. w.c.", "Set three point two to three point eight inches")]
    [InlineData("Set 3.2-3.8 in. w.c. again", "Set three point two to three point eight inches again")]
    [InlineData("from -5 to -3 Pa", "from minus five to minus three pascals")]
    [InlineData("CO air-free ≤ 400 ppm", "C O air-free at most four hundred P P M")]
    [InlineData("Flame current 1.4 µA", "Flame current one point four microamps")]
    [InlineData("Line 120 V, control 24 V", "Line one hundred twenty volts, control twenty four volts")]
    [InlineData("One turn in 38 s", "One turn in thirty eight seconds")]
    [InlineData("1 s left", "one second left")]
    [InlineData("1 in. w.c.", "one inch")]
    [InlineData("Still 1 min; wait 8 min", "Still one minute; wait eight minutes")]
    [InlineData("Input 80,000 Btu/h", "Input eighty thousand B T U per hour")]
    [InlineData("-0.00 in. w.c.", "minus zero point zero zero inches")]
    [InlineData("'１２' and ١٢ are no digits here", "'１２' and ١٢ are no digits here")]
    [InlineData("99999999999999999999", "nine nine nine nine nine nine nine nine nine nine nine nine nine nine nine nine nine nine nine nine")]
    [InlineData("12345678 W", "one two three four five six seven eight W")]
    [InlineData("a \u0001 mark", "a mark")]
    [InlineData("-.02", "minus zero point zero two")]
    [InlineData("C.O. 17 at plate.12.jpg", "C.O. seventeen at plate.12.jpg")]
    [InlineData("(-0.02)", "(minus zero point zero two)")]
    [InlineData("40 CFR 50.8(a), the 8-hour value", "forty CFR fifty point eight(a), the eight-hour value")]
    [InlineData("Press F2 for done", "Press F2 for done")]
    [InlineData("Second stage - high fire", "Second stage, high fire")]
    [InlineData("How long is the COMPANY's 5 minutes?", "How long is the COMPANY's five minutes?")]
    [InlineData("ppm and °F and in. w.c. are units", "P P M and degrees and inches are units")]
    [InlineData("", "")]
    public void What_is_shown_becomes_what_a_voice_can_say(string shown, string said) => Assert.Equal(said, Said(shown));

    [Fact]
    public void What_is_already_words_stays_as_it_is()
    {
        const string said = "Draft minus zero point zero two inches, C O two, twelve P P M.";

        Assert.Equal(said, Said(said));
    }

    [Fact]
    public void Nothing_that_a_voice_stumbles_over_is_left_of_any_field_and_value()
    {
        foreach (Field field in Fields.All)
        {
            foreach (decimal value in (decimal[])[field.Lowest, field.Highest, decimal.Round((field.Lowest + field.Highest) / 2, field.MostDecimals)])
            {
                string said = Said(FormattableString.Invariant($"{field.Label}: {value} {field.Unit.Symbol}."));

                Assert.Matches("^[A-Za-z,:. ]+$", said);
                Assert.DoesNotMatch(@"\bCO\b|\bppm\b|w\.c\.", said);
                Assert.Contains(SpokenMessage.Value(value, field.Unit), said);
            }
        }
    }

    [Theory]
    [InlineData("Draft -0.02 in. w.c.")]
    [InlineData("Set 3.2–3.8 in. w.c. again, 80,000 Btu/h..")]
    [InlineData("")]
    public void What_was_written_is_shown_as_it_was_written(string written) => Assert.Equal(written, Message.Written(written).Shown);

    [Fact]
    public void No_number_is_looked_for_in_a_sentence_of_the_program() =>
        Assert.Equal("Oxygen 7.6 percent", SpokenMessage.Of("Oxygen 7.6 %"));

    static string Said(string written) => SpokenMessage.Of(Message.Written(written));

    [Theory]
    [InlineData(15, "one five degrees")]
    [InlineData(50, "five zero degrees")]
    public void A_doubtful_value_is_read_back_digit_by_digit(int value, string said) =>
        Assert.Equal(said, SpokenMessage.Value(value, Unit.Fahrenheit, digitByDigit: true));
}
