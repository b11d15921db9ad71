using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Session;

/// <summary>What was heard while the tool spoke. Where it hears itself, words of its own never count; the safety phrases, bad air in the room and "stop talking" do, and other speech ends the voice.</summary>
/// <param name="Profile">How the microphone and the voice get along.</param>
/// <param name="Said">What the tool was saying, or null.</param>
readonly record struct OverVoice(HearingProfile Profile, string? Said)
{
    /// <summary>Whether it may be nothing but the tool's own voice.</summary>
    public bool MayBeOwn => Said is not null && Profile == HearingProfile.EchoCancelled;

    /// <summary>Whether a phrase may be an echo.</summary>
    public bool IsEcho(Phrase phrase) => MayBeOwn && OwnVoice.MayBeEcho(phrase, Said!);

    /// <summary>Whether the tool was saying these very words.</summary>
    public bool IsWordForWord(Phrase phrase) => MayBeOwn && OwnVoice.IsWordForWord(phrase, Said!);

    /// <summary>Whether a phrase counts.</summary>
    /// <param name="phrase">What was heard.</param>
    /// <param name="isBadAir">Whether it tells of air in the room that asks for something.</param>
    public bool Counts(Phrase phrase, bool isBadAir) =>
        !MayBeOwn || phrase is Phrase.Command { Word: CommandWord.StopTalking } || ((isBadAir || phrase is Phrase.Command { IsSafetyPhrase: true }) && !IsEcho(phrase));
}
