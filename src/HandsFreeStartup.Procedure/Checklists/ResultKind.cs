using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Checklists;

/// <summary>A number that is worked out from readings and can be limited.</summary>
/// <param name="Id">Stable name used in files and in the log.</param>
/// <param name="Label">As shown.</param>
/// <param name="UnitSymbol">Its unit; empty for a pure number.</param>
/// <param name="Decimals">Decimals to show.</param>
/// <param name="Lowest">Below it no limit can lie: wide enough for any furnace, close enough for a slipped decimal point (common practice, no source).</param>
/// <param name="Highest">Above it no limit can lie.</param>
/// <param name="IsQuiet">Whether it is shown and kept but not spoken unless a limit judges it: the technician waits for something else.</param>
public sealed record ResultKind(string Id, string Label, string UnitSymbol, int Decimals, decimal Lowest, decimal Highest, bool IsQuiet = false)
{
    /// <summary>Every result, in the order of a start-up. What it is worked out from stands in <see cref="Deciding.ResultRule"/>.</summary>
    public static ImmutableArray<ResultKind> All { get; } =
    [
        new(ResultId.InputRate, "Input rate", "Btu/h", 0, 5_000, 1_000_000),
        new(ResultId.GasPerHour, "Gas in an hour", "ft³/h", 1, 5, 1_000, IsQuiet: true),
        new(ResultId.GasPerYear, "Gas in a year", "therms/year", 0, 1, 100_000, IsQuiet: true),
        new(ResultId.AltitudeInput, "Largest input here", "Btu/h", 0, 5_000, 1_000_000, IsQuiet: true),
        new(ResultId.Turndown, "Turndown", "", 1, 1, 20, IsQuiet: true) { SpansStages = true },
        new(ResultId.CoAirFree, "CO air-free", "ppm", 0, 0, 4_000),
        new(ResultId.ExcessAir, "Excess air", "%", 0, 0, 1_000),
        new(ResultId.Efficiency, "Efficiency, gross", "%", 1, 30, 110),
        new(ResultId.EfficiencyNet, "Efficiency, net", "%", 1, 30, 115, IsQuiet: true),
        new(ResultId.EfficiencyFirstLaw, "Efficiency, first law", "%", 1, 30, 110, IsQuiet: true),
        new(ResultId.CarbonDioxideCalculated, "CO2 from O2", "%", 1, 0, 15, IsQuiet: true),
        new(ResultId.DewPoint, "Dew point", "°F", 0, 30, 212, IsQuiet: true),
        new(ResultId.FuelFactor, "Fuel factor", "", 3, 1, 2),
        new(ResultId.NoxReference, "NOx at 3 % O2", "ppm", 1, 0, 1_000, IsQuiet: true),
        new(ResultId.NoxPerHeat, "NOx per heat", "mg/kWh", 1, 0, 5_000, IsQuiet: true),
        new(ResultId.OxygenExpected, "Oxygen expected", "%", 1, 0, 20.9m),
        new(ResultId.TemperatureRise, "Temperature rise", "°F", 0, 5, 150),
        new(ResultId.AirFlow, "Air flow", "cfm", 0, 100, 10_000, IsQuiet: true),
        new(ResultId.ExternalStatic, "External static", "in. w.c.", 2, 0, 3),
        new(ResultId.Depressurization, "Depressurization", "Pa", 1, -100, 50),
    ];

    /// <summary>Whether readings of several stages go in, so that it stands once for the furnace and falls with any of them.</summary>
    public bool SpansStages { get; init; }

    /// <summary>Whether it is a difference, so that another unit of temperature moves no zero.</summary>
    public bool IsDifference => Id == ResultId.TemperatureRise;

    /// <summary>Its unit and its decimals under the settings.</summary>
    public (Unit? Unit, string Symbol, int Decimals) Under(Settings settings)
    {
        Unit? own = Unit.Find(UnitSymbol);
        Unit? shown = own is null ? null : settings.In(own);
        return (shown, shown?.Symbol ?? UnitSymbol, shown == own ? Decimals : (Id, shown!.Symbol) switch
        {
            (ResultId.TemperatureRise, _) or (_, "kW") => 1,
            (_, "mbar") => 2,
            _ => 0,
        });
    }

    /// <summary>It as a field, in which bounds of its limit are said under the settings.</summary>
    public Field AsField(Settings settings)
    {
        (Unit? unit, _, int decimals) = Under(settings);
        Unit own = Unit.Find(UnitSymbol) ?? Unit.Percent;
        Unit said = unit ?? own;
        decimal lowest = own.Convert(Lowest, said, IsDifference), highest = own.Convert(Highest, said, IsDifference);
        return new Field(Id, Label, [Label.ToLowerInvariant()], said)
        {
            Lowest = lowest,
            Highest = highest,
            UsualLowest = lowest,
            UsualHighest = highest,
            FewestDecimals = decimals,
            MostDecimals = decimals,
        };
    }

    /// <summary>The result of that id, or null.</summary>
    public static ResultKind? Find(string id) => All.FirstOrDefault(kind => kind.Id == id);
}

/// <summary>What a limit may be named after: a field, a result, or one of the names below.</summary>
public static class LimitNames
{
    /// <summary>The upper bound of this one is the manifold pressure above which the maker wants the valve replaced, not adjusted.</summary>
    public const string ReplaceValve = ResultId.ReplaceValve;

    /// <summary>Every name with the unit of its bounds.</summary>
    public static ImmutableArray<(string Name, string UnitSymbol)> All { get; } =
    [
        .. Fields.All.Select(field => (field.Id, field.Unit.Symbol)),
        .. ResultKind.All.Select(kind => (kind.Id, kind.UnitSymbol)),
        (ReplaceValve, Unit.InchesOfWater.Symbol),
    ];

    /// <summary>The unit of limits of that name, or null where the name is not known.</summary>
    public static string? UnitOf(string name) => All.Where(known => known.Name == name).Select(known => known.UnitSymbol).FirstOrDefault();
}
