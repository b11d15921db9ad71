using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Session;

/// <summary>One thing that reaches the session; they are taken one after the other.</summary>
public abstract record Input
{
    Input()
    {
    }

    /// <summary>Somebody begins to speak.</summary>
    /// <param name="IsLive">Whether the speaker hears what the tool asks; a recording was made before.</param>
    public sealed record SpeechBegan(bool IsLive = true) : Input;

    /// <summary>A complete utterance.</summary>
    /// <param name="Clip">Its sound.</param>
    /// <param name="Ahead">What was understood while the speaker paused, or null.</param>
    /// <param name="Over">What the tool was saying at the same time, or null.</param>
    public sealed record Spoken(SpeechClip Clip, HeardAhead? Ahead = null, string? Over = null) : Input;

    /// <summary>The tool's voice begins or ends.</summary>
    /// <param name="Speaks">Whether a sound is made.</param>
    public sealed record Voice(bool Speaks) : Input;

    /// <summary>Speech that must not be used.</summary>
    /// <param name="Why">The reason.</param>
    /// <param name="Over">What the tool was saying when it began, or null.</param>
    public sealed record Unusable(Refusal Why, string? Over = null) : Input;

    /// <summary>A line from the keyboard.</summary>
    /// <param name="Line">As typed.</param>
    public sealed record Typed(string Line) : Input;

    /// <summary>The key of a command.</summary>
    /// <param name="Word">Which command.</param>
    public sealed record Pressed(CommandWord Word) : Input;

    /// <summary>How the source of sound does.</summary>
    /// <param name="Level">Loudness in dBFS.</param>
    /// <param name="State">Whether it can be heard.</param>
    /// <param name="Message">One sentence for the technician, empty while all is well.</param>
    public sealed record Sound(double Level, SoundState State, string Message) : Input;

    /// <summary>No more sound will come.</summary>
    public sealed record SoundEnded : Input;

    /// <summary>Time has passed.</summary>
    public sealed record Tick : Input;

    /// <summary>The next recording asks whether it may begin.</summary>
    /// <param name="AfterTimers">It waits until no timer runs.</param>
    /// <param name="Granted">Completed when everything before has been taken in and said.</param>
    public sealed record Turn(bool AfterTimers, TaskCompletionSource Granted) : Input;

    /// <summary>Something that was waited for is over.</summary>
    internal sealed record Awake : Input;

    /// <summary>No more inputs will come.</summary>
    internal sealed record Closing : Input;
}
