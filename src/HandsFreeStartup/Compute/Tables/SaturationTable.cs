using HandsFreeStartup.Calculations.Water;

namespace HandsFreeStartup.Compute.Tables;

/// <summary>Saturation line of water over liquid; the latent heat begins at the triple point.</summary>
static class SaturationTable
{
    const double TriplePointCelsius = 0.01;

    public static ComputeTable Build() => new ComputeTable<double>(
        "saturation",
        ["temperature_C"],
        inputs => inputs.Number("temperature_C", 0, 373.9),
        ("saturation_pressure_if97_Pa", celsius => SaturationLine.Pressure(celsius + 273.15)),
        ("dew_point_if97_C", celsius => SaturationLine.Temperature(SaturationLine.Pressure(celsius + 273.15)) - 273.15),
        ("latent_heat_if97_J_per_kg", celsius => celsius < TriplePointCelsius ? double.NaN : LatentHeat.JoulesPerKilogram(celsius + 273.15)));
}
