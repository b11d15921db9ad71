using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Fleet.Publishing;

/// <summary>A wait of a job.</summary>
/// <param name="Step">Id of its step.</param>
/// <param name="Started">When, UTC.</param>
/// <param name="Planned">How long it was to run.</param>
/// <param name="Lasted">How long it ran, by the times of the events; null where no event tells its end.</param>
/// <param name="IsShort">Whether the review found it cut short.</param>
sealed record FleetTimer(string Step, DateTimeOffset Started, TimeSpan Planned, TimeSpan? Lasted, bool IsShort);

/// <summary>The waits of a job, from its events and what the review found about them.</summary>
static class JobTimers
{
    const string CutShort = "timer-cut-short";

    public static IEnumerable<FleetTimer> Of(JobToPublish job)
    {
        HashSet<(string Step, DateTimeOffset? At)> cutShort = [.. job.Findings.Where(one => one.Rule == CutShort).Select(one => (one.Step, one.At))];
        IReadOnlyList<StartupEvent> events = job.Record.Happened;
        for (int i = 0; i < events.Count; i++)
        {
            if (events[i] is TimerStarted started)
            {
                StartupEvent? ended = events.Skip(i + 1).FirstOrDefault(later => Ends(later, started.StepId));
                yield return new FleetTimer(started.StepId, started.At, started.Duration, ended?.At - started.At, cutShort.Contains((started.StepId, started.At)));
            }
        }
    }

    static bool Ends(StartupEvent later, string step) => later switch
    {
        TimerEnded ended => ended.StepId == step,
        TimerStopped stopped => stopped.StepId == step,
        TimerStarted again => again.StepId == step,
        StepDone done => done.StepId == step,
        StepSkipped skipped => skipped.StepId == step,
        _ => false,
    };
}
