using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;

namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>Finds steps that no furnace ever reaches, and returns that would never end.</summary>
static class ChecklistPaths
{
    public static void Check(ChecklistEntry checklist, ImmutableArray<Branch> branches)
    {
        foreach (StepEntry step in checklist.Steps.Where(step => step.Entry.IsMap && !branches.Any(branch => IsFor(step.Step.OnlyFor, branch))))
        {
            step.Entry.Report("only_for", $"No furnace fits '{step.Step.OnlyFor.Text}', so this step is never reached. "
                + "Categories II and IV condense, I and III do not. Correct 'only_for', or remove the step.");
        }

        foreach (StepEntry step in checklist.Steps)
        {
            CheckItself(step, "voids", step.Step.Voids, "what was just measured would be void at once");
            CheckItself(step, "starts", step.Step.Starts, "its time would never be over");
        }

        CheckAdjustments([.. checklist.Steps.Where(step => step.Step is { Kind: StepKind.Adjust, Readings: [_] })], checklist);
    }

    /// <summary>What a sheet leaves unstated leaves nothing out, so only stated branches tell whether a furnace fits.</summary>
    static bool IsFor(Condition condition, Branch branch) =>
        condition.Holds(branch)
        && (condition.Venting.IsEmpty || branch.Venting is not null)
        && (condition.Condensing is null || branch.IsCondensing is not null);

    static void CheckItself(StepEntry step, string key, ImmutableArray<string> ids, string consequence)
    {
        int index = ids.IndexOf(step.Step.Id);
        if (index >= 0 && step.Step.Id.Length > 0)
        {
            step.Entry.Report(key, index, $"The step '{step.Step.Id}' stands in its own '{key}': {consequence}. Remove it.");
        }
    }

    /// <summary>An adjustment that voids what another one watches leads there, and from there perhaps back: each would undo the other for ever.</summary>
    static void CheckAdjustments(ImmutableArray<StepEntry> adjustments, ChecklistEntry checklist)
    {
        foreach (StepEntry first in adjustments)
        {
            if (WayBack(first, adjustments, checklist) is not { } way)
            {
                continue;
            }

            int index = first.Step.Voids.IndexOf(first.Step.Voids.First(id => Leads(id, way[1 % way.Length], checklist)));
            first.Entry.Report("voids", index, way.Length == 1
                ? $"The adjustment '{first.Step.Id}' voids the reading that it has just brought into its range, and would begin again without end. Remove '{first.Step.Voids[index]}' here."
                : $"The adjustments {string.Join(", ", way.Select(step => $"'{step.Step.Id}'"))} void one another's readings, and would lead back to each other without end. Let only one of them void the other's.");
        }
    }

    /// <summary>The shortest way from an adjustment over others back to it, itself first; null if there is none. Each adjustment is looked at once, whatever leads to it.</summary>
    static ImmutableArray<StepEntry>? WayBack(StepEntry first, ImmutableArray<StepEntry> adjustments, ChecklistEntry checklist)
    {
        Dictionary<StepEntry, StepEntry> reachedFrom = [];
        Queue<StepEntry> next = new([first]);
        while (next.TryDequeue(out StepEntry? last))
        {
            foreach (StepEntry other in adjustments.Where(other => !reachedFrom.ContainsKey(other) && last.Step.Voids.Any(id => Leads(id, other, checklist))))
            {
                reachedFrom[other] = last;
                if (other == first)
                {
                    return Way(first, reachedFrom);
                }

                next.Enqueue(other);
            }
        }

        return null;
    }

    static ImmutableArray<StepEntry> Way(StepEntry first, Dictionary<StepEntry, StepEntry> reachedFrom)
    {
        List<StepEntry> back = [];
        for (StepEntry at = reachedFrom[first]; at != first; at = reachedFrom[at])
        {
            back.Add(at);
        }

        return [first, .. back.AsEnumerable().Reverse()];
    }

    /// <summary>Whether voiding the step of that id voids what <paramref name="adjustment"/> watches.</summary>
    static bool Leads(string id, StepEntry adjustment, ChecklistEntry checklist) => checklist.Steps.Any(step =>
        step.Step.Id == id
        && step.Step.Scope == adjustment.Step.Scope
        && step.Step.Readings.Any(demand => demand.FieldId == adjustment.Step.Readings[0].FieldId));
}
