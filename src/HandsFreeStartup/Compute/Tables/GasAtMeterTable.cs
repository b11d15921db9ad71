using HandsFreeStartup.Calculations.AirSide;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.GasSide;
using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Compute.Tables;

/// <summary>Real gas in a meter at an altitude of the standard atmosphere.</summary>
static class GasAtMeterTable
{
    readonly record struct Row(Fuel Fuel, Pressure Gauge, Temperature Temperature, AbsolutePressure Barometer)
    {
        public AbsolutePressure Pressure => Barometer + Gauge;
    }

    public static ComputeTable Build() => new ComputeTable<Row>(
        "gas_at_meter",
        ["gas", "gauge_pressure_Pa", "gas_temperature_C", "altitude_m"],
        inputs => new(
            inputs.Fuel("gas"),
            Pressure.FromPascals(inputs.Number("gauge_pressure_Pa", -5_000, 100_000)),
            Temperature.FromCelsius(inputs.Number("gas_temperature_C", -40, 60)),
            StandardAtmosphere.Pressure(Altitude.FromMetres(inputs.Number("altitude_m", -1000, 11_000)))),
        ("barometric_pressure_Pa", row => row.Barometer.Pascals),
        ("absolute_pressure_Pa", row => row.Pressure.Pascals),
        ("density_kg_per_m3", row => RealGas.Density(row.Fuel, row.Temperature, row.Pressure)),
        ("volume_factor_to_15C_101325Pa", row => MeterCorrection.RealFactor(row.Fuel, row.Pressure, row.Temperature, MeterCorrection.Base15C)),
        ("volume_factor_to_60F_14.73psia", row => MeterCorrection.RealFactor(row.Fuel, row.Pressure, row.Temperature, MeterCorrection.Base60F1473)));
}
