using System.Globalization;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Speech.Tests.Understanding;

public sealed class PhraseTextTests
{
    static readonly Expectation Answering = Expectation.Open with { Answers = [AnswerWord.Confirm, AnswerWord.Yes, AnswerWord.No] };

    [Theory]
    [InlineData("oxygen 7.6", "oxygen=7.6")]
    [InlineData("Oxygen, seven point six percent.", "oxygen=7.6")]
    [InlineData("O2 7.6%", "oxygen=7.6")]
    [InlineData("O two five point zero", "oxygen=5.0")]
    [InlineData("CO2 8.1", "carbon_dioxide=8.1")]
    [InlineData("C O two eight point one", "carbon_dioxide=8.1")]
    [InlineData("CO 17 ppm", "flue_co=17")]
    [InlineData("C.O. 17", "flue_co=17")]
    [InlineData("carbon monoxide a hundred and five P P M", "flue_co=105")]
    [InlineData("room C O zero", "room_co=0")]
    [InlineData("stack temperature 328 °F", "flue_temperature=328")]
    [InlineData("draft -0.02", "draft=-0.02")]
    [InlineData("Draft minus point oh two inches of water", "draft=-0.02")]
    [InlineData("MANIFOLD 3.50 in. w.c.", "manifold_pressure=3.50")]
    [InlineData("flame current 4.2 microamps", "flame_current=4.2")]
    [InlineData("meter one twenty one seconds", "meter_time=121")]
    [InlineData("monoxide over range", "flue_co=over")]
    [InlineData("room monoxide over range", "room_co=over")]
    [InlineData("monoxide 9999", "flue_co=9999")]
    [InlineData("monoxide twelve thousand", "flue_co=over")]
    [InlineData("monoxide one zero zero zero zero", "flue_co=over")]
    [InlineData("monoxide 12500 ppm", "flue_co=over")]
    [InlineData("done", "command=done")]
    [InlineData("Disregard.", "command=disregard")]
    [InlineData("gas smell", "command=gas smell")]
    [InlineData("say again", "command=say again")]
    [InlineData("stand by", "command=stand by")]
    [InlineData("Go ahead!", "command=go ahead")]
    [InlineData("Confirm", "command=confirm")]
    [InlineData("affirm", "command=yes")]
    [InlineData("Affirmative.", "command=yes")]
    [InlineData("negative", "command=no")]
    public void A_line_means_what_it_says(string line, string expected) =>
        Assert.Equal(expected, Assert.Single(PhraseText.Read(line, Answering).Meanings).ToString());

    [Theory]
    [InlineData("", "Nothing was said.")]
    [InlineData("banana", "no name or command")]
    [InlineData("oxygen", "number is missing")]
    [InlineData("oxygen banana", "\"banana\" is not a number")]
    [InlineData("oxygen 76", "between 0 and 20.9 %")]
    [InlineData("oxygen 7", "needs 1 decimal.")]
    [InlineData("draft 0.2", "needs 2 to 3 decimals")]
    [InlineData("flue temperature 328.5", "whole number")]
    [InlineData("draft 0.02 volts", "entered in in. w.c., not in V")]
    [InlineData("flue temperature over range", "is not a number")]
    [InlineData("yes", "Nothing was asked")]
    [InlineData("negative", "Nothing was asked")]
    [InlineData("scratch that", "no name or command")]
    public void A_line_that_cannot_be_read_says_why(string line, string why)
    {
        Phrase.NotUnderstood refused = Assert.IsType<Phrase.NotUnderstood>(PhraseText.Typed(line, Expectation.Open));
        Assert.Contains(why, refused.Evidence.Why, StringComparison.Ordinal);
        Assert.Equal(Certainty.Red, refused.Evidence.Certainty);
    }

    [Theory]
    [InlineData("manifold one one two", "1.12", "11.2")]
    [InlineData("C O two seven six", "7.6", "276")]
    public void A_line_with_two_meanings_is_asked_and_names_both(string line, string one, string other)
    {
        Phrase.NotUnderstood refused = Assert.IsType<Phrase.NotUnderstood>(PhraseText.Typed(line, Expectation.Open));
        Assert.Contains(one, refused.Evidence.Why, StringComparison.Ordinal);
        Assert.Contains(other, refused.Evidence.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_typed_reading_keeps_its_trailing_zero_and_needs_no_confirmation()
    {
        Phrase.Reading reading = Assert.IsType<Phrase.Reading>(PhraseText.Typed("manifold 3.50", Expectation.Open));
        Assert.Equal("3.50", reading.Value.ToString(CultureInfo.InvariantCulture));
        Assert.Equal((Channel.Keys, Certainty.Green), (reading.Evidence.Channel, reading.Evidence.Certainty));
    }

    [Fact]
    public void What_is_not_expected_now_is_refused_but_a_safety_phrase_never()
    {
        Expectation step = new([ExpectedReading.Of(Fields.Find("draft")!)], [CommandWord.Done], []);
        Assert.IsType<Phrase.NotUnderstood>(PhraseText.Typed("oxygen 7.6", step));
        Assert.IsType<Phrase.NotUnderstood>(PhraseText.Typed("finish", step));
        Assert.Equal(CommandWord.EmergencyStop, Assert.IsType<Phrase.Order>(PhraseText.Typed("emergency stop", step)).Word);
    }

    [Fact]
    public void In_the_room_walk_monoxide_is_the_rooms()
    {
        Expectation walk = new([new ExpectedReading(Fields.Find("room_co")!, ["monoxide", "C O"])], [], []);
        Assert.Equal("room_co=4", Assert.IsType<Phrase.Reading>(PhraseText.Typed("monoxide four", walk)) is var phrase ? $"{phrase.Field.Id}={phrase.Value}" : "");
    }

    [Fact]
    public void Dictation_takes_any_words_but_hears_the_safety_phrases()
    {
        Expectation note = new([], [], [], Dictation: true);
        Assert.Equal("done with the left side", Assert.IsType<Phrase.Dictation>(PhraseText.Typed("done with the left side", note)).Evidence.Words);
        Assert.IsType<Phrase.Dictation>(PhraseText.Typed("done", note));
        Assert.Equal(CommandWord.GasSmell, Assert.IsType<Phrase.Order>(PhraseText.Typed("gas smell", note)).Word);
    }

    [Fact]
    public void Every_command_and_every_name_of_every_field_can_be_typed()
    {
        foreach (Command command in Commands.All)
        {
            Assert.Equal(command.Word, Assert.IsType<Phrase.Order>(PhraseText.Typed(command.Id, Expectation.Open)).Word);
        }

        foreach (Field field in Fields.All)
        {
            foreach (string name in field.SpokenNames)
            {
                decimal value = Math.Round(field.UsualHighest, field.FewestDecimals) + new decimal(0, 0, 0, false, (byte)field.FewestDecimals);
                Phrase.Reading reading = Assert.IsType<Phrase.Reading>(PhraseText.Typed($"{name} {value.ToString(CultureInfo.InvariantCulture)} {field.Unit.Spoken[0]}", Expectation.Open));
                Assert.Equal((field.Id, value), (reading.Field.Id, reading.Value));
            }
        }
    }

    [Fact]
    public void A_field_in_another_unit_is_read_in_that_unit_and_in_no_other()
    {
        Field field = FieldUnits.In(Fields.Find("manifold_pressure")!, Unit.Pascals);
        Expectation expectation = new([ExpectedReading.Of(field)], [], []);

        Assert.All(["manifold 872", "manifold pressure eight hundred seventy two pascals"], line =>
            Assert.Equal(872m, Assert.IsType<Phrase.Reading>(PhraseText.Typed(line, expectation)).Value));
        Assert.Contains("entered in Pa, not in in. w.c.", Assert.IsType<Phrase.NotUnderstood>(PhraseText.Typed("manifold 872 inches", expectation)).Evidence.Why, StringComparison.Ordinal);
    }

    [Fact]
    public void A_choice_is_made_by_its_words_or_as_it_is_kept_and_only_where_it_is_offered()
    {
        Expectation offered = new Expectation([], [], []) { Choices = [new SpokenChoice("II", "category two"), new SpokenChoice("gas-supplier", "gas supplier")] };

        Assert.Equal("gas-supplier", Assert.IsType<Phrase.Choice>(PhraseText.Typed("Gas supplier.", offered)).Value);
        Assert.Equal("II", Assert.IsType<Phrase.Choice>(PhraseText.Typed("category two", offered)).Value);
        Assert.Equal("II", Assert.IsType<Phrase.Choice>(PhraseText.Typed("ii", offered)).Value);
        Assert.IsType<Phrase.NotUnderstood>(PhraseText.Typed("gas supplier", Expectation.Open));
    }
}
