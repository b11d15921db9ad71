using System.Collections.Immutable;

namespace HandsFreeStartup.Simulation;

/// <summary>Something that is wrong with the furnace, the house or the instruments of a rehearsal.</summary>
public enum Fault
{
    /// <summary>The regulator is set above its limit.</summary>
    RegulatorHigh,
    /// <summary>The regulator does not hold what is set: after every turn the pressure creeps up.</summary>
    ValveNotHolding,
    /// <summary>The orifices are larger than they must be, and it cannot be seen.</summary>
    WrongOrifice,
    /// <summary>Something is stuck in the vent where nobody sees it.</summary>
    BlockedVent,
    /// <summary>The heat exchanger has a crack.</summary>
    CrackedExchanger,
    /// <summary>The filter is full.</summary>
    DirtyFilter,
    /// <summary>The ducts are too small.</summary>
    UndersizedDuct,
    /// <summary>Hot and neutral are exchanged.</summary>
    ReversedPolarity,
    /// <summary>The analyzer was zeroed in bad air.</summary>
    BadlyZeroed,
    /// <summary>The hose of the probe draws air.</summary>
    LeakingProbe,
    /// <summary>A plug of the gas ports does not close.</summary>
    PortLeftOpen,
    /// <summary>The orifices are those of sea level.</summary>
    NotDerated,
    /// <summary>The openings or the intake for combustion air are covered.</summary>
    ShortOfAir,
    /// <summary>The gas supply does not keep its pressure under load.</summary>
    LowSupply,
    /// <summary>A joint before the gas valve leaks.</summary>
    GasLeak,
}

/// <summary>A fault by its name.</summary>
/// <param name="Fault">Which.</param>
/// <param name="Name">As written after <c>--fault</c>.</param>
/// <param name="What">What is wrong, as told after the rehearsal.</param>
/// <param name="Remedy">The hand that puts it right; null where only shutting the furnace off is left.</param>
/// <param name="IsDangerous">Whether a furnace with it must not be left in service.</param>
public sealed record NamedFault(Fault Fault, string Name, string What, string? Remedy, bool IsDangerous)
{
    /// <summary>Every fault. A new one is one entry here, its effect in <see cref="Furnace"/>, and a row in the table of the tests.</summary>
    public static ImmutableArray<NamedFault> All { get; } =
    [
        new(Fault.RegulatorHigh, "regulator-high", "The regulator was set above its limit.", "turn the screw", true),
        new(Fault.ValveNotHolding, "valve-not-holding", "The valve did not hold what was set: the pressure crept up after every turn.", null, true),
        new(Fault.WrongOrifice, "wrong-orifice", "The orifices were a size too large.", null, true),
        new(Fault.BlockedVent, "blocked-vent", "The vent was blocked where nobody sees it.", null, true),
        new(Fault.CrackedExchanger, "cracked-exchanger", "The heat exchanger was cracked.", null, true),
        new(Fault.DirtyFilter, "dirty-filter", "The filter was full.", "change filter", false),
        new(Fault.UndersizedDuct, "undersized-duct", "The ducts were too small for this furnace.", null, false),
        new(Fault.ReversedPolarity, "reversed-polarity", "Hot and neutral were exchanged.", "swap wires", true),
        new(Fault.BadlyZeroed, "badly-zeroed", "The analyzer had been zeroed in bad air.", "zero analyzer", true),
        new(Fault.LeakingProbe, "leaking-probe", "The hose of the probe drew air.", "press hose", true),
        new(Fault.PortLeftOpen, "port-left-open", "The plug of the manifold port did not close.", "tighten plugs", true),
        new(Fault.NotDerated, "not-derated", "The orifices were those of sea level.", null, true),
        new(Fault.ShortOfAir, "short-of-air", "The combustion air was covered.", "free the air", true),
        new(Fault.LowSupply, "low-supply", "The gas supply did not keep its pressure under load.", null, true),
        new(Fault.GasLeak, "gas-leak", "A joint before the gas valve leaked.", "tighten joint", true),
    ];

    /// <summary>The fault of that name, or null.</summary>
    public static NamedFault? Find(string name) => All.FirstOrDefault(fault => fault.Name == name);

    /// <summary>The entry of <paramref name="fault"/>.</summary>
    public static NamedFault Of(Fault fault) => All.First(known => known.Fault == fault);
}
