using System.Globalization;
using HandsFreeStartup.Calculations.Derivations;
using HandsFreeStartup.Calculations.Fuels;

namespace HandsFreeStartup.Calculations.Tests.Derivations;

/// <summary>Ten jobs that differ in fuel, altitude, stage, weather and readings; invented.</summary>
static class Jobs
{
    static readonly string[] Fuels = ["natural-gas", "propane", "rich-natural-gas", "hydrogen-blend-20", "propane-butane-50"];

    public static IEnumerable<int> Numbers => Enumerable.Range(1, 10);

    public static GivenInputs Of(int job)
    {
        double k = job / 10.0;
        bool condensing = job % 2 == 0;
        return new(new Dictionary<string, Given>
        {
            ["oxygen"] = Said(4 + 5 * k, 0.17, 1) with { Further = job % 2 == 0 ? [new("scatter", 0.07)] : [] },
            ["flue_co"] = Said(10 + 37 * job, 12, 0),
            ["carbon_dioxide"] = Said(9.4 - 2.4 * k, 0.17, 1),
            ["nox"] = Said(20 + 4 * job, 3, 0),
            ["flue_temperature"] = Said(condensing ? 88 + job : 300 + 9 * job, 2, 0),
            ["air_temperature"] = Said(-4 + 9 * job, 0.6, 0),
            ["air_humidity"] = Said(20 + 7 * job, 5, 0),
            ["altitude"] = Said(700 * (job - 1), 0, 0),
            ["supply_temperature"] = Said(118 + job, 0.6, 0),
            ["return_temperature"] = Said(66 + k, 0.6, 0),
            ["supply_static"] = Said(0.21 + k / 10, 0.01, 2),
            ["return_static"] = Said(-0.18 - k / 20, 0.01, 2),
            ["zone_worst"] = Said(-4.5 - k, 0.3, 1),
            ["zone_baseline"] = Said(-1.2 + k, 0.3, 1),
            ["meter_dial"] = Said(job % 3 == 0 ? 0.5 : 2, job % 3 == 0 ? 0.002 : 0, 1),
            ["meter_turns"] = Said(1 + job % 2, 0, 0),
            ["meter_time"] = Said(41.3 + 7 * k, 0.2, 1) with { Further = [new("by hand", 0.23)] },
            ["heating_value"] = Said(1012 + 4 * job, 10, 0),
            ["volume_factor"] = Said(0.97 + k / 50, 0.004, 4),
            ["rated_input"] = Said(60_000 + 4000 * job, 0, 0),
            ["input_high"] = Said(80_000 + 900 * job, 1500, 0),
            ["input_low"] = Said(34_000 + 600 * job, 900, 0),
            ["input_rate"] = Said(77_300 + 811 * job, 1600, 0),
            ["efficiency"] = Said(80.3 + 1.4 * job, 0.4, 1),
            ["blower_heat"] = Said(900 + 30 * job, 60, 0),
            ["oxygen_before"] = Said(5 + 4 * k, 0.17, 1),
            ["manifold_before"] = Said(3.1 + k, 0.02, 2),
            ["manifold_after"] = Said(3.6 + k / 2, 0.02, 2),
            ["burning_hours"] = Said(900 + 110 * job, 150, 0),
        }, Fuel.Find(Fuels[job % Fuels.Length]))
        { AnalyzerCorrelation = job % 3 == 0 ? 0.5 : 0 };
    }

    static Given Said(double value, double u, int decimals)
    {
        string text = value.ToString($"F{decimals}", CultureInfo.InvariantCulture);
        return new(double.Parse(text, CultureInfo.InvariantCulture), u, "said at 10:42", text);
    }
}
