using System.Globalization;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Phrases;

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
    [InlineData("oxygen 7", "needs one decimal: 7.0.")]
    [InlineData("draft 0.2", "needs two to three decimals: 0.20.")]
    [InlineData("inlet pressure 7", "needs one to two decimals: 7.0.")]
    [InlineData("oxygen 7.65", "has one decimal, not 2")]
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
        Assert.Equal(CommandWord.EmergencyStop, Assert.IsType<Phrase.Command>(PhraseText.Typed("emergency stop", step)).Word);
    }

    [Fact]
    public void In_the_room_walk_monoxide_is_the_rooms()
    {
        Expectation walk = new([new ExpectedReading(Fields.Find("room_co")!, ["monoxide", "C O"])], [], []);
        Assert.Equal("room_co=4", Assert.IsType<Phrase.Reading>(PhraseText.Typed("monoxide four", walk)) is var phrase ? $"{phrase.Field.Id}={phrase.Value}" : "");
    }

    [Theory]
    [InlineData("room monoxide 300")]
    [InlineData("Room monoxide, three hundred.")]
    [InlineData("room monoxide over range")]
    public void Carbon_monoxide_in_the_room_is_a_value_even_in_free_speech(string words)
    {
        Expectation note = new([], [], [], Dictation: true);
        Assert.Equal("room_co", Assert.IsType<Phrase.Reading>(PhraseText.Typed(words, note)).Field.Id);
        Assert.Equal(Certainty.Amber, Assert.IsType<Phrase.Reading>(PhraseText.Dictated(new Evidence(words, Channel.Voice, Certainty.Green))).Evidence.Certainty);
    }

    [Theory]
    [InlineData("the room monoxide was 300 last year")]
    [InlineData("room monoxide")]
    [InlineData("oxygen 7.6")]
    public void A_note_that_tells_of_a_value_is_a_note(string words) =>
        Assert.IsType<Phrase.Dictation>(PhraseText.Typed(words, new Expectation([], [], [], Dictation: true)));

    [Fact]
    public void Dictation_takes_any_words_but_hears_the_safety_phrases()
    {
        Expectation note = new([], [], [], Dictation: true);
        Assert.Equal("done with the left side", Assert.IsType<Phrase.Dictation>(PhraseText.Typed("done with the left side", note)).Evidence.Words);
        Assert.IsType<Phrase.Dictation>(PhraseText.Typed("done", note));
        Assert.Equal(CommandWord.GasSmell, Assert.IsType<Phrase.Command>(PhraseText.Typed("gas smell", note)).Word);
    }

    [Fact]
    public void Every_command_and_every_name_of_every_field_can_be_typed()
    {
        foreach (Command command in Commands.All)
        {
            Assert.Equal(command.Word, Assert.IsType<Phrase.Command>(PhraseText.Typed(command.Id, Expectation.Open)).Word);
        }

        Expectation every = Expectation.Open with { Readings = [.. Fields.All.Select(ExpectedReading.Of)] };
        foreach (Field field in Fields.All)
        {
            foreach (string name in field.SpokenNames)
            {
                decimal value = Math.Round(field.UsualHighest, field.FewestDecimals) + new decimal(0, 0, 0, false, (byte)field.FewestDecimals);
                Phrase.Reading reading = Assert.IsType<Phrase.Reading>(PhraseText.Typed($"{name} {value.ToString(CultureInfo.InvariantCulture)} {field.Unit.Spoken[0]}", every));
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

    [Fact]
    public void A_step_is_named_in_either_order_and_only_where_somebody_can_go_to_it()
    {
        Expectation offered = new Expectation([], [], []) { Steps = SpokenStep.Of([("high", "Combustion, high fire"), ("co", "CO in the room")]) };

        Assert.All(["go to combustion, high fire", "Go to high fire combustion."], line => Assert.Equal("high", Assert.IsType<Phrase.Jump>(PhraseText.Typed(line, offered)).Step.Id));
        Assert.Equal("co", Assert.IsType<Phrase.Jump>(PhraseText.Typed("go to CO in the room", offered)).Step.Id);
        Assert.Equal("No step of this furnace has that title.", Assert.IsType<Phrase.NotUnderstood>(PhraseText.Typed("go to combustion", offered)).Evidence.Why);
        Assert.IsType<Phrase.NotUnderstood>(PhraseText.Typed("go to high fire combustion", Expectation.Open));
    }

    [Theory]
    [InlineData("monoxide 1,2", "comma")]
    [InlineData("monoxide 1,200", "comma")]
    [InlineData("air temperature 6,7", "comma")]
    [InlineData("oxygen 7,6", "comma")]
    [InlineData("oxygen 7,6 %", "comma")]
    [InlineData("monoxide 3-5", "single number")]
    [InlineData("monoxide 3/5", "fraction")]
    [InlineData("monoxide 2½", "fraction")]
    [InlineData("air temperature ²96", "raised")]
    [InlineData("air temperature 96²", "raised")]
    [InlineData("oxygen <8.4", "bound")]
    [InlineData("oxygen > 8.4", "bound")]
    [InlineData("oxygen ~8.4", "bound")]
    [InlineData("monoxide 1e2", "exponent")]
    [InlineData("monoxide 12e", "not a number")]
    [InlineData("monoxide １２", "another script")]
    [InlineData("monoxide ١٢", "another script")]
    [InlineData("oxygen 7.", "no decimals after its point")]
    [InlineData("oxygen 7.6.1", "two points")]
    [InlineData("monoxide 1 7", "gap")]
    [InlineData("monoxide 007", "zeros that mean nothing")]
    [InlineData("draft --0.02", "two signs")]
    [InlineData("draft -", "number is missing")]
    [InlineData("draft -banana", "not a number")]
    [InlineData("monoxide seven 6", "not a number")]
    [InlineData("monoxide 7 six", "not a number")]
    [InlineData("monoxide $12", "not a number")]
    [InlineData("monoxide 12!", "not a number")]
    [InlineData("monoxide 12?", "not a number")]
    [InlineData("monoxide 12 ppm or so", "not a number")]
    [InlineData("monoxide 1\u200B2", "not a number")]
    [InlineData("monoxide ½", "fraction")]
    [InlineData("CO2 7,6", "comma")]
    [InlineData("CO2 76 8", "gap")]
    [InlineData("line voltage ,21", "comma")]
    [InlineData("monoxide,5", "comma")]
    [InlineData("O2.6%", "can be the beginning of the number")]
    [InlineData("O2,6.5", "can be the beginning of the number")]
    [InlineData("O two point six", "can be the beginning of the number")]
    [InlineData("CO 2.6", "can be the beginning of the number")]
    [InlineData("CO2.6", "can be the beginning of the number")]
    [InlineData("C O two decimal six", "can be the beginning of the number")]
    [InlineData("CO2", "Carbon dioxide: the number is missing.")]
    [InlineData("CO 2", "Carbon dioxide: the number is missing. If the figure was meant as a number, type the name in words before it.")]
    [InlineData("C O two", "Carbon dioxide: the number is missing.")]
    [InlineData("done ½", "typed alone")]
    [InlineData("done 7", "no name or command")]
    [InlineData("yes?", "typed alone")]
    public void A_number_that_is_not_typed_plainly_is_never_guessed(string line, string why)
    {
        Phrase.NotUnderstood refused = Assert.IsType<Phrase.NotUnderstood>(PhraseText.Typed(line, Answering));
        Assert.Contains(why, refused.Evidence.Why, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("draft \u20110.02")]
    [InlineData("draft \u20120.02")]
    [InlineData("draft \u20100.02")]
    [InlineData("draft \u20140.02")]
    [InlineData("draft \u22120.02")]
    [InlineData("draft \uFF0D0.02")]
    [InlineData("draft - 0.02")]
    [InlineData("draft minus 0.02")]
    [InlineData("draft: -.02")]
    [InlineData("draft=-0.02 in. w.c.")]
    [InlineData("draft -0.02 inches of water")]
    public void A_sign_is_never_lost_whatever_dash_it_is_typed_as(string line) =>
        Assert.Equal(-0.02m, Assert.IsType<Phrase.Reading>(PhraseText.Typed(line, Expectation.Open)).Value);

    [Theory]
    [InlineData("CO 12", "flue_co", "12")]
    [InlineData("co 12ppm", "flue_co", "12")]
    [InlineData("C.O. 12", "flue_co", "12")]
    [InlineData("C O 12", "flue_co", "12")]
    [InlineData("CO2 7.6", "carbon_dioxide", "7.6")]
    [InlineData("CO2 7.6%", "carbon_dioxide", "7.6")]
    [InlineData("O2: 7.60", "oxygen", "")]
    [InlineData("room monoxide 4 parts per million", "room_co", "4")]
    [InlineData("oxygen, 7.6 %", "oxygen", "7.6")]
    [InlineData("Oxygen = 7.6", "oxygen", "7.6")]
    [InlineData("oxygen seven point six", "oxygen", "7.6")]
    [InlineData("oxygen seven point six percent.", "oxygen", "7.6")]
    [InlineData("flue temperature three twenty-eight", "flue_temperature", "328")]
    [InlineData("meter 121.0 s", "meter_time", "121.0")]
    public void Figures_and_words_are_both_typed_after_any_name_of_the_field(string line, string field, string value)
    {
        Phrase phrase = PhraseText.Typed(line, Expectation.Open);
        Assert.Equal((field, value), phrase is Phrase.Reading reading ? (reading.Field.Id, reading.Value.ToString(CultureInfo.InvariantCulture)) : (field, ""));
    }

    [Theory]
    [InlineData("monoxide 10000")]
    [InlineData("monoxide 12345.6")]
    [InlineData("CO 99999 ppm")]
    [InlineData("room monoxide 123456789012345678901234567890123456789012345678901234567890")]
    [InlineData("monoxide over range")]
    [InlineData("room monoxide over range.")]
    public void Carbon_monoxide_above_its_range_is_entered_as_over_and_never_refused(string line) =>
        Assert.True(Assert.IsType<Phrase.Reading>(PhraseText.Typed(line, Expectation.Open)).IsOver);

    [Theory]
    [InlineData("monoxide 1,2", "or \"over range\"")]
    [InlineData("monoxide >9999", "or \"over range\"")]
    [InlineData("monoxide 10,000", "comma")]
    [InlineData("monoxide -1", "lies between 0 and 9999 ppm")]
    [InlineData("monoxide 12.5", "whole number")]
    public void Carbon_monoxide_that_is_not_typed_plainly_is_refused_and_tells_of_over_range(string line, string why) =>
        Assert.Contains(why, Assert.IsType<Phrase.NotUnderstood>(PhraseText.Typed(line, Expectation.Open)).Evidence.Why, StringComparison.Ordinal);

    [Fact]
    public void A_safety_phrase_is_heard_whatever_signs_are_typed_around_it() =>
        Assert.All(["GAS SMELL!!!", "  gas smell ...", "gas smell?", "<gas smell>", "EMERGENCY STOP!!1".TrimEnd('1'), "emergency-stop"], line =>
            Assert.True(Commands.Of(Assert.IsType<Phrase.Command>(PhraseText.Typed(line, new Expectation([], [], [], Dictation: true))).Word).IsSafetyPhrase, line));

    [Fact]
    public void A_line_longer_than_any_note_is_refused_with_what_is_taken()
    {
        Phrase.NotUnderstood refused = Assert.IsType<Phrase.NotUnderstood>(PhraseText.Typed(new string('x', 300_000), new Expectation([], [], [], Dictation: true)));
        Assert.Contains("longer than 4000 letters", refused.Evidence.Why, StringComparison.Ordinal);
        Assert.Empty(refused.Evidence.Words);
    }
}
