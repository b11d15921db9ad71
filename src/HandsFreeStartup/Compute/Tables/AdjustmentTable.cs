using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.GasSide;
using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Compute.Tables;

/// <summary>O2 and CO2 after a change of manifold pressure; empty where the air would not suffice.</summary>
static class AdjustmentTable
{
    readonly record struct Row(Fuel Fuel, double OxygenPercent, double FlowRatio)
    {
        public FlueGas Before => FlueGas.FromOxygen(Fuel, DryAir.Conventional, OxygenPercent / 100, 0, 0);

        public double LambdaBefore => Before.DryAir.Value / Stoichiometry.Of(Fuel, DryAir.Conventional).DryAir;

        public double? OxygenAfter => Adjustment.OxygenAfterPercent(Fuel, OxygenPercent, FlowRatio)?.Value;
    }

    public static ComputeTable Build() => new ComputeTable<Row>(
        "adjustment",
        ["fuel", "oxygen_dry_before_percent", "manifold_pressure_before_Pa", "manifold_pressure_after_Pa"],
        inputs => new(
            inputs.Fuel("fuel"),
            inputs.Number("oxygen_dry_before_percent", 0, 20.89),
            ManifoldPressure.FlowRatio(
                Pressure.FromPascals(inputs.Number("manifold_pressure_before_Pa", 1, 100_000)),
                Pressure.FromPascals(inputs.Number("manifold_pressure_after_Pa", 1, 100_000)))),
        ("gas_flow_ratio", row => row.FlowRatio),
        ("lambda_before", row => row.LambdaBefore),
        ("lambda_after", row => row.LambdaBefore / row.FlowRatio),
        ("carbon_dioxide_dry_before_percent", row => 100 * (row.Before.CarbonDioxide / row.Before.Dry).Value),
        ("oxygen_dry_after_percent", row => row.OxygenAfter),
        ("carbon_dioxide_dry_after_percent", row => Adjustment.CarbonDioxideAfterPercent(row.Fuel, row.OxygenPercent, row.FlowRatio)?.Value),
        ("complete_combustion_possible_after", row => row.OxygenAfter is not null));
}
