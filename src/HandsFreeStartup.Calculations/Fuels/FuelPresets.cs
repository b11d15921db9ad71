using System.Collections.Immutable;
using static HandsFreeStartup.Calculations.Gases.Species;

namespace HandsFreeStartup.Calculations.Fuels;

public sealed partial class Fuel
{
    /// <summary>Typical natural gas of the United States: 93.9 % methane.</summary>
    /// <remarks>Rounded mean after the variability study GRI-92/0123; the composition itself is a value from memory.</remarks>
    public static Fuel NaturalGas { get; } = FromComposition("natural-gas", "natural gas",
        new(Methane, 0.939), new(Ethane, 0.032), new(Gases.Species.Propane, 0.007), new(NormalButane, 0.004), new(CarbonDioxide, 0.008), new(Nitrogen, 0.010));

    /// <summary>Pure propane.</summary>
    public static Fuel Propane { get; } = FromComposition("propane", "propane", new FuelComponent(Gases.Species.Propane, 1));

    /// <summary>Every preset. A new one is one entry here; all but the first two are examples of a kind, not of a supply.</summary>
    public static ImmutableArray<Fuel> Presets { get; } =
    [
        NaturalGas,
        Propane,
        FromComposition("nitrogen-lean-natural-gas", "natural gas, lean",
            new(Methane, 0.9785), new(Ethane, 0.0125), new(Gases.Species.Propane, 0.0025), new(NormalButane, 0.001), new(CarbonDioxide, 0.0035), new(Nitrogen, 0.002)),
        FromComposition("rich-natural-gas", "natural gas, rich",
            new(Methane, 0.88), new(Ethane, 0.076), new(Gases.Species.Propane, 0.023), new(NormalButane, 0.006), new(CarbonDioxide, 0.007), new(Nitrogen, 0.008)),
        FromComposition("hydrogen-blend-20", "natural gas with 20 % hydrogen",
            new(Methane, 0.7512), new(Ethane, 0.0256), new(Gases.Species.Propane, 0.0056), new(NormalButane, 0.0032), new(CarbonDioxide, 0.0064), new(Nitrogen, 0.008), new(Hydrogen, 0.2)),
        FromComposition("lpg-propylene", "propane with propylene and butane",
            new(Gases.Species.Propane, 0.90), new(Propylene, 0.05), new(NormalButane, 0.05)),
        FromComposition("lpg-ethane", "propane with ethane and butane",
            new(Gases.Species.Propane, 0.90), new(Ethane, 0.05), new(NormalButane, 0.05)),
        FromComposition("propane-butane-50", "half propane, half butanes",
            new(Gases.Species.Propane, 0.50), new(NormalButane, 0.35), new(Isobutane, 0.15)),
        FromComposition("methane", "methane", new FuelComponent(Methane, 1)),
        FromComposition("ethane", "ethane", new FuelComponent(Ethane, 1)),
        FromComposition("n-butane", "n-butane", new FuelComponent(NormalButane, 1)),
        FromComposition("isobutane", "isobutane", new FuelComponent(Isobutane, 1)),
        FromComposition("hydrogen", "hydrogen", new FuelComponent(Hydrogen, 1)),
    ];

    /// <summary>The preset of that id, or null.</summary>
    public static Fuel? Find(string id)
    {
        foreach (Fuel fuel in Presets)
        {
            if (fuel.Id == id)
            {
                return fuel;
            }
        }
        return null;
    }
}
