using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Tests.Support;
using Microsoft.Extensions.Time.Testing;

namespace HandsFreeStartup.Speech.Tests.Listening;

public sealed class WavFilesTests : IDisposable
{
    readonly TemporaryFolder _folder = new();
    readonly string _half;
    readonly string _other;

    public WavFilesTests()
    {
        _half = _folder.File("half.wav", WavBytes.Of(WavBytes.Sine(500, 16_000, 0.5), 16_000));
        _other = _folder.File("other.wav", WavBytes.Of(WavBytes.Sine(700, 16_000, 0.5), 16_000));
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Each_file_stands_between_silence_and_positions_run_on()
    {
        List<AudioFrame> frames = [];
        await foreach (AudioFrame frame in WavFiles.Open([_half, _other]).Frames(default))
        {
            frames.Add(frame);
        }

        float[] all = [.. frames.SelectMany(frame => frame.Samples.ToArray())];
        Assert.Equal(Enumerable.Range(0, frames.Count).Select(i => (long)i * 512), frames.Select(frame => frame.Position));
        Assert.All(all[..6_400], sample => Assert.Equal(0, sample));
        Assert.Equal(WavFile.Read(_half), all[6_400..14_400]);
        Assert.All(all[14_400..36_800], sample => Assert.Equal(0, sample));
        Assert.Equal(WavFile.Read(_other), all[36_800..44_800]);
    }

    [Fact]
    public async Task A_file_waits_for_its_turn()
    {
        int turns = 0;
        List<int> turnOfFrame = [];
        WavFiles files = WavFiles.Open([_half, _other], turn: _ =>
        {
            turns++;
            return ValueTask.CompletedTask;
        });

        await foreach (AudioFrame frame in files.Frames(default))
        {
            turnOfFrame.Add(turns);
        }

        Assert.Equal(2, turns);
        Assert.Equal(59, turnOfFrame.Count(turn => turn == 1));
    }

    [Fact]
    public async Task At_the_pace_of_speech_a_frame_comes_when_its_last_sample_would_have_been_spoken()
    {
        FakeTimeProvider clock = new();
        await using IAsyncEnumerator<AudioFrame> frames = WavFiles.Open([_half], clock).Frames(default).GetAsyncEnumerator();
        for (int i = 0; i < 10; i++)
        {
            ValueTask<bool> next = frames.MoveNextAsync();
            clock.Advance(TimeSpan.FromMilliseconds(31));
            Assert.False(next.IsCompleted);
            clock.Advance(TimeSpan.FromMilliseconds(1));
            Assert.True(await next.AsTask().WaitAsync(TimeSpan.FromSeconds(30)));
        }
    }

    [Fact]
    public void A_bad_file_is_found_before_the_first_one_is_played()
    {
        string bad = _folder.File("bad.wav", [1, 2, 3]);

        Assert.Contains("bad.wav", Assert.Throws<SoundFileException>(() => WavFiles.Open([_half, bad])).Message);
    }
}
