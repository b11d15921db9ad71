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

    readonly List<Kept> _faint = [];
    readonly List<Kept> _asked = [];
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

        Phrase.Command? call = phrase is Phrase.NotUnderstood && faint.IsByItself
            ? Before(_faint, clip).Select(before => before.Faint is { IsByItself: true } first ? SaidAgain.Call(first, faint) : null).FirstOrDefault(call => call is not null)
            : null;
        Keep(_faint, clip, faint);
        return call is null ? phrase : call with { Faint = faint };
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
            || (over is null && Before(_asked, clip).Any(asked => call.Faint is not { IsByItself: false } now || asked.Faint is not { } first || SaidAgain.IsSame(first, now)));
        Keep(_asked, clip, call.Faint);
        _again = isAgain ? clip : null;
        return isAgain;
    }

    static IEnumerable<Kept> Before(List<Kept> kept, SpeechClip clip) => kept.Where(one => clip.SpeechStart >= one.End && clip.SpeechStart - one.End <= Within);

    /// <summary>A microphone that is plugged in again counts its samples from nothing: what lies behind the clip says nothing about it.</summary>
    static void Keep(List<Kept> kept, SpeechClip clip, FaintCall? faint)
    {
        kept.RemoveAll(one => one.Start > clip.SpeechEnd || (one.Start, one.End) == (clip.SpeechStart, clip.SpeechEnd));
        kept.RemoveRange(0, Math.Max(0, kept.Count - MostKept));
        kept.Add(new Kept(clip.SpeechStart, clip.SpeechEnd, faint));
    }

    /// <summary>What was heard, without its sound.</summary>
    readonly record struct Kept(long Start, long End, FaintCall? Faint);
}
