using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Phrases;
using HandsFreeStartup.Speech.Recognising;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Speech.Tests.Understanding;

/// <summary>Whoever calls and is not understood sounds the same the second time.</summary>
public sealed class SaidAgainTests
{
    static readonly Expectation Asked = new([ExpectedReading.Of(Fields.Find("oxygen")!)], [CommandWord.Done, CommandWord.SkipStep, CommandWord.EmergencyStop, CommandWord.GasSmell], []);

    static Candidate Found(string words, double mean, double logProbability) =>
        new(new Ending(PhraseText.Read(words, Asked).Meanings[0]), words) { LogProbability = logProbability, BestLogProbability = logProbability, Tokens = 4, Mean = mean, Lowest = 2 * mean, End = -0.1 };

    static EarEvidence Ear(string free, params Candidate[] candidates) => new("ear", [.. candidates], free, -1, 0.01, IsNoise: false, FreeMean: -0.7);

    static FaintCall? FaintOf(params EarEvidence[] ears) => PhraseReader.Read(new Utterance([.. ears], ears[0].FreeText, 5), Asked).Faint;

    static FaintCall? Faint(string first, string second, string call, double ratio = -6) => FaintOf(Ear(first, Found(call, -1.5, ratio - 1)), Ear(second, Found(call, -1.5, ratio - 1)));

    /// <summary>Calls by synthesizers with accents at 5 dB of dishes or a tap, refused twice, as both ears read them.</summary>
    [Theory]
    [InlineData("it is on fire", "some five", "supply", "some hard", "some pipe", true)]
    [InlineData("gas leak", "draft me", "draft beer", "draft me", "copy", true)]
    [InlineData("gas smell", "just smell over here", "got to know the hear", "just smell over here", "just smell over here", true)]
    [InlineData("it smells of gas", "a student", "excuse me", "its new to the guy", "its merely a maca", false)]
    public void A_call_that_was_refused_twice_is_found_where_it_sounded_alike(string call, string first, string firstToo, string second, string secondToo, bool isFound)
    {
        FaintCall before = Faint(first, firstToo, call)!, now = Faint(second, secondToo, call)!;

        Assert.Equal(isFound, SaidAgain.Call(before, now) is not null);
        Assert.Equal(isFound ? (PhraseText.Typed(call, Asked) as Phrase.Command)!.Word : null, SaidAgain.Call(before, now)?.Word);
    }

    [Fact]
    public void A_call_that_one_ear_read_may_be_said_again_though_it_found_none_by_its_words()
    {
        FaintCall? before = FaintOf(Ear("help gas leak", Found("done", -5, -21)) with { FreeMean = -0.9 }, Ear("things to get me", Found("done", -4, -17)));

        Assert.Equal((CommandWord.GasSmell, true), (Assert.Single(before!.Calls).Word, before.IsByItself));
        Assert.NotNull(SaidAgain.Call(before, before));
    }

    [Fact]
    public void Another_danger_is_not_the_same_call_though_it_sounds_alike() =>
        Assert.Null(SaidAgain.Call(Faint("some five", "some five", "it is on fire")!, Faint("some five", "some five", "gas smell")!));

    /// <summary>In the middle of what others say nothing around the call is alike.</summary>
    [Fact]
    public void The_same_way_to_call_among_other_words_is_the_same_call()
    {
        FaintCall first = Faint("and then he said theres a gas leak in the", "so be it", "emergency stop")!, same = Faint("no theres a gas leak we came home at six", "oh well", "stop everything")!;
        FaintCall other = Faint("now what was it with the gas leak there", "oh well", "it is on fire")!;

        Assert.Null(SaidAgain.Call(first, same));
        Assert.True(SaidAgain.IsSame(first, same));
        Assert.False(SaidAgain.IsSame(first, other));
    }

    /// <summary>A reading or a command that is refused is said again alike, too: there something else that can be said is likelier than the call.</summary>
    [Fact]
    public void Where_something_else_that_can_be_said_is_likelier_nothing_is_a_call() =>
        Assert.Null(FaintOf(Ear("skip it", Found("skip step", -0.9, -3), Found("stop everything", -1.2, -5)), Ear("skip it", Found("skip step", -0.9, -3), Found("stop everything", -1.2, -5))));

    [Theory]
    [InlineData("gas leak check", "gas leak")]
    [InlineData("there is no gas leak here", "there is a gas leak")]
    [InlineData("we have a flyer", "we have a fire")]
    [InlineData("high fire", "it is on fire")]
    public void Words_that_must_not_stop_are_no_faint_call_by_any_ear(string read, string call)
    {
        Assert.Null(FaintOf(Ear(read, Found(call, -1, -5))));
        Assert.Null(FaintOf(Ear("something else", Found(call, -1, -5)), Ear(read, Found(call, -1, -5))));
    }

    [Fact]
    public void What_is_far_from_the_sound_or_from_another_kind_of_utterance_is_no_faint_call()
    {
        Assert.Null(Faint("two thousand", "two thousand", "gas leak", ratio: -15));
        Assert.Null(FaintOf(Ear("(knocking)", Found("gas leak", -1, -5)) with { IsNoise = true }));
        Assert.Null(PhraseReader.Read(new Utterance([Ear("draft me", Found("gas leak", -1.5, -7))], "draft me", 5), Asked with { Over = "Say the draft." }).Faint);
        Assert.False(PhraseReader.Read(new Utterance([Ear("draft me", Found("gas leak", -1.5, -7))], "draft me", 5), new Expectation([], [], [])).Faint!.IsByItself);
    }

    [Property(MaxTest = 300)]
    public Property Which_was_first_does_not_matter_and_the_same_is_always_alike() => Prop.ForAll(
        (from first in Readings from second in Readings select (first, second)).ToArbitrary(),
        said =>
        {
            FaintCall one = Faint(said.first, "so", "gas leak")!, other = Faint(said.second, "no more", "gas leak")!;
            return SaidAgain.Call(one, other) is null == SaidAgain.Call(other, one) is null && SaidAgain.Call(one, one) is not null;
        });

    static Gen<string> Readings => Gen.Elements("got", "a", "leak", "me", "draft", "beer", "room", "the").ListOf().Select(words => string.Join(' ', words)).Where(words => words.Length > 0);
}
