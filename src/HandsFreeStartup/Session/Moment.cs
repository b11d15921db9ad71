using System.Collections.Immutable;
using HandsFreeStartup.Procedure;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Listening;

namespace HandsFreeStartup.Session;

/// <summary>What the ear is doing.</summary>
public enum EarState
{
    /// <summary>Nothing is heard; only keys.</summary>
    Off,
    /// <summary>It listens.</summary>
    Listening,
    /// <summary>Somebody speaks.</summary>
    HearingSpeech,
    /// <summary>An utterance is being understood.</summary>
    Understanding,
    /// <summary>The recordings are over; only keys.</summary>
    Over,
}

/// <summary>How the ear does.</summary>
/// <param name="State">What it is doing.</param>
public sealed record EarView(EarState State)
{
    /// <summary>Loudness in dBFS, <see cref="AudioFrame.Floor"/> for none.</summary>
    public double Level { get; init; } = AudioFrame.Floor;

    /// <summary>Whether the source can be heard.</summary>
    public SoundState Sound { get; init; } = SoundState.Good;

    /// <summary>One sentence about the source, empty while all is well.</summary>
    public string Message { get; init; } = "";

    /// <summary>Two utterances in a row were not understood: the key entry opens, and the voice still works.</summary>
    public bool OffersKeys { get; init; }

    /// <summary>Whether the tool speaks.</summary>
    public bool IsSpeaking { get; init; }

    /// <summary>Whether nothing is heard meanwhile.</summary>
    public bool IsDeaf { get; init; }

    /// <summary>How long <see cref="Sound"/> has been so.</summary>
    public TimeSpan SoundFor { get; init; }
}

/// <summary>What a display is told: the state, and what has just happened.</summary>
/// <param name="View">The state of the start-up.</param>
/// <param name="Ear">How the ear does.</param>
/// <param name="Heard">What was said or typed at this moment, or null.</param>
/// <param name="Said">What the tool says at this moment.</param>
public sealed record Moment(StartupView View, EarView Ear, Evidence? Heard, ImmutableArray<Announcement> Said);
