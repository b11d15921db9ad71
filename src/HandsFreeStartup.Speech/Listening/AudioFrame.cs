namespace HandsFreeStartup.Speech.Listening;

/// <summary>How well a source of sound can be heard.</summary>
public enum SoundState
{
    /// <summary>Sound arrives.</summary>
    Good,
    /// <summary>Speech arrives, but too faint to be told from the noise of the microphone.</summary>
    Faint,
    /// <summary>Most of the sound is the hum of the mains: a cable or a ground is bad.</summary>
    Humming,
    /// <summary>Sound arrives too loud: its peaks are cut off, so numbers may be misheard.</summary>
    Overloaded,
    /// <summary>Not even the noise of a microphone arrives: it is muted, or not connected.</summary>
    Dead,
    /// <summary>Sound arrives at another speed than was asked for; speech in it cannot be trusted.</summary>
    WrongRate,
    /// <summary>From here on another device is listened to: the one before is gone.</summary>
    Moved,
    /// <summary>Nothing arrives.</summary>
    Lost,
}

/// <summary>32 ms of sound, or, without samples, the news that none arrives.</summary>
/// <param name="Position">Number of samples of the source before this frame; it does not advance while sound is lost.</param>
/// <param name="Samples">512 samples at 16 kHz between -1 and 1; none when <see cref="SoundState.Lost"/> or <see cref="SoundState.Moved"/>.</param>
/// <param name="State">How the source has done in about the last second.</param>
/// <param name="Message">One sentence for the technician, empty while all is well.</param>
public sealed record AudioFrame(long Position, ReadOnlyMemory<float> Samples, SoundState State = SoundState.Good, string Message = "")
{
    /// <summary>Samples in a frame: what the speech detector takes at once.</summary>
    public const int Length = 512;

    /// <summary>The lowest level that is told apart from silence, in dBFS.</summary>
    public const double Floor = -100;

    /// <summary>How long a frame lasts.</summary>
    public static TimeSpan Duration { get; } = TimeSpan.FromSeconds((double)Length / WavFile.Rate);

    /// <summary>Root mean square of the samples in dBFS (a full-scale square wave is 0), from <see cref="Floor"/> up.</summary>
    public double Level => LevelOf(Samples.Span);

    /// <summary>Root mean square in dBFS, from <see cref="Floor"/> up.</summary>
    public static double LevelOf(ReadOnlySpan<float> samples)
    {
        double sum = 0;
        foreach (float sample in samples)
        {
            sum += sample * sample;
        }

        return samples.IsEmpty ? Floor : Math.Max(Floor, 10 * Math.Log10(sum / samples.Length));
    }
}

/// <summary>Something that sound comes from.</summary>
public interface IAudioSource
{
    /// <summary>Whether sound arrives by itself and is gone when nobody takes it; a file waits.</summary>
    bool IsLive { get; }

    /// <summary>The sound, frame by frame. A live source never fails: it says <see cref="SoundState.Lost"/> and tries again.</summary>
    /// <param name="cancellation">Ends the listening.</param>
    IAsyncEnumerable<AudioFrame> Frames(CancellationToken cancellation);
}
