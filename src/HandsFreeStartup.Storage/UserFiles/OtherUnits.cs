using System.Collections.Immutable;
using System.Globalization;
using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>What a value in another unit would be in the one that files use, so that a finding can say what to write.</summary>
public static class OtherUnits
{
    const decimal InchOfWater = (decimal)Pressure.PascalsPerInchOfWater;

    /// <summary>Unit written, unit wanted, factor and offset from the one to the other.</summary>
    /// <remarks>Pressure: conventional inch of water. Btu of the International Table, 1055.05585262 J. Both as in the calculation core.</remarks>
    static readonly ImmutableArray<(string From, string To, decimal Factor, decimal Offset)> Conversions =
    [
        ("Pa", "in. w.c.", 1 / InchOfWater, 0),
        ("mbar", "in. w.c.", 100 / InchOfWater, 0),
        ("hPa", "in. w.c.", 100 / InchOfWater, 0),
        ("kPa", "in. w.c.", 1000 / InchOfWater, 0),
        ("psi", "in. w.c.", 6894.757293168m / InchOfWater, 0),
        ("°C", "°F", 1.8m, 32),
        ("C", "°F", 1.8m, 32),
        ("kW", "Btu/h", 3_600_000 / 1055.05585262m, 0),
        ("W", "Btu/h", 3_600 / 1055.05585262m, 0),
        ("mA", "µA", 1000, 0),
        ("A", "µA", 1_000_000, 0),
        ("mV", "V", 0.001m, 0),
        ("%", "ppm", 10_000, 0),
        ("min", "s", 60, 0),
    ];

    /// <summary>Other spellings of a unit that files write in one way.</summary>
    static readonly ImmutableArray<(string Other, string Unit)> Spellings =
    [
        ("in wc", "in. w.c."), ("inwc", "in. w.c."), ("in w.c.", "in. w.c."), ("in. wc", "in. w.c."), ("inh2o", "in. w.c."), ("in h2o", "in. w.c."), ("\"wc", "in. w.c."),
        ("f", "°F"), ("deg f", "°F"), ("degf", "°F"), ("ua", "µA"), ("μa", "µA"), ("uadc", "µA"), ("btuh", "Btu/h"), ("btu/hr", "Btu/h"), ("btu/h", "Btu/h"),
        ("percent", "%"), ("volt", "V"), ("volts", "V"), ("v", "V"), ("seconds", "s"), ("sec", "s"),
    ];

    /// <summary>The value in <paramref name="unit"/>, to four significant digits, which is more than any plate has; null where the unit written is not known.</summary>
    /// <param name="value">In <paramref name="written"/>.</param>
    /// <param name="written">Symbol of the unit written.</param>
    /// <param name="unit">Symbol of the unit wanted.</param>
    /// <param name="isDifference">A difference of temperatures has no offset.</param>
    public static decimal? Convert(decimal value, string written, string unit, bool isDifference)
    {
        foreach ((string from, string to, decimal factor, decimal offset) in Conversions)
        {
            if (from == written && to == unit)
            {
                return Rounded(value * factor + (isDifference ? 0 : offset));
            }
        }
        return null;
    }

    /// <summary>Whether <paramref name="written"/> is only another spelling of <paramref name="unit"/>.</summary>
    public static bool IsSpelling(string written, string unit) => Spellings.Any(one => one.Other == written.ToLowerInvariant() && one.Unit == unit);

    static decimal Rounded(decimal value)
    {
        int digits = value == 0 ? 0 : (int)Math.Floor(Math.Log10((double)Math.Abs(value))) + 1;
        decimal step = (decimal)Math.Pow(10, Math.Max(0, digits - 4));
        return decimal.Parse((Math.Round(value / step, Math.Clamp(4 - digits, 0, 10)) * step).ToString("0.##########", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }
}
