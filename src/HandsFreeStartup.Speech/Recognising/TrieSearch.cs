using System.Collections.Immutable;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>
/// Finds the likeliest legal phrases for a sound: the most promising beginning is followed to its end, then the next most promising one, until nothing that is left
/// can come near the best phrase.
/// </summary>
/// <remarks>The log-probability of a beginning is an upper bound of all phrases that go on from it, so that nothing near the best is missed unless the work runs out.</remarks>
/// <param name="model">Whose tokens.</param>
/// <param name="depth">Phrases less likely than the best by more than this, as a log-probability, are not looked for.</param>
/// <param name="mostDecodes">Most single decodes for one sound.</param>
sealed class TrieSearch(WhisperModel model, double depth, int mostDecodes)
{
    /// <summary>What a token more is worth in the order of work: a badly heard name is followed by a well heard number more often than not.</summary>
    const double WorthOfToken = 2;

    readonly PriorityQueue<Beginning, double> _open = new();
    readonly Dictionary<Meaning, Found> _found = [];
    double _best = double.NegativeInfinity;

    /// <summary>Legal phrases, likeliest meaning first, and how much likelier the first is than the second.</summary>
    public (ImmutableArray<Candidate> Candidates, double Margin) Run(WhisperModel.Prefix start, PhraseTrie trie)
    {
        Beginning? at = new(start, trie, null, 0, 0);
        while (at is not null && start.Decodes < mostDecodes)
        {
            at = Expand(at) ?? NextOpen();
        }

        double left = _open.UnorderedItems.Select(open => open.Element.LogProbability).Append(at?.LogProbability ?? double.NegativeInfinity).Max();
        ImmutableArray<Candidate> candidates = [.. _found.Values.Select(found => found.ToCandidate(model)).OrderByDescending(candidate => candidate.LogProbability)];
        return (candidates, Margin(candidates, left));
    }

    Beginning? NextOpen()
    {
        while (_open.TryDequeue(out Beginning? next, out _))
        {
            if (next.LogProbability >= _best - depth)
            {
                return next;
            }
        }

        return null;
    }

    double Margin(ImmutableArray<Candidate> candidates, double left)
    {
        if (candidates.IsEmpty)
        {
            return 0;
        }

        double second = candidates.Length > 1 ? candidates[1].LogProbability : double.NegativeInfinity;
        return Math.Min(depth, candidates[0].LogProbability - Math.Max(second, left));
    }

    /// <summary>Notes the phrases that end here and the beginnings that go on; gives the likeliest of these.</summary>
    Beginning? Expand(Beginning at)
    {
        ReadOnlySpan<float> next = at.Prefix.Next();
        Note(at, next);
        Beginning? likeliest = null;
        foreach ((int token, PhraseTrie place) in at.Trie.Children)
        {
            double sum = at.LogProbability + next[token];
            if (sum < _best - depth)
            {
                continue;
            }

            Beginning on = new(at.Prefix.After(token), place, at, sum, Math.Min(at.Lowest, next[token]));
            if (likeliest is null || sum > likeliest.LogProbability)
            {
                Keep(likeliest);
                likeliest = on;
            }
            else
            {
                Keep(on);
            }
        }

        return likeliest;
    }

    void Keep(Beginning? beginning)
    {
        if (beginning is not null)
        {
            _open.Enqueue(beginning, -beginning.LogProbability - WorthOfToken * beginning.Prefix.Length);
        }
    }

    void Note(Beginning at, ReadOnlySpan<float> next)
    {
        if (at.Trie.Endings.IsEmpty)
        {
            return;
        }

        double end = next[model.End];
        double sum = at.LogProbability + end;
        double goOn = double.NegativeInfinity;
        foreach ((int token, _) in at.Trie.Children)
        {
            goOn = IsNumberWord(token) ? Math.Max(goOn, next[token]) : goOn;
        }

        foreach (Ending ending in at.Trie.Endings)
        {
            Found found = _found.TryGetValue(ending.Meaning, out Found? known) ? known : _found[ending.Meaning] = new Found();
            found.Add(new Spelling(ending, at, sum, end, goOn));
        }

        _best = Math.Max(_best, sum);
    }

    bool IsNumberWord(int token) => model.Text([token]).Trim() is { Length: > 0 } word && (char.IsDigit(word[0]) || NumberWord.Find(word) is not null);

    /// <summary>A legal beginning.</summary>
    sealed record Beginning(WhisperModel.Prefix Prefix, PhraseTrie Trie, Beginning? Before, double LogProbability, double Lowest);

    sealed record Spelling(Ending Ending, Beginning At, double LogProbability, double End, double GoOn);

    /// <summary>All spellings of one meaning.</summary>
    sealed class Found
    {
        Spelling? _likeliest;
        double _sum = double.NegativeInfinity;

        public void Add(Spelling spelling)
        {
            double high = Math.Max(_sum, spelling.LogProbability);
            _sum = high + Math.Log(Math.Exp(_sum - high) + Math.Exp(spelling.LogProbability - high));
            _likeliest = _likeliest is null || spelling.LogProbability > _likeliest.LogProbability ? spelling : _likeliest;
        }

        public Candidate ToCandidate(WhisperModel model)
        {
            Spelling best = _likeliest!;
            return new Candidate(
                best.Ending,
                model.Text(best.At.Prefix.Tokens()).Trim(),
                _sum,
                best.LogProbability,
                best.LogProbability / (best.At.Prefix.Length + 1),
                Math.Min(best.At.Lowest, best.End),
                best.End,
                best.GoOn);
        }
    }
}
