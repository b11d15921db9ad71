using System.Collections.Immutable;

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

    /// <summary>Percent, as a fraction of one.</summary>
    public static Unit Percent { get; } = new("%", ["percent"], 0.01);

    /// <summary>Parts per million by volume, as a fraction of one.</summary>
    public static Unit PartsPerMillion { get; } = new("ppm", ["P P M", "parts per million"], 1e-6);

    /// <summary>Degrees Fahrenheit, in kelvin: (F + 459.67) / 1.8.</summary>
    public static Unit Fahrenheit { get; } = new("°F", ["degrees", "degrees Fahrenheit"], 1 / 1.8, 459.67 / 1.8);

    /// <summary>Inches of water column, conventional (1000 kg/m³ at 9.80665 m/s²), in pascals.</summary>
    public static Unit InchesOfWater { get; } = new("in. w.c.", ["inches", "inches of water", "inches water column"], 0.0254 * 9.80665 * 1000);

    /// <summary>Seconds.</summary>
    public static Unit Seconds { get; } = new("s", ["seconds"], 1);

    /// <summary>Microamperes of direct current, in amperes.</summary>
    public static Unit Microamperes { get; } = new("µA", ["microamps"], 1e-6);

    /// <summary>Volts.</summary>
    public static Unit Volts { get; } = new("V", ["volts"], 1);
}
