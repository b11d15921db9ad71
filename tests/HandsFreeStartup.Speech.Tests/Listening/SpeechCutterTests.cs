using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Tests.Support;

namespace HandsFreeStartup.Speech.Tests.Listening;

/// <summary>The rules of cutting, with a detector whose answers are written down; a frame lasts 32 ms.</summary>
public sealed class SpeechCutterTests
{
    const string Ten = "qqqqqqqqqq";
    const string Twenty = Ten + Ten;
    static readonly string LongTalk = new('S', 200);

    readonly SpeechCutter _cutter = new(new ScriptedDetector());

    List<SpeechEvent> Hear(string script, long from = 0) => [.. Scripted.Frames(script, from).SelectMany(_cutter.Hear).Where(noticed => noticed is not SpeechEvent.Sound)];

    static string Names(IEnumerable<SpeechEvent> events) => string.Join(' ', events.Select(noticed => noticed is SpeechEvent.Refused refused ? refused.Why.ToString() : noticed.GetType().Name));

    [Theory]
    [InlineData(Twenty + "SSSSSSSSSS" + Twenty, "Began MaybeEnded Ended")]
    [InlineData(Twenty + "SqSSSSSSSS" + Twenty, "Began MaybeEnded Ended")]
    [InlineData(Twenty + "SSqqSSqqSS" + Twenty, "")]
    [InlineData(Twenty + "SS" + Twenty, "")]
    [InlineData(Twenty + "SSSS" + Twenty, "Began TooShort")]
    [InlineData(Twenty + "SSSSSSSS qqqq SSSSSSSS" + Twenty, "Began MaybeEnded Ended")]
    [InlineData(Twenty + "SSSSSSSS qqqqqqq SSSSSSSS" + Twenty, "Began MaybeEnded Resumed MaybeEnded Ended")]
    [InlineData(Twenty + "SSSSSSSS qqqqqqqqqqqqq SSSSSSSS" + Twenty, "Began MaybeEnded Ended Began MaybeEnded Ended")]
    [InlineData(Twenty + "SSSSSSSS mmmmmmmmmmmmmmm SSSSSSSS" + Twenty, "Began MaybeEnded Ended")]
    [InlineData("SSSSSSSSSS" + Twenty, "Began BeginningLost")]
    [InlineData(Twenty + "SSSSSSSSSS L" + Twenty, "Began SoundLost")]
    [InlineData(Twenty + "SSSSSSSSSS L SSSSSSSSSS" + Twenty, "Began SoundLost Began BeginningLost")]
    [InlineData(Twenty + "SSSSSSSSSS WWWW" + Twenty, "Began SoundLost")]
    [InlineData("L L L " + Twenty, "")]
    public void Speech_begins_pauses_and_ends(string script, string expected) => Assert.Equal(expected, Names(Hear(script)));

    [Fact]
    public void An_utterance_comes_with_400_ms_from_before_its_first_frame_and_with_its_hang_over()
    {
        SpeechClip clip = Assert.Single(Hear(Twenty + "SSSSSSSSSS" + Twenty).OfType<SpeechEvent.Ended>()).Clip;

        Assert.Equal(Scripted.Frame(20), clip.SpeechStart);
        Assert.Equal(Scripted.Frame(30), clip.SpeechEnd);
        Assert.Equal(clip.SpeechStart - 6_400, clip.Start);
        Assert.Equal(Scripted.Frame(30 + 11), clip.Start + clip.Samples.Length);
        Assert.Equal(0.1f, clip.Samples[6_399]);
        Assert.Equal(0.9f, clip.Samples[6_400]);
    }

    [Fact]
    public void The_pre_roll_does_not_bring_the_end_of_the_utterance_before()
    {
        List<SpeechEvent.Ended> ended = [.. Hear(Twenty + "SSSSSSSSSS qqqqqqqqqqq SSSSSSSSSS" + Twenty).OfType<SpeechEvent.Ended>()];

        Assert.Equal(2, ended.Count);
        Assert.Equal(ended[0].Clip.SpeechEnd, ended[1].Clip.Start);
        Assert.DoesNotContain(0.9f, ended[1].Clip.Samples[..(int)(ended[1].Clip.SpeechStart - ended[1].Clip.Start)]);
    }

    [Fact]
    public void An_utterance_that_is_too_long_is_refused_as_a_whole_and_the_next_one_is_heard()
    {
        List<SpeechEvent> heard = Hear(Twenty + LongTalk + Twenty + "SSSSSSSSSS" + Twenty);

        Assert.Equal("Began TooLong Began MaybeEnded Ended", Names(heard.Where(noticed => noticed is not SpeechEvent.GoesOn)));
    }

    [Fact]
    public void Speech_that_goes_on_is_told_of_with_its_last_seconds_so_often_that_each_word_lies_whole_in_one()
    {
        SpeechClip[] lately = [.. Hear(Twenty + LongTalk).OfType<SpeechEvent.GoesOn>().Select(noticed => noticed.Lately)];

        Assert.True(lately.Length > 3);
        Assert.All(lately, clip => Assert.Equal(2.4, (double)clip.Samples.Length / WavFile.Rate, 0.001));
        Assert.All(lately.Zip(lately.Skip(1)), pair => Assert.InRange(pair.Second.Start - pair.First.Start, 1, 0.64 * WavFile.Rate));
    }

    [Fact]
    public void Endless_talk_is_never_cut_in_two()
    {
        Assert.Equal("Began", Names(Hear(Twenty + LongTalk + LongTalk + LongTalk).Where(noticed => noticed is not SpeechEvent.GoesOn)));
        Assert.Equal(160_000, Assert.Single(_cutter.Finish().OfType<SpeechEvent.Refused>()).Clip.Samples.Length);
    }

    [Fact]
    public void A_longer_hang_over_set_in_a_pause_keeps_the_utterance_together_and_is_gone_with_the_next()
    {
        List<SpeechEvent> noticed = [];
        foreach (AudioFrame frame in Scripted.Frames(Twenty + "SSSSSSSS qqqqqqqqqqqqqqqqqq SSSSSSSS" + Twenty + Ten + "SSSSSSSS qqqqqqqqqqqqqqqqqq SSSSSSSS" + Twenty))
        {
            foreach (SpeechEvent one in _cutter.Hear(frame).Where(one => one is not SpeechEvent.Sound))
            {
                noticed.Add(one);
                if (one is SpeechEvent.MaybeEnded && !noticed.OfType<SpeechEvent.Ended>().Any())
                {
                    _cutter.HangOver = TimeSpan.FromMilliseconds(700);
                }
            }
        }

        Assert.Equal("Began MaybeEnded Resumed MaybeEnded Ended Began MaybeEnded Ended Began MaybeEnded Ended", Names(noticed));
    }

    [Fact]
    public void A_shorter_hang_over_ends_the_utterance_sooner_but_never_before_the_pause_was_told()
    {
        Hear(Twenty + "SSSSSSSSSS");
        _cutter.HangOver = TimeSpan.Zero;

        List<SpeechEvent> noticed = Hear("qqqqq", Scripted.Frame(30));

        Assert.Equal("Ended", Names(noticed));
    }

    [Fact]
    public void The_own_voice_is_not_heard_until_300_ms_after_it()
    {
        Hear(Twenty);
        _cutter.Deaf = true;
        List<SpeechEvent> own = Hear("SSSSSSSSSSSSSSSSSSSS", Scripted.Frame(20));
        _cutter.Deaf = false;
        List<SpeechEvent> echo = Hear("SSSSSSSSS", Scripted.Frame(40));
        List<SpeechEvent> after = Hear("qqqq SSSSSSSSSS" + Twenty, Scripted.Frame(49));

        Assert.Empty(own);
        Assert.Empty(echo);
        Assert.Equal("Began MaybeEnded Ended", Names(after));
        Assert.DoesNotContain(0.9f, Assert.Single(after.OfType<SpeechEvent.Ended>()).Clip.Samples[..1_536]);
    }

    [Fact]
    public void Speech_that_the_own_voice_begins_to_talk_over_is_refused()
    {
        Hear(Twenty + "SSSSSSSS");
        _cutter.Deaf = true;

        Assert.Equal("SpokenOver", Names(Hear("SSSS", Scripted.Frame(28))));
    }

    [Fact]
    public void An_answer_that_began_while_the_tool_spoke_is_refused_because_its_beginning_is_lost()
    {
        _cutter.Deaf = true;
        Hear(Twenty);
        _cutter.Deaf = false;

        Assert.Equal("Began BeginningLost", Names(Hear("qqqqqqqqqq SSSSSSSSSS" + Twenty, Scripted.Frame(20))));
    }

    [Fact]
    public void Level_and_state_are_told_eight_times_a_second_and_at_once_when_the_state_changes()
    {
        List<SpeechEvent.Sound> told = [.. Scripted.Frames("qqqq qqqq SLLL qqqq").SelectMany(_cutter.Hear).OfType<SpeechEvent.Sound>()];

        Assert.Equal([SoundState.Good, SoundState.Good, SoundState.Lost, SoundState.Lost, SoundState.Lost, SoundState.Good], told.Select(sound => sound.State));
        Assert.Equal(-20, told[0].Level, 0.01);
        Assert.Equal("lost", told[2].Message);
    }

    [Fact]
    public async Task A_live_source_is_followed_even_if_nobody_takes_the_events()
    {
        int taken = 0;
        IEnumerable<AudioFrame> frames = Scripted.Frames(Twenty + "SSSSSSSSSS" + Twenty).Select(frame =>
        {
            Interlocked.Increment(ref taken);
            return frame;
        });
        await using IAsyncEnumerator<SpeechEvent> events = _cutter.Listen(new GivenFrames(frames)).GetAsyncEnumerator();

        Assert.True(await events.MoveNextAsync());

        await Eventually.True(() => Volatile.Read(ref taken) == 50);
    }

    [Fact]
    public async Task A_file_waits_for_the_reader_of_the_events()
    {
        int taken = 0;
        IEnumerable<AudioFrame> frames = Scripted.Frames(Twenty + "SSSSSSSSSS" + Twenty).Select(frame =>
        {
            taken++;
            return frame;
        });

        await foreach (SpeechEvent noticed in _cutter.Listen(new GivenFrames(frames, live: false)))
        {
            if (noticed is SpeechEvent.MaybeEnded)
            {
                Assert.Equal(35, taken);
            }
        }

        Assert.Equal(50, taken);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task Listening_ends_when_it_is_cancelled(bool live)
    {
        using CancellationTokenSource stop = new();
        IEnumerable<AudioFrame> endless = Enumerable.Range(0, int.MaxValue).SelectMany(i => Scripted.Frames("q", Scripted.Frame(i)));

        await Assert.ThrowsAnyAsync<OperationCanceledException>(async () =>
        {
            await foreach (SpeechEvent noticed in _cutter.Listen(new GivenFrames(endless, live), stop.Token))
            {
                await stop.CancelAsync();
            }
        }).WaitAsync(TimeSpan.FromSeconds(30));
    }
}
