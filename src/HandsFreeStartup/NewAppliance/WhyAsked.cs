using System.Collections.Frozen;
using HandsFreeStartup.Calculations.Vocabulary;

namespace HandsFreeStartup.NewAppliance;

/// <summary>Why each question is asked, and where its answer usually stands (common practice, no source).</summary>
static class WhyAsked
{
    static readonly FrozenDictionary<string, string> Reasons = new Dictionary<string, string>
    {
        ["title"] = "It is shown on the screen and on every copy, so that nobody takes one furnace's record for another's.",
        ["fuel"] = "Fuel decides over every formula and over some steps. The plate names it beside the gas pressures; a conversion has a label of its own.",
        ["stages"] = "Each stage is measured by itself. The plate of a two-stage furnace states two inputs and two manifold pressures.",
        ["venting"] = "Category I draws, III and IV push: the vent is looked at and measured in another way. It stands near the top of the plate.",
        ["condensing"] = "A condensing furnace has a drain to look after. Its plate or instructions name a condensate drain or trap.",
        ["turn_to_raise"] = "A screw turned the wrong way overfires the furnace. The maker's instructions say it; most are clockwise.",
        ["seal"] = "The hole for the probe must be closed as the maker wants it.",
        [FieldId.InletPressure] = "Too little starves the burner, too much harms the valve. The plate states minimum and maximum supply pressure.",
        [FieldId.ManifoldPressure] = "It sets the input. The plate states it beside the inputs.",
        [ResultId.ReplaceValve] = "Some makers say above which manifold pressure the valve must be replaced; few plates do.",
        [ResultId.InputRate] = "Overfiring cracks heat exchangers. The plate states the input in Btu/h; a tolerance stands in the instructions.",
        [FieldId.Oxygen] = "It tells whether the flame has the air it needs. The window stands in the maker's instructions.",
        [ResultId.CoAirFree] = "What can kill. Where the maker states nothing, the checklist's own limit stands.",
        [FieldId.FlueTemperature] = "Too cold condenses in the vent, too hot wastes or burns. The maker's instructions state it.",
        [FieldId.Draft] = "A vent that does not draw spills into the house. The maker's instructions state it.",
        [FieldId.FlameCurrent] = "A weak signal drops out. The maker's instructions or the wiring diagram state it.",
        [FieldId.SupplyTemperature] = "The highest outlet air temperature stands on the plate; above it the furnace cooks itself.",
        [ResultId.TemperatureRise] = "It tells whether enough air is moved. The plate states a range.",
        [ResultId.ExternalStatic] = "Ducts that are too tight starve the blower. The plate states the highest external static pressure.",
        [ResultId.Efficiency] = "Rarely stated; it may be left out.",
    }.ToFrozenDictionary();

    /// <summary>The reason; empty where there is none.</summary>
    /// <param name="key">Key of the sheet, or name of the limit without its stage.</param>
    public static string Of(string key) => Reasons.GetValueOrDefault(key, "");
}
