using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Vocabulary;

namespace HandsFreeStartup.Procedure.Hearing;

/// <summary>All fields that can be said. A new field is one entry here.</summary>
/// <remarks>
/// Physical ranges as agreed for this product; usual ranges are common practice, no source. They hold what a start-up meets, faults included: carbon monoxide that calls
/// for leaving the house must reach the record without a further question.
/// </remarks>
public static class Fields
{
    /// <summary>Every field, in the order of a start-up.</summary>
    public static ImmutableArray<Field> All { get; } =
    [
        new(FieldId.Oxygen, "Oxygen", ["oxygen", "O two"], Unit.Percent, 0m, 20.9m, 2m, 14m, 1, 1),
        new(FieldId.CarbonDioxide, "Carbon dioxide", ["carbon dioxide", "C O two"], Unit.Percent, 0m, 15m, 4m, 12.5m, 1, 1),
        new(FieldId.FlueCo, "CO in flue", ["monoxide", "carbon monoxide", "C O"], Unit.PartsPerMillion, 0m, 9999m, 0m, 1000m, 0, 0) { MayBeOver = true },
        new(FieldId.RoomCo, "CO in room", ["room monoxide", "room carbon monoxide", "room C O"], Unit.PartsPerMillion, 0m, 9999m, 0m, 100m, 0, 0) { MayBeOver = true },
        new(FieldId.Nox, "NOx in flue", ["nitrogen oxides"], Unit.PartsPerMillion, 0m, 1000m, 5m, 150m, 0, 0) { NeedsInstrument = true },
        new(FieldId.FlueTemperature, "Flue temperature", ["flue temperature", "stack temperature"], Unit.Fahrenheit, 60m, 900m, 80m, 550m, 0, 0),
        new(FieldId.AirTemperature, "Combustion air", ["air temperature", "combustion air"], Unit.Fahrenheit, -40m, 130m, 20m, 110m, 0, 0),
        new(FieldId.Draft, "Draft", ["draft"], Unit.InchesOfWater, -0.50m, 0.50m, -0.20m, 0.10m, 2, 3),
        new(FieldId.ZoneBaseline, "Zone, baseline", ["zone baseline"], Unit.Pascals, -100m, 100m, -5m, 3m, 1, 1) { NeedsInstrument = true },
        new(FieldId.ZoneWorst, "Zone, worst case", ["zone worst case"], Unit.Pascals, -100m, 100m, -15m, 3m, 1, 1) { NeedsInstrument = true },
        new(FieldId.InletPressure, "Inlet pressure", ["inlet pressure", "inlet"], Unit.InchesOfWater, 0m, 30m, 3m, 14m, 1, 2),
        new(FieldId.ManifoldPressure, "Manifold pressure", ["manifold pressure", "manifold"], Unit.InchesOfWater, 0m, 15m, 0.8m, 11m, 1, 2),
        new(FieldId.MeterTime, "Meter, one turn", ["meter"], Unit.Seconds, 3m, 600m, 8m, 240m, 0, 1),
        new(FieldId.SupplyTemperature, "Supply temperature", ["supply temperature"], Unit.Fahrenheit, 30m, 220m, 80m, 190m, 0, 0),
        new(FieldId.ReturnTemperature, "Return temperature", ["return temperature"], Unit.Fahrenheit, 30m, 220m, 50m, 85m, 0, 0),
        new(FieldId.SupplyStatic, "Supply static", ["supply static"], Unit.InchesOfWater, -1.50m, 2.00m, 0.02m, 0.95m, 2, 2),
        new(FieldId.ReturnStatic, "Return static", ["return static"], Unit.InchesOfWater, -1.50m, 2.00m, -0.65m, -0.02m, 2, 2),
        new(FieldId.FlameCurrent, "Flame current", ["flame current"], Unit.Microamperes, 0m, 50m, 0.4m, 9m, 1, 1),
        new(FieldId.LineVoltage, "Line voltage", ["line voltage"], Unit.Volts, 0m, 300m, 105m, 132m, 0, 1),
        new(FieldId.ControlVoltage, "Control voltage", ["control voltage"], Unit.Volts, 0m, 60m, 20m, 30m, 0, 1),
    ];

    /// <summary>Bounds of a limit that no file states, said from the rating plate: lowest, highest. Unit, range and decimals are those of the field they limit.</summary>
    public static ImmutableArray<Field> PlateBounds { get; } =
    [
        new(FieldId.LimitLower, "Lowest permitted", ["lowest"], Unit.InchesOfWater, 0m, 0m, 0m, 0m, 0, 0),
        new(FieldId.LimitUpper, "Highest permitted", ["highest"], Unit.InchesOfWater, 0m, 0m, 0m, 0m, 0, 0),
    ];

    /// <summary>The field or bound of that id, or null.</summary>
    public static Field? Find(string id) => ById.GetValueOrDefault(id);

    static ImmutableDictionary<string, Field> ById { get; } = All.Concat(PlateBounds).ToImmutableDictionary(field => field.Id);
}
