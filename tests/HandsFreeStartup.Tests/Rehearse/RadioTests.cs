using System.Collections.Concurrent;
using System.Globalization;
using HandsFreeStartup.Hear;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Session;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Start;
using Xunit.Abstractions;

namespace HandsFreeStartup.Tests.Rehearse;

/// <summary>
/// A blower, and a radio or other people who talk beside it, into real sound devices while every reading, command and answer may be said: nothing may be entered, obeyed or stopped.
/// Minutes of sound: 2, or what HANDSFREE_RADIO_MINUTES says (30 for the whole), five of them in each room. HANDSFREE_RADIO=MANIFEST plays the recordings of a manifest that mean nothing
/// instead of synthetic talk.
/// </summary>
[Trait("Sound", "Live")]
public sealed class RadioTests(ITestOutputHelper output)
{
    const double MinutesInARoom = 5;

    /// <summary>Invented. Numbers and words of the trade are among it, but nothing that calls for help.</summary>
    static readonly string[] Talk =
    [
        "and now the weather, fifty five degrees with a little rain toward the evening", "the home team leads seven to three after the second half", "traffic on highway eighty one is slow near exit twelve",
        "call now and get two for the price of one", "that was number four on the charts this week", "it is ten past nine and you are listening to the morning show", "sixteen hundred people came to the fair last year",
        "stay with us for more music", "are we finished with the kitchen", "I will be there in about twenty minutes", "hold the flashlight a little higher please", "did you bring the ladder in from the truck",
        "we had nine of these last week", "the pressure on the pitcher is enormous", "she said no and he said yes and that was it", "prices went up by three point two percent", "the next train leaves from platform six",
        "can you confirm that for Thursday", "oxygen is what the patient needed most", "the draft of the new law will be read tomorrow", "go back two pages and read it again", "done is better than perfect they say",
        "my number is on the back of the card", "turn the music down please", "the carbon footprint of this house is half of what it was", "what a finish by the young man from Ohio", "temperatures will drop to thirty two tonight",
        "how long have you been waiting", "help yourself to some coffee", "skip this one I do not like it", "note the time and write it down", "nobody reads the manual anyway",
    ];

    /// <summary>flite slt and awb were kept from the training; the others are accents and variants by chance.</summary>
    static readonly Speaker[] Talkers = [new("flite:slt"), new("flite:awb"), new("en-gb-scotland", 190), new("en-us+f4", 200), new("en-gb-x-rp", 175), new("en-029+m2", 185)];

    [SoundRoomFact]
    public async Task Noise_and_talk_into_the_device_enter_nothing_and_stop_nothing()
    {
        double minutes = double.Parse(Environment.GetEnvironmentVariable("HANDSFREE_RADIO_MINUTES") ?? "2", CultureInfo.InvariantCulture);
        string[]? recordings = Environment.GetEnvironmentVariable("HANDSFREE_RADIO") is { Length: > 0 } manifest
            ? [.. HearManifest.Read(manifest).Where(measured => measured.Expected == "nothing").Select(measured => measured.Path)] : null;
        int rooms = (int)Math.Ceiling(minutes / MinutesInARoom);
        using ListeningEar ear = ListeningEar.Load(null, 2, message => Assert.Fail(message));
        Heard[] heard = await Task.WhenAll(Enumerable.Range(0, rooms).Select(number => Task.Run(() => Listen(ear, TimeSpan.FromMinutes(minutes / rooms), new Random(number), recordings))));

        output.WriteLine($"{minutes} minutes in {rooms} rooms: {heard.Sum(room => room.Talks)} talks, {heard.Sum(room => room.Utterances)} utterances, asked {heard.Sum(room => room.Asked.Count)} ({string.Join("; ", heard.SelectMany(room => room.Asked))}), taken {heard.Sum(room => room.Taken.Count)}");
        Assert.Equal("", string.Join('\n', heard.SelectMany(room => room.Taken)));
        Assert.True(heard.Sum(room => room.Utterances) >= minutes * 4, "so little was heard that nothing was tried");
    }

    static async Task<Heard> Listen(ListeningEar ear, TimeSpan time, Random random, string[]? recordings)
    {
        Expectation expectation = Expectation.Open with { Answers = [AnswerWord.Confirm, AnswerWord.Yes, AnswerWord.No] };
        Heard heard = new();
        using SileroDetector detector = SoundRoom.Detector();
        using SoundRoom room = new();
        await room.Open();
        room.Blow(random.Next(5, 20));
        using CancellationTokenSource over = new(time);
        Task listening = new SoundPump(new SpeechCutter(detector, SoundPump.Settings), ear, () => expectation, input => heard.Take(input, ear, expectation)).Run(new Microphone(room.Microphone, TimeProvider.System), over.Token);
        while (!over.IsCancellationRequested)
        {
            await (recordings is null ? room.Say(Talk[random.Next(Talk.Length)], Talkers[random.Next(Talkers.Length)]) : room.Play(recordings[random.Next(recordings.Length)]));
            heard.Talks++;
            await Task.Delay(random.Next(100, 1500));
        }

        await listening;
        return heard;
    }

    /// <summary>What came of the sound of a room.</summary>
    sealed class Heard
    {
        public int Talks { get; set; }

        public int Utterances { get; private set; }

        /// <summary>What would be asked: a reading that needs a confirmation.</summary>
        public ConcurrentQueue<string> Asked { get; } = [];

        /// <summary>What would be entered, obeyed or stopped.</summary>
        public ConcurrentQueue<string> Taken { get; } = [];

        public void Take(Input input, ListeningEar ear, Expectation expectation)
        {
            if (input is not Input.Spoken spoken)
            {
                return;
            }

            Utterances++;
            Phrase phrase = spoken.Ahead?.Under(expectation) ?? ear.Hear(spoken.Clip, expectation);
            if (phrase is not Phrase.NotUnderstood)
            {
                (phrase.Evidence.Certainty == Certainty.Green ? Taken : Asked).Enqueue($"{phrase.GetType().Name} \"{phrase.Evidence.Words}\"");
            }
        }
    }
}
