using System.Collections.Immutable;

namespace HandsFreeStartup.Simulation;

/// <summary>Where the analyzer draws its sample.</summary>
public enum ProbePlace
{
    /// <summary>Nowhere: the caps are on.</summary>
    Capped,
    /// <summary>Fresh air outdoors.</summary>
    Outside,
    /// <summary>A room.</summary>
    Room,
    /// <summary>The flue.</summary>
    Flue,
}

/// <summary>How everything stands that a hand can move. A value: a hand makes another one of it.</summary>
public sealed record Hands
{
    /// <summary>Whether the gas shutoff is open.</summary>
    public bool GasOn { get; init; }

    /// <summary>Whether the thermostat calls for heat.</summary>
    public bool Calls { get; init; }

    /// <summary>Whether it runs at high fire (or its highest rate); else at low fire.</summary>
    public bool High { get; init; } = true;

    /// <summary>Turns of the screw of high fire that raise the pressure, since the beginning.</summary>
    public double HighTurns { get; init; }

    /// <summary>The same for low fire.</summary>
    public double LowTurns { get; init; }

    /// <summary>How often a screw was turned.</summary>
    public int Turnings { get; init; }

    /// <summary>Where the analyzer draws.</summary>
    public ProbePlace Probe { get; init; } = ProbePlace.Capped;

    /// <summary>Room of the analyzer; empty by the furnace.</summary>
    public string Room { get; init; } = "";

    /// <summary>Room in which whoever holds it stands, by its name; empty before the first walk.</summary>
    public string Where { get; init; } = "";

    /// <summary>How often the water trap of the analyzer was emptied.</summary>
    public int Emptyings { get; init; }

    /// <summary>How often the analyzer was zeroed.</summary>
    public int Zeroings { get; init; }

    /// <summary>How often the stopwatch of the meter was started.</summary>
    public int Clockings { get; init; }

    /// <summary>How often the control was reset.</summary>
    public int Resets { get; init; }

    /// <summary>What is open now, by the names of the hands: <c>inlet port</c>, <c>manifold port</c>, <c>test hole</c> ...</summary>
    public ImmutableSortedSet<string> Open { get; init; } = [];

    /// <summary>Whether every other gas appliance runs.</summary>
    public bool OthersOn { get; init; }

    /// <summary>Whether windows stand open.</summary>
    public bool WindowsOpen { get; init; }

    /// <summary>What was put right.</summary>
    public ImmutableSortedSet<Fault> PutRight { get; init; } = [];

    /// <summary>Whether that is open.</summary>
    public bool IsOpen(string thing) => Open.Contains(thing);
}
