using System.Globalization;
using System.Runtime.CompilerServices;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Languages;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Start;
using HandsFreeStartup.Tests.Rehearse;
using Xunit.Abstractions;

namespace HandsFreeStartup.Tests.Session;

/// <summary>
/// The tool listens while it speaks, and its own voice comes back into the microphone 10 dB below the voice of the technician. A part of what is said of the shipped checklists, or all of it in three
/// voices where HANDSFREE_OWN_VOICE is set.
/// </summary>
public sealed class OwnVoiceHeardTests(ITestOutputHelper output)
{
    /// <summary>The tool's voice in the microphone, dB of full scale over the frames with speech.</summary>
    const double EchoLevel = SoundRoom.SpeechLevel - 10;

    static readonly bool IsWhole = Environment.GetEnvironmentVariable("HANDSFREE_OWN_VOICE") is { Length: > 0 };

    /// <summary>Of what is said one in so many is tried; a number in the variable says how many.</summary>
    static readonly int Every = !IsWhole ? 80 : int.TryParse(Environment.GetEnvironmentVariable("HANDSFREE_OWN_VOICE"), CultureInfo.InvariantCulture, out int every) ? every : 1;

    static readonly Speaker[] OwnVoices = IsWhole ? [new("en-us", 165), new("en-gb+f3", 165), new("flite:rms")] : [new("en-us", 165)];

    /// <summary>flite slt and awb were kept from the training; the others are accents and variants by chance.</summary>
    static readonly Speaker[] Technicians =
    [
        new("flite:slt"), new("flite:awb"), new("en-us"), new("en-us+m2", 150), new("en-us+m5", 185), new("en-us+f2", 170), new("en-us+f4", 190), new("en-gb", 160), new("en-gb+m4", 150), new("en-gb+f1", 175),
        new("en-gb-x-rp", 175), new("en-gb-scotland", 165), new("en-gb-x-gbclan", 160), new("en-gb-x-gbcwmd", 170), new("en-029", 160), new("en-029+m2", 185), new("en-us+m8", 140), new("en-us+f5", 155), new("flite:rms"), new("flite:kal16"),
    ];

    static readonly string[] Calls =
    [
        "emergency stop", "stop stop stop", "stop everything", "gas smell", "I smell gas", "I can smell gas", "it smells of gas", "gas leak", "there is a gas leak", "there is a fire", "we have a fire", "it is on fire",
    ];

    [SoundRoomFact]
    public Task The_voice_of_the_tool_stops_no_job_and_enters_no_bad_air_by_what_it_says() =>
        Listen(Language.English, OwnVoices, [.. SpokenPromptsTests.AllSaid().Order(StringComparer.Ordinal)]);

    [SoundRoomFact]
    public Task What_the_tool_says_of_bad_air_enters_none() => Listen(Language.English, OwnVoices, [.. SpokenPromptsTests.AllSaidOfBadAir().Order(StringComparer.Ordinal)]);

    /// <summary>The ear hears English whatever the voice speaks.</summary>
    [SoundRoomFact]
    public Task The_Spanish_voice_of_the_tool_stops_no_job_and_enters_no_bad_air_by_what_it_says()
    {
        Language spanish = LanguageFiles.Find("es");
        return Listen(spanish, [new("es", 165)], [.. SpokenPromptsTests.AllSaid(spanish).Order(StringComparer.Ordinal)]);
    }

    async Task Listen(Language language, Speaker[] voices, string[] prompts)
    {
        using SoundRoom room = new();
        using ListeningEar ear = ListeningEar.Load(null, 2, message => Assert.Fail(message));
        int utterances = 0;
        List<string> stops = [], air = [];
        foreach (Speaker voice in voices)
        {
            foreach (string prompt in prompts.Where((_, number) => number % Math.Min(Every, prompts.Length / 5) == 0))
            {
                foreach (Phrase phrase in await Hear(ear, Say(voice, prompt, EchoLevel, room), prompt))
                {
                    utterances++;
                    string told = $"{voice.Voice} \"{prompt}\": {phrase.Evidence.Words}";
                    if (IsStop(phrase, prompt, language))
                    {
                        stops.Add(told);
                    }

                    if (IsBadAir(phrase))
                    {
                        air.Add($"{told} ({(Over(prompt, language).Counts(phrase, isBadAir: true) ? "TAKEN" : "asked again")})");
                    }
                }
            }
        }

        output.WriteLine($"{prompts.Length} prompts, {voices.Length} voices, {utterances} utterances heard, {stops.Count} stops, {air.Count} of bad air\n{string.Join('\n', air)}");
        Assert.Empty(stops);
        Assert.DoesNotContain(air, heard => heard.EndsWith("(TAKEN)", StringComparison.Ordinal));
        Assert.True(utterances > 0, "nothing was heard, so nothing was tried");
    }

    [SoundRoomFact]
    public async Task A_safety_phrase_is_heard_over_the_voice_of_the_tool()
    {
        string[] prompts = [.. SpokenPromptsTests.AllSaid().Where(words => words.Length > 60).Order(StringComparer.Ordinal)];
        using SoundRoom room = new();
        using ListeningEar ear = ListeningEar.Load(null, 2, message => Assert.Fail(message));
        (Speaker Who, string Call)[] calls = [.. Technicians.SelectMany(_ => Calls, (who, call) => (who, call)).Where((_, number) => IsWhole || number % 29 == 0)];
        List<string> missed = [];
        for (int number = 0; number < calls.Length; number++)
        {
            (Speaker who, string call) = calls[number];
            string prompt = prompts[number * 31 % prompts.Length];
            float[] echo = Say(OwnVoices[number % OwnVoices.Length], prompt, EchoLevel, room);
            float[] voice = Say(who, call, SoundRoom.SpeechLevel, room);
            int begin = Math.Min(WavFile.Rate * (3 + number % 5) / 4, Math.Max(0, echo.Length - voice.Length));
            for (int i = 0; i < voice.Length && begin + i < echo.Length; i++)
            {
                echo[begin + i] += voice[i];
            }

            IReadOnlyList<Phrase> heard = await Hear(ear, echo, prompt);
            if (!heard.Any(phrase => IsStop(phrase, prompt, Language.English)))
            {
                missed.Add($"{who.Voice} \"{call}\" over \"{prompt}\": {string.Join(" | ", heard.Select(phrase => phrase.Evidence.Words))}");
            }
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{calls.Length} said, {missed.Count} missed ({100.0 * missed.Count / calls.Length:0.0} %)\n{string.Join('\n', missed)}"));
        Assert.InRange(missed.Count, 0, Math.Max(1, calls.Length / 50));
    }

    /// <summary>Whatever is more than the cleanest air counts as bad here, whatever a checklist allows.</summary>
    static bool IsBadAir(Phrase phrase) => phrase is Phrase.Reading { Field.Id: FieldId.RoomCo, Value: > 0 };

    static bool IsStop(Phrase phrase, string said, Language language) => phrase is Phrase.Command { IsSafetyPhrase: true } && Over(said, language).Counts(phrase, isBadAir: false);

    static OverVoice Over(string said, Language language) => new(HearingProfile.EchoCancelled, said, language);

    /// <summary>With the quiet before and after it in which it is cut out.</summary>
    static float[] Say(Speaker voice, string words, double level, SoundRoom room)
    {
        float gain = (float)Math.Pow(10, (level - SoundRoom.SpeechLevel) / 20);
        return [.. new float[WavFile.Rate * 2 / 5], .. WavFile.Read(room.Speech(words, voice)).Select(sample => sample * gain), .. new float[WavFile.Rate * 6 / 5]];
    }

    static async Task<IReadOnlyList<Phrase>> Hear(ListeningEar ear, float[] sound, string saying)
    {
        ear.Detector.Forget();
        Expectation expectation = Expectation.Open with { Answers = [AnswerWord.Confirm, AnswerWord.Yes, AnswerWord.No] };
        List<Phrase> heard = [];
        void Take(Input input)
        {
            if (input is Input.Spoken spoken)
            {
                heard.Add(spoken.Ahead?.Under(expectation) ?? ear.Hear(spoken.Clip, expectation));
            }
        }

        await new SoundPump(new SpeechCutter(ear.Detector, SoundPump.Settings), ear, () => expectation, Take, () => saying).Run(new Played(sound), CancellationToken.None);
        return heard;
    }

    sealed class Played(float[] sound) : IAudioSource
    {
        public bool IsLive => false;

        async IAsyncEnumerable<AudioFrame> IAudioSource.Frames([EnumeratorCancellation] CancellationToken cancellation)
        {
            for (int at = 0; at + AudioFrame.Length <= sound.Length; at += AudioFrame.Length)
            {
                await Task.CompletedTask;
                yield return new AudioFrame(at, sound[at..(at + AudioFrame.Length)]);
            }
        }
    }
}
