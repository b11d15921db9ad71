using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>One model that hears under an expectation: free reading, and search over the legal phrases.</summary>
/// <param name="model">Loaded; not disposed with the ear.</param>
/// <param name="tries">In the tokens of the model.</param>
/// <param name="name">For evidence and messages.</param>
/// <param name="style">Text that the model is given before every sound, so that it writes readings as they are written there; empty for none.</param>
sealed class Ear(WhisperModel model, PhraseTries tries, string name, string style = "")
{
    const double SearchDepth = EarEvidence.NotFound;

    /// <summary>More of them find likelier phrases that are not what was said more often than what was.</summary>
    const int MostDecodes = 20;

    /// <summary>A phrase so much less likely than the free reading is refused whatever else speaks for it.</summary>
    const double MostBelowFree = 12;

    /// <summary>The same where safety phrases alone are looked for: further down "gas meter" and "a machine shop" sound like them.</summary>
    const double MostSafetyBelowFree = 9;

    const int MostFreeTokens = 24;
    const int MostDictationTokens = 120;

    /// <summary>For evidence and messages.</summary>
    public string Name => name;

    /// <summary>Takes the sound in before this ear can hear.</summary>
    public WhisperModel Model => model;

    /// <summary>The evidence of this ear about the sound that its model took in last.</summary>
    /// <param name="expectation">What may be said now.</param>
    /// <param name="cancellation">Ends it early.</param>
    /// <exception cref="OperationCanceledException">It was asked for.</exception>
    public EarEvidence Hear(Expectation expectation, CancellationToken cancellation = default)
    {
        WhisperModel.Prefix start = model.Begin(expectation.Dictation ? "" : style);
        try
        {
            cancellation.ThrowIfCancellationRequested();
            double noSpeech = model.NoSpeech(start);
            FreeReading free = FreeReading.Of(model, start, expectation.Dictation ? MostDictationTokens : MostFreeTokens, expectation.Dictation);
            cancellation.ThrowIfCancellationRequested();
            ImmutableArray<Candidate> safety = Search(start, tries.Safety, free.LogProbability - MostSafetyBelowFree, cancellation);
            ImmutableArray<Candidate> candidates = Search(start, tries.Of(expectation), free.LogProbability - MostBelowFree, cancellation);
            candidates = [.. candidates, .. safety.Where(heard => candidates.All(candidate => candidate.Meaning != heard.Meaning))];
            return new EarEvidence(name, WithTwin(candidates, start, expectation), free.Text, free.LogProbability, noSpeech, free.IsNoise);
        }
        finally
        {
            start.Release();
        }
    }

    ImmutableArray<Candidate> Search(WhisperModel.Prefix start, PhraseTrie trie, double floor, CancellationToken cancellation) =>
        new TrieSearch(model, new SearchBounds(SearchDepth, floor, start.Decodes + MostDecodes)).Run(start, trie, cancellation);

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
}
