using System.Collections.Concurrent;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Compute.Tables;

/// <summary>Flue gas, dew point, heating values, losses and efficiency from a flue reading.</summary>
static class CombustionTable
{
    // A class with fields: the outputs would copy a structure of this size again and again.
    sealed class Row(FuelCells fuel, CombustionEvaluation evaluation)
    {
        public readonly FuelCells Fuel = fuel;

        public readonly CombustionEvaluation Evaluation = evaluation;
    }

    /// <summary>What is the same in every row with one fuel.</summary>
    sealed class FuelCells(Fuel fuel)
    {
        static readonly double NormalMoles = MolarGas.MolesPerCubicMetre(AbsolutePressure.StandardAtmosphere, Temperature.FromCelsius(0));

        public readonly double ToLower = fuel.HigherHeatingValue / fuel.LowerHeatingValue;
        public readonly Cell HigherPerMole = Cell.Repeated(fuel.HigherHeatingValue), LowerPerMole = Cell.Repeated(fuel.LowerHeatingValue);
        public readonly Cell HigherPerKilogram = Cell.Repeated(fuel.HigherHeatingValue / fuel.MolarMass), LowerPerKilogram = Cell.Repeated(fuel.LowerHeatingValue / fuel.MolarMass);
        public readonly Cell HigherPerNormal = Cell.Repeated(fuel.HigherHeatingValue * NormalMoles), LowerPerNormal = Cell.Repeated(fuel.LowerHeatingValue * NormalMoles);
        public readonly Cell HigherPerCubicFoot = PerCubicFoot(fuel.HigherHeatingValue), LowerPerCubicFoot = PerCubicFoot(fuel.LowerHeatingValue);

        public readonly Cell TheoreticalAir = Cell.Repeated(Stoichiometry.Of(fuel, DryAir.Conventional).DryAir);
        public readonly Cell CarbonDioxideMaximum = Cell.Repeated(100 * Stoichiometry.Of(fuel, DryAir.Conventional).CarbonDioxideMaximum);

        static Cell PerCubicFoot(double joulesPerMole) => Cell.Repeated(new HeatingValue(
            joulesPerMole * MolarGas.MolesPerCubicMetre(AbsolutePressure.FromPsi(14.696), Temperature.FromFahrenheit(60))).BtuPerCubicFoot);
    }

    public static ComputeTable Build()
    {
        ConcurrentDictionary<Fuel, FuelCells> known = new();
        return Build(inputs => Evaluate(inputs, known));
    }

    static ComputeTable<Row> Build(Func<RowInputs, Row> evaluate) => new(
        "combustion",
        ["fuel", "oxygen_dry_percent", "flue_temperature_C", "combustion_air_temperature_C", "combustion_air_relative_humidity_percent",
            "carbon_monoxide_dry_ppm", "pressure_Pa"],
        evaluate,
        ("combustion_air_water_mole_fraction", row => row.Evaluation.AirWaterFraction.Value),
        ("lambda", row => row.Evaluation.Lambda.Value),
        ("excess_air_percent", row => row.Evaluation.ExcessAirPercent.Value),
        ("theoretical_dry_air_mol_per_mol", row => row.Fuel.TheoreticalAir),
        ("dry_air_mol_per_mol", row => row.Evaluation.DryAirMoles.Value),
        ("carbon_dioxide_dry_percent", row => row.Evaluation.CarbonDioxidePercent.Value),
        ("carbon_dioxide_maximum_dry_percent", row => row.Fuel.CarbonDioxideMaximum),
        ("dry_flue_mol_per_mol", row => row.Evaluation.DryFlueMoles.Value),
        ("wet_flue_mol_per_mol", row => row.Evaluation.WetFlueMoles.Value),
        ("water_wet_mole_fraction", row => row.Evaluation.WaterFraction.Value),
        ("higher_heating_value_J_per_mol", row => row.Fuel.HigherPerMole),
        ("lower_heating_value_J_per_mol", row => row.Fuel.LowerPerMole),
        ("dew_point_C", row => row.Evaluation.DewPointCelsius.Value),
        ("higher_heating_value_J_per_kg", row => row.Fuel.HigherPerKilogram),
        ("lower_heating_value_J_per_kg", row => row.Fuel.LowerPerKilogram),
        ("higher_heating_value_J_per_normal_m3", row => row.Fuel.HigherPerNormal),
        ("lower_heating_value_J_per_normal_m3", row => row.Fuel.LowerPerNormal),
        ("higher_heating_value_Btu_per_standard_ft3", row => row.Fuel.HigherPerCubicFoot),
        ("lower_heating_value_Btu_per_standard_ft3", row => row.Fuel.LowerPerCubicFoot),
        ("sensible_loss_above_air_percent_LHV", row => row.Evaluation.SensibleLossPercent.Value * row.Fuel.ToLower),
        ("sensible_loss_above_air_percent_HHV", row => row.Evaluation.SensibleLossPercent.Value),
        ("latent_loss_percent_HHV", row => row.Evaluation.LatentLossPercent.Value),
        ("carbon_monoxide_loss_percent_HHV", row => row.Evaluation.CarbonMonoxideLossPercent.Value),
        ("carbon_monoxide_loss_percent_LHV", row => row.Evaluation.CarbonMonoxideLossPercent.Value * row.Fuel.ToLower),
        ("condensing", row => row.Evaluation.IsCondensing),
        ("condensate_fraction_of_flue_water", row => row.Evaluation.CondensateFraction.Value),
        ("condensate_kg_per_kg_fuel", row => row.Evaluation.CondensateMassRatio.Value),
        ("latent_recovered_25C_percent_HHV", row => row.Evaluation.LatentRecoveredPercent.Value),
        ("efficiency_above_air_percent_HHV", row => row.Evaluation.EfficiencyPercent.Value),
        ("efficiency_above_air_percent_LHV", row => row.Evaluation.EfficiencyLowerPercent.Value),
        ("efficiency_hot_condensate_percent_HHV", row => row.Evaluation.EfficiencyHotCondensatePercent.Value),
        ("efficiency_first_law_percent_HHV", row => row.Evaluation.EfficiencyFirstLawPercent.Value),
        ("efficiency_first_law_percent_LHV", row => row.Evaluation.EfficiencyFirstLawLowerPercent.Value));

    static Row Evaluate(RowInputs inputs, ConcurrentDictionary<Fuel, FuelCells> known)
    {
        Fuel fuel = inputs.Fuel("fuel");
        FlueReading reading = new(
            Fraction.FromPercent(inputs.Number("oxygen_dry_percent", 0, 20.89)),
            Fraction.FromPartsPerMillion(inputs.Number("carbon_monoxide_dry_ppm", 0, 100_000)),
            Temperature.FromCelsius(inputs.Number("flue_temperature_C", -73, 726)),
            Temperature.FromCelsius(inputs.Number("combustion_air_temperature_C", -73, 726)))
        {
            AirRelativeHumidity = Fraction.FromPercent(inputs.Number("combustion_air_relative_humidity_percent", 0, 100)),
            Pressure = AbsolutePressure.FromPascals(inputs.Number("pressure_Pa", 11_000, 1_000_000)),
        };
        CombustionEvaluation evaluation = CombustionEvaluation.Of(reading, fuel);
        if (inputs.Problems.Count == 0 && evaluation.Refusal is { } refusal)
        {
            inputs.Refuse("fuel", refusal.TrimEnd('.'));
        }
        return new(known.GetOrAdd(fuel, static fuel => new FuelCells(fuel)), evaluation);
    }
}
