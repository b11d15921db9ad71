using System.Collections.Immutable;
using HandsFreeStartup.Calculations.GasSide;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Vocabulary;

namespace HandsFreeStartup.Calculations.Derivations;

/// <summary>Gas flow, input, altitude derate, turndown and gas used.</summary>
static class RateExplanations
{
    const string CodeDefault = "code default";

    static readonly Given OneTurn = new(1, 0, "assumed", "1");
    static readonly Given AsMetered = new(1, 0, "heating value as metered at the site", "1");

    public static ImmutableArray<Explanation> All { get; } =
    [
        new("gas_flow", [new("meter_dial", "ft³"), new(FieldId.MeterTime, "s"), new("meter_turns", "", OneTurn)], (given, limit) =>
        {
            Worksheet sheet = new();
            return sheet.Close(new("gas_flow", "Q", "gas flow by the meter", "cfh", 1, "arithmetic of the table 'gas input to burner', NFPA 54"), Flow(sheet, given), limit);
        }),
        new(ResultId.InputRate, [new("meter_dial", "ft³"), new(FieldId.MeterTime, "s"), new("heating_value", "Btu/ft³"), new("meter_turns", "", OneTurn), new("volume_factor", "", AsMetered)],
            (given, limit) =>
        {
            Worksheet sheet = new();
            Term flow = sheet.Step("Q", "cfh", Flow(sheet, given));
            Term input = MeterClocking.InputFormula(
                flow, sheet.Input("k", "base volume per metered volume", "", given["volume_factor"]),
                sheet.Input("HV", "gross heating value of the gas", "Btu/ft³", given["heating_value"]));
            return sheet.Close(new(ResultId.InputRate, "Input", "input rate by the meter", "Btu/h", 0, "arithmetic of the table 'gas input to burner', NFPA 54"), input, limit);
        }),
        new(ResultId.AltitudeInput, [new("rated_input", "Btu/h"), new("altitude", "ft"), new("derate_threshold", "ft", new(2000, 0, CodeDefault, "2000")),
            new("derate_share", "per 1000 ft", new(0.04, 0, CodeDefault, "0.04"))], Derate),
        new(ResultId.Turndown, [new("input_high", "Btu/h"), new("input_low", "Btu/h")], (given, limit) =>
        {
            Worksheet sheet = new();
            Term ratio = GasUse.TurndownFormula(
                sheet.Input("high", "input at high fire", "Btu/h", given["input_high"]), sheet.Input("low", "input at low fire", "Btu/h", given["input_low"]));
            return sheet.Close(new(ResultId.Turndown, "Turndown", "turndown of a modulating or staged burner, high over low input", "", 1, "definition"), ratio, limit);
        }),
        new(ResultId.GasPerHour, [new(ResultId.InputRate, "Btu/h"), new("heating_value", "Btu/ft³")], (given, limit) =>
        {
            Worksheet sheet = new();
            return sheet.Close(new(ResultId.GasPerHour, "Gas", "gas used in an hour of burning", "ft³/h", 1, "definition"), PerHour(sheet, given), limit);
        }),
        new(ResultId.GasPerYear, [new(ResultId.InputRate, "Btu/h"), new("burning_hours", "h/year")], (given, limit) =>
        {
            Worksheet sheet = new();
            Term therms = GasUse.PerYearFormula(
                sheet.Input("input", "input rate", "Btu/h", given[ResultId.InputRate]), sheet.Input("hours", "hours of burning a year, by the owner", "h/year", given["burning_hours"]));
            return sheet.Close(new(ResultId.GasPerYear, "Gas", "gas used in a year at the owner's hours", "therms/year", 0, "definition; a therm is 100000 Btu"), therms, limit);
        }),
    ];

    static Term Flow(Worksheet sheet, GivenInputs given)
    {
        Term dial = sheet.Input("dial", "volume of one turn of the test dial", "ft³", given["meter_dial"]);
        Term turns = sheet.Input("turns", "turns timed", "", given["meter_turns"]);
        Term time = sheet.Input("t", "time of all turns", "s", given[FieldId.MeterTime]);
        return MeterClocking.FlowFormula(3600 * turns * dial, 1, time);
    }

    static Term PerHour(Worksheet sheet, GivenInputs given) => GasUse.PerHourFormula(
        sheet.Input("input", "input rate", "Btu/h", given[ResultId.InputRate]), sheet.Input("HV", "gross heating value of the gas", "Btu/ft³", given["heating_value"]));

    static Derivation Derate(GivenInputs given, Judgement.Limit? limit)
    {
        Worksheet sheet = new();
        Term rated = sheet.Input("rated", "input on the rating plate", "Btu/h", given["rated_input"]);
        Term feet = sheet.Input("ft", "altitude", "ft", given["altitude"]);
        AltitudeDerate rule = new(Altitude.FromFeet(given["derate_threshold"].Value), given["derate_share"].Value, "");
        bool applies = Altitude.FromFeet(given["altitude"].Value).Metres > rule.Threshold.Metres;
        Term largest = applies ? AltitudeDerate.Formula(rated, sheet.Input("share", "loss for each 1000 ft above sea level", "", given["derate_share"]), feet) : rated;
        return sheet.Close(new(ResultId.AltitudeInput, "Largest", applies ? "largest input at this altitude, counted from sea level" : "largest input: no derate up to the threshold",
            "Btu/h", 0, (given["derate_share"].Origin == CodeDefault ? AltitudeDerate.CodeDefault.Source : given["derate_share"].Origin) + "; the appliance's instructions and the authority come first"), largest, limit);
    }
}
