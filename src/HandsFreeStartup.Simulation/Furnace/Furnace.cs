using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Procedure.Checklists;

namespace HandsFreeStartup.Simulation;

/// <summary>One fire of a furnace that is as its sheet wants it; SI.</summary>
public sealed record FireStage
{
    /// <summary>Pa.</summary>
    public required double Manifold { get; init; }

    /// <summary>m³/s as in the meter.</summary>
    public required double GasFlow { get; init; }

    /// <summary>Dry combustion air, mol/s.</summary>
    public required double AirMoles { get; init; }

    /// <summary>Where the exhaust leaves the exchanger.</summary>
    public required double FlueKelvin { get; init; }

    /// <summary>Of the flame as the exchanger sees it: combustion without loss, constant heat capacities.</summary>
    public required double FlameKelvin { get; init; }

    /// <summary>Share of the difference between flame and metal that is left at the outlet.</summary>
    public required double Slip { get; init; }

    /// <summary>Metal over return air, K.</summary>
    public required double ExchangerRise { get; init; }

    /// <summary>Heat into the circulated air, W.</summary>
    public required double ToAir { get; init; }

    /// <summary>m³/s.</summary>
    public required double Circulation { get; init; }
}

/// <summary>A furnace in its house, with its faults; it never changes. What changes is a <see cref="FurnaceState"/>.</summary>
/// <remarks>
/// Gas: supply with lock-up and droop, regulator with play and drift, orifice by <see cref="Calculations.GasSide.Orifice"/>. Fire: <see cref="FlueGas"/> balances. Heat:
/// <see cref="CombustionEvaluation"/> by the first law. What no law gives (CO against air, flame current, play, lags) is invented, common practice, no source.
/// </remarks>
public sealed partial record Furnace
{
    /// <summary>Outdoors, and of the combustion air of a sealed furnace.</summary>
    public const double OutdoorKelvin = 278.15;

    /// <summary>In the house.</summary>
    public const double RoomKelvin = 294.15;

    /// <summary>What the furnace burns.</summary>
    public required Fuel Fuel { get; init; }

    /// <summary>The plan that it was made from.</summary>
    public required StartupPlan Plan { get; init; }

    /// <summary>Seed of all chance.</summary>
    public required ulong Seed { get; init; }

    /// <summary>What is wrong.</summary>
    public required ImmutableSortedSet<Fault> Faults { get; init; }

    /// <summary>High fire, or its highest rate.</summary>
    public required FireStage High { get; init; }

    /// <summary>Low fire; the same as high fire where there is one stage.</summary>
    public required FireStage Low { get; init; }

    /// <summary>Drill of each orifice, m.</summary>
    public required double OrificeMetres { get; init; }

    /// <summary>Number of burners.</summary>
    public required int Burners { get; init; }

    /// <summary>Gross heat of the gas as it is metered, J/m³.</summary>
    public required double HeatPerCubicMetre { get; init; }

    /// <summary>Barometer, Pa.</summary>
    public required double Barometer { get; init; }

    /// <summary>Inlet pressure of the supply at no flow worth naming, before lock-up, Pa.</summary>
    public required double Supply { get; init; }

    /// <summary>Pressure that the supply loses at the full input, Pa.</summary>
    public required double SupplyDrop { get; init; }

    /// <summary>Heat that a volume of circulated air takes, J/(m³ K).</summary>
    public required double SensibleFactor { get; init; }

    /// <summary>Static pressures of supply and return at the circulation of high fire, Pa, both positive.</summary>
    public required (double Supply, double Return) Static { get; init; }

    /// <summary>Height of the vent that draws, m; 0 where a fan pushes.</summary>
    public required double VentMetres { get; init; }

    /// <summary>Pressure in a vent under pressure at the full flow, Pa.</summary>
    public required double VentPressure { get; init; }

    /// <summary>Flame current, A.</summary>
    public required double FlameCurrent { get; init; }

    /// <summary>Outlet air at which the limit opens, K.</summary>
    public required double LimitKelvin { get; init; }

    /// <summary>Whether a hood and warm exhaust alone move the exhaust.</summary>
    public bool IsNatural => Plan.Appliance.DraftBy == DraftBy.Natural;

    /// <summary>Whether it takes its air from outdoors through a pipe.</summary>
    public bool IsSealed => Plan.Appliance.Venting is VentCategory.III or VentCategory.IV;

    /// <summary>Combustion air, K.</summary>
    public double AirKelvin => IsSealed ? OutdoorKelvin : RoomKelvin - 1;

    /// <summary>Whether that fault is there and nobody has put it right.</summary>
    public bool Has(Fault fault, Hands hands) => Faults.Contains(fault) && !hands.PutRight.Contains(fault);

    /// <summary>Turns that the faults make of the screws: a regulator that is set too high.</summary>
    public double FaultTurns => Faults.Contains(Fault.RegulatorHigh) || Faults.Contains(Fault.ValveNotHolding) ? _highTurns : 0;

    readonly double _highTurns;

    /// <summary>Why a fault cannot be on this furnace, one sentence; null where it can.</summary>
    public static string? WhyNot(Fault fault, StartupPlan plan) => fault == Fault.NotDerated && plan.Site.AltitudeFeet <= 2000
        ? "not-derated needs a site above 2000 feet: name one with --site."
        : null;

    /// <summary>The furnace of a plan. What the sheet does not state is taken from the middle of what plates usually state (common practice, no source).</summary>
    /// <param name="plan">Sheet, site and checklist.</param>
    /// <param name="faults">What is wrong.</param>
    /// <param name="seed">Of all chance.</param>
    public static Furnace From(StartupPlan plan, IEnumerable<Fault> faults, ulong seed) => new FurnaceBuilding(plan, [.. faults], seed).Build();

    internal Furnace(double highTurns) => _highTurns = highTurns;
}
