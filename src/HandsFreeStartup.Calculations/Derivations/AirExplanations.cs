using System.Collections.Immutable;
using HandsFreeStartup.Calculations.AirSide;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Vocabulary;

namespace HandsFreeStartup.Calculations.Derivations;

/// <summary>Temperature rise, air flow, statics and depressurization.</summary>
static class AirExplanations
{
    static readonly Given SeaLevel = new(0, 0, "assumed", "0");
    static readonly Given NoBlowerHeat = new(0, 0, "sensors do not straddle the blower", "0");

    public static ImmutableArray<Explanation> All { get; } =
    [
        new(ResultId.TemperatureRise, [new(FieldId.SupplyTemperature, "°F"), new(FieldId.ReturnTemperature, "°F")], (given, limit) =>
        {
            Worksheet sheet = new();
            return sheet.Close(new(ResultId.TemperatureRise, "Rise", "temperature rise of the circulated air", "°F", 0, "definition; the range stands on the rating plate",
                CannotBeNegative: false), Rise(sheet, given), limit);
        }),
        new(ResultId.AirFlow, [new(ResultId.InputRate, "Btu/h"), new(ResultId.Efficiency, "%"), new(FieldId.SupplyTemperature, "°F"), new(FieldId.ReturnTemperature, "°F"), new("altitude", "ft", SeaLevel),
            new("blower_heat", "Btu/h", NoBlowerHeat)], Flow),
        new(ResultId.ExternalStatic, [new(FieldId.SupplyStatic, "in. w.c."), new(FieldId.ReturnStatic, "in. w.c.")], (given, limit) =>
        {
            Worksheet sheet = new();
            Term total = ExternalStatic.Formula(
                sheet.Input("supply", "supply static", "in. w.c.", given[FieldId.SupplyStatic]), sheet.Input("return", "return static", "in. w.c.", given[FieldId.ReturnStatic]));
            return sheet.Close(new(ResultId.ExternalStatic, "TESP", "total external static pressure", "in. w.c.", 2, "common practice, no source", CannotBeNegative: false), total, limit);
        }),
        new(ResultId.Depressurization, [new(FieldId.ZoneWorst, "Pa"), new(FieldId.ZoneBaseline, "Pa")], (given, limit) =>
        {
            Worksheet sheet = new();
            Term net = Depressurization.Formula(
                sheet.Input("worst", "zone against outdoors in the worst case", "Pa", given[FieldId.ZoneWorst]),
                sheet.Input("baseline", "zone against outdoors with everything off", "Pa", given[FieldId.ZoneBaseline]));
            return sheet.Close(new(ResultId.Depressurization, "Net", "net depressurization of the combustion zone", "Pa", 1,
                "building-performance guides; the guide values by vent are legacy and informational", CannotBeNegative: false), net, limit);
        }),
    ];

    static Term Rise(Worksheet sheet, GivenInputs given) => TemperatureRise.Formula(
        sheet.Input("supply", "supply temperature", "°F", given[FieldId.SupplyTemperature]), sheet.Input("return", "return temperature", "°F", given[FieldId.ReturnTemperature]));

    static Derivation Flow(GivenInputs given, Judgement.Limit? limit)
    {
        Worksheet sheet = new();
        Term input = sheet.Input("input", "measured input", "Btu/h", given[ResultId.InputRate]);
        Term percent = sheet.Input("eff", "steady-state efficiency, of the same heating value", "%", given[ResultId.Efficiency]);
        Term blower = sheet.Input("blower", "heat of the blower", "Btu/h", given["blower_heat"]);
        Term rise = sheet.Step("rise", "°F", Rise(sheet, given));
        Term ratio = sheet.Lookup("p/p0", "pressure of the standard atmosphere at the altitude, over that at sea level", "",
            StandardAtmosphere.PressureRatio(Altitude.FromFeet(given["altitude"].Value)), $"standard atmosphere at {given["altitude"].Value:0} ft, {given["altitude"].Origin}");
        Term factor = sheet.Step("F", "Btu/h per cfm and °F", AirFlow.TradeFactor * ratio);
        return sheet.Close(new(ResultId.AirFlow, "cfm", "air flow from measured input and temperature rise", "cfm", 0,
            "1.08 = 0.075 × 0.24 × 60, trade pages on air flow, for air of 70 °F at sea level; thinner at altitude"),
            AirFlow.Formula(input, percent / 100, blower, rise, factor), limit);
    }
}
