using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Speaking;
using HandsFreeStartup.Speech.Tests.Support;

namespace HandsFreeStartup.Speech.Tests.Listening;

/// <summary>Microphone, cutter and voice on a real sound server. Every wait is bounded; nothing depends on how fast the machine is.</summary>
[Trait("Sound", "Live")]
public sealed class SoundServerTests : IDisposable
{
    readonly PrivateSoundServer _server = new();
    readonly TemporaryFolder _folder = new();
    readonly SileroDetector _detector = SileroDetector.Load(Shipped.DetectorModel);
    readonly CancellationTokenSource _bound = new(TimeSpan.FromSeconds(60));

    // Several times as long as a phrase and the silence that ends it: a busy machine loses sound on its way through the room, and then it is played again, as a user says it again.
    static readonly TimeSpan LongEnough = TimeSpan.FromSeconds(12);
    long _playedAt;

    bool IsOverdue => TimeProvider.System.GetElapsedTime(_playedAt) > LongEnough;

    Task Play(string name)
    {
        _playedAt = TimeProvider.System.GetTimestamp();
        return _server.Play(Shipped.Recording(name), _bound.Token);
    }

    public void Dispose()
    {
        _bound.Dispose();
        _detector.Dispose();
        _server.Dispose();
        _folder.Dispose();
    }

    [SoundServerFact]
    public async Task Phrases_played_into_the_room_are_cut_as_from_their_files()
    {
        SpeechCutter cutter = new(_detector);
        string[] names = ["oxygen_seven_point_six", "emergency_stop"];
        List<SpeechClip> clips = [];
        List<Task> played = [];
        int last = -1;

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

            if ((last < clips.Count || IsOverdue) && noticed is SpeechEvent.Sound { State: not SoundState.Lost })
            {
                last = clips.Count;
                played.Add(Play(names[last]));
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
        await using IVoice voice = SynthesizedVoice.Find(TimeProvider.System, speaking => deaf.Deaf = speaking, machine: _server.Machine);
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

        Assert.Empty(((SynthesizedVoice)voice).Trouble);
        Assert.DoesNotContain(heard, noticed => noticed is not SpeechEvent.Sound);
        Assert.InRange(Assert.Single(witnessed.OfType<SpeechEvent.Ended>()).Clip.SpeechDuration.TotalSeconds, 1, 4);
    }

    /// <summary>Its gain control turned the microphone of the machine down to 33 % (-28.6 dB) within three seconds, and left it so when it was gone.</summary>
    [SoundServerFact]
    public async Task Canceling_the_echo_leaves_the_level_of_the_microphone_as_it_was()
    {
        await OpenSpeaker();
        Assert.Contains("100%", await _server.Order("get-source-volume", "room.monitor"), StringComparison.Ordinal);
        using (EchoCanceller canceller = Assert.IsType<EchoCanceller>(EchoCanceller.Load(speaker: Speaker, machine: _server.Machine)))
        {
            int frames = 0;
            await foreach (AudioFrame frame in new Microphone(_server.MicrophoneNamed(canceller.Source), TimeProvider.System).Frames(_bound.Token))
            {
                if (!frame.Samples.IsEmpty && ++frames * AudioFrame.Duration > TimeSpan.FromSeconds(2))
                {
                    break;
                }
            }
        }

        Assert.Contains("100%", await _server.Order("get-source-volume", "room.monitor"), StringComparison.Ordinal);
        Assert.DoesNotContain("module-echo-cancel", await _server.Order("list", "short", "modules"), StringComparison.Ordinal);
    }

    [SoundServerFact]
    public async Task What_a_killed_program_left_in_the_sound_server_is_taken_out_and_what_a_living_one_uses_stays()
    {
        await OpenSpeaker();
        Task<string> Leave(int process) => _server.Order("load-module", "module-echo-cancel", "aec_method=null", "source_master=room.monitor", $"sink_master={Speaker}", $"source_name=handsfree_{process}_ear", $"sink_name=handsfree_{process}_voice");
        await Leave(NoProcess);
        string living = await Leave(Parent);
        Assert.Matches("^[0-9]+$", living);
        using EchoCanceller canceller = Assert.IsType<EchoCanceller>(EchoCanceller.Load(speaker: Speaker, machine: _server.Machine));

        string modules = await _server.Order("list", "short", "modules");
        Assert.DoesNotContain($"handsfree_{NoProcess}_", modules, StringComparison.Ordinal);
        Assert.Contains(modules.Split('\n'), line => line.StartsWith($"{living}\t", StringComparison.Ordinal));
        Assert.Contains(canceller.Source, modules, StringComparison.Ordinal);
    }

    const string Speaker = "speaker";

    /// <summary>The room's own echo cannot be taken out of it: that needs a second device.</summary>
    async Task OpenSpeaker()
    {
        await _server.Ready();
        await _server.Order("load-module", "module-null-sink", $"sink_name={Speaker}");
    }

    /// <summary>More than a process can have.</summary>
    const int NoProcess = int.MaxValue;

    const int Parent = 1;

    [SoundServerFact]
    public async Task A_muted_microphone_is_reported_and_so_is_its_return()
    {
        List<SoundState> states = [];
        Task? hiss = null;
        await foreach (AudioFrame frame in new Microphone(_server.Microphone, TimeProvider.System).Frames(_bound.Token))
        {
            // A virtual room is perfectly silent, like a muted microphone, until something sounds in it.
            hiss ??= frame.State == SoundState.Lost ? null : _server.Play(Hiss(), _bound.Token);
            if (states.LastOrDefault(SoundState.Lost) == frame.State || frame.State == SoundState.Lost || (states.Count == 0 && frame.Level < -90))
            {
                continue;
            }

            states.Add(frame.State);
            await (states.Count == 3 ? Task.CompletedTask : _server.Order("set-source-mute", "room.monitor", states.Count == 1 ? "1" : "0"));
            if (states.Count == 3)
            {
                break;
            }
        }

        Assert.Equal([SoundState.Good, SoundState.Dead, SoundState.Good], states);
    }

    [SoundServerFact]
    public async Task Of_two_microphones_only_the_named_one_is_heard()
    {
        await _server.Ready();
        await _server.Order("load-module", "module-null-sink", "sink_name=hall");
        SpeechCutter cutter = new(_detector);
        List<SpeechClip> clips = [];
        Task? played = null;

        await foreach (SpeechEvent noticed in cutter.Listen(new Microphone(_server.MicrophoneNamed("hall.monitor"), TimeProvider.System), _bound.Token))
        {
            if (noticed is SpeechEvent.Sound { State: not SoundState.Lost })
            {
                played ??= InTurn();
            }

            if (noticed is SpeechEvent.Ended ended)
            {
                clips.Add(ended.Clip);
                break;
            }
        }

        await played!;
        SpeechClip fromFile = Assert.Single(Cutting.Of(Sounds.Join(Sounds.Silence(1), Sounds.Spoken("emergency_stop"), Sounds.Silence(1))).OfType<SpeechEvent.Ended>()).Clip;
        Assert.Equal(fromFile.SpeechDuration.TotalSeconds, Assert.Single(clips).SpeechDuration.TotalSeconds, 0.25);

        async Task InTurn()
        {
            // On a busy machine the recorder may miss it, and is started again.
            do
            {
                await _server.Play(Shipped.Recording("oxygen_seven_point_six"), _bound.Token, "room");
                await _server.Play(Shipped.Recording("emergency_stop"), _bound.Token, "hall");
            }
            while (clips.Count == 0 && !_bound.IsCancellationRequested);
        }
    }

    [SoundServerFact]
    public async Task A_microphone_that_is_unplugged_is_reported_and_heard_again_when_it_is_back()
    {
        await _server.Ready();
        string module = await _server.Order("load-module", "module-null-sink", "sink_name=headset");
        List<SoundState> states = [];

        await foreach (AudioFrame frame in new Microphone(_server.MicrophoneNamed("headset.monitor"), TimeProvider.System).Frames(_bound.Token))
        {
            bool arrives = frame.State != SoundState.Lost;
            if (arrives && states.Count == 0)
            {
                states.Add(SoundState.Good);
                await _server.Order("unload-module", module);
            }
            else if (!arrives && states.Count == 1)
            {
                states.Add(SoundState.Lost);
                await _server.Order("load-module", "module-null-sink", "sink_name=headset");
            }
            else if (arrives && states.Count == 2)
            {
                break;
            }
        }

        Assert.Equal([SoundState.Good, SoundState.Lost], states);
    }

    /// <summary>The sound server rescues the recorder to the loudspeaker's own monitor: with a headset the tool would hear itself from then on.</summary>
    [SoundServerFact]
    public async Task A_microphone_in_whose_place_the_server_gives_another_one_is_told()
    {
        await _server.Ready();
        await _server.Order("load-module", "module-rescue-streams");
        string module = await _server.Order("load-module", "module-null-sink", "sink_name=headset");
        bool isUnplugged = false;

        await foreach (AudioFrame frame in new Microphone(_server.MicrophoneNamed("headset.monitor"), TimeProvider.System).Frames(_bound.Token))
        {
            if (frame.State is SoundState.Moved or SoundState.Lost && isUnplugged)
            {
                Assert.Equal((SoundState.Moved, true), (frame.State, frame.Message.Contains("room.monitor", StringComparison.Ordinal)));
                return;
            }

            if (frame.State != SoundState.Lost && !isUnplugged)
            {
                isUnplugged = true;
                await _server.Order("unload-module", module);
            }
        }

        Assert.Fail("nothing was told");
    }

    string Hiss()
    {
        string path = Path.Combine(_folder.Path, "hiss.wav");
        WavFile.Write(path, Sounds.Scaled(Sounds.Quiet(60), 0.01));
        return path;
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
                playing = playing is null || IsOverdue ? Play("emergency_stop") : playing;
            }
        }

        Assert.Equal([SoundState.Good, SoundState.Lost], states);
        await playing!;
    }
}
