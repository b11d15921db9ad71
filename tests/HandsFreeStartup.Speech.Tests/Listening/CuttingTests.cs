using FsCheck.Xunit;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Tests.Support;
using static HandsFreeStartup.Speech.Tests.Support.Sounds;

namespace HandsFreeStartup.Speech.Tests.Listening;

/// <summary>Cutting of real waveforms by the shipped detector. Where each phrase lies is known by construction; the expected outcome stands in the name.</summary>
public sealed class CuttingTests
{
    // The recordings carry 50 ms of silence at both ends. The detector may mark a soft first sound (the m of manifold) late, as long as the pre-roll makes up for it.
    const double LateStart = 0.3, Tolerance = 0.15;

    static readonly string[] Phrases = ["oxygen_seven_point_six", "manifold_three_point_five_inches", "draft_minus_point_oh_two", "emergency_stop", "next"];

    static List<SpeechEvent> Cut(params float[][] parts) => Cutting.Of(Join(parts));

    static SpeechClip OnlyClip(List<SpeechEvent> events)
    {
        Assert.DoesNotContain(events, noticed => noticed is SpeechEvent.Refused);
        return Assert.Single(events.OfType<SpeechEvent.Ended>()).Clip;
    }

    static void AssertHolds(SpeechClip clip, double from, double to)
    {
        double start = (double)clip.Start / WavFile.Rate, end = start + (double)clip.Samples.Length / WavFile.Rate;
        Assert.True(start <= from && end >= to, $"the clip reaches from {start:0.00} to {end:0.00} s, the phrase from {from:0.00} to {to:0.00} s");
        Assert.Equal(from, (double)clip.SpeechStart / WavFile.Rate, LateStart);
        Assert.Equal(to, (double)clip.SpeechEnd / WavFile.Rate, Tolerance);
    }

    [Fact]
    public void Speech_that_is_too_faint_is_told_within_two_seconds_and_forgotten_when_it_is_loud_enough()
    {
        float[] phrase = Spoken(Phrases[0]);
        double ends = 0.5 + (double)phrase.Length / WavFile.Rate;
        List<SpeechEvent> faint = Cut(Quiet(0.5), Scaled(phrase, 0.0013), Quiet(1.5));
        List<SpeechEvent> mended = Cut(Quiet(0.5), Scaled(phrase, 0.0013), Quiet(1.5), phrase, Quiet(1.5));

        SpeechEvent.Sound told = faint.OfType<SpeechEvent.Sound>().First(sound => sound.State == SoundState.Faint);
        Assert.Contains("turn its level up", told.Message);
        Assert.True(faint.OfType<SpeechEvent.Sound>().TakeWhile(sound => sound.State == SoundState.Good).Count() * 4 * AudioFrame.Duration.TotalSeconds < ends + 2);
        Assert.Equal(SoundState.Good, mended.OfType<SpeechEvent.Sound>().Last().State);
        Assert.DoesNotContain(Cut(Quiet(0.5), phrase, Quiet(1.5)).OfType<SpeechEvent.Sound>(), sound => sound.State != SoundState.Good);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Phrases_with_random_gaps_of_half_a_second_or_more_give_one_whole_clip_each(int seed)
    {
        Random random = new(seed);
        List<float[]> parts = [Quiet(0.5)];
        List<(double From, double To)> expected = [];
        for (int i = 0; i < 12; i++)
        {
            double at = (double)parts.Sum(part => part.Length) / WavFile.Rate;
            float[] phrase = Spoken(Phrases[random.Next(Phrases.Length)]);
            parts.AddRange([phrase, Quiet(0.5 + 1.5 * random.NextDouble(), i)]);
            expected.Add((at + 0.05, at + (double)phrase.Length / WavFile.Rate - 0.05));
        }

        List<SpeechEvent> events = Cut([.. parts]);

        List<SpeechEvent.Ended> ended = [.. events.OfType<SpeechEvent.Ended>()];
        Assert.Equal(expected.Count, ended.Count);
        Assert.All(expected.Zip(ended), pair => AssertHolds(pair.Second.Clip, pair.First.From, pair.First.To));
    }

    [Theory]
    [InlineData(10)]
    [InlineData(5)]
    public void Phrases_in_blower_noise_give_one_clip_each_that_holds_the_phrase(int decibels)
    {
        List<float[]> parts = [Silence(1)];
        List<(double From, double To)> expected = [];
        foreach (string name in Phrases)
        {
            double at = (double)parts.Sum(part => part.Length) / WavFile.Rate;
            float[] phrase = Spoken(name);
            parts.AddRange([Scaled(phrase, 0.05), Silence(1)]);
            expected.Add((at + 0.05, at + (double)phrase.Length / WavFile.Rate - 0.05));
        }

        float[] speech = Join([.. parts]);
        float[] sound = Mix(speech, Blower((double)speech.Length / WavFile.Rate, ActiveLevel(speech) / Math.Pow(10, decibels / 20.0)));

        List<SpeechEvent.Ended> ended = [.. Cutting.Of(sound).OfType<SpeechEvent.Ended>()];

        Assert.Equal(expected.Count, ended.Count);
        Assert.All(expected.Zip(ended), pair =>
        {
            double start = (double)pair.Second.Clip.Start / WavFile.Rate, end = start + (double)pair.Second.Clip.Samples.Length / WavFile.Rate;
            Assert.True(start <= pair.First.From && end >= pair.First.To, $"{start:0.00}..{end:0.00} does not hold {pair.First}");
        });
    }

    [Fact]
    public void Noise_alone_gives_nothing() => Assert.DoesNotContain(Cut(Quiet(3), Blower(20, 0.1), Quiet(1)), noticed => noticed is not SpeechEvent.Sound);

    [Fact]
    public void A_phrase_whose_onset_the_microphone_missed_is_refused()
    {
        List<SpeechEvent> events = Cut(Spoken("oxygen_seven_point_six")[(int)(0.3 * WavFile.Rate)..], Quiet(1));

        Assert.Equal(Refusal.BeginningLost, Assert.Single(events.OfType<SpeechEvent.Refused>()).Why);
        Assert.Empty(events.OfType<SpeechEvent.Ended>());
    }

    [Fact]
    public void A_phrase_that_begins_softly_is_kept_from_its_first_sound()
    {
        // The first 200 ms at a tenth of their loudness: the detector is late, the pre-roll makes up for it.
        float[] phrase = Spoken("manifold_three_point_five_inches");
        float[] soft = [.. phrase.Select((sample, i) => sample * Math.Clamp(i / 3_200f, 0.1f, 1f))];

        SpeechClip clip = OnlyClip(Cut(Quiet(1), soft, Quiet(1)));

        Assert.True(clip.Start <= 1.05 * WavFile.Rate, $"the clip begins at {clip.Start} samples, the phrase at {1.05 * WavFile.Rate}");
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(0.1)]
    [InlineData(0.2)]
    public void Two_phrases_without_a_pause_are_one_clip_that_holds_both(double gap)
    {
        float[] first = Spoken("oxygen_seven_point_six"), second = Spoken("next");

        SpeechClip clip = OnlyClip(Cut(Quiet(1), first, Quiet(gap), second, Quiet(1)));

        AssertHolds(clip, 1.05, 1 + gap + (double)(first.Length + second.Length) / WavFile.Rate - 0.05);
    }

    [Fact]
    public void A_cough_in_the_middle_of_a_phrase_does_not_cut_it()
    {
        float[] phrase = Spoken("draft_minus_point_oh_two");
        float[] coughed = Join(phrase[..12_000], Quiet(0.05), Cough(), Quiet(0.05), phrase[12_000..]);

        SpeechClip clip = OnlyClip(Cut(Quiet(1), coughed, Quiet(1)));

        AssertHolds(clip, 1.05, 1 + (double)coughed.Length / WavFile.Rate - 0.05);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(13)]
    [InlineData(23)]
    public void A_slammed_door_is_no_utterance(int seed) =>
        Assert.Empty(Cut(Quiet(1), DoorSlam(seed), Quiet(1), DoorSlam(seed + 1), Quiet(1)).OfType<SpeechEvent.Ended>());

    [Fact]
    public void A_slammed_door_during_a_phrase_leaves_one_whole_clip()
    {
        float[] phrase = Spoken("manifold_three_point_five_inches");

        SpeechClip clip = OnlyClip(Cut(Quiet(1), Mix(phrase, DoorSlam(), from: 1), Quiet(1)));

        AssertHolds(clip, 1.05, 1 + (double)phrase.Length / WavFile.Rate - 0.05);
    }

    [Fact]
    public void Speech_over_speech_is_one_clip_from_the_first_word_to_the_last()
    {
        float[] phrase = Spoken("oxygen_seven_point_six"), other = Scaled(Spoken("draft_minus_point_oh_two"), 0.03);
        float[] both = Mix(phrase, other, from: 1);

        SpeechClip clip = OnlyClip(Cut(Quiet(1), both, Quiet(1)));

        AssertHolds(clip, 1.05, 1 + (double)both.Length / WavFile.Rate - 0.05);
    }

    [Fact]
    public void Nine_seconds_of_talk_without_a_pause_are_refused_as_a_whole_and_the_next_phrase_is_heard()
    {
        float[] talk = Join([.. Enumerable.Range(0, 5).Select(i => Spoken(Phrases[i % 3])[1_600..^1_600])]);

        List<SpeechEvent> events = Cut(Quiet(1), talk, Quiet(1), Spoken("next"), Quiet(1));

        Assert.Equal(Refusal.TooLong, Assert.Single(events.OfType<SpeechEvent.Refused>()).Why);
        Assert.Single(events.OfType<SpeechEvent.Ended>());
        Assert.True(events.FindIndex(noticed => noticed is SpeechEvent.Refused) < events.FindIndex(noticed => noticed is SpeechEvent.Ended));
    }

    [Fact]
    public void A_number_said_with_a_pause_stays_together_when_the_hang_over_is_made_long()
    {
        float[] first = Spoken("oxygen_seven_point_six"), rest = Spoken("next");
        float[] sound = Join(Quiet(1), first, Quiet(0.45), rest, Quiet(1.5));

        Assert.Equal(2, Cutting.Of(sound).OfType<SpeechEvent.Ended>().Count());
        Assert.Single(Cutting.Of(sound, onPause: cutter => cutter.HangOver = TimeSpan.FromMilliseconds(700)).OfType<SpeechEvent.Ended>());
    }

    [Fact]
    public void A_new_detector_remembers_nothing()
    {
        float[] sound = Join(Quiet(0.5), Spoken("next"));
        List<float[]> tracks = [];
        for (int i = 0; i < 20; i++)
        {
            using SileroDetector detector = SileroDetector.Load(Shipped.DetectorModel);
            tracks.Add([.. Enumerable.Range(0, sound.Length / 512).Select(frame => detector.Probability(sound.AsSpan(frame * 512, 512)))]);
        }

        Assert.True(tracks[0][..15].Max() < 0.1f);
        Assert.All(tracks, track => Assert.Equal(tracks[0], track));
    }

    [Fact]
    public void A_model_that_is_not_there_is_named() => Assert.Contains(
        "nowhere.bin",
        Assert.Throws<HandsFreeStartup.Speech.Native.RecogniserUnavailableException>(() => SileroDetector.Load("/nowhere.bin")).Message);
}

public sealed class CuttingLaws
{
    static readonly float[] Sound = Join(Quiet(0.7), Spoken("oxygen_seven_point_six"), Quiet(0.6), DoorSlam(), Spoken("next"), Quiet(0.9));
    static readonly List<SpeechEvent> Whole = Cutting.Of(Sound);

    /// <summary>A stream in pieces of random size gives the same clips, sample for sample, as the file.</summary>
    [Property(MaxTest = 12)]
    public void Streaming_equals_file(int seed)
    {
        Random random = new(seed);
        List<SpeechEvent> streamed = Cutting.Of(Sound, pieces: () => random.Next(1, 3_000));

        Assert.NotEmpty(Whole.OfType<SpeechEvent.Ended>());
        Assert.Equal(Whole.Count, streamed.Count);
        Assert.All(Whole.Zip(streamed), pair => Assert.Equal(Told(pair.First), Told(pair.Second)));
    }

    static (string, long, long, long, string) Told(SpeechEvent noticed) => noticed switch
    {
        SpeechEvent.Ended ended => Clip("ended", ended.Clip),
        SpeechEvent.MaybeEnded maybe => Clip("maybe", maybe.SoFar),
        SpeechEvent.Refused refused => Clip(refused.Why.ToString(), refused.Clip),
        _ => (noticed.ToString(), 0, 0, 0, ""),
    };

    static (string, long, long, long, string) Clip(string kind, SpeechClip clip) =>
        (kind, clip.Start, clip.SpeechStart, clip.SpeechEnd, Convert.ToHexString(System.Security.Cryptography.SHA256.HashData(System.Runtime.InteropServices.MemoryMarshal.AsBytes(clip.Samples.AsSpan()))));
}
