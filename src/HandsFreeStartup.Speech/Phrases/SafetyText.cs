using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Speech.Phrases;

/// <summary>Finds the safety phrases in words that were typed or read freely: alone, or with a few words around them ("yes, I do smell gas").</summary>
static class SafetyText
{
    /// <summary>So many words of a way are a sentence ("I smell gas"), fewer may be the subject of one ("gas leak at the union").</summary>
    const int FewestOfASentence = 3;

    /// <summary>With so many other words a sentence is still a call where a note or a reason may be said ("there is a fire in the furnace").</summary>
    const int MostInANote = 3;

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

    static readonly ImmutableArray<ImmutableArray<string>> Told = [.. SafetyWords.Told.Select(phrase => PlainWords.Of(phrase))];

    static readonly ImmutableHashSet<string> Lead = [.. SafetyWords.Lead.SelectMany(word => PlainWords.Of(word))];

    static readonly ImmutableHashSet<string> Around = [.. SafetyWords.Around.SelectMany(word => PlainWords.Of(word))];

    /// <summary>The safety phrase that is called out in <paramref name="words"/>, or null.</summary>
    /// <param name="words">Plain words.</param>
    /// <param name="expectation">In free speech a way that is a part of what is told does not count; in what is cut short, nobody knows what will follow a way.</param>
    /// <param name="own">Words of the tool itself, whose voice may be among what was heard; they do not count as words around a way, nor make one that must not stop ("say yes or no" and "gas smell").</param>
    public static Meaning.Command? Of(ImmutableArray<string> words, Expectation expectation, params ImmutableArray<string> own) => Find(words, expectation, own)?.Meaning;

    /// <summary>The same with where it stands.</summary>
    public static Call? Find(ImmutableArray<string> words, Expectation expectation, params ImmutableArray<string> own)
    {
        Span[] covered = [.. NotMeant.SelectMany(phrase => Covered(phrase.Words, phrase.Way, words, expectation, own))];
        return (from way in Ways
                from place in Places(words, way.Words)
                where !covered.Any(place.Overlaps) && (place.From < 2 || !IsPartOf(own, words, place.From - 2, place.From + 1))
                let others = words.Where((_, at) => !place.Holds(at))
                let lead = words[..place.From].TakeWhile(Lead.Contains).Count()
                where expectation.Dictation ? others.All(Around.Contains) || (place.Count >= FewestOfASentence && others.Count(word => !Around.Contains(word)) <= MostInANote) : others.Skip(lead).Count(word => !own.Contains(word)) <= (way.Way.MostAround ?? words.Length)
                select new Call(new Meaning.Command(way.Way.Word) { IsFire = way.Way.IsFire }, place.From, place.Count, IsTold(words, place.From))).FirstOrDefault();
    }

    /// <summary>
    /// Where a way stands in words that must not stop. What is cut short may go on so ("we have a fire" before "extinguisher"), and its last word may be half a word; the next stretch shows it.
    /// Words that the tool says beside a way are not the caller's.
    /// </summary>
    static IEnumerable<Span> Covered(ImmutableArray<string> phrase, Span way, ImmutableArray<string> words, Expectation expectation, ImmutableArray<string> own)
    {
        bool Fits(int part, int at) => at >= words.Length
            ? expectation.IsCutShort
            : words[at] == phrase[part] || (expectation.IsCutShort && at == words.Length - 1 && part >= way.End);

        bool isOwn = Places(own, phrase).Any();
        return from at in Enumerable.Range(0, Math.Max(0, words.Length - way.End + 1))
               where Enumerable.Range(0, phrase.Length).All(part => Fits(part, at + part)) && !IsOhNo(phrase, words, at)
               let place = new Span(at + way.From, way.Count)
               where isOwn || !(IsPartOf(own, words, at - 1, place.From) || IsPartOf(own, words, place.End, at + phrase.Length + 1))
               select place;
    }

    static bool IsTold(ImmutableArray<string> words, int from) => Told.Any(phrase => words.AsSpan()[from..].StartsWith(phrase.AsSpan()));

    /// <summary>"No gas smell" denies one, "oh no, gas smell" calls.</summary>
    static bool IsOhNo(ImmutableArray<string> phrase, ImmutableArray<string> words, int at) => phrase[0] == "no" && at > 0 && words[at - 1] == "oh";

    /// <summary>Whether these words, two at least, stand so in what the tool says: a single one may be anybody's.</summary>
    static bool IsPartOf(ImmutableArray<string> own, ImmutableArray<string> words, int from, int end)
    {
        (from, end) = (Math.Max(0, from), Math.Min(words.Length, end));
        return end > from + 1 && Places(own, words[from..end]).Any();
    }

    /// <summary>Whether the words are exactly one of the phrases that are like a safety phrase and must not stop.</summary>
    public static bool IsNotMeant(ImmutableArray<string> words) => Known.Contains(string.Join(' ', words));

    /// <summary>Whether the words are one of those phrases, or hold one that names or denies what a safety phrase calls out ("no gas smell", "gas leak check").</summary>
    public static bool HoldsNotMeant(ImmutableArray<string> words) =>
        IsNotMeant(words) || NotMeant.Any(phrase => Covered(phrase.Words, phrase.Way, words, Expectation.Open, []).Any());

    static IEnumerable<Span> Places(ImmutableArray<string> words, ImmutableArray<string> phrase) =>
        from at in Enumerable.Range(0, Math.Max(0, words.Length - phrase.Length + 1))
        where words.AsSpan(at, phrase.Length).SequenceEqual(phrase.AsSpan())
        select new Span(at, phrase.Length);

    /// <summary>A safety phrase among words.</summary>
    /// <param name="Meaning">Which.</param>
    /// <param name="From">Its first word.</param>
    /// <param name="Count">How many words it has.</param>
    /// <param name="IsTold">Whether what follows tells something of it ("emergency stop is ...").</param>
    public sealed record Call(Meaning.Command Meaning, int From, int Count, bool IsTold);

    /// <summary>Some words in a row.</summary>
    readonly record struct Span(int From, int Count)
    {
        public int End => From + Count;

        public bool Holds(int at) => at >= From && at < End;

        public bool Overlaps(Span other) => From < other.End && other.From < End;
    }
}
