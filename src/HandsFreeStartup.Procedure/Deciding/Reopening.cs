using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>What must be done again because something made it doubtful.</summary>
sealed class Reopening(StartupState state, Now now)
{
    /// <summary>Everything done so far that the checklist wants again after one of <paramref name="causes"/>.</summary>
    public IReadOnlyList<StartupEvent> After(IReadOnlyCollection<Again> causes, string because) =>
        Of(state.Plan.Steps.Where(step => step.AgainAfter.Any(causes.Contains)), because);

    /// <summary>The steps, as far as anything was done in them; their readings count no longer.</summary>
    public IReadOnlyList<StartupEvent> Of(IEnumerable<Step> steps, string because) =>
    [
        .. steps.Where(step => state.Status(step) != StepStatus.Ahead || state.Timers.ContainsKey(step.Id) || Standing(step).Any())
            .SelectMany(step => Standing(step).Select(StartupEvent (key) => new ReadingVoided(now, key, because)).Prepend(new StepReopened(now, step.Id, because))),
    ];

    IEnumerable<ReadingKey> Standing(Step step) => step.Readings
        .Select(demand => new ReadingKey(demand.FieldId, step.Scope ?? ""))
        .Where(key => state.Reading(key) is { } kept && kept.State != ReadingState.Void);
}
