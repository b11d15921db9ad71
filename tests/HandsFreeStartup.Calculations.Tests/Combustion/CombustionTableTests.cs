using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Tests.Support;
using Row = HandsFreeStartup.Calculations.Tests.Support.ReferenceTable.Row;

namespace HandsFreeStartup.Calculations.Tests.Combustion;

/// <summary>Source: Reference/combustion.csv and air_composition_effect.csv (Cantera enthalpies, element balances, IAPWS-IF97).</summary>
public sealed class CombustionTableTests
{
    // Same coefficients, same atomic weights: only rounding differs.
    const double SameData = 1e-9;

    [Fact]
    public void Every_row_of_the_combustion_table_is_met()
    {
        Differences differences = new();
        foreach (Row row in ReferenceTable.Rows("combustion"))
        {
            Fuel fuel = ReferenceFuels.Get(row.Text("fuel"));
            CombustionEvaluation actual = CombustionEvaluation.Of(Reading(row) with
            {
                Pressure = AbsolutePressure.FromPascals(row.Number("pressure_Pa")),
                AirRelativeHumidity = Fraction.FromPercent(row.Number("combustion_air_relative_humidity_percent")),
            }, fuel);

            Assert.Null(actual.Refusal);
            CompareBalances(differences, row, actual, Stoichiometry.Of(fuel, DryAir.Conventional));
            CompareFuel(differences, row, fuel);
            CompareLosses(differences, row, actual, fuel);
        }
        differences.AssertNone(atLeast: 180 * 38);
    }

    [Theory]
    [InlineData("O2_20.95_N2_79.05", 0.2095, 0.7905, 0, 0)]
    [InlineData("O2_20.9_N2_79.1", 0.209, 0.791, 0, 0)]
    [InlineData("O2_20.946_N2_78.084_Ar_0.934_CO2_0.036", 0.20946, 0.78084, 0.00934, 0.00036)]
    public void Every_row_of_the_air_composition_table_is_met(string label, double oxygen, double nitrogen, double argon, double carbonDioxide)
    {
        DryAir air = new(oxygen, nitrogen, argon, carbonDioxide);
        Differences differences = new();
        foreach (Row row in ReferenceTable.Rows("air_composition_effect").Where(row => row.Text("dry_air_composition_percent") == label))
        {
            Fuel fuel = ReferenceFuels.Get(row.Text("fuel"));
            CombustionEvaluation actual = CombustionEvaluation.Of(Reading(row), fuel, air);
            Stoichiometry theory = Stoichiometry.Of(fuel, air);

            differences.Compare(row, "lambda", actual.Lambda.Value, 0, 1e-9);
            differences.Compare(row, "excess_air_percent", actual.ExcessAirPercent.Value, 1e-9, 1e-9);
            differences.Compare(row, "theoretical_dry_air_mol_per_mol", theory.DryAir, 0, 1e-9);
            differences.Compare(row, "carbon_dioxide_dry_percent", actual.CarbonDioxidePercent.Value, 0, 1e-9);
            differences.Compare(row, "carbon_dioxide_maximum_dry_percent", 100 * theory.CarbonDioxideMaximum, 0, 1e-9);
            differences.Compare(row, "water_wet_mole_fraction", actual.WaterFraction.Value, 0, 1e-9);
            differences.Compare(row, "dew_point_C", actual.DewPointCelsius.Value, 1e-6, 0);
            differences.Compare(row, "sensible_loss_above_air_percent_HHV", actual.SensibleLossPercent.Value, 0, SameData);
            differences.Compare(row, "efficiency_above_air_percent_HHV", actual.EfficiencyPercent.Value, 0, SameData);
            differences.Compare(row, "efficiency_first_law_percent_HHV", actual.EfficiencyFirstLawPercent.Value, 0, SameData);
        }
        differences.AssertNone(atLeast: 16 * 10);
    }

    static FlueReading Reading(Row row) => new(
        Fraction.FromPercent(row.Number("oxygen_dry_percent")),
        Fraction.FromPartsPerMillion(row.HasColumn("carbon_monoxide_dry_ppm") ? row.Number("carbon_monoxide_dry_ppm") : 0),
        Temperature.FromCelsius(row.Number("flue_temperature_C")),
        Temperature.FromCelsius(row.Number("combustion_air_temperature_C")));

    static void CompareBalances(Differences differences, Row row, in CombustionEvaluation actual, Stoichiometry theory)
    {
        differences.Compare(row, "combustion_air_water_mole_fraction", actual.AirWaterFraction.Value, 1e-12, 1e-9);
        differences.Compare(row, "lambda", actual.Lambda.Value, 0, 1e-9);
        differences.Compare(row, "excess_air_percent", actual.ExcessAirPercent.Value, 1e-9, 1e-9);
        differences.Compare(row, "theoretical_dry_air_mol_per_mol", theory.DryAir, 0, 1e-9);
        differences.Compare(row, "dry_air_mol_per_mol", actual.DryAirMoles.Value, 0, 1e-9);
        differences.Compare(row, "carbon_dioxide_dry_percent", actual.CarbonDioxidePercent.Value, 0, 1e-9);
        differences.Compare(row, "carbon_dioxide_maximum_dry_percent", 100 * theory.CarbonDioxideMaximum, 0, 1e-9);
        differences.Compare(row, "dry_flue_mol_per_mol", actual.DryFlueMoles.Value, 0, 1e-9);
        differences.Compare(row, "wet_flue_mol_per_mol", actual.WetFlueMoles.Value, 0, 1e-9);
        differences.Compare(row, "water_wet_mole_fraction", actual.WaterFraction.Value, 0, 1e-9);
        differences.Compare(row, "dew_point_C", actual.DewPointCelsius.Value, 1e-6, 0);
    }

    static void CompareFuel(Differences differences, Row row, Fuel fuel)
    {
        differences.Compare(row, "higher_heating_value_J_per_mol", fuel.HigherHeatingValue, 0, SameData);
        differences.Compare(row, "lower_heating_value_J_per_mol", fuel.LowerHeatingValue, 0, SameData);
        differences.Compare(row, "higher_heating_value_J_per_kg", fuel.HigherHeatingValue / fuel.MolarMass, 0, SameData);
        differences.Compare(row, "lower_heating_value_J_per_kg", fuel.LowerHeatingValue / fuel.MolarMass, 0, SameData);

        double perNormal = MolarGas.MolesPerCubicMetre(AbsolutePressure.StandardAtmosphere, Temperature.FromCelsius(0));
        double perStandard = MolarGas.MolesPerCubicMetre(AbsolutePressure.FromPsi(14.696), Temperature.FromFahrenheit(60));
        differences.Compare(row, "higher_heating_value_J_per_normal_m3", fuel.HigherHeatingValue * perNormal, 0, SameData);
        differences.Compare(row, "lower_heating_value_J_per_normal_m3", fuel.LowerHeatingValue * perNormal, 0, SameData);
        differences.Compare(row, "higher_heating_value_Btu_per_standard_ft3", new HeatingValue(fuel.HigherHeatingValue * perStandard).BtuPerCubicFoot, 0, SameData);
        differences.Compare(row, "lower_heating_value_Btu_per_standard_ft3", new HeatingValue(fuel.LowerHeatingValue * perStandard).BtuPerCubicFoot, 0, SameData);
    }

    static void CompareLosses(Differences differences, Row row, in CombustionEvaluation actual, Fuel fuel)
    {
        double toLower = fuel.HigherHeatingValue / fuel.LowerHeatingValue;
        differences.Compare(row, "sensible_loss_above_air_percent_HHV", actual.SensibleLossPercent.Value, 0, SameData);
        differences.Compare(row, "sensible_loss_above_air_percent_LHV", actual.SensibleLossPercent.Value * toLower, 0, SameData);
        differences.Compare(row, "sensible_loss_above_25C_percent_HHV", actual.SensibleLossAbove25Percent.Value, 1e-6, SameData);
        differences.Compare(row, "sensible_loss_above_25C_percent_LHV", actual.SensibleLossAbove25Percent.Value * toLower, 1e-6, SameData);
        differences.Compare(row, "air_sensible_above_25C_percent_HHV", actual.AirSensiblePercent.Value, 1e-6, SameData);
        differences.Compare(row, "latent_loss_percent_HHV", actual.LatentLossPercent.Value, 0, SameData);
        differences.Compare(row, "carbon_monoxide_loss_percent_HHV", actual.CarbonMonoxideLossPercent.Value, 0, SameData);
        differences.Compare(row, "carbon_monoxide_loss_percent_LHV", actual.CarbonMonoxideLossPercent.Value * toLower, 0, SameData);
        differences.Compare(row, "condensing", actual.IsCondensing ? 1 : 0, 0, 0);
        differences.Compare(row, "condensate_mol_per_mol", actual.CondensateMoles.Value, 1e-8, 1e-7);
        differences.Compare(row, "condensate_fraction_of_flue_water", actual.CondensateFraction.Value, 1e-8, 0);
        differences.Compare(row, "condensate_kg_per_kg_fuel", actual.CondensateMassRatio.Value, 1e-8, SameData);
        differences.Compare(row, "latent_recovered_25C_percent_HHV", actual.LatentRecoveredPercent.Value, 1e-6, SameData);
        differences.Compare(row, "efficiency_above_air_percent_HHV", actual.EfficiencyPercent.Value, 0, SameData);
        differences.Compare(row, "efficiency_above_air_percent_LHV", actual.EfficiencyLowerPercent.Value, 0, SameData);
        differences.Compare(row, "efficiency_hot_condensate_percent_HHV", actual.EfficiencyHotCondensatePercent.Value, 0, SameData);
        differences.Compare(row, "efficiency_hot_condensate_percent_LHV", actual.EfficiencyHotCondensatePercent.Value * toLower, 0, SameData);
        differences.Compare(row, "efficiency_first_law_percent_HHV", actual.EfficiencyFirstLawPercent.Value, 0, SameData);
        differences.Compare(row, "efficiency_first_law_percent_LHV", actual.EfficiencyFirstLawLowerPercent.Value, 0, SameData);
    }
}
