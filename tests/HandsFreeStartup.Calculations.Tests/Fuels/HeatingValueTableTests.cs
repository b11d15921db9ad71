using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Tests.Support;

namespace HandsFreeStartup.Calculations.Tests.Fuels;

/// <summary>Source: Reference/heating_values.csv (Cantera; real gas by CoolProp).</summary>
public sealed class HeatingValueTableTests
{
    const double SameData = 1e-9;

    /// <summary>Second virial coefficient by corresponding states against a multi-parameter mixture model.</summary>
    const double OtherEquationOfState = 2e-3;

    [Fact]
    public void Every_row_of_the_heating_value_table_is_met()
    {
        Differences differences = new();
        foreach (ReferenceTable.Row row in ReferenceTable.Rows("heating_values"))
        {
            Fuel fuel = ReferenceFuels.Get(row.Text("gas"));
            Temperature temperature = Temperature.FromCelsius(row.Number("base_temperature_C"));
            AbsolutePressure pressure = AbsolutePressure.FromPascals(row.Number("base_pressure_Pa"));
            CompareIdeal(differences, row, fuel, temperature, pressure);
            CompareReal(differences, row, fuel, temperature, pressure);
        }
        differences.AssertNone(atLeast: 64 * 13);
    }

    static void CompareIdeal(Differences differences, ReferenceTable.Row row, Fuel fuel, Temperature temperature, AbsolutePressure pressure)
    {
        HeatingValue gross = fuel.VolumetricHeatingValue(temperature, pressure, gross: true);
        HeatingValue net = fuel.VolumetricHeatingValue(temperature, pressure, gross: false);
        double volume = MolarGas.MolesPerCubicMetre(pressure, temperature);

        differences.Compare(row, "molar_mass_g_per_mol", fuel.MolarMass * 1000, 0, SameData);
        differences.Compare(row, "relative_density_ideal", fuel.RelativeDensity, 0, SameData);
        differences.Compare(row, "density_ideal_kg_per_m3", fuel.MolarMass * volume, 0, SameData);
        differences.Compare(row, "higher_heating_value_25C_J_per_mol", fuel.HigherHeatingValue, 0, SameData);
        differences.Compare(row, "lower_heating_value_25C_J_per_mol", fuel.LowerHeatingValue, 0, SameData);
        differences.Compare(row, "higher_heating_value_25C_ideal_J_per_m3", fuel.HigherHeatingValue * volume, 0, SameData);
        differences.Compare(row, "higher_heating_value_at_base_temperature_J_per_mol", fuel.MolarHeatingValue(temperature, gross: true), 0, SameData);
        differences.Compare(row, "lower_heating_value_at_base_temperature_J_per_mol", fuel.MolarHeatingValue(temperature, gross: false), 0, SameData);
        differences.Compare(row, "higher_heating_value_at_base_temperature_ideal_J_per_m3", gross.JoulesPerCubicMetre, 0, SameData);
        differences.Compare(row, "lower_heating_value_at_base_temperature_ideal_J_per_m3", net.JoulesPerCubicMetre, 0, SameData);
        differences.Compare(row, "higher_heating_value_at_base_temperature_ideal_Btu_per_ft3", gross.BtuPerCubicFoot, 0, SameData);
        differences.Compare(row, "lower_heating_value_at_base_temperature_ideal_Btu_per_ft3", net.BtuPerCubicFoot, 0, SameData);
        differences.Compare(row, "wobbe_index_higher_ideal_J_per_m3", WobbeIndex.Ideal(fuel, temperature, pressure).JoulesPerCubicMetre, 0, SameData);
    }

    static void CompareReal(Differences differences, ReferenceTable.Row row, Fuel fuel, Temperature temperature, AbsolutePressure pressure)
    {
        differences.Compare(row, "compressibility_factor", RealGas.CompressibilityFactor(fuel, temperature, pressure), 0, OtherEquationOfState);
        differences.Compare(row, "density_real_kg_per_m3", RealGas.Density(fuel, temperature, pressure), 0, OtherEquationOfState);
        differences.Compare(row, "relative_density_real", RealGas.RelativeDensity(fuel, temperature, pressure), 0, OtherEquationOfState);
        differences.Compare(row, "higher_heating_value_at_base_temperature_real_J_per_m3", RealGas.HeatingValue(fuel, temperature, pressure, gross: true).JoulesPerCubicMetre, 0, OtherEquationOfState);
        differences.Compare(row, "wobbe_index_higher_real_J_per_m3", WobbeIndex.Real(fuel, temperature, pressure).JoulesPerCubicMetre, 0, OtherEquationOfState);
    }

    /// <summary>Source: boiling points above 15 °C at 101325 Pa; the table leaves these cells empty.</summary>
    [Theory]
    [InlineData("nC5H12")]
    [InlineData("iC5H12")]
    public void A_pentane_that_is_liquid_has_no_gas_density(string symbol) =>
        Assert.Equal(double.NaN, RealGas.Density(ReferenceFuels.Get(symbol), Temperature.FromCelsius(15), AbsolutePressure.StandardAtmosphere));
}
