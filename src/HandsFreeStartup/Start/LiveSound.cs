using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Session;
using HandsFreeStartup.Sound;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Speaking;

namespace HandsFreeStartup.Start;

/// <summary>Microphone and voice of a start-up, and how they get along.</summary>
sealed class LiveSound : IDisposable
{
    readonly EchoCanceller? _canceller;
    readonly string? _microphone;

    LiveSound(HearingProfile profile, EchoCanceller? canceller, string? microphone) => (Profile, _canceller, _microphone) = (profile, canceller, microphone);

    /// <summary>How they get along; another microphone than the one that was chosen may hear the voice.</summary>
    public HearingProfile Profile { get; private set; }

    /// <summary>Opens what the profile needs; where the echo cannot be canceled nothing is heard while the tool speaks.</summary>
    /// <param name="options">What was asked for.</param>
    /// <param name="tell">Takes one sentence where it is not as it was asked for.</param>
    public static LiveSound Open(StartOptions options, Action<string> tell)
    {
        bool isLive = !options.Demo && !options.Sound.Keys && options.Sound.Wav.IsEmpty;
        HearingProfile wanted = isLive ? options.Sound.Hearing ?? HearingProfiles.Kept(options.Data) : HearingProfile.HalfDuplex;
        if (wanted != HearingProfile.EchoCancelled)
        {
            return new LiveSound(wanted, null, options.Sound.Microphone);
        }

        EchoCanceller? canceller = EchoCanceller.Load(options.Sound.Microphone);
        if (canceller is null)
        {
            tell("The sound server cannot cancel the echo of the voice: nothing is heard while it speaks. Use a headset, or --mute.");
        }

        return new LiveSound(canceller is null ? HearingProfile.HalfDuplex : wanted, canceller, canceller?.Source ?? options.Sound.Microphone);
    }

    /// <summary>The microphone.</summary>
    public IAudioSource Microphone(TimeProvider clock) =>
        new Microphone(() => CaptureCommand.Find(_microphone), CaptureCommand.Missing(_microphone), clock) { Moved = () => Profile = HearingProfile.HalfDuplex };

    /// <summary>The voice.</summary>
    /// <param name="clock">Ends a player that hangs.</param>
    /// <param name="speaking">Told true before a sound is made and false after it.</param>
    /// <param name="language">That it speaks.</param>
    public IVoice Voice(TimeProvider clock, Action<bool> speaking, Language language) => SynthesizedVoice.Find(clock, speaking, _canceller?.Sink, language: language);

    /// <inheritdoc/>
    public void Dispose() => _canceller?.Dispose();
}
