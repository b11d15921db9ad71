using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Compute.Tables;

/// <summary>CO air-free with first-order and drawn uncertainty; without the guard at high O2, because the table is about where it fails.</summary>
static class AirFreeUncertaintyTable
{
    public static ComputeTable Build() => new ComputeTable<Propagation>(
        "air_free_uncertainty",
        ["carbon_monoxide_ppm", "carbon_monoxide_standard_uncertainty_ppm", "carbon_monoxide_distribution",
            "oxygen_dry_percent", "oxygen_standard_uncertainty_percent", "oxygen_distribution"],
        Evaluate,
        ("estimate_at_nominal", row => row.FirstOrder.Value),
        ("first_order_standard_uncertainty", row => row.FirstOrder.StandardUncertainty),
        ("first_order_interval_low", row => row.Interval.Low),
        ("first_order_interval_high", row => row.Interval.High),
        ("mc_interval_2.5", row => row.Drawn?.Low),
        ("mc_interval_97.5", row => row.Drawn?.High),
        ("first_order_valid_one_digit", row => row.IsValid));

    static Propagation Evaluate(RowInputs inputs)
    {
        RandomInput monoxide = Propagation.Input(inputs, "carbon_monoxide_ppm", "carbon_monoxide_standard_uncertainty_ppm", "carbon_monoxide_distribution", 0, 1e6);
        RandomInput oxygen = Propagation.Input(inputs, "oxygen_dry_percent", "oxygen_standard_uncertainty_percent", "oxygen_distribution", 0, 20.89);
        if (inputs.Problems.Count > 0)
        {
            return default;
        }
        Uncertain firstOrder = AirFree.FromOxygen(
            Uncertain.Input(monoxide.Value, monoxide.StandardUncertainty, 0), Uncertain.Input(oxygen.Value, oxygen.StandardUncertainty, 1));
        return Propagation.Of(firstOrder, drawn => AirFree.OfDraw(drawn[0], drawn[1]), [monoxide, oxygen], oxygen, AirFree.AirOxygenPercent);
    }
}
