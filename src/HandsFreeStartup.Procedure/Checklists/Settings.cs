using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Checklists;

/// <summary>Which firing stage comes first where trade practice differs.</summary>
public enum StageOrder
{
    /// <summary>As the checklist has it.</summary>
    AsWritten,
    /// <summary>Low fire first.</summary>
    LowFirst,
    /// <summary>High fire first.</summary>
    HighFirst,
}

/// <summary>What the lead technician sets for every job.</summary>
/// <param name="StageOrder">Which firing stage comes first.</param>
/// <param name="EmergencyNumber">Whom to call when life is in danger, as it is dialled and said; null if it is not set.</param>
/// <param name="GasSupplier">Whom to call when gas is smelled; null if it is not set.</param>
public sealed record Settings(StageOrder StageOrder = StageOrder.AsWritten, string? EmergencyNumber = null, string? GasSupplier = null)
{
    /// <summary>Unit of pressures, as said, shown and spoken: in. w.c., Pa or mbar.</summary>
    public Unit Pressure { get; init; } = Unit.InchesOfWater;

    /// <summary>Unit of temperatures: °F or °C.</summary>
    public Unit Temperature { get; init; } = Unit.Fahrenheit;

    /// <summary>Unit of heat rates: Btu/h or kW.</summary>
    public Unit Heat { get; init; } = Unit.BtuPerHour;

    /// <summary>Whether every prompt is said in full; else in short, and the rest on "tell me more". The technician can change it for a job.</summary>
    public bool SaysFullPrompts { get; init; }

    /// <summary>In which language everything is shown and said, as its code; null for English. What is said and what is kept is English in each.</summary>
    public string? Language { get; init; }

    /// <summary>The unit of the settings for what the tables have in <paramref name="unit"/>.</summary>
    public Unit In(Unit unit) =>
        unit == Unit.InchesOfWater ? Pressure : unit == Unit.Fahrenheit ? Temperature : unit == Unit.BtuPerHour ? Heat : unit;

    /// <summary>Where no file of settings is used.</summary>
    public static Settings Default { get; } = new();
}
