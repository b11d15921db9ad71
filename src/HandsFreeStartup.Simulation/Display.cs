using System.Collections.Immutable;
using System.Globalization;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Simulation;

/// <summary>What one instrument shows.</summary>
/// <param name="Field">What it measures, in the unit of the job.</param>
/// <param name="Label">As shown.</param>
/// <param name="Value">The number with the decimals of the instrument; null where it is not connected or shows none.</param>
/// <param name="IsSettled">Whether it stands still.</param>
/// <param name="Remark">Why there is no number, or a word beside it; empty for none.</param>
public sealed record Display(Field Field, string Label, decimal? Value, bool IsSettled, string Remark)
{
    /// <summary>Half a step of the last digit.</summary>
    public decimal Resolution => Field.FewestDecimals switch { 0 => 1m, 1 => 0.1m, 2 => 0.01m, _ => 0.001m };

    /// <summary>As shown: "Oxygen 7.6 %".</summary>
    public string Text => Value is { } value
        ? $"{Label} {value.ToString(CultureInfo.InvariantCulture)} {Field.Unit.Symbol}{(IsSettled ? "" : " ~")}{(Remark.Length == 0 ? "" : $" {Remark}")}"
        : $"{Label} -- {Remark}".TrimEnd();
}

/// <summary>The displays of the instruments, as they would be read.</summary>
static class Displays
{
    /// <summary>Field, channel, noise as a standard deviation in the unit of the table, and how little it moves when it stands still, in that unit (common practice, no source).</summary>
    static readonly ImmutableArray<(string Field, Channel Channel, double Noise, double Still)> Instruments =
    [
        (FieldId.Oxygen, Channel.Oxygen, 0.03, 0.15),
        (FieldId.FlueCo, Channel.Monoxide, 0.6, 4),
        (FieldId.FlueTemperature, Channel.FlueTemperature, 0.3, 3),
        (FieldId.AirTemperature, Channel.AirTemperature, 0.2, 2),
        (FieldId.RoomCo, Channel.Monoxide, 0.3, 2),
        (FieldId.InletPressure, Channel.Inlet, 0.004, 0.1),
        (FieldId.ManifoldPressure, Channel.Manifold, 0.003, 0.04),
        (FieldId.Draft, Channel.Draft, 0.001, 0.006),
        (FieldId.SupplyTemperature, Channel.Supply, 0.2, 2),
        (FieldId.ReturnTemperature, Channel.Return, 0.2, 2),
        (FieldId.SupplyStatic, Channel.SupplyStatic, 0.001, 0.02),
        (FieldId.ReturnStatic, Channel.ReturnStatic, 0.001, 0.02),
        (FieldId.FlameCurrent, Channel.FlameCurrent, 0.02, 0.2),
        (FieldId.LineVoltage, Channel.LineVoltage, 0.2, 2),
        (FieldId.ControlVoltage, Channel.ControlVoltage, 0.1, 1),
    ];

    /// <summary>An analyzer shows a little less than none as none (common practice, no source).</summary>
    const decimal LittleBelowNone = -2;

    /// <summary>The display of a field; null where no instrument shows it.</summary>
    public static Display? Of(Furnace furnace, FurnaceState state, Hands hands, string fieldId)
    {
        Field field = furnace.Plan.FieldOf(fieldId);
        if (fieldId == FieldId.MeterTime)
        {
            return Meter(state, field);
        }

        (string Field, Channel Channel, double Noise, double Still) instrument = Instruments.FirstOrDefault(known => known.Field == fieldId);
        return instrument.Field is null ? null
            : WhyNone(fieldId, state, hands) is { } why ? new Display(field, field.Label, null, false, why)
            : Shown(furnace, state, field, instrument.Channel, instrument.Noise, instrument.Still);
    }

    static Display Shown(Furnace furnace, FurnaceState state, Field field, Channel channel, double noise, double still)
    {
        Unit own = Fields.Find(field.Id)!.Unit;
        Sensed sensed = state.Sensed[(int)channel];
        double offset = channel == Channel.Monoxide ? state.ZeroMonoxide : 0;
        double value = (sensed.Fast - offset - own.Offset) / own.Scale + noise * Chance.Bell(furnace.Seed, (int)channel, (long)state.Seconds);
        decimal shown = Math.Round((decimal)own.Convert(value, field.Unit), field.FewestDecimals, MidpointRounding.AwayFromZero);
        shown = channel == Channel.Monoxide && shown is < 0 and >= LittleBelowNone ? 0 : shown;
        bool isOver = shown > field.Highest;
        bool isSettled = Math.Abs(sensed.Fast - sensed.Slow) / own.Scale <= still;
        return new Display(field, field.Label, WithDecimals(isOver ? field.Highest : shown, field.FewestDecimals), isSettled, isOver ? "over range" : "");
    }

    static Display Meter(FurnaceState state, Field field) => state switch
    {
        { TurnSeconds: { } turn } => new Display(field, field.Label, Math.Round((decimal)turn, field.MostDecimals, MidpointRounding.AwayFromZero), true, "of two turns"),
        { Clockings: > 0 } => new Display(field, field.Label, null, false, FormattableString.Invariant($"timing, {state.ClockSeconds:0} s so far")),
        _ => new Display(field, field.Label, null, false, "not clocked"),
    };

    /// <summary>Why an instrument shows nothing; null where it shows something.</summary>
    static string? WhyNone(string fieldId, FurnaceState state, Hands hands) => fieldId switch
    {
        FieldId.InletPressure => hands.IsOpen("inlet port") ? null : "no gauge",
        FieldId.ManifoldPressure => hands.IsOpen("manifold port") ? null : "no gauge",
        FieldId.Oxygen or FieldId.FlueCo or FieldId.RoomCo => hands.Probe == ProbePlace.Capped ? "caps on" : null,
        FieldId.FlueTemperature => hands.Probe == ProbePlace.Flue ? null : "probe not in the flue",
        FieldId.Draft => hands.Probe == ProbePlace.Flue && hands.IsOpen("test hole") ? null : "hose not in the flue",
        FieldId.SupplyTemperature or FieldId.ReturnTemperature or FieldId.SupplyStatic or FieldId.ReturnStatic => hands.IsOpen("duct ports") ? null : "ports closed",
        FieldId.FlameCurrent => state.Phase == BurnerPhase.Burning ? null : "no flame",
        _ => null,
    };

    static decimal WithDecimals(decimal value, int decimals) => decimal.Parse(value.ToString($"F{decimals}", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
