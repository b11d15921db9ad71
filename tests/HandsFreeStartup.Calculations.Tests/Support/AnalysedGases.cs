using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using static HandsFreeStartup.Calculations.Gases.Species;

namespace HandsFreeStartup.Calculations.Tests.Support;

/// <summary>Gases whose analysis is published together with results.</summary>
static class AnalysedGases
{
    /// <summary>Worked analysis in the style of AGA Report 5 (scribd.com document 499128911, seen).</summary>
    public static Fuel Worked { get; } = Fuel.FromComposition("worked", "worked analysis",
        new(Methane, .906724), new(Nitrogen, .031284), new(CarbonDioxide, .004676), new(Ethane, .045279), new(Species.Propane, .008280),
        new(Isobutane, .001037), new(NormalButane, .001563), new(Isopentane, .000321), new(NormalPentane, .000443), new(Hexane, .000393));

    /// <summary>First analysis of a Canadian gas utility (seen; address not kept); its hexanes counted as n-pentane.</summary>
    public static Fuel UtilityA { get; } = Fuel.FromComposition("utility-a", "utility gas A",
        new(Methane, .939), new(Ethane, .042), new(Species.Propane, .003), new(Isobutane, .0003), new(NormalButane, .0003),
        new(Isopentane, .0001), new(NormalPentane, .0002), new(Nitrogen, .010), new(CarbonDioxide, .005), new(Oxygen, .0001));

    /// <summary>Second analysis of the same utility.</summary>
    public static Fuel UtilityB { get; } = Fuel.FromComposition("utility-b", "utility gas B",
        new(Methane, .950), new(Ethane, .032), new(Species.Propane, .002), new(Isobutane, .0003), new(NormalButane, .0003),
        new(Isopentane, .0001), new(NormalPentane, .0002), new(Nitrogen, .010), new(CarbonDioxide, .005), new(Oxygen, .0002));

    /// <summary>Fuel of a textbook problem (tutorsglobe.com question 51258905, seen).</summary>
    public static Fuel TextbookA { get; } = Fuel.FromComposition("textbook-a", "textbook problem a",
        new(Methane, .973), new(CarbonDioxide, .023), new(Nitrogen, .004));
}
