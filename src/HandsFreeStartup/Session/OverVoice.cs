using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Session;

/// <summary>What was heard while the tool spoke. Where it hears itself, words of its own never count; the safety phrases, bad air in the room and "stop talking" do, and other speech ends the voice.</summary>
/// <param name="Profile">How the microphone and the voice get along.</param>
/// <param name="Said">What the tool was saying, or null.</param>
/// <param name="Spoken">The language of its voice.</param>
readonly record struct OverVoice(HearingProfile Profile, string? Said, Language Spoken)
{
    /// <summary>Whether it may be nothing but the tool's own voice.</summary>
    public bool MayBeOwn => Said is not null && Profile == HearingProfile.EchoCancelled;

    /// <summary>Whether a phrase may be an echo.</summary>
    public bool IsEcho(Phrase phrase) => MayBeOwn && (OwnVoice.MayBeEcho(phrase, Said!) || IsDoubtfulCall(phrase));

    /// <summary>Whether a phrase that does not count may mean danger, and must be asked for again aloud.</summary>
    /// <param name="phrase">What was heard.</param>
    /// <param name="isBadAir">Whether it tells of air in the room that asks for something.</param>
    public bool MayBeDanger(Phrase phrase, bool isBadAir) => IsUnclearCall(phrase) || (MayBeOwn && (IsDoubtfulCall(phrase) || (isBadAir && !OwnVoice.IsWordForWord(phrase, Said!))));

    /// <summary>Whether a phrase counts. Bad air does where it is certain: of two voices at once the ear makes a value that nobody said, and a high one stops the job.</summary>
    /// <param name="phrase">What was heard.</param>
    /// <param name="isBadAir">Whether it tells of air in the room that asks for something.</param>
    public bool Counts(Phrase phrase, bool isBadAir) =>
        !MayBeOwn ? !IsUnclearCall(phrase) : phrase is Phrase.Command { Word: CommandWord.StopTalking } || (((isBadAir && phrase.Evidence.Certainty == Certainty.Green) || phrase is Phrase.Command { IsSafetyPhrase: true }) && !IsEcho(phrase));

    /// <summary>Out of talk beside the job an ear makes a call that nobody made; a headset hears a call over the voice as well as in silence.</summary>
    bool IsUnclearCall(Phrase phrase) => Said is null && phrase is Phrase.Command { IsSafetyPhrase: true, Evidence.Certainty: Certainty.Amber };

    bool IsDoubtfulCall(Phrase phrase) => OwnVoice.StandsForOwnWords(phrase, Said!) || (!Spoken.IsEnglish && OwnVoice.IsFaintCall(phrase, Said!));
}
