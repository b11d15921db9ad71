using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Phrases;

namespace HandsFreeStartup.Speech.Tests.Understanding;

public sealed class SafetyWordsTests
{
    static readonly Expectation Note = new([], [], [], Dictation: true);

    public static TheoryData<string, CommandWord, bool> Ways()
    {
        TheoryData<string, CommandWord, bool> rows = [];
        foreach (SafetyWay way in SafetyWords.Ways)
        {
            rows.Add(way.Words, way.Word, way.IsFire);
        }

        return rows;
    }

    public static TheoryData<string> NotMeant() => [.. SafetyWords.NotMeant];

    [Fact]
    public void The_table_holds_both_phrases_fire_and_what_must_not_stop()
    {
        Assert.Contains(SafetyWords.Ways, way => way is { Word: CommandWord.EmergencyStop, IsFire: false });
        Assert.Contains(SafetyWords.Ways, way => way is { Word: CommandWord.EmergencyStop, IsFire: true });
        Assert.Contains(SafetyWords.Ways, way => way.Word == CommandWord.GasSmell);
        Assert.True(SafetyWords.NotMeant.Length > 50);
    }

    [Theory]
    [MemberData(nameof(Ways))]
    public void Each_way_stops_typed_whatever_else_may_be_entered(string words, CommandWord word, bool isFire)
    {
        foreach (Expectation expectation in new[] { Expectation.Open, Note, new Expectation([], [], []) })
        {
            Phrase.Command stop = Assert.IsType<Phrase.Command>(PhraseText.Typed($"{words.ToUpperInvariant()}!", expectation));
            Assert.Equal((word, isFire), (stop.Word, stop.IsFire));
        }
    }

    [Theory]
    [MemberData(nameof(NotMeant))]
    public void Words_of_the_trade_and_near_phrases_do_not_stop(string words)
    {
        foreach (string line in new[] { words, $"the {words}", $"{words} please" })
        {
            Assert.False(PhraseText.Typed(line, Expectation.Open) is Phrase.Command { Word: CommandWord.EmergencyStop or CommandWord.GasSmell }, line);
        }
    }

    [Theory]
    [InlineData("yes, I do smell gas", CommandWord.GasSmell, false)]
    [InlineData("I think I smell gas near the water heater", CommandWord.GasSmell, false)]
    [InlineData("hey, there's a gas leak down here by the union", CommandWord.GasSmell, false)]
    [InlineData("it smells of gas in here", CommandWord.GasSmell, false)]
    [InlineData("gas leak at the valve", CommandWord.GasSmell, false)]
    [InlineData("wait, gas leak down in the basement", CommandWord.GasSmell, false)]
    [InlineData("hey help, smell of gas at the meter outside", CommandWord.GasSmell, false)]
    [InlineData("oh wait, emergency stop down here", CommandWord.EmergencyStop, false)]
    [InlineData("I don't smell gas, no wait, now I can smell gas", CommandWord.GasSmell, false)]
    [InlineData("no, stop everything now", CommandWord.EmergencyStop, false)]
    [InlineData("oh no, emergency stop", CommandWord.EmergencyStop, false)]
    [InlineData("oh no gas smell", CommandWord.GasSmell, false)]
    [InlineData("oh no, a gas leak", CommandWord.GasSmell, false)]
    [InlineData("stop stop stop stop", CommandWord.EmergencyStop, false)]
    [InlineData("stop, stop, stop it", CommandWord.EmergencyStop, false)]
    [InlineData("emergency stop please", CommandWord.EmergencyStop, false)]
    [InlineData("emergency stop is", CommandWord.EmergencyStop, false)]
    [InlineData("emergency stop was", CommandWord.EmergencyStop, false)]
    [InlineData("help, there is a fire in the attic", CommandWord.EmergencyStop, true)]
    [InlineData("the furnace is on fire", CommandWord.EmergencyStop, true)]
    [InlineData("we have a fire and I smell gas", CommandWord.EmergencyStop, true)]
    [InlineData("we have a fire, call the fire department", CommandWord.EmergencyStop, true)]
    [InlineData("there's a fire, out, everybody out", CommandWord.EmergencyStop, true)]
    [InlineData("there is a fire, stop it", CommandWord.EmergencyStop, true)]
    [InlineData("that's a fire in the attic over there", CommandWord.EmergencyStop, true)]
    [InlineData("it's a fire, out of here, all of you", CommandWord.EmergencyStop, true)]
    [InlineData("that is a gas leak in the basement", CommandWord.GasSmell, false)]
    [InlineData("I think we've got a gas leak down here by the union", CommandWord.GasSmell, false)]
    [InlineData("there's a fire, chief", CommandWord.EmergencyStop, true)]
    [InlineData("we have a fire, inspector, out of here", CommandWord.EmergencyStop, true)]
    [InlineData("there is a fire, truck and all", CommandWord.EmergencyStop, true)]
    public void A_way_counts_with_words_around_it(string line, CommandWord word, bool isFire)
    {
        Phrase.Command stop = Assert.IsType<Phrase.Command>(PhraseText.Typed(line, Expectation.Open));
        Assert.Equal((word, isFire), (stop.Word, stop.IsFire));
    }

    [Theory]
    [InlineData("there is a gas leak check in the manual")]
    [InlineData("last winter there must have been some gas leak at the neighbors they told me")]
    [InlineData("do you smell gas")]
    [InlineData("the gas leak wait it was in the basement")]
    [InlineData("so wait they found some gas leak back then")]
    [InlineData("we don't have a gas leak")]
    [InlineData("no gas smell, oh no")]
    [InlineData("oh no, no gas smell")]
    [InlineData("oh no, there is no gas smell")]
    [InlineData("oh there is no gas smell")]
    [InlineData("oh, not a gas leak")]
    [InlineData("the customer has never smelled gas")]
    [InlineData("is there a fire extinguisher")]
    [InlineData("we have a fire department here for the inspection")]
    [InlineData("there's a fire station around the corner")]
    [InlineData("the burner is on high fire now")]
    [InlineData("that's a fire door")]
    [InlineData("and it's a fire extinguisher")]
    public void What_is_told_about_it_does_not_stop(string line) => Assert.IsType<Phrase.NotUnderstood>(PhraseText.Typed(line, Expectation.Open));

    [Theory]
    [InlineData("gas leak at the union, tightened and brushed again")]
    [InlineData("customer reported a gas smell last week")]
    [InlineData("we have a fire damper that is stuck")]
    [InlineData("no gas smell anywhere")]
    [InlineData("the tenant said that she can smell gas when it rains")]
    public void A_note_may_tell_of_a_smell_or_a_leak(string note) => Assert.IsType<Phrase.Dictation>(PhraseText.Typed(note, Note));

    /// <summary>No sign of a number is dropped where a note may be typed.</summary>
    [Theory]
    [InlineData("room monoxide 85", 85)]
    [InlineData("room monoxide 8,5", null)]
    [InlineData("room monoxide >5", null)]
    [InlineData("room CO 1/4", null)]
    [InlineData("room monoxide 5 %", null)]
    public void Carbon_monoxide_of_the_room_typed_into_a_note_is_read_as_anywhere_else_or_refused(string line, int? ppm)
    {
        Phrase phrase = PhraseText.Typed(line, Note);

        Assert.True(ppm is null ? phrase is Phrase.NotUnderstood { Evidence.Why.Length: > 0 } : phrase is Phrase.Reading { Value: var value } && value == ppm, $"{phrase}");
    }

    [Theory]
    [InlineData("help, I smell gas")]
    [InlineData("okay everybody stop stop stop")]
    [InlineData("I think I smell gas here")]
    [InlineData("I smell gas in here")]
    [InlineData("there is a fire in the furnace")]
    [InlineData("it smells of gas again")]
    public void But_nothing_keeps_a_call_out_of_the_way(string line) => Assert.IsType<Phrase.Command>(PhraseText.Typed(line, Note));
}
