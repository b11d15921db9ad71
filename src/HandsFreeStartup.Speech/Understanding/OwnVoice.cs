using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Phrases;

namespace HandsFreeStartup.Speech.Understanding;

/// <summary>Tells the technician's words from an echo of what the tool says itself.</summary>
public static class OwnVoice
{
    /// <summary>Share of the words heard from which on they count as the tool's own.</summary>
    const double Share = 0.6;

    /// <summary>Words of the tool for which a call may be taken.</summary>
    const int MostCovered = 3;

    /// <summary>
    /// Whether a phrase heard while the tool spoke may be an echo. A safety phrase is one only where the tool says these very words: "I smell gas" is none of "do you smell gas". A reading is one only
    /// where the tool says a number too: "room monoxide ninety" is none of "say the room monoxide".
    /// </summary>
    /// <param name="phrase">What was heard.</param>
    /// <param name="said">What the tool was saying.</param>
    public static bool MayBeEcho(Phrase phrase, string said)
    {
        ImmutableArray<string> own = PlainWords.Of(said), heard = PlainWords.Of(phrase.Evidence.Words);
        if (phrase is Phrase.Command { IsSafetyPhrase: true } command)
        {
            return WaysOf(command.Word).Where(way => Holds(heard, way)).MaxBy(way => way.Length) is { IsDefault: false } way
                ? Holds(WithoutShort(own), WithoutShort(way))
                : WaysOf(command.Word).Any(way => Holds(own, way));
        }

        return (phrase is not Phrase.Reading || own.Any(word => NumberWord.Find(word) is { Part: NumberPart.Digit or NumberPart.Teen or NumberPart.Ten })) && heard.Count(own.Contains) >= Share * heard.Length;
    }

    /// <summary>
    /// Whether a safety phrase heard over the tool's own voice in another language than the ear's is too faint to act on: "válvula de gas, y" is heard as "we have a gas leak" by one ear, and no
    /// word of what is said tells so. Then it must be said again.
    /// </summary>
    /// <param name="phrase">What was heard.</param>
    /// <param name="said">What the tool was saying.</param>
    public static bool IsFaintCall(Phrase phrase, string said)
    {
        OverVoiceThreshold least = CertaintyPolicy.Shipped.Safety.OverVoice;
        return phrase is Phrase.Command { IsSafetyPhrase: true, Word: var word }
            && (phrase.Evidence.Certainty != Certainty.Green || phrase.Evidence.Score < (word == CommandWord.GasSmell && PlainWords.Of(said).Contains("gas") ? least.ForeignGas : least.Foreign));
    }

    /// <summary>
    /// Whether a call that is not quite clear stands where the tool says something else: words of its own lead up to it and follow it, as in "plus number with one gas smell inches" over "plus
    /// number with one decimal (inches)". It may be that word misheard, or a call that covers it; then it must be said again.
    /// </summary>
    /// <param name="phrase">What was heard.</param>
    /// <param name="said">What the tool was saying.</param>
    public static bool StandsForOwnWords(Phrase phrase, string said)
    {
        ImmutableArray<string> own = PlainWords.Of(said), heard = PlainWords.Of(phrase.Evidence.Words);
        return phrase is Phrase.Command { IsSafetyPhrase: true } command && phrase.Evidence.Score < CertaintyPolicy.Shipped.Safety.OverVoice.OwnWords && WaysOf(command.Word).Any(way => Places(heard, way).Any(at => StandsIn(own, heard, at, at + way.Length)));
    }

    /// <summary>Two words before and one after, which the tool says with no more than <see cref="MostCovered"/> others between them.</summary>
    static bool StandsIn(ImmutableArray<string> own, ImmutableArray<string> heard, int from, int end) =>
        from >= 2 && end < heard.Length && Places(own, heard[(from - 2)..from]).Any(at => own.Skip(at + 3).Take(MostCovered).Contains(heard[end]));

    /// <summary>Whether the tool says these very words, one after the other; bad air that may be an echo, and is not said word for word, must be said again.</summary>
    /// <param name="phrase">What was heard.</param>
    /// <param name="said">What the tool was saying.</param>
    public static bool IsWordForWord(Phrase phrase, string said) => Holds(PlainWords.Of(said), PlainWords.Of(phrase.Evidence.Words));

    /// <summary>An echo of "smell for gas" is heard as "smell of gas".</summary>
    static ImmutableArray<string> WithoutShort(ImmutableArray<string> words) => [.. words.Where(word => word is not ("of" or "for" or "like" or "the" or "a"))];

    static IEnumerable<ImmutableArray<string>> WaysOf(CommandWord word) => SafetyWords.Ways.Where(way => way.Word == word).Select(way => PlainWords.Of(way.Words));

    static bool Holds(ImmutableArray<string> words, ImmutableArray<string> part) => Places(words, part).Any();

    static IEnumerable<int> Places(ImmutableArray<string> words, ImmutableArray<string> part) =>
        Enumerable.Range(0, Math.Max(0, words.Length - part.Length + 1)).Where(at => words.AsSpan(at, part.Length).SequenceEqual(part.AsSpan()));
}
