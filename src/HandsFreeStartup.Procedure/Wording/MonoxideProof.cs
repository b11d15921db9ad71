using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Wording;

/// <summary>What a site must state of its instruments before any limit of carbon monoxide can be proven; told before the work begins, not at the signature.</summary>
public static class MonoxideProof
{
    static readonly ImmutableArray<string> Needed = [FieldId.RoomCo, FieldId.FlueCo, FieldId.Oxygen];

    /// <summary>What is missing at a site, in one sentence with its remedy; null where nothing is.</summary>
    public static string? Missing(Site site) => Missing(site, Needed);

    /// <summary>What is missing for the readings that the start-up takes, in one sentence with its remedy; null where nothing is.</summary>
    public static string? Missing(StartupPlan plan) =>
        Missing(plan.Site, Needed.Where(id => plan.Steps.Any(step => step.Readings.Any(demand => demand.FieldId == id))));

    static string? Missing(Site site, IEnumerable<string> needed)
    {
        string[] missing = [.. needed.Where(id => site.Instruments.All(instrument => instrument.FieldId != id)).Select(id => Labels.Within(Fields.Find(id)!.Label))];
        return missing.Length == 0 ? null
            : $"The site file states no uncertainty of the instrument for {string.Join(" and ", missing)}: a CO limit can then only say \"cannot tell\", and stands against the signature. State it in the site file, with its source.";
    }
}
