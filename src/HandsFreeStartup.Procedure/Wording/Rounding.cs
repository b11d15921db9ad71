using System.Globalization;
using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Wording;

/// <summary>The only place where a value or its doubt is rounded for people.</summary>
public static class Rounding
{
    extension(ShownValue)
    {
        /// <summary>A reading: the number as spoken, trailing zeros kept.</summary>
        public static ShownValue Of(EnteredReading reading) => reading.IsOver
            ? ShownValue.Alone(reading.Value, reading.UnitSymbol, isOver: true)
            : Of(reading.Value, reading.Value.Scale, (double?)reading.ExpandedUncertainty, reading.UnitSymbol);

        /// <summary>A result: rounded to the decimals of its kind, or to those of its uncertainty where they are finer. Never coarser: it must not seem to lie on the other side of a limit.</summary>
        public static ShownValue Of(CalculatedResult result)
        {
            if (result.Value is not { } value || !double.IsFinite(value) || Math.Abs(value) > 1e15)
            {
                return new ShownValue("", "", "", result.UnitSymbol);
            }

            if (result.IsOver)
            {
                return ShownValue.Alone((decimal)value, result.UnitSymbol, isOver: true);
            }

            int decimals = Math.Max(result.Decimals, RoundedUncertainty.Of(result.ExpandedUncertainty) is { } rounded ? RoundedUncertainty.Decimals(rounded) : 0);
            return Of(Math.Round((decimal)value, Math.Min(decimals, 15), MidpointRounding.AwayFromZero), decimals, result.ExpandedUncertainty, result.UnitSymbol);
        }
    }

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
}
