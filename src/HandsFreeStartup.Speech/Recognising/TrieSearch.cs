using System.Collections.Immutable;
using HandsFreeStartup.Speech.Phrases;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>How far a search goes.</summary>
/// <param name="Depth">Phrases less likely than the best by more than this, as a log-probability, are not looked for.</param>
/// <param name="Floor">Log-probability below which no phrase is of use: the sound is then something else.</param>
/// <param name="MostDecodes">Decodes of one sound, all searches together, after which it ends.</param>
readonly record struct SearchBounds(double Depth, double Floor, int MostDecodes);

/// <summary>
/// Finds the likeliest legal phrases for a sound: the most promising beginning is followed to its end, then the next most promising one, until nothing that is left
/// can come near the best phrase.
/// </summary>
/// <remarks>
/// The log-probability of a beginning is an upper bound of all phrases that go on from it. Beginnings that differ only in spelling ("Draft", "draft") reach the same
/// place; what may follow is decoded for the likeliest of them, and the others count as a share of it.
/// </remarks>
sealed class TrieSearch(WhisperModel model, SearchBounds bounds)
{
    static readonly SearchLimits Limits = SearchLimits.Shipped;

    readonly PriorityQueue<Beginning, double> _open = new();
    readonly Dictionary<PhraseTrie, Beginning> _reached = [];
    readonly Dictionary<Meaning, FoundMeaning> _found = [];
    double _best = double.NegativeInfinity;

    double Least => Math.Max(bounds.Floor, _best - bounds.Depth);

    /// <summary>Legal phrases, likeliest meaning first.</summary>
    /// <exception cref="OperationCanceledException">It was asked for.</exception>
    public ImmutableArray<Candidate> Run(WhisperModel.Prefix start, PhraseTrie trie, CancellationToken cancellation)
    {
        Beginning? at = new(start, trie, null, 0, 0);
        while (at is not null && start.Decodes < bounds.MostDecodes)
        {
            cancellation.ThrowIfCancellationRequested();
            at = Expand(at) ?? NextOpen();
        }

        return [.. _found.Values.Select(found => found.ToCandidate(model)).OrderByDescending(candidate => candidate.Weight)];
    }

    Beginning? NextOpen()
    {
        while (_open.TryDequeue(out Beginning? next, out _))
        {
            if (IsWorthIt(next))
            {
                return next;
            }
        }

        return null;
    }

    bool IsWorthIt(Beginning beginning) => beginning.LogProbability >= Least && _reached[beginning.Trie] == beginning
        && !(beginning.Trie.OnlyMeaning is { } only && _found.TryGetValue(only, out FoundMeaning? known) && beginning.LogProbability < known.Best - Limits.TailDepth);

    /// <summary>Notes the phrases that end here and the beginnings that go on; gives the likeliest of these.</summary>
    Beginning? Expand(Beginning at)
    {
        ReadOnlySpan<float> next = at.Prefix.Next();
        Note(at, next);
        Beginning? likeliest = null;
        foreach ((int token, PhraseTrie place) in at.Trie.Children)
        {
            double sum = at.LogProbability + next[token];
            if (sum < Least || IsShare(place, sum))
            {
                continue;
            }

            Beginning on = new(at.Prefix.After(token), place, at, sum, Math.Min(at.Lowest, next[token]));
            _reached[place] = on;
            bool isAhead = likeliest is null || sum > likeliest.LogProbability;
            Keep(isAhead ? likeliest : on);
            likeliest = isAhead ? on : likeliest;
        }

        return likeliest is not null && IsWorthIt(likeliest) ? likeliest : null;
    }

    /// <summary>Whether a likelier beginning reached the same place before; this one then counts as a share of it.</summary>
    bool IsShare(PhraseTrie place, double sum)
    {
        if (!_reached.TryGetValue(place, out Beginning? before) || before.LogProbability < sum)
        {
            return false;
        }

        before.Share += Math.Exp(sum - before.LogProbability);
        return true;
    }

    void Keep(Beginning? beginning)
    {
        if (beginning is not null)
        {
            _open.Enqueue(beginning, -beginning.LogProbability - Limits.WorthOfWork * beginning.Prefix.Length);
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
        foreach (Ending ending in at.Trie.Endings)
        {
            FoundMeaning found = _found.TryGetValue(ending.Meaning, out FoundMeaning? known) ? known : _found[ending.Meaning] = new FoundMeaning();
            found.Add(new Spelling(ending, at, sum, end));
        }

        _best = Math.Max(_best, sum);
    }

    /// <summary>A legal beginning.</summary>
    sealed record Beginning(WhisperModel.Prefix Prefix, PhraseTrie Trie, Beginning? Before, double LogProbability, double Lowest)
    {
        /// <summary>How much likelier all spellings of this beginning are than this one.</summary>
        public double Share { get; set; } = 1;

        /// <summary>The same for all the way to here, as a logarithm.</summary>
        public double LogShare => Math.Log(Share) + (Before?.LogShare ?? 0);
    }

    sealed record Spelling(Ending Ending, Beginning At, double LogProbability, double End);

    /// <summary>All spellings of one meaning.</summary>
    sealed class FoundMeaning
    {
        readonly List<Spelling> _spellings = [];

        public double Best { get; private set; } = double.NegativeInfinity;

        public void Add(Spelling spelling)
        {
            _spellings.Add(spelling);
            Best = Math.Max(Best, spelling.LogProbability);
        }

        public Candidate ToCandidate(WhisperModel model)
        {
            Spelling best = _spellings.MaxBy(spelling => spelling.LogProbability)!;
            double sum = best.LogProbability + Math.Log(_spellings.Sum(spelling => Math.Exp(spelling.LogProbability + spelling.At.LogShare - best.LogProbability)));
            return new Candidate(best.Ending, model.Text(best.At.Prefix.Tokens()).Trim())
            {
                LogProbability = sum,
                BestLogProbability = best.LogProbability,
                Tokens = best.At.Prefix.Length + 1,
                Mean = best.LogProbability / (best.At.Prefix.Length + 1),
                Lowest = Math.Min(best.At.Lowest, best.End),
                End = best.End,
            };
        }
    }
}
