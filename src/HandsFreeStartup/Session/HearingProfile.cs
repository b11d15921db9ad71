namespace HandsFreeStartup.Session;

/// <summary>How the microphone and the tool's own voice get along.</summary>
public enum HearingProfile
{
    /// <summary>The microphone hears the voice: while it speaks nothing else is heard, and the screen says so.</summary>
    HalfDuplex,
    /// <summary>The sound server takes the voice out of what the microphone hears: the safety phrases and "stop talking" are heard over it, other speech ends it.</summary>
    EchoCancelled,
    /// <summary>The microphone does not hear the voice: everything is heard, and speech ends the voice at once.</summary>
    Headset,
}
