using System.Globalization;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Storage.Tests.Support;

/// <summary>Readings of a furnace that is as its sheet wants it: the middle of the limits.</summary>
static class GoodValues
{
    /// <summary>A value that the technician may say there.</summary>
    public static decimal Of(StartupPlan plan, ReadingDemand demand, string? scope) => demand.FieldId switch
    {
        "return_temperature" => 68,
        "supply_temperature" => 68 + (plan.Limit("temperature_rise", scope) is { } rise ? Math.Round(Middle(rise)) : 50),
        "supply_static" => 0.20m,
        "return_static" => -0.15m,
        "air_temperature" => 70,
        "flue_co" => 8,
        "room_co" => 2,
        "meter_time" => Seconds(plan, scope),
        _ when plan.Limit(demand.LimitName, scope) is { } limit => Rounded(Middle(limit), Fields.Find(demand.FieldId)!.FewestDecimals),
        _ => throw new InvalidOperationException($"No good value is known for {demand.FieldId}, {scope}."),
    };

    /// <summary>Bounds that may be said from the plate for a result that no file limits.</summary>
    public static IEnumerable<(string Bound, decimal Value)> Plate(StartupPlan plan, string result) => result switch
    {
        "input_rate" => [("limit_lower", 10_000), ("limit_upper", 400_000)],
        "temperature_rise" => [("limit_lower", 30), ("limit_upper", 70)],
        "external_static" => [("limit_upper", 0.60m)],
        _ => throw new InvalidOperationException($"No plate of {plan.Appliance.Title} is known for {result}."),
    };

    /// <summary>Seconds for one turn of the dial at the middle of the permitted input; any where the site or the sheet cannot tell.</summary>
    static decimal Seconds(StartupPlan plan, string? scope) => plan.Site is { MeterDialCubicFeet: { } dial, HeatingValue: { } heating } && plan.Limit("input_rate", scope) is { } input
        ? Rounded(3600 * dial * heating / Middle(input), 1)
        : 40;

    static decimal Middle(DeclaredLimit limit) => ((limit.Lower ?? limit.Upper!.Value) + (limit.Upper ?? limit.Lower!.Value)) / 2;

    static decimal Rounded(decimal value, int decimals) =>
        decimal.Parse(value.ToString($"F{decimals}", CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
}
