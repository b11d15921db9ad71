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
        new(FieldId.Oxygen, "Oxygen", ["oxygen", "O two"], Unit.Percent) { Lowest = 0m, Highest = 20.9m, UsualLowest = 2m, UsualHighest = 14m, FewestDecimals = 1, MostDecimals = 1 },
        new(FieldId.CarbonDioxide, "Carbon dioxide", ["carbon dioxide", "C O two"], Unit.Percent) { Lowest = 0m, Highest = 15m, UsualLowest = 4m, UsualHighest = 12.5m, FewestDecimals = 1, MostDecimals = 1 },
        new(FieldId.FlueCo, "CO in flue", ["monoxide", "carbon monoxide", "C O"], Unit.PartsPerMillion) { Lowest = 0m, Highest = 9999m, UsualLowest = 0m, UsualHighest = 1000m, FewestDecimals = 0, MostDecimals = 0, MayBeOver = true },
        new(FieldId.RoomCo, "CO in room", ["room monoxide", "room carbon monoxide", "room C O"], Unit.PartsPerMillion) { Lowest = 0m, Highest = 9999m, UsualLowest = 0m, UsualHighest = 100m, FewestDecimals = 0, MostDecimals = 0, MayBeOver = true },
        new(FieldId.Nox, "NOx in flue", ["nitrogen oxides"], Unit.PartsPerMillion) { Lowest = 0m, Highest = 1000m, UsualLowest = 5m, UsualHighest = 150m, FewestDecimals = 0, MostDecimals = 0, NeedsInstrument = true },
        new(FieldId.FlueTemperature, "Flue temperature", ["flue temperature", "stack temperature"], Unit.Fahrenheit) { Lowest = 60m, Highest = 900m, UsualLowest = 80m, UsualHighest = 550m, FewestDecimals = 0, MostDecimals = 0 },
        new(FieldId.AirTemperature, "Combustion air", ["air temperature", "combustion air"], Unit.Fahrenheit) { Lowest = -40m, Highest = 130m, UsualLowest = 20m, UsualHighest = 110m, FewestDecimals = 0, MostDecimals = 0 },
        new(FieldId.Draft, "Draft", ["draft"], Unit.InchesOfWater) { Lowest = -0.50m, Highest = 0.50m, UsualLowest = -0.20m, UsualHighest = 0.10m, FewestDecimals = 2, MostDecimals = 3 },
        new(FieldId.ZoneBaseline, "Zone, baseline", ["zone baseline"], Unit.Pascals) { Lowest = -100m, Highest = 100m, UsualLowest = -5m, UsualHighest = 3m, FewestDecimals = 1, MostDecimals = 1, NeedsInstrument = true },
        new(FieldId.ZoneWorst, "Zone, worst case", ["zone worst case"], Unit.Pascals) { Lowest = -100m, Highest = 100m, UsualLowest = -15m, UsualHighest = 3m, FewestDecimals = 1, MostDecimals = 1, NeedsInstrument = true },
        new(FieldId.InletPressure, "Inlet pressure", ["inlet pressure", "inlet"], Unit.InchesOfWater) { Lowest = 0m, Highest = 30m, UsualLowest = 3m, UsualHighest = 14m, FewestDecimals = 1, MostDecimals = 2 },
        new(FieldId.ManifoldPressure, "Manifold pressure", ["manifold pressure", "manifold"], Unit.InchesOfWater) { Lowest = 0m, Highest = 15m, UsualLowest = 0.8m, UsualHighest = 11m, FewestDecimals = 1, MostDecimals = 2 },
        new(FieldId.MeterTime, "Meter, one turn", ["meter"], Unit.Seconds) { Lowest = 3m, Highest = 600m, UsualLowest = 8m, UsualHighest = 240m, FewestDecimals = 0, MostDecimals = 1 },
        new(FieldId.SupplyTemperature, "Supply temperature", ["supply temperature"], Unit.Fahrenheit) { Lowest = 30m, Highest = 220m, UsualLowest = 80m, UsualHighest = 190m, FewestDecimals = 0, MostDecimals = 0 },
        new(FieldId.ReturnTemperature, "Return temperature", ["return temperature"], Unit.Fahrenheit) { Lowest = 30m, Highest = 220m, UsualLowest = 50m, UsualHighest = 85m, FewestDecimals = 0, MostDecimals = 0 },
        new(FieldId.SupplyStatic, "Supply static", ["supply static"], Unit.InchesOfWater) { Lowest = -1.50m, Highest = 2.00m, UsualLowest = 0.02m, UsualHighest = 0.95m, FewestDecimals = 2, MostDecimals = 2 },
        new(FieldId.ReturnStatic, "Return static", ["return static"], Unit.InchesOfWater) { Lowest = -1.50m, Highest = 2.00m, UsualLowest = -0.65m, UsualHighest = -0.02m, FewestDecimals = 2, MostDecimals = 2 },
        new(FieldId.FlameCurrent, "Flame current", ["flame current"], Unit.Microamperes) { Lowest = 0m, Highest = 50m, UsualLowest = 0.4m, UsualHighest = 9m, FewestDecimals = 1, MostDecimals = 1 },
        new(FieldId.LineVoltage, "Line voltage", ["line voltage"], Unit.Volts) { Lowest = 0m, Highest = 300m, UsualLowest = 105m, UsualHighest = 132m, FewestDecimals = 0, MostDecimals = 1 },
        new(FieldId.ControlVoltage, "Control voltage", ["control voltage"], Unit.Volts) { Lowest = 0m, Highest = 60m, UsualLowest = 20m, UsualHighest = 30m, FewestDecimals = 0, MostDecimals = 1 },
    ];

    /// <summary>Bounds of a limit that no file states, said from the rating plate: lowest, highest. Unit, range and decimals are those of the field they limit.</summary>
    public static ImmutableArray<Field> PlateBounds { get; } =
    [
        new(FieldId.LimitLower, "Lowest permitted", ["lowest"], Unit.InchesOfWater) { Lowest = 0m, Highest = 0m, UsualLowest = 0m, UsualHighest = 0m, FewestDecimals = 0, MostDecimals = 0 },
        new(FieldId.LimitUpper, "Highest permitted", ["highest"], Unit.InchesOfWater) { Lowest = 0m, Highest = 0m, UsualLowest = 0m, UsualHighest = 0m, FewestDecimals = 0, MostDecimals = 0 },
    ];

    /// <summary>The field or bound of that id, or null.</summary>
    public static Field? Find(string id) => ById.GetValueOrDefault(id);

    static ImmutableDictionary<string, Field> ById { get; } = All.Concat(PlateBounds).ToImmutableDictionary(field => field.Id);
}
