using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Phrases;
using HandsFreeStartup.Speech.Tests.Support;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Speech.Tests.Understanding;

/// <summary>What may follow after words: nothing legal, only a unit, or more of the number.</summary>
public sealed class PhraseEndTests
{
    static readonly Expectation Everything = Expectation.Open with { Answers = [AnswerWord.Confirm, AnswerWord.Yes, AnswerWord.No] };

    [Theory]
    [InlineData("next", PhraseEnd.Closed)]
    [InlineData("Yes.", PhraseEnd.Closed)]
    [InlineData("emergency stop", PhraseEnd.Closed)]
    [InlineData("oxygen seven point six percent", PhraseEnd.Closed)]
    [InlineData("Oxygen 7.6%.", PhraseEnd.Closed)]
    [InlineData("Manifold 3.5 inches", PhraseEnd.Closed)]
    [InlineData("oxygen seven point six", PhraseEnd.Complete)]
    [InlineData("Oxygen 7.6", PhraseEnd.Complete)]
    [InlineData("flue temperature three twenty eight", PhraseEnd.Complete)]
    [InlineData("Draft -0.025", PhraseEnd.Complete)]
    [InlineData("air temperature 45", PhraseEnd.Complete)]
    [InlineData("meter one", PhraseEnd.Open)]
    [InlineData("monoxide 45", PhraseEnd.Open)]
    [InlineData("meter 15", PhraseEnd.Open)]
    [InlineData("flue temperature three twenty", PhraseEnd.Open)]
    [InlineData("Flue temperature 320", PhraseEnd.Open)]
    [InlineData("monoxide three hundred", PhraseEnd.Open)]
    [InlineData("manifold three point five", PhraseEnd.Open)]
    [InlineData("line voltage one twenty", PhraseEnd.Open)]
    [InlineData("oxygen seven", PhraseEnd.Open)]
    [InlineData("oxygen seven point", PhraseEnd.Open)]
    [InlineData("draft minus", PhraseEnd.Open)]
    [InlineData("flue", PhraseEnd.Open)]
    [InlineData("is the dog still out in the yard", PhraseEnd.Open)]
    [InlineData("", PhraseEnd.Open)]
    public void Words_are_open_complete_or_closed(string words, PhraseEnd expected) => Assert.Equal(expected, PhraseEnds.Of(words, Everything));

    [Fact]
    public void Dictation_is_open_and_a_safety_phrase_in_it_closed()
    {
        Expectation note = new([], [], [], Dictation: true);
        Assert.Equal(PhraseEnd.Open, PhraseEnds.Of("next", note));
        Assert.Equal(PhraseEnd.Closed, PhraseEnds.Of("gas smell", note));
    }

    /// <summary>A legal number is never called complete while it is the beginning of a longer legal one.</summary>
    [Fact]
    public void No_complete_number_is_the_beginning_of_a_longer_one()
    {
        int checkedBeginnings = 0;
        foreach (Field field in Fields.All)
        {
            string name = field.SpokenNames[0];
            foreach (decimal value in FieldValues.All(field).Where((_, i) => i % 7 == 0))
            {
                foreach (string spelling in SpokenNumbers.AllSpellings(value, field))
                {
                    string[] words = spelling.Split(' ');
                    foreach (string beginning in Enumerable.Range(1, words.Length - 1).Select(count => string.Join(' ', words[..count])).Where(part => !SpokenNumbers.Parse(part, field).IsEmpty))
                    {
                        Assert.True(PhraseEnds.Of($"{name} {beginning}", Everything) == PhraseEnd.Open, $"{name} {beginning} ... {spelling}");
                        checkedBeginnings++;
                    }
                }
            }
        }

        Assert.True(checkedBeginnings > 1000, $"only {checkedBeginnings}");
    }
}
