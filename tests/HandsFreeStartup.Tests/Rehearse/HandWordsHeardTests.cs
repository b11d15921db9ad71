using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Rehearse;
using HandsFreeStartup.Simulation;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Start;
using HandsFreeStartup.Storage.Tests.Support;
using Xunit.Abstractions;

namespace HandsFreeStartup.Tests.Rehearse;

/// <summary>
/// The words of the hands as the recognizer hears them from synthetic voices, clean and at 10 dB of blower noise, while readings, commands and answers may be said too. In CI every ninth phrase
/// by a voice in turn; with HANDSFREE_HANDS=all each by all voices, two of which are strangers to the recognizer; HANDSFREE_HANDS="probe in;probe out" tries words that might become hands.
/// </summary>
public sealed class HandWordsHeardTests(ITestOutputHelper output)
{
    static readonly Speaker[] Voices = [new("flite:slt"), new("en-us"), new("flite:awb"), new("en-gb+m3", 175), new("en-us+f3", 150)];

    static readonly string[] Others = ["done", "next", "go back", "say again", "read back", "what is open", "yes", "no", "confirm", "oxygen seven point six", "monoxide twelve", "flue temperature three twenty eight", "draft minus point oh two", "emergency stop", "gas smell", "stand by", "how long"];

    [SoundRoomFact]
    public void A_hand_is_never_taken_for_a_reading_and_a_reading_never_for_a_hand()
    {
        string? wanted = Environment.GetEnvironmentVariable("HANDSFREE_HANDS");
        string[] tried = wanted is null or "all" ? [] : wanted.Split(';');
        RehearsalStage stage = new(new Bench(Furnace.From(ShippedPlans.Plan("gas-furnace", "furnace-two-stage-altitude", "site-mountain", "new"), [], 5)), new RehearsalClock(null, 1, DateTimeOffset.UnixEpoch));
        Expectation expectation = stage.With(Expectation.Open with { Answers = [AnswerWord.Confirm, AnswerWord.Yes, AnswerWord.No] });
        expectation = expectation with { Choices = [.. expectation.Choices, .. tried.Select(words => new SpokenChoice($"hand: {words}", words))] };
        using ListeningEar ear = ListeningEar.Load(null, 2, message => Assert.Fail(message));
        using SoundRoom room = new();
        Dictionary<string, int> fates = [];
        List<string> wrong = [], red = [];
        (string Words, bool IsHand)[] phrases = tried.Length > 0 ? [.. tried.Select(words => (words, true))]
            : [.. HandWords.Spoken(stage.Bench.Furnace.Plan).Select(words => (words, true)), .. Others.Select(words => (words, false))];
        for (int i = 0; i < phrases.Length; i++)
        {
            foreach (Speaker voice in wanted is not null ? Voices : i % 9 == 0 ? [Voices[i / 9 % Voices.Length]] : [])
            {
                foreach (bool isNoisy in (bool[])[false, true])
                {
                    Phrase phrase = ear.Hear(Clip(room.Speech(phrases[i].Words, voice), isNoisy), expectation);
                    string fate = Fate(phrases[i].Words, phrases[i].IsHand, phrase, stage);
                    string kind = $"{(phrases[i].IsHand ? "hand" : "other")} {(isNoisy ? "10 dB" : "clean")}: {fate}";
                    fates[kind] = fates.GetValueOrDefault(kind) + 1;
                    (fate is "wrong" ? wrong : fate is "right" ? [] : red).Add($"{voice.Voice} {(isNoisy ? "10 dB" : "clean")} \"{phrases[i].Words}\" as {phrase.GetType().Name} \"{phrase.Evidence.Words}\"");
                }
            }
        }

        output.WriteLine(string.Join('\n', fates.OrderBy(fate => fate.Key).Select(fate => $"{fate.Key} {fate.Value}").Concat(wrong.Select(one => $"WRONG {one}")).Concat(red.Select(one => $"again {one}"))));
        Assert.Empty(wrong);
        Assert.True(fates.GetValueOrDefault("hand clean: right") > fates.GetValueOrDefault("hand clean: red"));
    }

    /// <summary>A reading or command in place of a hand, a hand in place of another or of a reading: wrong. One that is asked about is not yet entered.</summary>
    static string Fate(string said, bool isHand, Phrase phrase, RehearsalStage stage) => phrase switch
    {
        Phrase.NotUnderstood => "red",
        _ when stage.AreMeant(phrase) => isHand && ((Phrase.Choice)phrase).Value.EndsWith($": {said}", StringComparison.Ordinal) ? "right" : "wrong",
        _ when isHand => phrase.Evidence.Certainty == Certainty.Amber ? "asked" : "wrong",
        _ => "right",
    };

    internal static SpeechClip Clip(string wav, bool isNoisy)
    {
        const int Around = WavFile.Rate / 4;
        float[] speech = WavFile.Read(wav), sound = new float[speech.Length + 2 * Around];
        speech.CopyTo(sound, Around);
        Random random = new(speech.Length);
        double power = speech.Sum(sample => (double)sample * sample) / speech.Length, low = 0, spread = 0;
        float[] noise = new float[sound.Length];
        for (int i = 0; i < noise.Length; i++)
        {
            low = 0.9 * low + (2 * random.NextDouble() - 1);
            noise[i] = (float)low;
            spread += low * low / noise.Length;
        }

        float gain = isNoisy ? (float)Math.Sqrt(power / 10 / spread) : 0;
        return new SpeechClip([.. sound.Select((sample, i) => sample + gain * noise[i])], 0, Around, Around + speech.Length);
    }
}
