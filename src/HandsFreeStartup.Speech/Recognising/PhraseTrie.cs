using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Phrases;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>The legal phrases of an expectation as sequences of tokens. A place is worked out when the search first comes there, and kept.</summary>
sealed class PhraseTrie
{
    readonly Vocabulary _vocabulary;
    readonly ImmutableArray<Item> _items;
    ImmutableArray<(int Token, PhraseTrie Place)> _children;
    ImmutableArray<Ending> _endings;
    Meaning? _onlyMeaning;
    bool _knowsOnlyMeaning;

    PhraseTrie(Vocabulary vocabulary, ImmutableArray<Item> items) => (_vocabulary, _items) = (vocabulary, items);

    /// <summary>The place before the first token.</summary>
    public static PhraseTrie Of(Expectation expectation, BytePairs tokens) => new(new Vocabulary(tokens, []), [new Item([], 0, PhraseGrammar.Of(expectation))]);

    /// <summary>How many places were looked at so far, in this and all places of the same expectation: what it costs to keep.</summary>
    public int Places => _vocabulary.Places;

    /// <summary>Tokens that may follow, each once.</summary>
    public ImmutableArray<(int Token, PhraseTrie Place)> Children
    {
        get
        {
            if (_children.IsDefault)
            {
                Expand();
            }

            return _children;
        }
    }

    /// <summary>What the phrase means if it ends here; several only where words are ambiguous.</summary>
    public ImmutableArray<Ending> Endings
    {
        get
        {
            if (_endings.IsDefault)
            {
                Expand();
            }

            return _endings;
        }
    }

    /// <summary>The meaning that every phrase from here has: only a unit or a stop is open. Null if there are several.</summary>
    public Meaning? OnlyMeaning
    {
        get
        {
            if (!_knowsOnlyMeaning)
            {
                _onlyMeaning = Endings is [var ending] && Children.All(child => child.Place.OnlyMeaning == ending.Meaning) ? ending.Meaning : null;
                _knowsOnlyMeaning = true;
            }

            return _onlyMeaning;
        }
    }

    void Expand()
    {
        PhraseState[] states = [.. _items.Where(item => item.IsWhole).Select(item => item.Next)];
        _endings = [.. states.SelectMany(state => state.Endings).GroupBy(ending => ending.Meaning).Select(same => same.OrderBy(ending => ending.PointImplied).First())];
        IEnumerable<Item> begun = _items.Where(item => !item.IsWhole);
        IEnumerable<Item> fresh = states.SelectMany(state => state.Edges).Select(edge => new Item(_vocabulary.Tokens.Encode(edge.Text), 0, edge.Next));
        _children =
        [
            .. begun.Concat(fresh)
                .GroupBy(item => item.Tokens[item.At])
                .Select(group => (group.Key, At([.. group.Select(item => item with { At = item.At + 1 })]))),
        ];
    }

    /// <summary>Different beginnings that lead to the same place of the grammar ("Oxygen", "oxygen") share what follows.</summary>
    PhraseTrie At(ImmutableArray<Item> items)
    {
        if (items is not [{ IsWhole: true } only])
        {
            _vocabulary.Places++;
            return new PhraseTrie(_vocabulary, items);
        }

        if (!_vocabulary.Shared.TryGetValue(only.Next, out PhraseTrie? shared))
        {
            _vocabulary.Places++;
            shared = new PhraseTrie(_vocabulary, items);
            _vocabulary.Shared[only.Next] = shared;
        }

        return shared;
    }

    sealed record Vocabulary(BytePairs Tokens, Dictionary<PhraseState, PhraseTrie> Shared)
    {
        public int Places { get; set; }
    }

    /// <summary>A text that is being spelled: its tokens, how many are done, and where it leads.</summary>
    readonly record struct Item(int[] Tokens, int At, PhraseState Next)
    {
        public bool IsWhole => At == Tokens.Length;
    }
}
