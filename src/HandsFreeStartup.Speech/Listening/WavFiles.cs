using System.Collections.Immutable;
using System.Runtime.CompilerServices;

namespace HandsFreeStartup.Speech.Listening;

/// <summary>Recordings, one after the other, each between two stretches of silence so that its first and last word are whole.</summary>
public sealed class WavFiles : IAudioSource
{
    /// <summary>How many samples of silence come before each recording.</summary>
    public const int SamplesBefore = 4 * WavFile.Rate / 10;

    static readonly float[] Before = new float[SamplesBefore];
    static readonly float[] After = new float[1 * WavFile.Rate];

    readonly ImmutableArray<Func<float[]>> _sounds;
    readonly TimeProvider? _pace;
    readonly Func<CancellationToken, ValueTask> _turn;

    WavFiles(ImmutableArray<Func<float[]>> sounds, TimeProvider? pace, Func<CancellationToken, ValueTask>? turn) =>
        (_sounds, _pace, _turn) = (sounds, pace, turn ?? (_ => ValueTask.CompletedTask));

    /// <inheritdoc/>
    public bool IsLive => false;

    /// <summary>Checks that every file can be used, so that a job does not stop half-way through.</summary>
    /// <param name="paths">The files in the order of speaking.</param>
    /// <param name="pace">With a clock, at the pace of speech; without, as fast as frames are taken.</param>
    /// <param name="turn">Awaited before each file, for instance until the tool has finished its prompt.</param>
    /// <exception cref="SoundFileException">A file cannot be used.</exception>
    public static WavFiles Open(IEnumerable<string> paths, TimeProvider? pace = null, Func<CancellationToken, ValueTask>? turn = null)
    {
        ImmutableArray<string> all = [.. paths];
        foreach (string path in all)
        {
            WavFile.Read(path);
        }

        return new WavFiles([.. all.Select(path => (Func<float[]>)(() => WavFile.Read(path)))], pace, turn);
    }

    /// <summary>A recording that was read already, as fast as frames are taken.</summary>
    /// <param name="sound">16 kHz mono samples between -1 and 1.</param>
    public static WavFiles Of(float[] sound) => new([() => sound], null, null);

    /// <inheritdoc/>
    public async IAsyncEnumerable<AudioFrame> Frames([EnumeratorCancellation] CancellationToken cancellation)
    {
        FrameMaker maker = new();
        foreach (Func<float[]> read in _sounds)
        {
            await _turn(cancellation);
            long first = maker.Position;
            long? started = _pace?.GetTimestamp();
            float[] sound = [.. Before, .. read(), .. After];
            foreach (AudioFrame frame in maker.Add(sound))
            {
                cancellation.ThrowIfCancellationRequested();
                if (_pace is not null)
                {
                    TimeSpan due = TimeSpan.FromSeconds((double)(frame.Position - first + AudioFrame.Length) / WavFile.Rate);
                    TimeSpan early = due - _pace.GetElapsedTime(started!.Value);
                    await Task.Delay(early > TimeSpan.Zero ? early : TimeSpan.Zero, _pace, cancellation);
                }

                yield return frame;
            }
        }
    }
}
