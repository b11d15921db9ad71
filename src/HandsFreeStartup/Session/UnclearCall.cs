using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Listening;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Session;

/// <summary>Calls for help that were not clear enough to act on. One that may be a call is asked for again aloud; whoever then says it again means it, however unclear it is.</summary>
sealed class UnclearCall
{
    /// <summary>How long after an unclear call another one says it again, samples; common practice, no source.</summary>
    const long Within = 20 * WavFile.Rate;

    /// <summary>More than is said in that time.</summary>
    const int MostKept = 16;

    readonly List<(SpeechClip Clip, FaintCall Faint)> _faint = [];
    readonly List<(SpeechClip Clip, FaintCall? Faint)> _asked = [];
    SpeechClip? _again;

    /// <summary>What was not understood is a call that must be asked for where the same was heard shortly before: who calls sounds alike every time, and other talk does not.</summary>
    /// <param name="phrase">As understood.</param>
    /// <param name="clip">Its sound.</param>
    /// <param name="over">What the tool was saying at the same time, or null.</param>
    public Phrase Recognized(Phrase phrase, SpeechClip clip, string? over)
    {
        if (over is not null || phrase.Faint is not { } faint)
        {
            return phrase;
        }

        Keep(_faint, clip, faint);
        return phrase is Phrase.NotUnderstood && faint.IsByItself
            ? Before(_faint, clip).Select(before => before.Faint.IsByItself ? SaidAgain.Call(before.Faint, faint) : null).FirstOrDefault(call => call is not null) is { } call
                ? call with { Faint = faint }
                : phrase
            : phrase;
    }

    /// <summary>
    /// Whether an unclear call says one again that was asked for; where it does not, it is asked for itself from then on. In speech that goes on, which makes many calls that nobody made, it must
    /// be the same as the first. The same clip always gets the same answer.
    /// </summary>
    /// <param name="call">As understood.</param>
    /// <param name="clip">Its sound. What overlaps with that of the first is the same call.</param>
    /// <param name="over">What the tool was saying at the same time; its own voice says nothing again.</param>
    public bool IsSaidAgain(Phrase call, SpeechClip clip, string? over)
    {
        bool isAgain = ReferenceEquals(clip, _again)
            || (over is null && Before(_asked, clip).Any(asked => call.Faint is not { IsByItself: false } now || asked.Faint is null || SaidAgain.IsSame(asked.Faint, now)));
        Keep(_asked, clip, call.Faint);
        _again = isAgain ? clip : null;
        return isAgain;
    }

    static IEnumerable<(SpeechClip Clip, T Faint)> Before<T>(List<(SpeechClip Clip, T Faint)> kept, SpeechClip clip) =>
        kept.Where(one => clip.SpeechStart >= one.Clip.SpeechEnd && clip.SpeechStart - one.Clip.SpeechEnd <= Within);

    /// <summary>A microphone that is plugged in again counts its samples from nothing: what lies behind the clip says nothing about it.</summary>
    static void Keep<T>(List<(SpeechClip Clip, T Faint)> kept, SpeechClip clip, T faint)
    {
        kept.RemoveAll(one => ReferenceEquals(one.Clip, clip) || one.Clip.SpeechStart > clip.SpeechEnd);
        kept.RemoveRange(0, Math.Max(0, kept.Count - MostKept));
        kept.Add((clip, faint));
    }
}
