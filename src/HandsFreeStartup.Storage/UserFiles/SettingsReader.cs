using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>Reads the lead technician's settings; every key may be left out.</summary>
static class SettingsReader
{
    static readonly ImmutableArray<(string Word, StageOrder Order)> Orders =
        [("as-written", StageOrder.AsWritten), ("low-first", StageOrder.LowFirst), ("high-first", StageOrder.HighFirst)];

    public static Settings? Read(string text, Findings findings)
    {
        if (YamlTree.Read(text, findings) is not { } map)
        {
            return null;
        }

        EntryReader file = new(map, findings, "the settings", [.. Keys]);
        string order = file.Has("stage_order") ? file.Choice("stage_order", [.. Orders.Select(known => known.Word)]) : "as-written";
        return new Settings(
            Orders.FirstOrDefault(known => known.Word == order).Order,
            file.TextOrNull("emergency_number"),
            file.TextOrNull("gas_supplier"))
        {
            Pressure = UnitOf(file, "pressure", Unit.InchesOfWater, Unit.Pascals, Unit.Millibars),
            Temperature = UnitOf(file, "temperature", Unit.Fahrenheit, Unit.Celsius),
            Heat = UnitOf(file, "heat", Unit.BtuPerHour, Unit.Kilowatts),
            Language = file.TextOrNull("language"),
            SaysFullPrompts = file.Has("prompts") && file.Choice("prompts", ["short", "full"]) == "full",
        };
    }

    /// <summary>All keys; a file with one of them and none of another kind is a file of settings.</summary>
    public static ImmutableArray<string> Keys { get; } = ["stage_order", "emergency_number", "gas_supplier", "pressure", "temperature", "heat", "prompts", "language"];

    /// <summary>One of the units, the first where the key is missing.</summary>
    static Unit UnitOf(EntryReader file, string key, params Unit[] units) => !file.Has(key)
        ? units[0]
        : file.Choice(key, [.. units.Select(unit => unit.Symbol)]) is var symbol ? units.FirstOrDefault(unit => unit.Symbol == symbol) ?? units[0] : units[0];
}
