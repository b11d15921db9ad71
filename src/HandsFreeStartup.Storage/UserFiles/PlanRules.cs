using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>What must hold between a checklist, an appliance sheet and a site that are used together.</summary>
static class PlanRules
{
    /// <summary>Steps of a plan, each walk counted once a room.</summary>
    const int MostSteps = 3000;

    /// <summary>Plates give the input with some room for the meter (common practice, no source).</summary>
    const decimal MeterTolerance = 0.05m;

    public static void Check(ChecklistEntry checklist, ApplianceEntry appliance, Site site)
    {
        StepEntry[] walks = [.. checklist.Steps.Where(step => step.Step.Kind == StepKind.Walk)];
        if (checklist.Steps.Length + walks.Length * site.Rooms.Length > MostSteps)
        {
            walks[0].Entry.Report("kind", FormattableString.Invariant($"{walks.Length} walks through the {site.Rooms.Length} rooms of the site are more than the {MostSteps} steps that a start-up may have. Leave out walks or rooms."));
            return;
        }

        foreach (string? occasion in checklist.Checklist.Occasions.Select(known => known.Id).DefaultIfEmpty())
        {
            StartupPlan plan = StartupPlan.From(checklist.Checklist, appliance.Sheet, site, occasion: occasion);
            foreach (StepEntry entry in checklist.Steps)
            {
                CheckLimits(entry, plan, checklist, appliance);
            }
        }

        foreach (LimitEntry own in appliance.Limits)
        {
            CheckSafety(own, checklist);
            CheckDerate(own, appliance.Sheet, site);
        }

        ImmutableArray<string> scopes = [.. checklist.Steps.Select(step => step.Step.Scope).OfType<string>().Concat(site.Rooms).Distinct()];
        foreach (LimitEntry limit in checklist.Limits.Concat(appliance.Limits).Where(limit => limit.Scope is { } scope && !scopes.Contains(scope)))
        {
            limit.Entry.Report("name", $"No step has the stage '{limit.Scope}', so this limit would never judge anything.{Nearest.Hint(limit.Scope!, scopes)}");
        }
    }

    /// <summary>At altitude less gas may be burned than the plate says for sea level.</summary>
    static void CheckDerate(LimitEntry own, ApplianceSheet sheet, Site site)
    {
        if (own is { BaseName: ResultId.InputRate, Scope: "high" or null } && own.Limit is { Upper: { } upper, Unusual: null } && Derating.LargestInput(sheet, site) is { } largest && upper > largest * (1 + MeterTolerance))
        {
            own.Entry.ReportForNew("upper", FormattableString.Invariant(
                $"{Derating.Text(sheet, site)} {upper} is more. Write what the maker states for this altitude, or add 'unusual: the reason'."));
        }
    }

    /// <summary>A sheet's limit wins over the checklist's, so it may only be stricter where the checklist's is for safety.</summary>
    static void CheckSafety(LimitEntry own, ChecklistEntry checklist)
    {
        DeclaredLimit? general = checklist.Limits.Select(limit => limit.Limit)
            .FirstOrDefault(limit => limit.IsSafety && (limit.Name == own.Limit.Name || limit.Name == own.BaseName));
        if (general is null || own.Limit.UnitSymbol != general.UnitSymbol)
        {
            return;
        }

        if (!own.Limit.IsSafety)
        {
            own.Entry.Report("name", $"'{own.Limit.Name}' is a safety limit in the checklist and stays one. Add 'safety: true'.");
        }

        if (general.Upper is { } highest && !(own.Limit.Upper <= highest))
        {
            own.Entry.Report(own.Entry.Has("upper") ? "upper" : "name", FormattableString.Invariant(
                $"The checklist's safety limit is {general.Text} ({general.Source}); a sheet may only be stricter. Write {highest} or less as 'upper', or remove this limit."));
        }

        if (general.Lower is { } lowest && !(own.Limit.Lower >= lowest))
        {
            own.Entry.Report(own.Entry.Has("lower") ? "lower" : "name", FormattableString.Invariant(
                $"The checklist's safety limit is {general.Text} ({general.Source}); a sheet may only be stricter. Write {lowest} or more as 'lower', or remove this limit."));
        }
    }

    static void CheckLimits(StepEntry entry, StartupPlan plan, ChecklistEntry checklist, ApplianceEntry appliance)
    {
        IEnumerable<Step> planned = plan.Steps.Where(step => step.Id == entry.Step.Id || step.Id.StartsWith($"{entry.Step.Id}/", StringComparison.Ordinal));
        foreach (Step step in planned)
        {
            for (int i = 0; i < step.Readings.Length; i++)
            {
                ReadingDemand demand = step.Readings[i];
                DeclaredLimit? limit = plan.Limit(demand.LimitName, step.Scope);
                if (WhyUnlimited(demand, step, plan) is { } unlimited)
                {
                    entry.Entry.ReportForNew("readings", i, unlimited);
                    continue;
                }

                if (demand.LimitName is { } asked && limit is null && Fields.Find(asked)?.Unit == Fields.Find(demand.FieldId)?.Unit)
                {
                    // It is asked for at the step, and said from the rating plate.
                    continue;
                }

                if (demand.LimitName is not null && limit is null)
                {
                    string[] known = [.. checklist.Limits.Concat(appliance.Limits).Select(one => one.BaseName).Distinct().Where(name => name != demand.LimitName)];
                    entry.Entry.Report("readings", i, $"There is no limit '{demand.LimitName}'{(entry.Step.Scope is null ? "" : $" for '{entry.Step.Scope}'")} "
                        + $"in the checklist or on the equipment data sheet. Declare it there, with its source.{Nearest.Hint(demand.LimitName, known)}");
                }
                else if (limit is not null && Fields.Find(demand.FieldId) is { } field && field.Unit.Symbol != limit.UnitSymbol)
                {
                    entry.Entry.Report("readings", i, $"The limit '{limit.Name}' is in '{limit.UnitSymbol}', but {demand.FieldId} is read in {field.Unit.Symbol}. Name a limit of the same unit.");
                }
            }
        }
    }

    /// <summary>Carbon monoxide that no limit of the files judges would pass whatever it is, and a limit of it is never said by voice; null where it is judged, and for other readings.</summary>
    static string? WhyUnlimited(ReadingDemand demand, Step step, StartupPlan plan)
    {
        bool isFlue = demand.FieldId == FieldId.FlueCo;
        bool isLimited = plan.Limit(demand.LimitName, step.Scope) is { Upper: not null }
            || (isFlue && plan.Limit(ResultId.CoAirFree, step.Scope) is { Upper: not null }
                && plan.Steps.Any(other => other.Scope == step.Scope && other.Readings.Any(one => one.FieldId == FieldId.Oxygen)));
        return isLimited || (!isFlue && demand.FieldId != FieldId.RoomCo) ? null
            : $"No limit judges the {Fields.Find(demand.FieldId)!.Label} that is read here: any value would pass. {(isFlue
                ? $"State an upper '{ResultId.CoAirFree}' in the checklist or on the equipment data sheet, with its source, and read oxygen in the same stage."
                : $"Name '{FieldId.RoomCo}' as its limit, and state an upper one in the checklist or on the equipment data sheet, with its source.")}";
    }
}
