using HandsFreeStartup.Calculations.AirSide;
using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Compute.Tables;

/// <summary>The ICAO standard atmosphere.</summary>
static class StandardAtmosphereTable
{
    public static ComputeTable Build() => new ComputeTable<Altitude>(
        "isa",
        ["geopotential_altitude_m"],
        inputs => Altitude.FromMetres(inputs.Number("geopotential_altitude_m", -1000, 11_000)),
        ("temperature_C", altitude => StandardAtmosphere.Temperature(altitude).Celsius),
        ("pressure_Pa", altitude => StandardAtmosphere.Pressure(altitude).Pascals),
        ("pressure_ratio", altitude => StandardAtmosphere.PressureRatio(altitude)),
        ("density_kg_per_m3", altitude => StandardAtmosphere.Density(altitude)));
}
