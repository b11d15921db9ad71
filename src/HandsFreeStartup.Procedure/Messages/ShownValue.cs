using System.Globalization;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Procedure.Messages;

/// <summary>A value with its doubt as people see and hear it; what rounds it is in Wording.</summary>
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

    /// <summary>A number that has no doubt of its own: a bound, a count, a way to go.</summary>
    public static ShownValue Alone(decimal number, string unitSymbol, bool isOver = false) =>
        new(isOver ? $"over {number.ToString(CultureInfo.InvariantCulture)}" : number.ToString(CultureInfo.InvariantCulture), "", "", unitSymbol) { IsOver = isOver };

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

    string WithUnit(string number) => UnitSymbol.Length == 0 ? number : $"{number} {UnitSymbol}";
}
