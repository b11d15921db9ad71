using System.Collections.Immutable;
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
            CheckTimers(step, checklist);
        }

        ImmutableArray<Branch> branches = [.. Branches(checklist)];
        ChecklistPaths.Check(checklist, branches);
        foreach (Branch way in branches)
        {
            StepEntry[] branch = [.. checklist.Steps.Where(step => step.Entry.IsMap && step.Step.OnlyFor.Holds(way))];
            CheckEnd(branch);
            CheckVoidsInBranch(branch, checklist);
            CheckTimersInBranch(branch, checklist);
            new OpenedThings().Check(branch);
        }
    }

    /// <summary>Every way through the checklist; the empty id stands for a fuel that no step names, null for what a sheet does not state.</summary>
    static IEnumerable<Branch> Branches(ChecklistEntry checklist)
    {
        ImmutableArray<Condition> conditions = [.. checklist.Steps.Select(step => step.Step.OnlyFor)];
        return from firing in Enum.GetValues<Firing>()
               from fuel in conditions.SelectMany(condition => condition.Fuels).Append("").Distinct()
               from venting in conditions.All(condition => condition.Venting.IsEmpty) ? [null] : Enum.GetValues<VentCategory>().Select(category => (VentCategory?)category).Append(null)
               from condensing in conditions.All(condition => condition.Condensing is null) ? new bool?[] { null } : [true, false, null]
               where SheetRules.MayBe(venting, condensing)
               from occasion in checklist.Checklist.Occasions.Select(known => known.Id).DefaultIfEmpty()
               select new Branch(firing, fuel, venting, condensing, occasion);
    }

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
        if (kind is not StepKind.Adjust and not StepKind.Read && step.Entry.Has("voids"))
        {
            step.Entry.Report("voids", "Only a step of kind adjust, or one of kind read that is corrected, voids readings. Change the kind, or remove 'voids'.");
        }

        if (kind is StepKind.Walk != step.Step.Do.Shown.Contains(Room, StringComparison.Ordinal) && step.Entry.Has("do"))
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
            else if (target.Kind is not StepKind.Read and not StepKind.Walk)
            {
                step.Entry.Report("voids", i, $"The step '{id}' is not of kind read or walk, so it has no readings that could be void.");
            }
        }
    }

    /// <summary>Timers that a step starts or waits for must be those of wait steps.</summary>
    static void CheckTimers(StepEntry step, ChecklistEntry checklist)
    {
        string[] waits = [.. checklist.Steps.Where(other => other.Step.Kind is StepKind.Wait).Select(other => other.Step.Id)];
        for (int i = 0; i < step.Step.Starts.Length; i++)
        {
            if (!waits.Contains(step.Step.Starts[i]))
            {
                step.Entry.Report("starts", i, $"'{step.Step.Starts[i]}' is no step of kind wait.{Nearest.Hint(step.Step.Starts[i], waits)}");
            }
        }

        if (step.Step.After is { } after && !waits.Contains(after))
        {
            step.Entry.Report("after", $"'{after}' is no step of kind wait.{Nearest.Hint(after, waits)}");
        }

        if (step.Step.After is not null && step.Step.Kind is not StepKind.Read and not StepKind.Walk)
        {
            step.Entry.Report("after", "Only a step with readings is judged after a time. Remove 'after', or change the kind to read.");
        }
    }

    /// <summary>A time that never begins before it is waited for would make every reading early.</summary>
    static void CheckTimersInBranch(StepEntry[] branch, ChecklistEntry checklist)
    {
        for (int i = 0; i < branch.Length; i++)
        {
            string? after = branch[i].Step.After;
            bool isKnown = after is not null && checklist.Steps.Any(other => other.Step.Id == after) && branch.Any(other => other.Step.Id == after);
            if (isKnown && branch.Take(i).All(earlier => earlier.Step.Id != after && !earlier.Step.Starts.Contains(after!)))
            {
                branch[i].Entry.Report("after", $"No earlier step starts the time of '{after}'. Put that step before this one, or add 'starts: [{after}]' to an earlier step.");
            }
        }
    }

    /// <summary>What a branch leaves out need not be measured again; but where nothing is left, an adjustment would go unmeasured.</summary>
    static void CheckVoidsInBranch(StepEntry[] branch, ChecklistEntry checklist)
    {
        foreach (StepEntry step in branch.Where(step => !step.Step.Voids.IsEmpty))
        {
            string[] known = [.. step.Step.Voids.Where(id => checklist.Steps.Any(other => other.Step.Id == id))];
            if (known.Length > 0 && branch.All(other => !known.Contains(other.Step.Id)))
            {
                step.Entry.Report("voids", $"Where this step is part of the procedure, the only_for of {string.Join(" and ", known.Select(id => $"'{id}'"))} can leave {(known.Length == 1 ? "that" : "those")} out, and nothing would be measured again. Give both the same only_for.");
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
