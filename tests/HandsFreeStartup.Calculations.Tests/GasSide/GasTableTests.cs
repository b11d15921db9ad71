using HandsFreeStartup.Calculations.AirSide;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.GasSide;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Tests.Support;

namespace HandsFreeStartup.Calculations.Tests.GasSide;

public sealed class GasTableTests
{
    /// <summary>Source: Reference/gas_at_meter.csv (CoolProp; ICAO atmosphere). Virial equation against a multi-parameter one.</summary>
    [Fact]
    public void Every_row_of_the_gas_at_meter_table_is_met()
    {
        Differences differences = new();
        foreach (ReferenceTable.Row row in ReferenceTable.Rows("gas_at_meter"))
        {
            Fuel fuel = ReferenceFuels.Get(row.Text("gas"));
            Temperature temperature = Temperature.FromCelsius(row.Number("gas_temperature_C"));
            AbsolutePressure barometer = StandardAtmosphere.Pressure(Altitude.FromMetres(row.Number("altitude_m")));
            AbsolutePressure pressure = barometer + Pressure.FromPascals(row.Number("gauge_pressure_Pa"));

            differences.Compare(row, "barometric_pressure_Pa", barometer.Pascals, 0, 1e-9);
            differences.Compare(row, "absolute_pressure_Pa", pressure.Pascals, 0, 1e-9);
            differences.Compare(row, "density_kg_per_m3", RealGas.Density(fuel, temperature, pressure), 0, 2e-3);
            differences.Compare(row, "compressibility_factor", RealGas.CompressibilityFactor(fuel, temperature, pressure), 0, 2e-3);
            differences.Compare(row, "volume_factor_to_15C_101325Pa", MeterCorrection.RealFactor(fuel, pressure, temperature, MeterCorrection.Base15C), 0, 2e-3);
            differences.Compare(row, "volume_factor_to_60F_14.73psia", MeterCorrection.RealFactor(fuel, pressure, temperature, MeterCorrection.Base60F1473), 0, 2e-3);
            differences.Compare(row, "volume_factor_to_15C_101325Pa", MeterCorrection.IdealFactor(pressure, temperature, MeterCorrection.Base15C), 0, row.Text("gas") == "propane" ? 2e-2 : 2.5e-3);
        }
        differences.AssertNone(atLeast: 144 * 7);
    }

    /// <summary>Source: Reference/adjustment.csv (element balances).</summary>
    [Fact]
    public void Every_row_of_the_adjustment_table_is_met()
    {
        Differences differences = new();
        foreach (ReferenceTable.Row row in ReferenceTable.Rows("adjustment"))
        {
            Fuel fuel = ReferenceFuels.Get(row.Text("fuel"));
            double before = row.Number("oxygen_dry_before_percent");
            double ratio = ManifoldPressure.FlowRatio(
                Pressure.FromPascals(row.Number("manifold_pressure_before_Pa")), Pressure.FromPascals(row.Number("manifold_pressure_after_Pa")));
            FlueGas flue = FlueGas.FromOxygen(fuel, DryAir.Conventional, before / 100, 0, 0);
            double lambda = flue.DryAir.Value / Stoichiometry.Of(fuel, DryAir.Conventional).DryAir;
            double? oxygen = Adjustment.OxygenAfterPercent(fuel, before, ratio)?.Value;

            differences.Compare(row, "gas_flow_ratio", ratio, 0, 1e-9);
            differences.Compare(row, "lambda_before", lambda, 0, 1e-9);
            differences.Compare(row, "lambda_after", lambda / ratio, 0, 1e-9);
            differences.Compare(row, "carbon_dioxide_dry_before_percent", 100 * (flue.CarbonDioxide / flue.Dry).Value, 0, 1e-9);
            differences.Compare(row, "complete_combustion_possible_after", oxygen is null ? 0 : 1, 0, 0);
            differences.Compare(row, "oxygen_dry_after_percent", oxygen ?? double.NaN, 1e-9, 0);
            differences.Compare(row, "carbon_dioxide_dry_after_percent", Adjustment.CarbonDioxideAfterPercent(fuel, before, ratio)?.Value ?? double.NaN, 1e-9, 0);
            Assert.Equal(row.Has("oxygen_dry_after_percent"), oxygen is not null);
        }
        differences.AssertNone(atLeast: 70 * 5);
    }
}
