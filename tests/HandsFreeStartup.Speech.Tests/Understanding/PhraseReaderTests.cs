using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Recognising;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Speech.Tests.Understanding;

/// <summary>The decision over evidence written by hand; the numbers are natural log-probabilities.</summary>
public sealed class PhraseReaderTests
{
    const double Quiet = 40;
    const double Noisy = 12;
    const double Loud = 8;

    static readonly Expectation Asked = Expectation.Open with { Answers = [AnswerWord.Yes, AnswerWord.No, AnswerWord.Confirm] };

    /// <summary>A well heard phrase; what it means is read from its words.</summary>
    static Candidate Heard(string words, double mean = -0.1, double end = -0.05, bool spelled = false)
    {
        Meaning meaning = Assert.Single(PhraseText.Read(words, Asked).Meanings);
        int tokens = words.Split(' ').Length + 1;
        return new Candidate(new Ending(meaning, NameSpelled: spelled), words, tokens * mean, tokens * mean, tokens, mean, Math.Min(2 * mean, end), end);
    }

    static EarEvidence Ear(params ImmutableArray<Candidate> candidates) =>
        new("ear", candidates, candidates[0].Words, candidates[0].BestLogProbability, 0.01, false);

    static Utterance Said(double signalToNoise, params ImmutableArray<EarEvidence> ears) => new(ears, ears[0].FreeText, signalToNoise);

    static Certainty CertaintyOf(Utterance utterance) => PhraseReader.Read(utterance, Asked).Evidence.Certainty;

    static string WhyOf(Utterance utterance) => PhraseReader.Read(utterance, Asked).Evidence.Why;

    static CommandWord? SafetyWordOf(Utterance utterance) =>
        PhraseReader.Read(utterance, Asked) is Phrase.Order { Word: CommandWord.EmergencyStop or CommandWord.GasSmell } order ? order.Word : null;

    static bool WantsOtherEars(Utterance alone) => PhraseReader.WantsOtherEars(alone, Asked, CertaintyPolicy.Shipped);

    [Fact]
    public void One_ear_is_enough_for_a_clear_reading_only_where_it_is_quiet()
    {
        EarEvidence clear = Ear(Heard("oxygen seven point six"));

        Assert.Equal(Certainty.Green, CertaintyOf(Said(Quiet, clear)));
        Assert.False(WantsOtherEars(Said(Quiet, clear)));
        Assert.Equal(Certainty.Amber, CertaintyOf(Said(Noisy, clear)));
        Assert.True(WantsOtherEars(Said(Noisy, clear)));
        Assert.Equal(Certainty.Green, CertaintyOf(Said(Noisy, clear, clear, clear)));
    }

    [Fact]
    public void In_noise_a_reading_must_stand_further_from_the_next_value_than_where_it_is_quiet()
    {
        // Five tokens: the ears together are 3 x 5 x 0.2 = 3 apart, 4.5 apart, and 12.
        EarEvidence close = Ear(Heard("oxygen five point four"), Heard("oxygen eight point four", -0.3));
        EarEvidence near = Ear(Heard("oxygen five point four"), Heard("oxygen eight point four", -0.4));
        EarEvidence far = Ear(Heard("oxygen five point four"), Heard("oxygen eight point four", -0.9));

        Assert.Equal(Certainty.Amber, CertaintyOf(Said(Quiet, close, close, close)));
        Assert.Equal(Certainty.Green, CertaintyOf(Said(Quiet, near, near, near)));
        Assert.Equal(Certainty.Amber, CertaintyOf(Said(Noisy, near, near, near)));
        Assert.Contains("not quiet enough", WhyOf(Said(Noisy, near, near, near)), StringComparison.Ordinal);
        Assert.Equal(Certainty.Green, CertaintyOf(Said(Noisy, far, far, far)));
    }

    [Fact]
    public void In_loud_noise_a_reading_must_also_be_heard_well()
    {
        EarEvidence well = Ear(Heard("oxygen five point four", -0.5)), badly = Ear(Heard("oxygen five point four", -1.5));

        Assert.Equal(Certainty.Green, CertaintyOf(Said(Noisy, well, well, well)));
        Assert.Equal(Certainty.Green, CertaintyOf(Said(Noisy, badly, badly, badly)));
        Assert.Equal(Certainty.Green, CertaintyOf(Said(Loud, well, well, well)));
        Assert.Equal(Certainty.Amber, CertaintyOf(Said(Loud, badly, badly, badly)));
    }

    [Fact]
    public void Carbon_monoxide_and_in_noise_a_single_word_are_asked_of_every_ear_however_clear()
    {
        Assert.True(WantsOtherEars(Said(Quiet, Ear(Heard("monoxide twelve")))));
        Assert.True(WantsOtherEars(Said(Noisy, Ear(Heard("done")))));
        Assert.False(WantsOtherEars(Said(Quiet, Ear(Heard("done")))));
        Assert.False(WantsOtherEars(Said(Noisy, Ear(Heard("go back")))));
    }

    [Fact]
    public void Two_of_three_ears_must_agree()
    {
        EarEvidence right = Ear(Heard("oxygen seven point six")), other = Ear(Heard("oxygen seven point five"), Heard("oxygen seven point six", -0.6));

        Assert.Equal(Certainty.Green, CertaintyOf(Said(Quiet, right, right, other)));
        Utterance divided = Said(Quiet, right, other, Ear(Heard("oxygen eleven point six"), Heard("oxygen seven point six", -0.6)));
        Assert.Equal(Certainty.Amber, CertaintyOf(divided));
        Assert.Contains("The ears heard different things.", WhyOf(divided), StringComparison.Ordinal);
    }

    [Fact]
    public void A_number_in_ty_must_stand_clear_of_its_twin_in_teen_but_not_the_other_way_round()
    {
        // Weight -0.4 + 2 = 1.6 beside -3.2 + 2 = -1.2: less than 6 apart, more than 1.
        EarEvidence ty = Ear(Heard("supply temperature 130"), Heard("supply temperature 113", -0.8));
        EarEvidence teen = Ear(Heard("supply temperature 113"), Heard("supply temperature 130", -0.8));

        Assert.Equal(Certainty.Amber, CertaintyOf(Said(Quiet, ty, ty, ty)));
        Assert.Contains("sounds like", WhyOf(Said(Quiet, ty, ty, ty)), StringComparison.Ordinal);
        Assert.Equal(Certainty.Green, CertaintyOf(Said(Quiet, teen, teen, teen)));
    }

    [Fact]
    public void A_reading_that_ends_before_its_sound_does_is_asked()
    {
        EarEvidence cut = Ear(Heard("supply temperature 100", end: -3.5));

        Assert.Equal(Certainty.Amber, CertaintyOf(Said(Quiet, cut, cut, cut)));
        Assert.Contains("It seems to go on.", WhyOf(Said(Quiet, cut, cut, cut)), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("C O zero", Certainty.Amber)]
    [InlineData("C O twelve", Certainty.Amber)]
    [InlineData("room C O zero", Certainty.Green)]
    [InlineData("room C O twelve", Certainty.Amber)]
    public void A_spelled_name_is_asked_before_two_digits_and_always_where_it_is_all_there_is(string words, Certainty expected)
    {
        EarEvidence spelled = Ear(Heard(words, spelled: true));

        Assert.Equal(expected, CertaintyOf(Said(Quiet, spelled, spelled, spelled)));
    }

    [Fact]
    public void No_needs_more_than_yes_because_other_words_turn_into_it()
    {
        bool IsTaken(string word, double mean) => PhraseReader.Read(Said(Quiet, Ear(Heard(word, mean))), Asked) is Phrase.Answer;
        double[] means = [.. Enumerable.Range(1, 60).Select(i => -0.05 * i)];

        Assert.All(means, mean => Assert.True(IsTaken("yes", mean) || !IsTaken("no", mean)));
        Assert.Contains(means, mean => IsTaken("yes", mean) && !IsTaken("no", mean));
        Assert.True(IsTaken("no", means[0]));
    }

    [Fact]
    public void Ears_that_come_across_the_same_safety_phrase_make_up_for_each_other()
    {
        CommandWord? StoppedBy(params ImmutableArray<EarEvidence> ears) => SafetyWordOf(Said(Noisy, ears));
        EarEvidence likeliest = Ear(Heard("emergency stop", -4)) with { FreeLogProbability = -2 }, other = Ear(Heard("done"));
        EarEvidence second = Ear(Heard("done", -4), Heard("emergency stop", -3)) with { FreeLogProbability = -5 };
        EarEvidence farBehind = Ear(Heard("done", -4), Heard("emergency stop", -4.2)) with { FreeLogProbability = -5 };
        EarEvidence gas = Ear(Heard("gas smell", -4)) with { FreeLogProbability = -2 };
        EarEvidence goesOn = Ear(Heard("emergency stop", -4, end: -8)) with { FreeLogProbability = -2 };

        // Twice -4 + 0.5 x 4, or -3 + 0.5 x -0.5, or -4.2 + 0.5 x -4.1, or -4 + 0.5 x 4 + 0.4 x -8; and -9 for the ear that heard nothing of it.
        Assert.Equal(CommandWord.EmergencyStop, StoppedBy(likeliest, other, likeliest));
        Assert.Equal(CommandWord.EmergencyStop, StoppedBy(second, other, second));
        Assert.Null(StoppedBy(farBehind, other, farBehind));
        Assert.Null(StoppedBy(goesOn, other, goesOn));
        Assert.Null(StoppedBy(likeliest));
        Assert.Null(StoppedBy(likeliest, other, other));
        Assert.Null(StoppedBy(likeliest, other, gas));
    }

    [Fact]
    public void Where_it_is_quiet_a_free_reading_of_something_else_outweighs_a_safety_phrase_that_ears_came_across()
    {
        EarEvidence gasSupply = Ear(Heard("gas smell", -4)) with { FreeText = "Gas supply.", FreeLogProbability = -1 };

        // "gas smell" is -12, the free reading -1.
        Assert.Null(SafetyWordOf(Said(Quiet, gasSupply, gasSupply, gasSupply)));
        Assert.Equal(CommandWord.GasSmell, SafetyWordOf(Said(Noisy, gasSupply, gasSupply, gasSupply)));
    }

    [Fact]
    public void A_safety_phrase_is_kept_with_its_own_evidence_and_not_with_that_of_what_was_likelier()
    {
        EarEvidence ear = Ear(Heard("done", -0.5), Heard("emergency stop", -2)) with { FreeLogProbability = -1 };
        Evidence kept = PhraseReader.Read(Said(Noisy, ear), Asked).Evidence;

        // "emergency stop" weighs -6 + 1.5, "done" -1 + 1; the free reading is 5 above the first.
        Assert.Equal((-2, -4.5, -5), (kept.Score, kept.Margin, kept.Ratio));
    }

    [Fact]
    public void An_echo_of_the_style_is_never_entered_unasked()
    {
        Phrase.Reading[] shown = [.. WhisperRecogniser.Style.TrimEnd('.').Split(". ").Select(text => Assert.IsType<Phrase.Reading>(PhraseText.Typed(text, Expectation.Open)))];

        Assert.Equal(5, shown.Length);
        Assert.All(shown, reading => Assert.False(reading.Field.IsUsual(reading.Value), $"{reading.Field.Id} {reading.Value}"));
    }
}
