using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Phrases;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Speech.Tests.Understanding;

public sealed class OwnVoiceTests
{
    const string Prompt = "Smell for gas. Smell at the meter and near the floor. Caution: no switches. Do you smell gas?";

    static Phrase Heard(string words) => PhraseText.Typed(words, Expectation.Open);

    [Theory]
    [InlineData("smell at the meter and near the floor", true)]
    [InlineData("no switches", true)]
    [InlineData("oxygen seven point six", false)]
    [InlineData("hold the ladder please", false)]
    public void Words_of_the_prompt_are_an_echo(string words, bool isEcho) => Assert.Equal(isEcho, OwnVoice.MayBeEcho(Heard(words), Prompt));

    [Theory]
    [InlineData("room monoxide ninety", "Room monoxide, kitchen. Say room monoxide and the number.", false)]
    [InlineData("room monoxide ninety", "CO in the room (kitchen) 9 ppm. Pass (at most 9 ppm).", false)]
    [InlineData("room monoxide ninety", "Room monoxide 90 ppm? Confirm, or say no.", true)]
    [InlineData("room monoxide nineteen", "Room monoxide 90 ppm? Confirm, or say no.", true)]
    public void A_reading_is_an_echo_only_where_the_tool_says_a_number(string words, string said, bool isEcho) => Assert.Equal(isEcho, OwnVoice.MayBeEcho(Heard(words), said));

    [Theory]
    [InlineData("smell gas", true)]
    [InlineData("smell of gas", true)]
    [InlineData("I smell gas", false)]
    [InlineData("gas leak", false)]
    [InlineData("emergency stop", false)]
    [InlineData("there is a fire", false)]
    public void A_safety_phrase_counts_unless_the_prompt_itself_asks_for_it(string words, bool isEcho) => Assert.Equal(isEcho, OwnVoice.MayBeEcho(Heard(words), Prompt));

    /// <summary>The first was seen: of 1164 prompts it stopped the job.</summary>
    [Theory]
    [InlineData("bus number with one gas smell inches", true)]
    [InlineData("with one gas smell", false)]
    [InlineData("gas smell inches", false)]
    [InlineData("plus number with gas smell one decimal", false)]
    [InlineData("number with one gas smell say again", false)]
    [InlineData("I smell gas", false)]
    public void A_call_that_stands_where_the_tool_says_something_else_is_in_doubt(string words, bool isInDoubt)
    {
        const string Said = "You can say: manifold pressure plus number with one decimal (inches), room monoxide plus number, go back, say again.";
        Phrase call = Heard("gas smell") with { Evidence = Evidence.Typed(words) with { Score = -0.33 } };

        Assert.Equal(isInDoubt, OwnVoice.StandsForOwnWords(call, Said));
        Assert.False(OwnVoice.StandsForOwnWords(call with { Evidence = call.Evidence with { Score = -0.17 } }, Said));
    }
}
