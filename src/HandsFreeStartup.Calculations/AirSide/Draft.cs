using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Calculations.AirSide;

/// <summary>Draft that the height of a vent can make.</summary>
/// <remarks>
/// Δp = g h (ρ(outdoor) − ρ(vent)) with flue gas as air, ideal gas: g h p M/R (1/T(outdoor) − 1/T(mean)). At 101325 Pa this is the handbook form
/// 9.80665 h 353.05 (1/To − 1/Tm), and 0.2554 B H (1/To − 1/Tm) in in. w.c., in. of mercury, ft and °R. No friction, no wind: an upper bound.
/// </remarks>
public static class Draft
{
    /// <summary>Magnitude of the theoretical draft; negative when the vent is colder than outdoors (a reversed vent).</summary>
    /// <param name="height">From the hood to the outlet.</param>
    /// <param name="outdoor">Air temperature.</param>
    /// <param name="meanVent">Mean temperature in the vent.</param>
    /// <param name="barometer">Absolute pressure.</param>
    public static Pressure Theoretical(Length height, Temperature outdoor, Temperature meanVent, AbsolutePressure barometer) =>
        new(9.80665 * height.Metres * barometer.Pascals * DryAir.MolarMass / MolarGas.Constant * (1 / outdoor.Kelvin - 1 / meanVent.Kelvin));
}
