using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Speech.Phrases;

/// <summary>Finds the safety phrases in words that were typed or read freely: alone, or with a few words around them ("yes, I do smell gas").</summary>
static class SafetyText
{
    static readonly ImmutableArray<(SafetyWay Way, ImmutableArray<string> Words)> Ways =
        [.. SafetyWords.Ways.Select(way => (way, PlainWords.Of(way.Words))).OrderByDescending(way => way.Item2.Length)];

    /// <summary>What holds a way and must not stop, with where the way stands in it ("gas leak" in "gas leak check").</summary>
    static readonly ImmutableArray<(ImmutableArray<string> Words, Span Way)> NotMeant =
    [
        .. from phrase in SafetyWords.NotMeant
           let words = PlainWords.Of(phrase)
           from way in Ways
           from place in Places(words, way.Words)
           select (words, place),
    ];

    static readonly ImmutableHashSet<string> Known = [.. SafetyWords.NotMeant.Select(phrase => string.Join(' ', PlainWords.Of(phrase)))];

    static readonly ImmutableHashSet<string> Around = [.. SafetyWords.Around.SelectMany(word => PlainWords.Of(word))];

    /// <summary>The safety phrase that is called out in <paramref name="words"/>, or null.</summary>
    /// <param name="words">Plain words.</param>
    /// <param name="isDictation">Whether free speech is expected: then a way that is a part of what is told does not count.</param>
    /// <param name="own">Words of the tool itself, whose voice may be among what was heard; they do not count as words around a way, nor make one that must not stop ("say yes or no" and "gas smell").</param>
    public static Meaning.Command? Of(ImmutableArray<string> words, bool isDictation, params ImmutableArray<string> own)
    {
        // A single word that the tool says too may be anybody's; two in its order are the tool's.
        bool IsEcho(int from, int end) => end > from + 1 && Places(own, words[from..end]).Any();

        ImmutableArray<Span> covered =
        [
            .. from phrase in NotMeant
               from place in Places(words, phrase.Words)
               let way = new Span(place.From + phrase.Way.From, phrase.Way.Count)
               where Places(own, phrase.Words).Any() || !(IsEcho(Math.Max(0, place.From - 1), way.From) || IsEcho(way.End, Math.Min(words.Length, place.End + 1)))
               select way,
        ];
        return (from way in Ways
                from place in Places(words, way.Words)
                where !covered.Any(place.Overlaps)
                let others = words.Where((_, at) => !place.Holds(at))
                where isDictation ? others.All(Around.Contains) : others.Count(word => !own.Contains(word)) <= (way.Way.MostAround ?? words.Length)
                select new Meaning.Command(way.Way.Word) { IsFire = way.Way.IsFire }).FirstOrDefault();
    }

    /// <summary>Whether the words are exactly one of the phrases that are like a safety phrase and must not stop.</summary>
    public static bool IsNotMeant(ImmutableArray<string> words) => Known.Contains(string.Join(' ', words));

    static IEnumerable<Span> Places(ImmutableArray<string> words, ImmutableArray<string> phrase) =>
        from at in Enumerable.Range(0, Math.Max(0, words.Length - phrase.Length + 1))
        where words.AsSpan(at, phrase.Length).SequenceEqual(phrase.AsSpan())
        select new Span(at, phrase.Length);

    /// <summary>Some words in a row.</summary>
    readonly record struct Span(int From, int Count)
    {
        public int End => From + Count;

        public bool Holds(int at) => at >= From && at < End;

        public bool Overlaps(Span other) => From < other.End && other.From < End;
    }
}
