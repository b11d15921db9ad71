using HandsFreeStartup.Calculations.AirSide;
using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Compute.Tables;

/// <summary>Density, humidity and heat of moist air; the altitude is carried along, the pressure decides.</summary>
static class MoistAirTable
{
    public static ComputeTable Build() => new ComputeTable<MoistAir>(
        "moist_air",
        ["temperature_C", "relative_humidity_percent", "altitude_m", "pressure_Pa"],
        inputs => MoistAir.At(
            Temperature.FromCelsius(inputs.Number("temperature_C", -40, 90)),
            Fraction.FromPercent(inputs.Number("relative_humidity_percent", 0, 100)),
            AbsolutePressure.FromPascals(inputs.Number("pressure_Pa", 50_000, 200_000))),
        ("density_kg_per_m3", air => air.Density),
        ("humidity_ratio_kg_per_kg_dry_air", air => air.HumidityRatio < 0 ? double.NaN : air.HumidityRatio),
        ("heat_capacity_J_per_kg_dry_air_K", air => air.HeatCapacity),
        ("sensible_factor_W_s_per_m3_K", air => air.SensibleFactor),
        ("sensible_factor_Btu_min_per_h_ft3_F", air => air.SensibleFactorTrade));
}
