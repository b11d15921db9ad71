using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Procedure.Record;

/// <summary>Every value ever heard with its fate, and the results that came of them.</summary>
sealed class ReadingLedger
{
    readonly List<ReadingFate> _readings = [];
    readonly List<ResultFate> _results = [];
    readonly Dictionary<ReadingKey, int> _last = [];
    int _entered;
    int _doubtful = -1;

    public IReadOnlyList<ReadingFate> Readings => _readings;

    public IReadOnlyList<ResultFate> Results => _results;

    /// <summary>The last value that was entered and not disregarded, whether it stands or not.</summary>
    public ReadingFate? this[ReadingKey key] => _last.TryGetValue(key, out int index) ? _readings[index] : null;

    public IEnumerable<ReadingKey> Keys => _last.Keys;

    public void Enter(ReadingEntered entered)
    {
        ReadingKey key = entered.Reading.Key;
        Change(key, fate => fate.Counts ? fate with { End = ReadingEnd.Replaced } : fate);
        Forget(key);
        bool wasReadBack = _doubtful >= 0 && _readings[_doubtful].Reading == entered.Reading;
        if (wasReadBack)
        {
            Remove(_doubtful);
        }

        _doubtful = -1;
        _last[key] = _readings.Count;
        _readings.Add(new ReadingFate(entered.At, entered.StepId, entered.Reading, entered.Reading.IsEarly ? ReadingEnd.Early : ReadingEnd.Provisional, wasReadBack, entered.Reading.Evidence.Why)
        {
            Number = ++_entered,
        });
    }

    /// <summary>A value of the returned job stands here as it stood there.</summary>
    public void Carry(StepCarried carried, string from)
    {
        foreach (CarriedReading one in carried.Readings)
        {
            _last[one.Reading.Key] = _readings.Count;
            _readings.Add(new ReadingFate(one.At, carried.StepId, one.Reading, ReadingEnd.Final, false, "") { Number = ++_entered, WasFinal = true, From = from });
        }
    }

    public void Stand(ReadingKey key) => Change(key, fate => fate.Counts ? fate with { End = ReadingEnd.Final, WasFinal = true } : fate);

    /// <summary>What was acted upon was measured: only "disregard" makes a mishearing of it.</summary>
    public void ActUpon(ReadingKey key) => Change(key, fate => fate.Counts ? fate with { WasFinal = true } : fate);

    public void Scratch(ReadingKey key)
    {
        Change(key, fate => fate.Counts || fate.End == ReadingEnd.Early ? fate with { End = ReadingEnd.Disregarded } : fate);
        _last.Remove(key);
        Forget(key);
    }

    public void Void(ReadingKey key, string because)
    {
        Change(key, fate => fate.Counts || fate.End == ReadingEnd.Early ? fate with { End = ReadingEnd.Void, Because = because } : fate);
        Forget(key);
    }

    public void ReadBack(ConfirmationAsked asked)
    {
        _doubtful = _readings.Count;
        _readings.Add(new ReadingFate(asked.At, asked.StepId, asked.Reading, ReadingEnd.Unanswered, true, asked.Reading.Evidence.Why));
    }

    public void Refuse()
    {
        if (_doubtful >= 0)
        {
            _readings[_doubtful] = _readings[_doubtful] with { End = ReadingEnd.Refused };
            _doubtful = -1;
        }
    }

    /// <summary>A stop breaks off what was read back.</summary>
    public void BreakOff() => _doubtful = -1;

    public void Compute(ResultsComputed computed)
    {
        Discard("a later one took its place", old => (old.Scope == computed.Scope || SpansStages(old.Result)) && computed.Results.Any(result => result.Id == old.Result.Id));
        _results.AddRange(computed.Results.Select(result => new ResultFate(computed.At, computed.StepId, SpansStages(result) ? "" : computed.Scope, result)));
    }

    /// <summary>A result does not outlive a reading that went into it.</summary>
    void Forget(ReadingKey key) =>
        Discard("a reading behind it no longer counts", fate => (fate.Scope == key.Scope || SpansStages(fate.Result)) && fate.Result.Inputs.ContainsKey(key.FieldId));

    static bool SpansStages(CalculatedResult result) => ResultKind.Find(result.Id) is { SpansStages: true };

    void Discard(string because, Predicate<ResultFate> which)
    {
        for (int i = 0; i < _results.Count; i++)
        {
            if (_results[i].Counts && which(_results[i]))
            {
                _results[i] = _results[i] with { NoLonger = because };
            }
        }
    }

    void Change(ReadingKey key, Func<ReadingFate, ReadingFate> change)
    {
        if (_last.TryGetValue(key, out int index))
        {
            _readings[index] = change(_readings[index]);
        }
    }

    /// <summary>Only what was read back last is ever taken out, so nothing that follows it has a place of its own.</summary>
    void Remove(int index)
    {
        _readings.RemoveAt(index);
        foreach (ReadingKey key in _last.Keys.Where(key => _last[key] > index).ToList())
        {
            _last[key]--;
        }
    }
}
