using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Compute.Tables;

/// <summary>Heating values, relative density and Wobbe index at a base state; real-gas cells are empty where the gas would condense.</summary>
static class HeatingValuesTable
{
    readonly record struct Row(Fuel Fuel, Temperature Temperature, AbsolutePressure Pressure)
    {
        public HeatingValue PerVolume(bool gross) => Fuel.VolumetricHeatingValue(Temperature, Pressure, gross);
    }

    public static ComputeTable Build() => new ComputeTable<Row>(
        "heating_values",
        ["gas", "base", "base_temperature_C", "base_pressure_Pa"],
        inputs => new(
            inputs.Fuel("gas"),
            Temperature.FromCelsius(inputs.Number("base_temperature_C", -20, 60)),
            AbsolutePressure.FromPascals(inputs.Number("base_pressure_Pa", 11_000, 200_000))),
        ("molar_mass_g_per_mol", row => row.Fuel.MolarMass * 1000),
        ("relative_density_ideal", row => row.Fuel.RelativeDensity),
        ("higher_heating_value_25C_J_per_mol", row => row.Fuel.HigherHeatingValue),
        ("lower_heating_value_25C_J_per_mol", row => row.Fuel.LowerHeatingValue),
        ("higher_heating_value_at_base_temperature_J_per_mol", row => row.Fuel.MolarHeatingValue(row.Temperature, gross: true)),
        ("lower_heating_value_at_base_temperature_J_per_mol", row => row.Fuel.MolarHeatingValue(row.Temperature, gross: false)),
        ("higher_heating_value_at_base_temperature_ideal_J_per_m3", row => row.PerVolume(gross: true).JoulesPerCubicMetre),
        ("lower_heating_value_at_base_temperature_ideal_J_per_m3", row => row.PerVolume(gross: false).JoulesPerCubicMetre),
        ("higher_heating_value_at_base_temperature_ideal_Btu_per_ft3", row => row.PerVolume(gross: true).BtuPerCubicFoot),
        ("lower_heating_value_at_base_temperature_ideal_Btu_per_ft3", row => row.PerVolume(gross: false).BtuPerCubicFoot),
        ("wobbe_index_higher_ideal_J_per_m3", row => WobbeIndex.Ideal(row.Fuel, row.Temperature, row.Pressure).JoulesPerCubicMetre),
        ("compressibility_factor", row => RealGas.CompressibilityFactor(row.Fuel, row.Temperature, row.Pressure)),
        ("relative_density_real", row => RealGas.RelativeDensity(row.Fuel, row.Temperature, row.Pressure)),
        ("wobbe_index_higher_real_J_per_m3", row => WobbeIndex.Real(row.Fuel, row.Temperature, row.Pressure).JoulesPerCubicMetre));
}
