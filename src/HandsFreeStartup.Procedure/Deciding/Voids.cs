using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>Which readings no longer count after something that they depend on has changed.</summary>
sealed class Voids(StartupState state, Now now)
{
    /// <summary>The readings of the steps that <paramref name="step"/> voids.</summary>
    public ImmutableArray<ReadingVoided> Of(Step step, string because) =>
    [
        .. state.Plan.Steps
            .Where(other => step.Voids.Contains(other.Id))
            .SelectMany(other => other.Readings.Select(demand => new ReadingKey(demand.FieldId, other.Scope ?? "")))
            .Where(key => state.Reading(key) is { } kept && kept.State != ReadingState.Void)
            .Distinct()
            .Select(key => new ReadingVoided(now, key, because)),
    ];
}
