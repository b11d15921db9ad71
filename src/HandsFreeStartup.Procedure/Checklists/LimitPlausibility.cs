using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Checklists;

/// <summary>Whether a limit can be one of this furnace.</summary>
/// <param name="Impossible">Why it can be none, as one sentence; null where it can.</param>
/// <param name="Unusual">What is strange about it, as one sentence; null where nothing is.</param>
public sealed record Plausible(Message? Impossible, Message? Unusual);

/// <summary>
/// What plates and makers state, by vent category and fuel, so that a slip of the tongue or of the pen does not judge a furnace. All ranges: common practice, no source, but for
/// the half pound per square inch that ordinary gas valves and regulators of houses are made for (value from memory).
/// </summary>
public static class LimitPlausibility
{
    /// <summary>Where the lowest and highest bound of a limit usually lie, in the unit of the table.</summary>
    sealed record Usual(decimal Lowest, decimal Highest);

    static readonly ImmutableDictionary<string, Usual> AnyFurnace = new Dictionary<string, Usual>
    {
        [FieldId.Oxygen] = new(2, 14),
        [FieldId.CarbonDioxide] = new(4, 12.5m),
        [FieldId.FlueCo] = new(0, 400),
        [FieldId.RoomCo] = new(0, 9),
        [ResultId.CoAirFree] = new(0, 400),
        [ResultId.TemperatureRise] = new(10, 110),
        [ResultId.ExternalStatic] = new(0.05m, 1.2m),
        [FieldId.SupplyTemperature] = new(80, 200),
        [FieldId.FlameCurrent] = new(0.3m, 20),
        [FieldId.LineVoltage] = new(95, 265),
        [FieldId.ControlVoltage] = new(18, 32),
        [ResultId.InputRate] = new(10_000, 400_000),
    }.ToImmutableDictionary();

    /// <summary>Looks at both bounds.</summary>
    /// <param name="limit">In any unit of its quantity.</param>
    /// <param name="appliance">The furnace.</param>
    public static Plausible Of(DeclaredLimit limit, ApplianceSheet appliance)
    {
        string name = limit.Name.Split('/')[0];
        bool isDifference = ResultKind.Find(name)?.IsDifference == true;
        DeclaredLimit own = limit.In(Unit.Find(LimitNames.UnitOf(name) ?? ""), isDifference);
        Message? impossible = own.Lower > own.Upper ? (Message)"The lowest is above the highest." : Draws(name, own, appliance);
        Usual? usual = UsualOf(name, appliance);
        bool isStrange = usual is not null && (own.Lower < usual.Lowest || own.Lower > usual.Highest || own.Upper < usual.Lowest || own.Upper > usual.Highest);
        return new Plausible(impossible, isStrange
            ? (Message)$"{new MessagePart.Name(Label(name))} {own} is strange for this furnace: its limits usually lie between {usual!.Lowest} and {usual.Highest}."
            : null);
    }

    /// <summary>A vent that works by draft draws; nothing that pushes is good there (definition of categories I and II: non-positive vent pressure).</summary>
    static Message? Draws(string name, DeclaredLimit limit, ApplianceSheet appliance) =>
        name == FieldId.Draft && appliance.Venting is (VentCategory.I or VentCategory.II) && limit.Upper is not <= 0
            ? (Message)$"A vent of category {appliance.Venting.ToString()} draws: the highest draft has a minus sign, or is {0}."
            : null;

    static Usual? UsualOf(string name, ApplianceSheet appliance) => name switch
    {
        FieldId.Draft => appliance.Venting switch
        {
            VentCategory.I or VentCategory.II => new(-0.15m, 0),
            VentCategory.III or VentCategory.IV => new(-0.10m, 0.50m),
            _ => new(-0.15m, 0.50m),
        },
        FieldId.InletPressure => appliance.IsLiquefied ? new(9, 14) : new(3.5m, 14),
        FieldId.ManifoldPressure or LimitNames.ReplaceValve => appliance.IsLiquefied ? new(2, 11.5m) : new(0.5m, 5),
        FieldId.FlueTemperature => appliance.IsCondensing == true || appliance.Venting == VentCategory.IV ? new(70, 250) : new(200, 600),
        _ => AnyFurnace.GetValueOrDefault(name),
    };

    static string Label(string name) => Fields.Find(name)?.Label ?? ResultKind.Find(name)?.Label ?? name;
}
