using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Procedure.Record;

/// <summary>Every wait with its last start.</summary>
sealed class TimerLedger
{
    readonly List<TimerFate> _all = [];

    /// <summary>By wait, the last start.</summary>
    public IReadOnlyList<TimerFate> Last => [.. _all.GroupBy(timer => timer.StepId).Select(starts => starts.Last())];

    /// <summary>Every start, in order.</summary>
    public IReadOnlyList<TimerFate> All => _all;

    /// <summary>The wait as it stands; null where it was never begun, or begins anew.</summary>
    public TimerFate? this[string stepId] => _all.LastOrDefault(timer => timer.StepId == stepId) is { IsWithdrawn: false } timer ? timer : null;

    public void Start(TimerStarted started) =>
        _all.Add(new TimerFate(started.StepId, started.At, started.Steady, started.Duration, 1 + _all.Count(timer => timer.StepId == started.StepId)));

    public void Half(TimerHalfway half) => Change(half.StepId, timer => timer with { Halfway = half.At });

    public void End(TimerEnded ended) => Change(ended.StepId, timer => timer with { Ended = ended.At });

    public void Withdraw(string stepId) => Change(stepId, timer => timer with { IsWithdrawn = true });

    public void BeginRun()
    {
        for (int i = 0; i < _all.Count; i++)
        {
            _all[i] = _all[i] with { IsOfThisRun = false };
        }
    }

    void Change(string stepId, Func<TimerFate, TimerFate> change)
    {
        int index = _all.FindLastIndex(timer => timer.StepId == stepId);
        if (index >= 0)
        {
            _all[index] = change(_all[index]);
        }
    }
}
