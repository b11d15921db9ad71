using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Compute.Tables;

/// <summary>Siegert flue loss with first-order and drawn uncertainty.</summary>
static class SiegertUncertaintyTable
{
    public static ComputeTable Build() => new ComputeTable<Propagation>(
        "siegert_uncertainty",
        ["gas", "coefficient_A2", "coefficient_B", "oxygen_dry_percent", "oxygen_standard_uncertainty_percent", "oxygen_distribution",
            "flue_temperature_C", "flue_temperature_standard_uncertainty_K", "flue_temperature_distribution",
            "combustion_air_temperature_C", "combustion_air_temperature_standard_uncertainty_K", "combustion_air_temperature_distribution"],
        Evaluate,
        ("estimate_at_nominal", row => row.FirstOrder.Value),
        ("first_order_standard_uncertainty", row => row.FirstOrder.StandardUncertainty),
        ("first_order_interval_low", row => row.Interval.Low),
        ("first_order_interval_high", row => row.Interval.High),
        ("mc_interval_2.5", row => row.Drawn?.Low),
        ("mc_interval_97.5", row => row.Drawn?.High));

    static Propagation Evaluate(RowInputs inputs)
    {
        Siegert siegert = new(inputs.Number("coefficient_A2", 0, 10), inputs.Number("coefficient_B", 0, 1));
        RandomInput oxygen = Propagation.Input(inputs, "oxygen_dry_percent", "oxygen_standard_uncertainty_percent", "oxygen_distribution", 0, 20.99);
        RandomInput flue = Propagation.Input(inputs, "flue_temperature_C", "flue_temperature_standard_uncertainty_K", "flue_temperature_distribution", -73, 1500);
        RandomInput air = Propagation.Input(
            inputs, "combustion_air_temperature_C", "combustion_air_temperature_standard_uncertainty_K", "combustion_air_temperature_distribution", -73, 1500);
        if (inputs.Problems.Count > 0)
        {
            return default;
        }
        Uncertain firstOrder = siegert.LossPercent(
            Uncertain.Input(oxygen.Value, oxygen.StandardUncertainty, 0),
            Uncertain.Input(flue.Value, flue.StandardUncertainty, 1),
            Uncertain.Input(air.Value, air.StandardUncertainty, 2));
        return Propagation.Of(firstOrder, drawn => siegert.OfDraw(drawn[0], drawn[1], drawn[2]), [oxygen, flue, air], oxygen, 21);
    }
}
