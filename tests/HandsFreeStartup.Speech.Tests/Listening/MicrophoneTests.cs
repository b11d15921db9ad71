using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Tests.Support;
using Microsoft.Extensions.Time.Testing;

namespace HandsFreeStartup.Speech.Tests.Listening;

/// <summary>Shell scripts stand in for recording programs; every wait is bounded.</summary>
public sealed class MicrophoneTests : IDisposable
{
    readonly ScriptFolder _programs = new();
    readonly string _raw;
    readonly float[] _sound;

    public MicrophoneTests()
    {
        short[] samples = [.. Enumerable.Range(0, 20 * AudioFrame.Length).Select(i => (short)(i * 37 % 20_000 - 10_000))];
        _sound = [.. samples.Select(sample => sample / 32768f)];
        _raw = Path.Combine(_programs.Path, "sound.raw");
        File.WriteAllBytes(_raw, [.. samples.SelectMany(BitConverter.GetBytes)]);
    }

    public void Dispose() => _programs.Dispose();

    Microphone Running(string script, TimeProvider? clock = null) => new(CaptureCommand.Find(_programs.Add("recorder", script))!, clock ?? TimeProvider.System);

    static async Task<List<AudioFrame>> Until(Microphone microphone, Func<AudioFrame, bool> last)
    {
        using CancellationTokenSource stop = new(TimeSpan.FromSeconds(60));
        List<AudioFrame> frames = [];
        await foreach (AudioFrame frame in microphone.Frames(stop.Token))
        {
            frames.Add(frame);
            if (last(frame))
            {
                return frames;
            }
        }

        return frames;
    }

    static float[] SoundOf(IEnumerable<AudioFrame> frames) => [.. frames.SelectMany(frame => frame.Samples.ToArray())];

    [Fact]
    public async Task A_recorder_that_is_not_there_is_told_at_once_and_used_as_soon_as_it_is()
    {
        int asked = 0;
        CaptureCommand later = CaptureCommand.Find(_programs.Add("recorder", $"exec cat '{_raw}'"))!;
        Microphone microphone = new(() => ++asked > 2 ? later : null, CaptureCommand.Missing("nosuchprog --raw"), TimeProvider.System);

        List<AudioFrame> frames = await Until(microphone, frame => frame.State == SoundState.Good);

        Assert.Equal(SoundState.Lost, frames[0].State);
        Assert.Contains("nosuchprog --raw", frames[0].Message, StringComparison.Ordinal);
        Assert.Equal(3, asked);
    }

    /// <summary>By a clock that stands still: on a loaded machine the program alone may take longer than the patience of the microphone.</summary>
    [Theory]
    [InlineData("exec cat '{0}'")]
    [InlineData("head -c 1001 '{0}'; sleep 0.1; tail -c +1002 '{0}'")]
    public async Task What_the_program_writes_arrives_sample_for_sample(string script)
    {
        List<AudioFrame> frames = await Until(Running(string.Format(null, script, _raw), new FakeTimeProvider()), frame => frame.State == SoundState.Lost);

        Assert.Equal(_sound, SoundOf(frames));
        Assert.Equal(Enumerable.Range(0, 21).Select(i => (long)i * AudioFrame.Length), frames.Select(frame => frame.Position));
    }

    [Fact]
    public async Task A_program_that_ends_is_reported_with_its_own_words_and_started_again()
    {
        List<AudioFrame> frames = await Until(
            Running($"cat '{_raw}'; echo 'device unplugged' >&2; exit 1"),
            frame => frame.State == SoundState.Good && frame.Position >= _sound.Length);

        AudioFrame lost = Assert.Single(frames, frame => frame.State == SoundState.Lost);
        Assert.Equal(_sound.Length, lost.Position);
        Assert.StartsWith("No sound from the microphone (recorder: device unplugged)", lost.Message);
        Assert.DoesNotContain('\n', lost.Message);
    }

    [Fact]
    public async Task A_program_that_stops_giving_sound_is_reported_ended_and_started_again()
    {
        List<AudioFrame> frames = await Until(
            Running($"echo $$ >> \"$LOG\"; cat '{_raw}'; exec sleep 300"),
            frame => frame.State == SoundState.Good && frame.Position >= _sound.Length);

        Assert.Contains(frames, frame => frame.State == SoundState.Lost && frame.Position == _sound.Length);
        int[] processes = [.. _programs.LogText.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(int.Parse)];
        Assert.Equal(2, processes.Length);
        await Eventually.True(() => processes.All(process => !Directory.Exists($"/proc/{process}")));
    }

    [Fact]
    public async Task Another_device_than_the_one_that_was_opened_is_told_once_and_heard()
    {
        int moved = 0;
        CaptureCommand command = CaptureCommand.Find(_programs.Add("recorder",
            $"printf 'Connected to device headset (index: 1, suspended: no).\nTime: 0.0 sec\r' >&2; sleep 0.3; cat '{_raw}'; sleep 0.3; "
            + $"printf 'Stream moved to device room.monitor (0, not suspended).\nTime: 0.1 sec\r' >&2; sleep 0.3; cat '{_raw}'; sleep 0.2"))!;
        List<AudioFrame> frames = await Until(new Microphone(command, new FakeTimeProvider()) { Moved = () => moved++ }, frame => frame.State == SoundState.Lost);

        AudioFrame told = Assert.Single(frames, frame => frame.State == SoundState.Moved);
        Assert.Equal("The microphone is gone; another one is heard now: room.monitor.", told.Message);
        Assert.Equal(1, moved);
        Assert.Equal([.. _sound, .. _sound], SoundOf(frames));
        Assert.DoesNotContain("Time:", frames[^1].Message, StringComparison.Ordinal);
        Assert.DoesNotContain("Connected", frames[^1].Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_program_that_cannot_start_is_reported_and_tried_again_without_an_exception()
    {
        Microphone microphone = new(new CaptureCommand(Path.Combine(_programs.Path, "nothing"), []), TimeProvider.System);
        int lost = 0;

        List<AudioFrame> frames = await Until(microphone, frame => frame.State == SoundState.Lost && ++lost == 2);

        Assert.All(frames, frame => Assert.Contains("nothing", frame.Message));
    }

    [Fact]
    public async Task Half_a_sample_at_the_end_does_not_shift_what_comes_after_the_loss()
    {
        List<AudioFrame> frames = await Until(
            Running($"head -c 1025 '{_raw}'"),
            frame => frame.State == SoundState.Good && frame.Position >= 512);

        Assert.All(frames.Where(frame => frame.State == SoundState.Good), frame => Assert.Equal(_sound[..512], frame.Samples.ToArray()));
    }

    [Theory]
    [InlineData(9_600)]
    [InlineData(1_600)]
    public async Task A_device_that_ignores_the_wanted_rate_is_reported(int bytesInTenth)
    {
        List<AudioFrame> frames = await Until(
            Running($"while :; do head -c {bytesInTenth} '{_raw}'; sleep 0.1; done"),
            frame => frame.State == SoundState.WrongRate);

        Assert.Equal("recorder does not deliver 16000 samples per second: choose another device with --microphone.", frames[^1].Message);
    }

    [Fact]
    public async Task The_program_is_ended_with_the_listening()
    {
        SpeechCutter cutter = new(new ScriptedDetector());
        using CancellationTokenSource stop = new(TimeSpan.FromSeconds(60));
        Microphone microphone = Running($"echo $$ >> \"$LOG\"; while :; do cat '{_raw}'; sleep 0.3; done");

        await Assert.ThrowsAnyAsync<OperationCanceledException>(async () =>
        {
            await foreach (SpeechEvent noticed in cutter.Listen(microphone, stop.Token))
            {
                await stop.CancelAsync();
            }
        });

        await Eventually.True(() => !Directory.Exists($"/proc/{_programs.LogText.Trim()}"));
    }

    [Fact]
    public async Task An_utterance_that_the_microphone_lost_half_way_is_refused()
    {
        // Frames whose first sample is loud count as speech for the scripted detector.
        string speech = Path.Combine(_programs.Path, "speech.raw");
        float[] quiet = new float[20 * AudioFrame.Length], loud = Enumerable.Repeat(0.9f, 20 * AudioFrame.Length).ToArray();
        File.WriteAllBytes(speech, [.. quiet.Concat(loud).SelectMany(sample => BitConverter.GetBytes((short)(sample * 32767)))]);
        SpeechCutter cutter = new(new ScriptedDetector());
        using CancellationTokenSource stop = new(TimeSpan.FromSeconds(60));
        List<SpeechEvent> noticed = [];

        await foreach (SpeechEvent one in cutter.Listen(Running($"cat '{speech}'; exec sleep 300"), stop.Token))
        {
            noticed.Add(one);
            if (one is SpeechEvent.Refused)
            {
                break;
            }
        }

        Assert.Equal(Refusal.SoundLost, Assert.Single(noticed.OfType<SpeechEvent.Refused>()).Why);
        Assert.Empty(noticed.OfType<SpeechEvent.Ended>());
        Assert.Contains(noticed, one => one is SpeechEvent.Sound { State: SoundState.Lost });
    }
}
