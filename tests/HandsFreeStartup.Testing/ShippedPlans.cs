using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Storage.UserFiles;

namespace HandsFreeStartup.Storage.Tests.Support;

/// <summary>The files that are shipped, and every plan that can be made of them.</summary>
public static class ShippedPlans
{
    static readonly (string Checklist, string Appliance, string Site)[] Files =
    [
        ("two-stage-natural-gas", "demo-furnace", "demo-site"),
        ("gas-furnace", "demo-furnace", "demo-site"),
        ("gas-furnace", "furnace-two-stage-altitude", "site-mountain"),
        ("gas-furnace", "furnace-one-stage-propane", "site-farm"),
        ("gas-furnace", "furnace-modulating", "site-row-house"),
    ];

    /// <summary>Every shipped YAML file.</summary>
    public static IEnumerable<FileCopy> All => Directory.GetFiles(Folder, "*.yaml").Order(StringComparer.Ordinal).Select(UserFile.Copy);

    /// <summary>Every combination of files, occasions and orders of the stages; the checklists are read once, for tests ask in their loops.</summary>
    public static TheoryData<string, string, string, string, StageOrder> Rows { get; } = Combined();

    static TheoryData<string, string, string, string, StageOrder> Combined()
    {
        TheoryData<string, string, string, string, StageOrder> rows = [];
        foreach ((string checklist, string appliance, string site) in Files)
        {
            foreach (string occasion in UserFile.ReadChecklist(Copy(checklist)).Occasions.Select(known => known.Id).DefaultIfEmpty(""))
            {
                rows.Add(checklist, appliance, site, occasion, StageOrder.AsWritten);
                rows.Add(checklist, appliance, site, occasion, StageOrder.LowFirst);
            }
        }

        return rows;
    }

    /// <summary>The plan of one combination.</summary>
    public static StartupPlan Plan(string checklist, string appliance, string site, string occasion, StageOrder order = StageOrder.AsWritten)
    {
        PlanFiles files = UserFile.ReadTogether(Copy(checklist), Copy(appliance), Copy(site));
        return StartupPlan.From(files.Checklist, files.Appliance, files.Site, settings: new Settings(order), occasion: occasion.Length == 0 ? null : occasion);
    }

    /// <summary>One shipped file.</summary>
    public static FileCopy Copy(string name) => UserFile.Copy(Path.Combine(Folder, $"{name}.yaml"));

    static string Folder => Path.Combine(AppContext.BaseDirectory, "checklists");
}
