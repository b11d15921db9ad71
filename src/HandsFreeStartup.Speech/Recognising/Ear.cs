using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>One model that hears under an expectation: free reading, and search over the legal phrases.</summary>
/// <param name="model">Loaded; disposed with the ear.</param>
/// <param name="name">For evidence and messages.</param>
/// <param name="mostDecodes">Most single decodes for one utterance.</param>
sealed class Ear(WhisperModel model, string name, int mostDecodes) : IDisposable
{
    const double SearchDepth = 5;

    /// <summary>A phrase so much less likely than the free reading is refused whatever else speaks for it.</summary>
    const double MostBelowFree = 12;

    const int MostSafetyDecodes = 12;
    /// <summary>Places of tries that are kept; a place that was looked at is never asked for again in most utterances, and a day of talk would fill the memory.</summary>
    const int MostPlaces = 20_000;

    const int MostFreeTokens = 24;
    const int MostDictationTokens = 120;

    readonly Dictionary<string, PhraseTrie> _tries = [];
    readonly PhraseTrie _safety = PhraseTrie.Of(new Expectation([], [], []), model.Tokens);

    /// <summary>For evidence and messages.</summary>
    public string Name => name;

    /// <summary>Builds what an expectation needs ahead of its first utterance.</summary>
    public PhraseTrie Prepare(Expectation expectation)
    {
        if (_tries.Values.Sum(known => known.Places) > MostPlaces)
        {
            _tries.Clear();
        }

        if (!_tries.TryGetValue(expectation.Key, out PhraseTrie? trie))
        {
            trie = PhraseTrie.Of(expectation, model.Tokens);
            _tries[expectation.Key] = trie;
        }

        return trie;
    }

    /// <summary>The evidence of this ear.</summary>
    /// <exception cref="OperationCanceledException">It was asked for.</exception>
    public EarEvidence Hear(ReadOnlySpan<float> samples, Expectation expectation, CancellationToken cancellation = default)
    {
        WhisperModel.Prefix start = model.Listen(samples);
        try
        {
            cancellation.ThrowIfCancellationRequested();
            double noSpeech = model.NoSpeech();
            FreeReading free = FreeReading.Of(model, start, expectation.Dictation ? MostDictationTokens : MostFreeTokens, expectation.Dictation);
            cancellation.ThrowIfCancellationRequested();
            ImmutableArray<Candidate> safety = Search(start, _safety, free, MostSafetyDecodes, cancellation);
            ImmutableArray<Candidate> candidates = Search(start, Prepare(expectation), free, mostDecodes, cancellation);
            candidates = [.. candidates, .. safety.Where(heard => candidates.All(candidate => candidate.Meaning != heard.Meaning))];
            return new EarEvidence(name, WithTwin(candidates, start, expectation), free.Text, free.LogProbability, noSpeech, free.IsNoise);
        }
        finally
        {
            start.Release();
        }
    }

    ImmutableArray<Candidate> Search(WhisperModel.Prefix start, PhraseTrie trie, FreeReading free, int decodes, CancellationToken cancellation) =>
        new TrieSearch(model, new SearchBounds(SearchDepth, free.LogProbability - MostBelowFree, start.Decodes + decodes)).Run(start, trie, cancellation);

    /// <summary>Adds the number that sounds nearly the same as the likeliest (13 and 30) where the search did not come across it: not found is not unlikely.</summary>
    ImmutableArray<Candidate> WithTwin(ImmutableArray<Candidate> candidates, WhisperModel.Prefix start, Expectation expectation)
    {
        if (candidates.FirstOrDefault() is not { Meaning: Meaning.Reading best } likeliest
            || SoundsAlike.TwinOf(likeliest.Words) is not { } words
            || PhraseText.Read(words, expectation).Meanings.OfType<Meaning.Reading>().FirstOrDefault(other => SoundsAlike.AreTwins(best, other)) is not { } twin
            || candidates.Any(candidate => candidate.Meaning == twin))
        {
            return candidates;
        }

        return [.. candidates, Score(words, likeliest.Ending with { Meaning = twin }, start)];
    }

    Candidate Score(string words, Ending ending, WhisperModel.Prefix start)
    {
        double sum = 0;
        double lowest = 0;
        WhisperModel.Prefix at = start;
        foreach (int token in model.Tokens.Encode(" " + words))
        {
            double next = at.Next()[token];
            (sum, lowest) = (sum + next, Math.Min(lowest, next));
            at = at.After(token);
        }

        double end = at.Next()[model.End];
        return new Candidate(ending, words, sum + end, sum + end, at.Length + 1, (sum + end) / (at.Length + 1), Math.Min(lowest, end), end);
    }

    /// <inheritdoc/>
    public void Dispose() => model.Dispose();
}
