using System.Collections.Concurrent;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Storage.Tests.Support;

namespace HandsFreeStartup.Simulation.Tests.Support;

/// <summary>Furnaces of the shipped sheets, and where they get to.</summary>
static class Made
{
    public static readonly string[] Sheets = ["demo-furnace", "furnace-two-stage-altitude", "furnace-one-stage-propane", "furnace-modulating", "furnace-natural-draft"];

    static readonly ConcurrentDictionary<(string, string), StartupPlan> Plans = new();

    public static StartupPlan Plan(string sheet, string occasion = "new") => Plans.GetOrAdd((sheet, occasion), _ => ShippedPlans.Plan("gas-furnace", sheet, Site(sheet), occasion));

    public static Furnace Furnace(string sheet, ulong seed = 7, params Fault[] faults) => Simulation.Furnace.From(Plan(sheet), faults, seed);

    /// <summary>Gas on, heat called, probe in, everything connected.</summary>
    public static Hands Measuring(bool high = true) => new()
    {
        GasOn = true,
        Calls = true,
        High = high,
        Probe = ProbePlace.Flue,
        Open = ["inlet port", "manifold port", "test hole", "duct ports"],
        Clockings = 1,
    };

    public static FurnaceState After(Furnace furnace, double minutes, Hands? hands = null) => furnace.Step(furnace.Start(), hands ?? Measuring(), 60 * minutes);

    static string Site(string sheet) => sheet switch
    {
        "furnace-two-stage-altitude" => "site-mountain",
        "furnace-one-stage-propane" => "site-farm",
        "furnace-modulating" => "site-row-house",
        "furnace-natural-draft" => "site-row-house",
        _ => "demo-site",
    };
}
