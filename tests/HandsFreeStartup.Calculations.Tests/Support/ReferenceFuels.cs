using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;

namespace HandsFreeStartup.Calculations.Tests.Support;

/// <summary>The fuels of Reference/fuel_definitions.csv, and pure gases by symbol.</summary>
static class ReferenceFuels
{
    static readonly Dictionary<string, Fuel> All = ReferenceTable.Rows("fuel_definitions")
        .GroupBy(row => row.Text("fuel"))
        .ToDictionary(rows => rows.Key, rows => Fuel.FromComposition(
            rows.Key, rows.Key,
            [.. rows.Select(row => new FuelComponent(Species.Find(row.Text("component"))!, row.Number("mole_fraction")))]));

    public static Fuel Get(string name) =>
        All.TryGetValue(name, out Fuel? fuel) ? fuel : Fuel.FromComposition(name, name, new FuelComponent(Species.Find(name)!, 1));
}
