using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Calculations.Water;

namespace HandsFreeStartup.Compute.Tables;

/// <summary>Dew point from water content and pressure; empty where it would be a frost point.</summary>
static class DewPointTable
{
    const double PascalsAtIcePoint = 611.2126;

    public static ComputeTable Build() => new ComputeTable<double>(
        ResultId.DewPoint,
        ["water_mole_fraction", "pressure_Pa"],
        inputs => inputs.Number("water_mole_fraction", 0, 1) * inputs.Number("pressure_Pa", 1, 22_000_000),
        ("dew_point_if97_C", pascals => pascals < PascalsAtIcePoint ? double.NaN : SaturationLine.Temperature(pascals) - 273.15));
}
