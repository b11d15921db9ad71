using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>One model that hears under an expectation: free reading, and search over the legal phrases.</summary>
/// <param name="model">Loaded; not disposed with the ear.</param>
/// <param name="name">For evidence and messages.</param>
sealed class Ear(WhisperModel model, string name)
{
    static readonly SearchLimits Limits = SearchLimits.Shipped;

    readonly PhraseTries _tries = new(model.Tokens);

    /// <summary>For evidence and messages.</summary>
    public string Name => name;

    /// <summary>Takes the sound in before this ear can hear.</summary>
    public WhisperModel Model => model;

    /// <summary>Builds what an expectation needs ahead of its first utterance.</summary>
    public void Prepare(Expectation expectation) => _tries.Of(expectation);

    /// <summary>The evidence of this ear about the sound that its model took in last.</summary>
    /// <param name="expectation">What may be said now.</param>
    /// <param name="cancellation">Ends it early.</param>
    /// <exception cref="OperationCanceledException">It was asked for.</exception>
    public EarEvidence Hear(Expectation expectation, CancellationToken cancellation = default)
    {
        WhisperModel.Prefix start = model.Begin();
        try
        {
            cancellation.ThrowIfCancellationRequested();
            double noSpeech = model.NoSpeech(start);
            FreeReading free = FreeReading.Of(model, start, Limits.FreeTokens, isDictation: false);
            cancellation.ThrowIfCancellationRequested();
            ImmutableArray<Candidate> candidates = expectation.IsForCallsAlone
                ? Search(start, _tries.Safety, free, Limits.CallBelowFree, cancellation)
                : WithCalls(Search(start, _tries.Safety, free, Limits.BelowFree, cancellation), Search(start, _tries.Of(expectation), free, Limits.BelowFree, cancellation));
            return new EarEvidence(name, candidates, free.Text, free.LogProbability, noSpeech, free.IsNoise, free.Mean) { FreeWords = free.Words };
        }
        finally
        {
            start.Release();
        }
    }

    /// <summary>The words of free speech in the sound that the model took in last.</summary>
    public string Dictation()
    {
        WhisperModel.Prefix start = model.Begin();
        string text = FreeReading.Of(model, start, Limits.DictationTokens, isDictation: true).Text;
        start.Release();
        return text;
    }

    static ImmutableArray<Candidate> WithCalls(ImmutableArray<Candidate> calls, ImmutableArray<Candidate> legal) =>
        [.. legal, .. calls.Where(call => legal.All(candidate => candidate.Meaning != call.Meaning))];

    ImmutableArray<Candidate> Search(WhisperModel.Prefix start, PhraseTrie trie, FreeReading free, double belowFree, CancellationToken cancellation) =>
        new TrieSearch(model, new SearchBounds(Limits.Depth, free.LogProbability - belowFree, start.Decodes + Limits.MostDecodes)).Run(start, trie, cancellation);
}
