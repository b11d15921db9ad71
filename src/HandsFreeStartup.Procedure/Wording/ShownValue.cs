using System.Globalization;
using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Wording;

/// <summary>A value with its doubt as people see and hear it: the only place where either is rounded.</summary>
/// <param name="Number">As spoken, or rounded where it was worked out; "over" before the end of the range; empty where it cannot be told.</param>
/// <param name="Uncertainty">Expanded (k = 2), rounded up; empty where none is stated.</param>
/// <param name="Highest">Where the interval ends that begins at zero, because ± would reach below it and the quantity cannot; else empty.</param>
/// <param name="UnitSymbol">Of all of them.</param>
public sealed record ShownValue(string Number, string Uncertainty, string Highest, string UnitSymbol)
{
    /// <summary>What is said where no uncertainty is stated. It is never zero.</summary>
    public const string NoneStated = RoundedUncertainty.NoneStated;

    /// <summary>Whether more was read than the field holds; nothing is known then but that.</summary>
    public bool IsOver { get; init; }

    /// <summary>A reading: the number as spoken, trailing zeros kept.</summary>
    public static ShownValue Of(EnteredReading reading) => reading.IsOver
        ? Alone(reading.Value, reading.UnitSymbol, isOver: true)
        : Of(reading.Value, reading.Value.Scale, (double?)reading.ExpandedUncertainty, reading.UnitSymbol);

    /// <summary>A number that has no doubt of its own: a bound, a count, a way to go.</summary>
    public static ShownValue Alone(decimal number, string unitSymbol, bool isOver = false) =>
        new(isOver ? $"over {Numbers.Text(number)}" : Numbers.Text(number), "", "", unitSymbol) { IsOver = isOver };

    /// <summary>A result: rounded to the decimals of its kind, or to those of its uncertainty where they are finer. Never coarser: it must not seem to lie on the other side of a limit.</summary>
    public static ShownValue Of(CalculatedResult result)
    {
        if (result.Value is not { } value || !double.IsFinite(value) || Math.Abs(value) > 1e15)
        {
            return new ShownValue("", "", "", result.UnitSymbol);
        }

        if (result.IsOver)
        {
            return Alone((decimal)value, result.UnitSymbol, isOver: true);
        }

        int decimals = Math.Max(result.Decimals, RoundedUncertainty.Of(result.ExpandedUncertainty) is { } rounded ? RoundedUncertainty.Decimals(rounded) : 0);
        return Of(Math.Round((decimal)value, Math.Min(decimals, 15), MidpointRounding.AwayFromZero), decimals, result.ExpandedUncertainty, result.UnitSymbol);
    }

    /// <summary>"± 0.3"; "0 to 45" where ± would reach below zero and the quantity cannot; or that none is stated.</summary>
    public string Doubt => IsOver || Number.Length == 0 ? "" : Uncertainty.Length == 0 ? NoneStated : Highest.Length > 0 ? $"0 to {Highest}" : $"± {Uncertainty}";

    /// <summary>Without its doubt: "7.6 %".</summary>
    public string Plain => Number.Length == 0 ? "cannot be told" : WithUnit(Number);

    /// <summary>With its doubt: "7.6 ± 0.3 %", "12 ppm (0 to 45)", "24 V, no uncertainty stated".</summary>
    public string Text => Doubt.Length == 0 ? Plain
        : Uncertainty.Length == 0 ? $"{Plain}, {NoneStated}"
        : Highest.Length > 0 ? $"{Plain} ({Doubt})"
        : WithUnit($"{Number} {Doubt}");

    /// <summary>Without its doubt.</summary>
    public override string ToString() => Plain;

    static ShownValue Of(decimal value, int decimals, double? expanded, string unitSymbol)
    {
        string number = value.ToString($"F{decimals}", CultureInfo.InvariantCulture);
        if (RoundedUncertainty.Of(expanded) is not { } uncertainty)
        {
            return new ShownValue(number, "", "", unitSymbol);
        }

        bool endsAtZero = value >= 0 && value < uncertainty && !MayBeNegative(unitSymbol);
        return new ShownValue(number, Numbers.Text(uncertainty), endsAtZero ? Numbers.Text(value + uncertainty) : "", unitSymbol);
    }

    /// <summary>Temperatures and pressures have values below the zero of their units; concentrations, times, currents, rates and ratios have none.</summary>
    static bool MayBeNegative(string unitSymbol) =>
        Unit.Find(unitSymbol) is { } unit && (unit == Unit.Fahrenheit || unit == Unit.Celsius || unit == Unit.InchesOfWater || unit == Unit.Pascals || unit == Unit.Millibars);

    string WithUnit(string number) => UnitSymbol.Length == 0 ? number : $"{number} {UnitSymbol}";
}
