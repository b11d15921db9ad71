namespace HandsFreeStartup.Speech.Listening;

/// <summary>A stretch of sound that holds one utterance.</summary>
/// <param name="Samples">16 kHz mono, with the pre-roll before and the silence after the speech.</param>
/// <param name="Start">Position of the first sample in the source.</param>
/// <param name="SpeechStart">Position where speech was first detected.</param>
/// <param name="SpeechEnd">Position where the silence began after the last speech so far.</param>
public sealed record SpeechClip(float[] Samples, long Start, long SpeechStart, long SpeechEnd)
{
    /// <summary>How long the speech lasted, pauses included.</summary>
    public TimeSpan SpeechDuration => TimeSpan.FromSeconds((double)(SpeechEnd - SpeechStart) / WavFile.Rate);

    /// <summary>Whether it ends in the middle of speech.</summary>
    public bool IsCutShort => SpeechEnd >= Start + Samples.Length;
}

/// <summary>Why an utterance is not handed on.</summary>
public enum Refusal
{
    /// <summary>Shorter than any word: a knock, a click, a slammed door.</summary>
    TooShort,
    /// <summary>Longer than the recognizer's window. It is not cut, because a number without its end is a wrong number.</summary>
    TooLong,
    /// <summary>Its beginning was not heard: speech was already under way when hearing began.</summary>
    BeginningLost,
    /// <summary>The tool began to speak over it.</summary>
    SpokenOver,
    /// <summary>The sound was lost in the middle of it, or ended before the speech did.</summary>
    SoundLost,
}

/// <summary>What the cutter noticed.</summary>
public abstract record SpeechEvent
{
    SpeechEvent()
    {
    }

    /// <summary>Somebody speaks.</summary>
    /// <param name="SpeechStart">Position where the speech began.</param>
    public sealed record Began(long SpeechStart) : SpeechEvent;

    /// <summary>A short silence: the utterance has perhaps ended. Time to decode ahead, and to set <see cref="SpeechCutter.HangOver"/>.</summary>
    /// <param name="SoFar">The utterance up to now.</param>
    public sealed record MaybeEnded(SpeechClip SoFar) : SpeechEvent;

    /// <summary>Speech goes on after a <see cref="MaybeEnded"/>: what was decoded ahead is void.</summary>
    public sealed record Resumed : SpeechEvent;

    /// <summary>Speech goes on and on, somebody's or the tool's own. It may become too long to be used, but a call for help in it must not be lost.</summary>
    /// <param name="Lately">The last seconds of it.</param>
    public sealed record GoesOn(SpeechClip Lately) : SpeechEvent;

    /// <summary>The utterance is complete.</summary>
    /// <param name="Clip">All of it.</param>
    /// <param name="AsPaused">Nothing like speech came after the last <see cref="MaybeEnded"/>: what was decoded ahead of its clip holds.</param>
    public sealed record Ended(SpeechClip Clip, bool AsPaused) : SpeechEvent;

    /// <summary>Speech, or what looked like it, that must not be used.</summary>
    /// <param name="Clip">The sound, at most its last ten seconds.</param>
    /// <param name="Why">The reason.</param>
    public sealed record Refused(SpeechClip Clip, Refusal Why) : SpeechEvent;

    /// <summary>How the source does: at every change of its state, and about eight times a second.</summary>
    /// <param name="Level">Loudest frame since the last such event, in dBFS.</param>
    /// <param name="State">Whether it can be heard.</param>
    /// <param name="Message">One sentence for the technician, empty while all is well.</param>
    public sealed record Sound(double Level, SoundState State, string Message) : SpeechEvent;
}
