using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Speaking;
using HandsFreeStartup.Speech.Tests.Support;

namespace HandsFreeStartup.Speech.Tests.Listening;

/// <summary>Microphone, cutter and voice on a real sound server. Every wait is bounded; nothing depends on how fast the machine is.</summary>
public sealed class SoundServerTests : IDisposable
{
    readonly PrivateSoundServer _server = new();
    readonly SileroDetector _detector = SileroDetector.Load(Shipped.DetectorModel);
    readonly CancellationTokenSource _bound = new(TimeSpan.FromSeconds(60));

    public void Dispose()
    {
        _bound.Dispose();
        _detector.Dispose();
        _server.Dispose();
    }

    [SoundServerFact]
    public async Task Phrases_played_into_the_room_are_cut_as_from_their_files()
    {
        SpeechCutter cutter = new(_detector);
        string[] names = ["oxygen_seven_point_six", "emergency_stop"];
        List<SpeechClip> clips = [];
        List<Task> played = [];

        await foreach (SpeechEvent noticed in cutter.Listen(new Microphone(_server.Microphone, TimeProvider.System), _bound.Token))
        {
            if (noticed is SpeechEvent.Ended ended)
            {
                clips.Add(ended.Clip);
            }

            if (clips.Count == names.Length)
            {
                break;
            }

            if (played.Count == clips.Count && noticed is SpeechEvent.Sound { State: not SoundState.Lost })
            {
                played.Add(_server.Play(Shipped.Recording(names[clips.Count]), _bound.Token));
            }
        }

        await Task.WhenAll(played);
        Assert.All(clips.Zip(names), pair =>
        {
            SpeechClip fromFile = Assert.Single(Cutting.Of(Sounds.Join(Sounds.Silence(1), Sounds.Spoken(pair.Second), Sounds.Silence(1))).OfType<SpeechEvent.Ended>()).Clip;
            Assert.Equal(fromFile.SpeechDuration.TotalSeconds, pair.First.SpeechDuration.TotalSeconds, 0.25);
            Assert.Equal(AudioFrame.LevelOf(fromFile.Samples), AudioFrame.LevelOf(pair.First.Samples), 1.5);
        });
    }

    [SoundServerFact]
    public async Task The_voice_can_be_recorded_from_the_room_and_the_cutter_is_deaf_to_it()
    {
        SpeechCutter deaf = new(_detector);
        using SileroDetector other = SileroDetector.Load(Shipped.DetectorModel);
        SpeechCutter witness = new(other);
        List<SpeechEvent> heard = [], witnessed = [];
        await using IVoice voice = EspeakVoice.Find(TimeProvider.System, speaking => deaf.Deaf = speaking, find: _server.Find);
        Task? said = null;

        await foreach (AudioFrame frame in new Microphone(_server.Microphone, TimeProvider.System).Frames(_bound.Token))
        {
            heard.AddRange(deaf.Hear(frame));
            witnessed.AddRange(witness.Hear(frame));
            if (said is null && frame.State != SoundState.Lost)
            {
                said = voice.Say("Oxygen 7.6 %", _bound.Token).AsTask();
            }

            if (said is { IsCompleted: true } && witnessed.OfType<SpeechEvent.Ended>().Any())
            {
                break;
            }
        }

        Assert.Empty(((EspeakVoice)voice).Trouble);
        Assert.DoesNotContain(heard, noticed => noticed is not SpeechEvent.Sound);
        Assert.InRange(Assert.Single(witnessed.OfType<SpeechEvent.Ended>()).Clip.SpeechDuration.TotalSeconds, 1, 4);
    }

    [SoundServerFact]
    public async Task A_sound_server_that_goes_away_is_reported_and_when_it_comes_back_the_next_phrase_is_heard()
    {
        SpeechCutter cutter = new(_detector);
        List<SoundState> states = [];
        Task? playing = null;

        await foreach (SpeechEvent noticed in cutter.Listen(new Microphone(_server.Microphone, TimeProvider.System), _bound.Token))
        {
            if (noticed is SpeechEvent.Ended)
            {
                break;
            }

            if (noticed is not SpeechEvent.Sound sound)
            {
                continue;
            }

            bool arrives = sound.State != SoundState.Lost;
            if (arrives && !states.Contains(SoundState.Good))
            {
                states.Add(SoundState.Good);
                _server.Stop();
            }
            else if (!arrives && states is [.., SoundState.Good])
            {
                states.Add(SoundState.Lost);
                _server.Start();
            }
            else if (arrives && states is [.., SoundState.Lost])
            {
                playing ??= _server.Play(Shipped.Recording("emergency_stop"), _bound.Token);
            }
        }

        Assert.Equal([SoundState.Good, SoundState.Lost], states);
        await playing!;
    }
}
