using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Wording;

/// <summary>What a site must state of its instruments before any limit of carbon monoxide can be proven; told before the work begins, not at the signature.</summary>
public static class MonoxideProof
{
    static readonly ImmutableArray<string> Needed = [FieldId.RoomCo, FieldId.FlueCo, FieldId.Oxygen];

    /// <summary>What is missing at a site, in one sentence with its remedy; null where nothing is.</summary>
    public static Message? Missing(Site site) => Missing(site, Needed);

    /// <summary>What is missing for the readings that the start-up takes, in one sentence with its remedy; null where nothing is.</summary>
    public static Message? Missing(StartupPlan plan) =>
        Missing(plan.Site, Needed.Where(id => plan.Steps.Any(step => step.Readings.Any(demand => demand.FieldId == id))));

    static Message? Missing(Site site, IEnumerable<string> needed)
    {
        string[] missing = [.. needed.Where(id => site.Instruments.All(instrument => instrument.FieldId != id)).Select(id => Labels.Within(Fields.Find(id)!.Label))];
        return missing.Length == 0 ? null
            : $"The site file states no uncertainty of the instrument for {Message.Join(" and ", missing.Select(label => (Message)$"{new MessagePart.Name(label)}"))}: a CO limit can then only say \"cannot tell\", and stands against the signature. State it in the site file, with its source.";
    }
}
