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
/// <param name="Level">Loudness in dBFS, <see cref="AudioFrame.Floor"/> for none.</param>
/// <param name="Sound">Whether the source can be heard.</param>
/// <param name="Message">One sentence about the source, empty while all is well.</param>
/// <param name="OffersKeys">Two utterances in a row were not understood: the key entry opens, and the voice still works.</param>
/// <param name="IsSpeaking">Whether the tool speaks.</param>
/// <param name="IsDeaf">Whether nothing is heard meanwhile.</param>
/// <param name="SoundFor">How long <paramref name="Sound"/> has been so.</param>
public sealed record EarView(
    EarState State, double Level = AudioFrame.Floor, SoundState Sound = SoundState.Good, string Message = "", bool OffersKeys = false, bool IsSpeaking = false, bool IsDeaf = false,
    TimeSpan SoundFor = default);

/// <summary>What a display is told: the state, and what has just happened.</summary>
/// <param name="View">The state of the start-up.</param>
/// <param name="Ear">How the ear does.</param>
/// <param name="Heard">What was said or typed at this moment, or null.</param>
/// <param name="Said">What the tool says at this moment.</param>
public sealed record Moment(StartupView View, EarView Ear, Evidence? Heard, ImmutableArray<Announcement> Said);
