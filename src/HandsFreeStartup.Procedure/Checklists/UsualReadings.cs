using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Checklists;

/// <summary>
/// What an instrument usually shows at a furnace of that fuel and vent category, in that stage, faults included; what lies outside is read back before it is entered. It follows
/// the kind of furnace and never its plate: a value that is expected must not weigh in what is heard. All ranges: common practice, no source.
/// </summary>
static class UsualReadings
{
    /// <summary>The field with the usual range of that furnace and stage.</summary>
    /// <param name="field">In the unit of the table of fields.</param>
    /// <param name="appliance">The furnace.</param>
    /// <param name="scope">Stage, or null.</param>
    public static Field Of(Field field, ApplianceSheet appliance, string? scope)
    {
        (decimal lowest, decimal highest) = field.Id switch
        {
            FieldId.Draft => Draft(field, appliance),
            FieldId.FlueTemperature => FlueTemperature(field, appliance, scope),
            FieldId.InletPressure => appliance.IsLiquefied ? (8, 14) : (3.5m, 14),
            FieldId.ManifoldPressure => ManifoldPressure(appliance, scope),
            _ => (field.UsualLowest, field.UsualHighest),
        };
        return field with { UsualLowest = lowest, UsualHighest = highest };
    }

    /// <summary>A vent that works by draft draws: there a lost minus sign is asked for. One under pressure pushes.</summary>
    static (decimal, decimal) Draft(Field field, ApplianceSheet appliance) => appliance.Venting switch
    {
        VentCategory.I or VentCategory.II => (-0.20m, 0),
        VentCategory.III or VentCategory.IV => (-0.10m, 0.45m),
        _ => (field.UsualLowest, field.UsualHighest),
    };

    static (decimal, decimal) FlueTemperature(Field field, ApplianceSheet appliance, string? scope) => appliance switch
    {
        { IsCondensing: true } or { Venting: VentCategory.II or VentCategory.IV } => (70, scope == "low" ? 200 : 250),
        { IsCondensing: false } or { Venting: VentCategory.I or VentCategory.III } => (scope == "low" ? 180 : 220, field.UsualHighest),
        _ => (field.UsualLowest, field.UsualHighest),
    };

    /// <summary>At the lowest rate the pressure is a small part of the highest: pressure goes with the square of the input.</summary>
    static (decimal, decimal) ManifoldPressure(ApplianceSheet appliance, string? scope) => (appliance.IsLiquefied, scope) switch
    {
        (true, "low") => (0.8m, 8),
        (true, _) => (5, 11),
        (false, "low") => (0.3m, 3.2m),
        (false, _) => (1.5m, 4.5m),
    };
}
