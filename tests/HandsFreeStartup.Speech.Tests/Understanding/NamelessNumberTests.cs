using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Phrases;
using HandsFreeStartup.Speech.Recognising;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Speech.Tests.Understanding;

/// <summary>Numbers without a name and ranges are heard only where they were asked for.</summary>
public sealed class NamelessNumberTests
{
    static readonly Field Manifold = Fields.Find(FieldId.ManifoldPressure)! with { FewestDecimals = 0 };
    static readonly Expectation Nothing = new([], [CommandWord.SkipStep], []);
    static readonly Expectation Number = Nothing with { Numbers = [Manifold] };
    static readonly Expectation Range = Nothing with { Ranges = [Manifold] };

    [Theory]
    [InlineData("three point two to three point eight", "manifold_pressure=3.2..3.8")]
    [InlineData("3.2 to 3.8 inches", "manifold_pressure=3.2..3.8")]
    [InlineData("three to four inches of water", "manifold_pressure=3..4")]
    [InlineData("three point eight to three point two", "")]
    [InlineData("three point two to three point two", "")]
    [InlineData("three point two to sixteen", "")]
    [InlineData("three point two to", "")]
    [InlineData("three point two", "")]
    public void A_range_is_two_numbers_of_which_the_second_is_higher(string words, string meaning) =>
        Assert.Equal(meaning, string.Join(" or ", PhraseText.Read(words, Range).Meanings));

    [Theory]
    [InlineData("three point two inches", "manifold_pressure=3.2")]
    [InlineData("three", "manifold_pressure=3")]
    [InlineData("sixteen inches", "")]
    [InlineData("three point two percent", "")]
    [InlineData("skip step", "command=skip step")]
    public void A_number_needs_no_name_where_one_is_asked_for(string words, string meaning)
    {
        Assert.Equal(meaning, string.Join(" or ", PhraseText.Read(words, Number).Meanings));
        Assert.Equal(words == "skip step", PhraseText.Read(words, Nothing).Meanings.Length > 0);
        Assert.NotEqual(Number.Key, Nothing.Key);
        Assert.NotEqual(Number.Key, Range.Key);
    }

    [Theory]
    [InlineData("three point two", PhraseEnd.Open)]
    [InlineData("three point two to three point eight", PhraseEnd.Open)]
    [InlineData("three point two to three point eight inches", PhraseEnd.Closed)]
    public void A_range_is_waited_for_until_its_unit_ends_it(string words, PhraseEnd end) => Assert.Equal(end, PhraseEnds.Of(words, Range));

    /// <summary>However clear it was, two numbers at once are asked.</summary>
    [Fact]
    public void A_range_is_never_taken_without_asking()
    {
        Candidate clear = new(new Ending(new Meaning.Range(Manifold, 3.2m, 3.8m)), "three point two to three point eight") { LogProbability = -0.01, BestLogProbability = -0.01, Tokens = 8, Mean = -0.001, Lowest = -0.01, End = -0.01 };
        EarEvidence ear = new("a", [clear], clear.Words, -0.01, 0.01, IsNoise: false);
        EarEvidence unclear = ear with { Candidates = [clear with { Mean = -3 }] };

        Phrase phrase = PhraseReader.Read(new Utterance([ear, ear], clear.Words, 20), Range);

        Assert.Equal((3.2m, 3.8m, Certainty.Amber), (Assert.IsType<Phrase.Range>(phrase).Lower, ((Phrase.Range)phrase).Upper, phrase.Evidence.Certainty));
        Assert.Equal(Wanted.OtherEars, PhraseReader.AsksForMore(new Utterance([ear], clear.Words, 20), Range));
        Assert.IsType<Phrase.NotUnderstood>(PhraseReader.Read(new Utterance([unclear, unclear], clear.Words, 20), Range));
    }
}
