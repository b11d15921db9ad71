using HandsFreeStartup.Calculations.AirSide;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Tests.Support;

namespace HandsFreeStartup.Calculations.Tests.AirSide;

public sealed class AirTableTests
{
    /// <summary>Source: Reference/moist_air.csv (CoolProp, real moist air).</summary>
    [Fact]
    public void Every_row_of_the_moist_air_table_is_met()
    {
        Differences differences = new();
        foreach (ReferenceTable.Row row in ReferenceTable.Rows("moist_air"))
        {
            MoistAir air = MoistAir.At(
                Temperature.FromCelsius(row.Number("temperature_C")),
                Fraction.FromPercent(row.Number("relative_humidity_percent")),
                AbsolutePressure.FromPascals(row.Number("pressure_Pa")));

            differences.Compare(row, "density_kg_per_m3", air.Density, 0, 1e-3);
            differences.Compare(row, "humidity_ratio_kg_per_kg_dry_air", air.HumidityRatio, 1e-6, 1e-3);
            differences.Compare(row, "heat_capacity_J_per_kg_dry_air_K", air.HeatCapacity, 0, 3e-3);
            differences.Compare(row, "heat_capacity_J_per_kg_humid_air_K", air.HeatCapacity / (1 + air.HumidityRatio), 0, 3e-3);
            differences.Compare(row, "sensible_factor_W_s_per_m3_K", air.SensibleFactor, 0, 3e-3);
            differences.Compare(row, "sensible_factor_Btu_min_per_h_ft3_F", air.SensibleFactorTrade, 0, 3e-3);
        }
        differences.AssertNone(atLeast: 126 * 6);
    }

    /// <summary>Source: Reference/isa.csv (hydrostatic equation integrated numerically).</summary>
    [Fact]
    public void Every_row_of_the_standard_atmosphere_table_is_met()
    {
        Differences differences = new();
        foreach (ReferenceTable.Row row in ReferenceTable.Rows("isa"))
        {
            double meters = row.Number("geopotential_altitude_m");
            Altitude altitude = Altitude.FromMetres(meters);
            Altitude surveyed = StandardAtmosphere.FromSurveyedHeight(Length.FromMetres(meters));

            differences.Compare(row, "geopotential_altitude_ft", altitude.Feet, 0, 1e-12);
            differences.Compare(row, "temperature_C", StandardAtmosphere.Temperature(altitude).Celsius, 1e-9, 0);
            differences.Compare(row, "pressure_Pa", StandardAtmosphere.Pressure(altitude).Pascals, 0, 1e-9);
            differences.Compare(row, "pressure_ratio", StandardAtmosphere.PressureRatio(altitude), 0, 1e-9);
            differences.Compare(row, "density_kg_per_m3", StandardAtmosphere.Density(altitude), 0, 1e-9);
            differences.Compare(row, "density_coolprop_dry_air_kg_per_m3", StandardAtmosphere.Density(altitude), 0, 6e-4);
            differences.Compare(row, "pressure_if_altitude_is_geometric_Pa", StandardAtmosphere.Pressure(surveyed).Pascals, 0, 1e-9);
        }
        differences.AssertNone(atLeast: 79 * 7);
    }
}
