using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Procedure.Hearing;

/// <summary>A unit as it is shown and spoken, and how a number in it becomes SI.</summary>
/// <param name="Symbol">As shown and stored, for instance <c>in. w.c.</c>.</param>
/// <param name="Spoken">The ways it is said after a number; the first is the one the voice uses.</param>
/// <param name="Scale">SI value of one unit.</param>
/// <param name="Offset">SI value of zero units (temperatures only).</param>
public sealed record Unit(string Symbol, ImmutableArray<string> Spoken, double Scale, double Offset = 0)
{
    /// <summary>The SI value of <paramref name="value"/>: Pa, K, s, A, V; percent and ppm become fractions.</summary>
    public double ToSi(decimal value) => (double)value * Scale + Offset;

    /// <summary>A value in this unit as one in another unit of the same quantity, exact where the factor is; a difference of temperatures has no offset.</summary>
    /// <param name="value">In this unit.</param>
    /// <param name="other">The wanted unit.</param>
    /// <param name="isDifference">Whether it is a difference, an uncertainty or a drift.</param>
    public decimal Convert(decimal value, Unit other, bool isDifference = false) =>
        this == other ? value
        : this == Fahrenheit && other == Celsius ? (isDifference ? value : value - 32) / 1.8m
        : this == Celsius && other == Fahrenheit ? value * 1.8m + (isDifference ? 0 : 32)
        : value * (decimal)Scale / (decimal)other.Scale;

    /// <summary>The same for a calculated value.</summary>
    public double Convert(double value, Unit other, bool isDifference = false) =>
        this == other ? value : isDifference ? value * Scale / other.Scale : (value * Scale + Offset - other.Offset) / other.Scale;

    /// <summary>The unit of that symbol, or null.</summary>
    public static Unit? Find(string symbol) => All.FirstOrDefault(unit => unit.Symbol == symbol);

    /// <summary>Percent, as a fraction of one.</summary>
    public static Unit Percent { get; } = new("%", ["percent"], 0.01);

    /// <summary>Parts per million by volume, as a fraction of one.</summary>
    public static Unit PartsPerMillion { get; } = new("ppm", ["P P M", "parts per million"], 1e-6);

    /// <summary>Degrees Fahrenheit, in kelvin: (F + 459.67) / 1.8.</summary>
    public static Unit Fahrenheit { get; } = new("°F", ["degrees", "degrees Fahrenheit"], 1 / 1.8, 459.67 / 1.8);

    /// <summary>Degrees Celsius, in kelvin.</summary>
    public static Unit Celsius { get; } = new("°C", ["degrees", "degrees Celsius"], 1, 273.15);

    /// <summary>Pascals.</summary>
    public static Unit Pascals { get; } = new("Pa", ["pascals"], 1);

    /// <summary>Millibars, in pascals.</summary>
    public static Unit Millibars { get; } = new("mbar", ["millibars"], 100);

    /// <summary>Btu (International Table) per hour, in watts.</summary>
    public static Unit BtuPerHour { get; } = new("Btu/h", ["B T U per hour"], 1055.05585262 / 3600);

    /// <summary>Kilowatts, in watts.</summary>
    public static Unit Kilowatts { get; } = new("kW", ["kilowatts"], 1000);

    /// <summary>Inches of water column, conventional (1000 kg/m³ at 9.80665 m/s²), in pascals.</summary>
    public static Unit InchesOfWater { get; } = new("in. w.c.", ["inches", "inches of water", "inches water column"], Pressure.PascalsPerInchOfWater);

    /// <summary>Seconds.</summary>
    public static Unit Seconds { get; } = new("s", ["seconds"], 1);

    /// <summary>Microamperes of direct current, in amperes.</summary>
    public static Unit Microamperes { get; } = new("µA", ["microamps"], 1e-6);

    /// <summary>Volts.</summary>
    public static Unit Volts { get; } = new("V", ["volts"], 1);

    /// <summary>Every unit.</summary>
    public static ImmutableArray<Unit> All { get; } =
        [Percent, PartsPerMillion, Fahrenheit, Celsius, InchesOfWater, Pascals, Millibars, Seconds, Microamperes, Volts, BtuPerHour, Kilowatts];
}
