using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Native;
using HandsFreeStartup.Speech.Phrases;
using HandsFreeStartup.Speech.Recognising;
using HandsFreeStartup.Speech.Tests.Support;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Speech.Tests.Recognising;

public sealed class WhisperRecogniserTests(TwoEars ears) : IClassFixture<TwoEars>
{
    [Theory]
    [InlineData("oxygen_seven_point_six", "oxygen=7.6")]
    [InlineData("emergency_stop", "command=emergency stop")]
    public void A_shipped_recording_is_understood_without_asking(string recording, string expected)
    {
        Utterance utterance = ears.Recogniser.Hear(WavFile.Read(Shipped.Recording(recording)), Expectation.Open);
        Phrase phrase = PhraseReader.Read(utterance, Expectation.Open);
        Assert.Equal((expected, Certainty.Green), (Meant(phrase), phrase.Evidence.Certainty));
    }

    [Fact]
    public void A_phrase_with_no_other_near_it_has_a_margin_that_can_be_written_down()
    {
        Utterance utterance = ears.Recogniser.Hear(WavFile.Read(Shipped.Recording("emergency_stop")), Expectation.Open);
        Assert.Single(utterance.Ears[0].Candidates);
        Assert.Equal(EarEvidence.NotFound, PhraseReader.Read(utterance, Expectation.Open).Evidence.Margin);
    }

    [Fact]
    public void The_same_sound_gives_the_same_evidence_whatever_was_heard_before()
    {
        float[] sound = WavFile.Read(Shipped.Recording("oxygen_seven_point_six"));
        EarEvidence before = ears.Recogniser.Hear(sound, Expectation.Open).Ears[0];
        ears.Recogniser.Hear(WavFile.Read(Shipped.Recording("next")), Expectation.Open);
        EarEvidence after = ears.Recogniser.Hear(sound, Expectation.Open).Ears[0];
        Assert.Equal(before.Best!.Meaning, after.Best!.Meaning);
        Assert.Equal(before.Best.LogProbability, after.Best.LogProbability, 3);
        Assert.Equal(before.FreeText, after.FreeText);
    }

    [Fact]
    public void Silence_and_noise_are_not_understood()
    {
        Random random = new(3);
        foreach (float level in (float[])[0f, 0.003f, 0.1f])
        {
            float[] sound = [.. Enumerable.Range(0, 32_000).Select(_ => level * (2 * random.NextSingle() - 1))];
            Assert.IsType<Phrase.NotUnderstood>(PhraseReader.Read(ears.Recogniser.Hear(sound, Expectation.Open), Expectation.Open));
        }
    }

    [Fact]
    public void What_is_not_expected_is_not_heard_but_a_safety_phrase_is()
    {
        Expectation draft = new([ExpectedReading.Of(Fields.Find("draft")!)], [CommandWord.Done], []);
        Assert.IsNotType<Phrase.Command>(PhraseReader.Read(ears.Recogniser.Hear(WavFile.Read(Shipped.Recording("oxygen_seven_point_six")), draft), draft));
        Phrase stop = PhraseReader.Read(ears.Recogniser.Hear(WavFile.Read(Shipped.Recording("emergency_stop")), draft), draft);
        Assert.Equal(CommandWord.EmergencyStop, Assert.IsType<Phrase.Command>(stop).Word);
    }

    [Fact]
    public void Dictation_keeps_the_words_and_still_hears_a_safety_phrase()
    {
        Expectation note = new([], [], [], Dictation: true);
        Phrase words = PhraseReader.Read(ears.Recogniser.Hear(WavFile.Read(Shipped.Recording("oxygen_seven_point_six")), note), note);
        Assert.Contains("7.6", Assert.IsType<Phrase.Dictation>(words).Evidence.Words, StringComparison.Ordinal);
        Phrase stop = PhraseReader.Read(ears.Recogniser.Hear(WavFile.Read(Shipped.Recording("emergency_stop")), note), note);
        Assert.Equal(CommandWord.EmergencyStop, Assert.IsType<Phrase.Command>(stop).Word);
    }

    [Fact]
    public void A_sound_is_heard_again_as_often_as_is_wanted_and_clear_words_stay_what_they_were()
    {
        using WhisperRecogniser recognizer = WhisperRecogniser.Load(Path.GetDirectoryName(Shipped.DetectorModel)!, (heard, _) => heard.Ears.Length == 1 ? Wanted.OtherEars : Wanted.AnotherHearing);
        Utterance utterance = recognizer.Hear(WavFile.Read(Shipped.Recording("oxygen_seven_point_six")), Expectation.Open);

        Assert.Equal((2, ChangedSound.Ways), (utterance.Ears.Length, utterance.Again.Length));
        Assert.All(utterance.Again, hearing => Assert.All(hearing, ear => Assert.Equal("oxygen=7.6", ear.Best!.Meaning.ToString())));
        Assert.NotEqual(utterance.Ears[0].FreeLogProbability, utterance.Again[0][0].FreeLogProbability);
        Assert.NotEqual(utterance.Again[0][0].FreeLogProbability, utterance.Again[1][0].FreeLogProbability);
    }

    /// <summary>A Butterworth filter of the sixth order lets 1 / sqrt(1 + (edge / frequency)^12) of a tone pass: at 500 Hz 0.7071, at 250 Hz 0.0156, at 1000 Hz 0.9999.</summary>
    [Theory]
    [InlineData(120, 0.0002)]
    [InlineData(250, 0.0156)]
    [InlineData(500, 0.7071)]
    [InlineData(1000, 0.9999)]
    [InlineData(3000, 1)]
    public void A_sound_is_changed_by_beginning_later_and_by_losing_its_lows(double hertz, double left)
    {
        float[] tone = [.. Enumerable.Range(0, 16_000).Select(i => (float)Math.Sin(2 * Math.PI * hertz * i / 16_000))];

        Assert.Equal([.. new float[2080], .. tone], ChangedSound.Of(tone, 0));
        float[] changed = ChangedSound.Of(tone, 1);
        Assert.Equal(16_000, changed.Length);
        Assert.Equal(left * Math.Sqrt(0.5), Math.Sqrt(changed[8000..].Average(sample => sample * sample)), 0.002);
    }

    [Fact]
    public void A_missing_model_is_named_with_the_remedy()
    {
        RecogniserUnavailableException missing = Assert.Throws<RecogniserUnavailableException>(() => WhisperRecogniser.Load("/nowhere", PhraseReader.AsksForMore, ears: 1));
        Assert.Contains("/nowhere/ggml-tiny.en-readings-q8_0.bin", missing.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_plain_recogniser_reads_free_text_and_is_never_sure()
    {
        using PlainRecogniser plain = new(Shipped.Model(WhisperRecogniser.FirstModel));
        Phrase phrase = PhraseReader.Read(plain.Hear(WavFile.Read(Shipped.Recording("oxygen_seven_point_six")), Expectation.Open), Expectation.Open);
        Assert.Equal(("oxygen=7.6", Certainty.Amber), (Meant(phrase), phrase.Evidence.Certainty));
    }

    static string Meant(Phrase phrase) => phrase switch
    {
        Phrase.Reading reading => new Meaning.Reading(reading.Field, reading.Value).ToString(),
        Phrase.Command order => new Meaning.Command(order.Word).ToString(),
        Phrase.Answer answer => new Meaning.Answer(answer.Word).ToString(),
        _ => phrase.Evidence.Why,
    };
}
