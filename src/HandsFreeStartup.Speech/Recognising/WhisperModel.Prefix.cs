namespace HandsFreeStartup.Speech.Recognising;

sealed unsafe partial class WhisperModel
{
    /// <summary>Some tokens after the beginning, for one sound. What may follow is decoded once, however many searches ask.</summary>
    public sealed class Prefix
    {
        readonly WhisperModel _model;
        readonly Prefix? _before;
        readonly int _token;
        readonly Dictionary<int, Prefix> _after = [];
        float[]? _row;

        /// <summary>The place before the first token.</summary>
        /// <param name="model">Whose tokens.</param>
        /// <param name="opening">What the model is given before the first word.</param>
        public Prefix(WhisperModel model, int[] opening) => (_model, Opening) = (model, opening);

        Prefix(Prefix before, int token) =>
            (_model, _before, _token, Opening, Length) = (before._model, before, token, before.Opening, before.Length + 1);

        /// <summary>What the model is given before the first word.</summary>
        public int[] Opening { get; }

        /// <summary>How many tokens.</summary>
        public int Length { get; }

        /// <summary>How often the model had to work for this sound so far.</summary>
        public int Decodes => _before is null ? _decodes : _before.Decodes;

        /// <summary>Whether what follows is known already.</summary>
        public bool IsDecoded => _row is not null;

        int _decodes;

        /// <summary>Log-probabilities by token, the end last; forbidden ones are negative infinity.</summary>
        public ReadOnlySpan<float> Next()
        {
            if (_row is null)
            {
                _row = _model.Row(this);
                Count();
            }

            return _row;
        }

        /// <summary>One token further.</summary>
        public Prefix After(int next)
        {
            if (!_after.TryGetValue(next, out Prefix? after))
            {
                after = new Prefix(this, next);
                _after[next] = after;
            }

            return after;
        }

        /// <summary>The tokens, first to last.</summary>
        public IEnumerable<int> Tokens() => _before is null ? [] : _before.Tokens().Append(_token);

        /// <summary>Gives the memory of this sound back; call it on the beginning.</summary>
        public void Release()
        {
            if (_row is not null)
            {
                _model._rows.Push(_row);
                _row = null;
            }

            foreach (Prefix after in _after.Values)
            {
                after.Release();
            }
        }

        void Count()
        {
            if (_before is null)
            {
                _decodes++;
            }
            else
            {
                _before.Count();
            }
        }
    }
}
