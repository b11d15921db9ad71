using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>The legal phrases of the expectations met so far, in the tokens of one model.</summary>
/// <param name="tokens">Of the model.</param>
sealed class PhraseTries(BytePairs tokens)
{
    /// <summary>Places that are kept: one that was looked at is never asked for again in most utterances, and a day of talk would fill the memory.</summary>
    const int MostPlaces = 10_000;

    readonly Dictionary<string, PhraseTrie> _tries = [];

    /// <summary>The safety phrases alone.</summary>
    public PhraseTrie Safety { get; } = PhraseTrie.Of(new Expectation([], [], []), tokens);

    /// <summary>The phrases that are legal under an expectation, built when they are first asked for.</summary>
    public PhraseTrie Of(Expectation expectation)
    {
        if (_tries.Values.Sum(known => known.Places) > MostPlaces)
        {
            _tries.Clear();
        }

        if (!_tries.TryGetValue(expectation.Key, out PhraseTrie? trie))
        {
            trie = PhraseTrie.Of(expectation, tokens);
            _tries[expectation.Key] = trie;
        }

        return trie;
    }
}
