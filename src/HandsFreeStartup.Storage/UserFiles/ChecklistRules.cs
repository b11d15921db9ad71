using HandsFreeStartup.Procedure.Checklists;

namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>What must hold between the keys of a step and between the steps of a checklist.</summary>
static class ChecklistRules
{
    const string Room = "{room}";

    public static void Check(ChecklistEntry checklist)
    {
        CheckIds(checklist);
        foreach (StepEntry step in checklist.Steps.Where(step => step.Entry.IsMap))
        {
            CheckKind(step);
            CheckReadings(step);
            CheckVoids(step, checklist);
        }

        foreach ((int stages, string? fuel) in Branches(checklist))
        {
            StepEntry[] branch = [.. checklist.Steps.Where(step =>
                step.Entry.IsMap
                && (step.Step.OnlyForStages ?? stages) == stages
                && (step.Step.OnlyForFuel is null || step.Step.OnlyForFuel == fuel))];
            CheckEnd(branch);
            CheckVoidsInBranch(branch, checklist, stages);
            new OpenedThings().Check(branch);
        }
    }

    /// <summary>Every way through the checklist: stages by fuel, null standing for a fuel that no step names.</summary>
    static IEnumerable<(int Stages, string? Fuel)> Branches(ChecklistEntry checklist) =>
        from stages in new[] { 1, 2 }
        from fuel in checklist.Steps.Select(step => step.Step.OnlyForFuel).Append(null).Distinct()
        select (stages, fuel);

    static void CheckIds(ChecklistEntry checklist)
    {
        foreach (IGrouping<string, StepEntry> same in checklist.Steps.Where(step => step.Step.Id.Length > 0).GroupBy(step => step.Step.Id))
        {
            foreach (StepEntry repeated in same.Skip(1))
            {
                repeated.Entry.Report("id", FormattableString.Invariant(
                    $"The id '{same.Key}' is taken by the step in line {same.First().Entry.Place.Line}. Give this step another one."));
            }
        }
    }

    static void CheckKind(StepEntry step)
    {
        if (!step.HasKind)
        {
            return;
        }

        StepKind kind = step.Step.Kind;
        Demand(step, "readings", kind is StepKind.Read or StepKind.Walk or StepKind.Adjust, isExclusive: true);
        Demand(step, "question", kind is StepKind.Ask, isExclusive: true);
        Demand(step, "timer", kind is StepKind.Wait, isExclusive: true);
        Demand(step, "opens", kind is StepKind.Open, isExclusive: false);
        Demand(step, "closes", kind is StepKind.Close, isExclusive: false);
        if (kind is not StepKind.Adjust && step.Entry.Has("voids"))
        {
            step.Entry.Report("voids", "Only a step of kind adjust voids readings. Change the kind, or remove 'voids'.");
        }

        if (kind is StepKind.Walk != step.Step.Do.Contains(Room, StringComparison.Ordinal) && step.Entry.Has("do"))
        {
            step.Entry.Report("do", kind is StepKind.Walk
                ? $"The text of a walk must say where to go. Write {Room} where the room's name belongs, such as \"Walk to the {Room}\"."
                : $"{Room} stands for a room only in a step of kind walk. Name the room, or change the kind.");
        }

        if (kind is StepKind.Walk && step.Entry.Has("stage"))
        {
            step.Entry.Report("stage", "A walk goes room by room and has no stage. Remove 'stage'.");
        }
    }

    static void Demand(StepEntry step, string key, bool isDemanded, bool isExclusive)
    {
        string kind = step.Step.Kind.ToString().ToLowerInvariant();
        if (isDemanded && !step.Entry.Has(key))
        {
            step.Entry.Report("kind", $"A step of kind {kind} needs the key '{key}'.");
        }

        if (!isDemanded && isExclusive && step.Entry.Has(key))
        {
            step.Entry.Report(key, $"A step of kind {kind} cannot have '{key}'. Remove it, or change the kind.");
        }
    }

    static void CheckReadings(StepEntry step)
    {
        for (int i = 0; i < step.Step.Readings.Length; i++)
        {
            ReadingDemand demand = step.Step.Readings[i];
            if (step.Step.Readings.Take(i).Any(earlier => earlier.FieldId == demand.FieldId))
            {
                step.Entry.Report("readings", i, $"The field '{demand.FieldId}' is asked for twice in this step. Keep one.");
            }

            if (demand.LimitName is { } name && name.Contains('/', StringComparison.Ordinal))
            {
                step.Entry.Report("readings", i, $"Write the limit without its stage: {name.Split('/')[0]}. The stage is that of the step.");
            }

            if (step.Step.Kind is StepKind.Adjust && demand.LimitName is null)
            {
                step.Entry.Report("readings", i, "An adjustment needs to know when it is reached. Add 'limit' to the reading.");
            }
        }

        if (step.Step.Kind is StepKind.Adjust && step.Step.Readings.Length > 1)
        {
            step.Entry.Report("readings", 1, "An adjustment watches one reading. Make a step of its own for this one.");
        }

        foreach (string field in step.Step.Also.Keys.Where(field => step.Step.Readings.All(demand => demand.FieldId != field)))
        {
            step.Entry.Report("also", $"'also' names the field '{field}', which this step does not ask for. Remove it, or add the reading.");
        }
    }

    static void CheckVoids(StepEntry step, ChecklistEntry checklist)
    {
        for (int i = 0; i < step.Step.Voids.Length; i++)
        {
            string id = step.Step.Voids[i];
            Step? target = checklist.Steps.FirstOrDefault(other => other.Step.Id == id)?.Step;
            if (target is null)
            {
                step.Entry.Report("voids", i, $"There is no step '{id}'.{Nearest.Hint(id, [.. checklist.Steps.Where(other => other.Step.Kind is StepKind.Read).Select(other => other.Step.Id)])}");
            }
            else if (target.Kind is not StepKind.Read)
            {
                step.Entry.Report("voids", i, $"The step '{id}' is not of kind read, so it has no readings that could be void.");
            }
        }
    }

    static void CheckVoidsInBranch(StepEntry[] branch, ChecklistEntry checklist, int stages)
    {
        foreach (StepEntry step in branch)
        {
            for (int i = 0; i < step.Step.Voids.Length; i++)
            {
                string id = step.Step.Voids[i];
                if (checklist.Steps.Any(other => other.Step.Id == id) && branch.All(other => other.Step.Id != id))
                {
                    step.Entry.Report("voids", i, FormattableString.Invariant(
                        $"The step '{id}' is left out by its only_for where this step is not (with {stages} stages or another fuel). Give both the same only_for."));
                }
            }
        }
    }

    static void CheckEnd(StepEntry[] branch)
    {
        if (branch.Length > 0 && branch.All(step => step.Step.Kind is not StepKind.Sign))
        {
            branch[^1].Entry.Report("id", "The checklist does not end with a step of kind sign. Add one.");
        }

        foreach (StepEntry early in branch.SkipLast(1).Where(step => step.Step.Kind is StepKind.Sign))
        {
            early.Entry.Report("kind", "A step of kind sign must be the last one. Move it to the end, and keep one.");
        }
    }
}
