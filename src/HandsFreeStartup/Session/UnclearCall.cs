using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Session;

/// <summary>A call for help that was not clear enough to act on, and was asked for again. Whoever then says it again means it, however unclear it is.</summary>
sealed class UnclearCall
{
    /// <summary>How long after an unclear call another one says it again, samples; common practice, no source.</summary>
    const long Within = 20 * WavFile.Rate;

    long? _end;
    SpeechClip? _again;

    /// <summary>Whether an unclear call says one again that was asked for; where it does not, it is asked for itself from then on. The same clip always gets the same answer.</summary>
    /// <param name="clip">Its sound. What overlaps with that of the first is the same call.</param>
    /// <param name="over">What the tool was saying at the same time; its own voice says nothing again.</param>
    public bool IsSaidAgain(SpeechClip clip, string? over)
    {
        bool isAgain = ReferenceEquals(clip, _again) || (over is null && _end is { } end && clip.SpeechStart >= end && clip.SpeechStart - end <= Within);
        (_end, _again) = (clip.SpeechEnd, isAgain ? clip : null);
        return isAgain;
    }
}
