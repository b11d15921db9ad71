using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Phrases;

namespace HandsFreeStartup.Speech.Understanding;

/// <summary>
/// Finds that a call for help is said again. An ear that mishears a voice mishears it the same way every time: whoever calls and is not understood sounds the same the second time, and other talk does not.
/// </summary>
public static class SaidAgain
{
    /// <summary>The call that both utterances may have been, where they sound alike; or null.</summary>
    /// <param name="before">What was heard first.</param>
    /// <param name="now">What was heard later.</param>
    public static Phrase.Command? Call(FaintCall before, FaintCall now) =>
        before.Readings.Zip(now.Readings).Any(heard => Likeness(heard.First, heard.Second) >= CertaintyPolicy.Shipped.Safety.Again.Alike)
            ? now.Calls.FirstOrDefault(call => before.Calls.Any(other => (other.Word, other.IsFire) == (call.Word, call.IsFire)))
            : null;

    /// <summary>Whether both utterances, which may have other people's words around a call, hold it in the same words; or sound alike.</summary>
    /// <param name="before">What was heard first.</param>
    /// <param name="now">What was heard later.</param>
    public static bool IsSame(FaintCall before, FaintCall now) =>
        before.Calls.Select(WordsOf).Intersect(now.Calls.Select(WordsOf)).Any() || Call(before, now) is not null;

    static string WordsOf(Phrase.Command call) => string.Join(' ', PlainWords.Of(call.Evidence.Words));

    /// <summary>How many of their words two readings share, 0..1 (the coefficient of Dice and Sørensen).</summary>
    static double Likeness(string one, string other)
    {
        List<string> left = [.. PlainWords.Of(other)];
        var words = PlainWords.Of(one);
        int all = words.Length + left.Count, shared = words.Count(left.Remove);
        return all == 0 ? 0 : 2.0 * shared / all;
    }
}
