using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Messages;

/// <summary>How units are said that stand beside a number.</summary>
public static class UnitWords
{
    /// <summary>Units that readings do not have but texts do.</summary>
    static readonly ImmutableArray<(string Symbol, string Spoken)> Others =
    [
        ("°C", "degrees Celsius"), ("uA", "microamps"), ("min", "minutes"), ("ms", "milliseconds"), ("h", "hours"), ("Pa", "pascals"), ("mbar", "millibars"),
        ("Btu/h", "B T U per hour"), ("Btu/ft³", "B T U per cubic foot"), ("kW", "kilowatts"), ("ft³/h", "cubic feet per hour"), ("m³/h", "cubic meters per hour"),
        ("ft", "feet"), ("m", "meters"), ("in.", "inches"),
    ];

    static readonly ImmutableDictionary<string, string> Spoken = Fields.All
        .Select(field => (field.Unit.Symbol, Spoken: field.Unit.Spoken[0]))
        .Concat(Others)
        .DistinctBy(unit => unit.Symbol)
        .ToImmutableDictionary(unit => unit.Symbol, unit => unit.Spoken);

    /// <summary>Every symbol, the longest first.</summary>
    public static ImmutableArray<string> Symbols { get; } = [.. Spoken.Keys.OrderByDescending(symbol => symbol.Length).ThenBy(symbol => symbol, StringComparer.Ordinal)];

    /// <summary>"inches" for "in. w.c.".</summary>
    /// <param name="symbol">One of <see cref="Symbols"/>.</param>
    /// <param name="isOne">Whether the number beside it is one: "inch".</param>
    public static string Of(string symbol, bool isOne = false) => isOne ? Singular(Spoken[symbol]) : Spoken[symbol];

    /// <summary>What is said beside a one.</summary>
    public static string Singular(string spoken) => spoken switch
    {
        "inches" => "inch",
        "feet" => "foot",
        "hours" or "minutes" or "seconds" or "volts" or "degrees" or "microamps" or "pascals" => spoken[..^1],
        _ => spoken,
    };
}
