using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>One model that hears under an expectation: free reading, and search over the legal phrases.</summary>
/// <param name="model">Loaded; disposed with the ear.</param>
/// <param name="name">For evidence and messages.</param>
/// <param name="mostDecodes">Most single decodes for one utterance.</param>
sealed class Ear(WhisperModel model, string name, int mostDecodes) : IDisposable
{
    const double SearchDepth = 9;
    const int MostFreeTokens = 24;
    const int MostDictationTokens = 120;

    readonly Dictionary<string, PhraseTrie> _tries = [];

    /// <summary>For evidence and messages.</summary>
    public string Name => name;

    /// <summary>Builds what an expectation needs ahead of its first utterance.</summary>
    public PhraseTrie Prepare(Expectation expectation)
    {
        if (!_tries.TryGetValue(expectation.Key, out PhraseTrie? trie))
        {
            trie = PhraseTrie.Of(expectation, model.Tokens);
            _tries[expectation.Key] = trie;
        }

        return trie;
    }

    /// <summary>The evidence of this ear.</summary>
    public EarEvidence Hear(ReadOnlySpan<float> samples, Expectation expectation)
    {
        WhisperModel.Prefix start = model.Listen(samples);
        double noSpeech = model.NoSpeech();
        FreeReading free = FreeReading.Of(model, start, expectation.Dictation ? MostDictationTokens : MostFreeTokens);
        int limit = start.Decodes + mostDecodes;
        (ImmutableArray<Candidate> candidates, double margin) = new TrieSearch(model, SearchDepth, limit).Run(start, Prepare(expectation));
        start.Release();
        return new EarEvidence(name, candidates, free.Text, free.LogProbability, noSpeech, free.IsNoise) { Margin = margin };
    }

    /// <inheritdoc/>
    public void Dispose() => model.Dispose();
}
