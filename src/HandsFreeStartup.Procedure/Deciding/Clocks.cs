using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>What the passing of time leads to.</summary>
sealed class Clocks(StartupState state, Now now)
{
    /// <summary>Clocks that are disciplined by a network creep apart by less in a day; more means that somebody set one.</summary>
    static readonly TimeSpan LargestDrift = TimeSpan.FromSeconds(10);

    /// <summary>Timers that are at half time or over, and a wall clock that was set.</summary>
    public IEnumerable<StartupEvent> Due()
    {
        if (state.Phase is Phase.Finished or Phase.Preparing)
        {
            yield break;
        }

        if (state.Clocks is { } mark && now.Steady is { } steady && now.At - mark.At - (steady - mark.Steady) is var by && by.Duration() > LargestDrift)
        {
            yield return new ClockJumped(now, by, steady);
        }

        foreach ((string stepId, RunningTimer timer) in state.Timers.Where(timer => !timer.Value.IsEnded))
        {
            TimeSpan elapsed = timer.Elapsed(now);
            if (!timer.IsHalfway && elapsed >= timer.Duration / 2 && SecondSet.StepOf(stepId) is null)
            {
                yield return new TimerHalfway(now, stepId);
            }

            if (elapsed >= timer.Duration)
            {
                yield return new TimerEnded(now, stepId);
            }
        }
    }
}
