using System.Collections.Immutable;

namespace HandsFreeStartup.Simulation;

/// <summary>What the burner control does.</summary>
public enum BurnerPhase
{
    /// <summary>Nothing.</summary>
    Off,
    /// <summary>The fan clears the flue passages; with natural draft it waits.</summary>
    Purging,
    /// <summary>Gas is let in and lit.</summary>
    Igniting,
    /// <summary>It burns.</summary>
    Burning,
    /// <summary>It has tried in vain and waits for a reset.</summary>
    LockedOut,
    /// <summary>A safety control has opened its circuit.</summary>
    Tripped,
}

/// <summary>A value as an instrument follows it.</summary>
/// <param name="Fast">What the instrument shows, before noise and rounding.</param>
/// <param name="Slow">The same half a minute behind: where both agree, it stands still.</param>
public readonly record struct Sensed(double Fast, double Slow);

/// <summary>The flue gas of this moment, in SI.</summary>
public readonly record struct Exhaust
{
    /// <summary>Air over theoretical air; 0 without a fire.</summary>
    public double Lambda { get; init; }

    /// <summary>Fraction of the dry flue.</summary>
    public double Oxygen { get; init; }

    /// <summary>Fraction of the dry flue.</summary>
    public double Monoxide { get; init; }

    /// <summary>mol/s.</summary>
    public double FuelMoles { get; init; }

    /// <summary>Dry air, mol/s.</summary>
    public double AirMoles { get; init; }

    /// <summary>Dry flue, mol/s.</summary>
    public double DryMoles { get; init; }

    /// <summary>Water as vapour, before condensation, mol/s.</summary>
    public double WaterMoles { get; init; }

    /// <summary>Where it leaves the exchanger.</summary>
    public double Kelvin { get; init; }

    /// <summary>Gross heat of the gas, W.</summary>
    public double Input { get; init; }

    /// <summary>Heat that stays in the exchanger, W.</summary>
    public double ToExchanger { get; init; }

    /// <summary>mol/s.</summary>
    public double Condensate { get; init; }
}

/// <summary>Everything about the furnace, the house and the instruments at one moment; SI, gauge pressures in Pa.</summary>
public sealed record FurnaceState
{
    /// <summary>Steps since the beginning; the moment of all chance.</summary>
    public long Moment { get; init; }

    /// <summary>Seconds since the beginning.</summary>
    public double Seconds { get; init; }

    /// <summary>What the control does.</summary>
    public BurnerPhase Phase { get; init; }

    /// <summary>Seconds in this phase.</summary>
    public double PhaseSeconds { get; init; }

    /// <summary>Tries of lighting since the call or the reset.</summary>
    public int Tries { get; init; }

    /// <summary>Resets that were seen.</summary>
    public int Resets { get; init; }

    /// <summary>Whether the circulating blower runs.</summary>
    public bool BlowerOn { get; init; }

    /// <summary>Seconds that the blower has run.</summary>
    public double BlowerSeconds { get; init; }

    /// <summary>Seconds of burning since it was lit.</summary>
    public double BurnSeconds { get; init; }

    /// <summary>Position of the regulators' springs in turns: they follow the screw with a play.</summary>
    public double HighSpring { get; init; }

    /// <summary>The same for low fire.</summary>
    public double LowSpring { get; init; }

    /// <summary>Turnings that were seen.</summary>
    public int Turnings { get; init; }

    /// <summary>Seconds of burning since the last turn.</summary>
    public double SinceTurn { get; init; }

    /// <summary>Before the gas valve.</summary>
    public double Inlet { get; init; }

    /// <summary>At the burner.</summary>
    public double Manifold { get; init; }

    /// <summary>Gas through the burner, m³/s as in the meter.</summary>
    public double GasFlow { get; init; }

    /// <summary>Gas through the meter since the stopwatch was started, m³.</summary>
    public double Clocked { get; init; }

    /// <summary>Seconds of the stopwatch; it stands after two turns.</summary>
    public double ClockSeconds { get; init; }

    /// <summary>Seconds of one turn, when two are timed; else null.</summary>
    public double? TurnSeconds { get; init; }

    /// <summary>Clockings that were seen.</summary>
    public int Clockings { get; init; }

    /// <summary>The flue gas.</summary>
    public Exhaust Exhaust { get; init; }

    /// <summary>Metal of the heat exchanger.</summary>
    public double ExchangerKelvin { get; init; }

    /// <summary>Gas in the vent, its mean.</summary>
    public double VentKelvin { get; init; }

    /// <summary>Circulated air, m³/s.</summary>
    public double Circulation { get; init; }

    /// <summary>Heat into the circulated air, W.</summary>
    public double ToAir { get; init; }

    /// <summary>Supply air.</summary>
    public double SupplyKelvin { get; init; }

    /// <summary>Vent against the room; minus draws.</summary>
    public double Draft { get; init; }

    /// <summary>CO by the furnace, fraction.</summary>
    public double FurnaceRoomMonoxide { get; init; }

    /// <summary>CO in the house, fraction.</summary>
    public double HouseMonoxide { get; init; }

    /// <summary>Fuel gas in the air by the furnace, fraction.</summary>
    public double GasInAir { get; init; }

    /// <summary>CO that the analyzer takes for none.</summary>
    public double ZeroMonoxide { get; init; }

    /// <summary>Zeroings that were seen.</summary>
    public int Zeroings { get; init; }

    /// <summary>Emptyings that were seen.</summary>
    public int Emptyings { get; init; }

    /// <summary>Water in the trap of the analyzer, as a share of what it holds.</summary>
    public double Trap { get; init; }

    /// <summary>What the instruments follow, in the order of <see cref="Channel"/>.</summary>
    public ImmutableArray<Sensed> Sensed { get; init; } = [];
}

/// <summary>One value of one instrument.</summary>
enum Channel
{
    Oxygen, Monoxide, FlueTemperature, AirTemperature, Supply, Return, Inlet, Manifold, Draft, SupplyStatic, ReturnStatic, FlameCurrent, LineVoltage, ControlVoltage,
}
