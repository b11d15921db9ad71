using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.GasSide;

/// <summary>Gas flow through a burner orifice.</summary>
/// <remarks>
/// Q (cfh) = 1658.5 K A (in²) √(H (in. w.c.)/SG). The constant is from memory and fits the orifice table of an open plumbing textbook
/// (opentextbc.ca, plumbing3e, seen) to three decimals with K = 0.90; NFPA 54 table E.1.1(a) (seen) within 3 %.
/// Another relative density: multiply by √(0.60/SG), the multiplier of that table.
/// </remarks>
public static class Orifice
{
    /// <summary>Discharge coefficient of a sharp-edged spud, about; common practice, no source.</summary>
    public const double SharpEdged = 0.90;

    /// <summary>Gas flow.</summary>
    /// <param name="diameter">Of the drill.</param>
    /// <param name="manifold">Gauge, zero or above.</param>
    /// <param name="relativeDensity">Of the gas, air 1.</param>
    /// <param name="discharge">K.</param>
    public static VolumeFlow Flow(Length diameter, Pressure manifold, double relativeDensity, double discharge = SharpEdged) =>
        VolumeFlow.FromCubicFeetPerHour(CubicFeetPerHour(diameter.Inches, manifold.InchesOfWater, relativeDensity, discharge).Value);

    /// <summary>Gas flow, cfh, with uncertainties.</summary>
    /// <param name="diameterInches">Of the drill, in.</param>
    /// <param name="manifoldInchesOfWater">Gauge, in. w.c., above zero.</param>
    /// <param name="relativeDensity">Of the gas, air 1.</param>
    /// <param name="discharge">K.</param>
    public static Uncertain CubicFeetPerHour(
        in Uncertain diameterInches, in Uncertain manifoldInchesOfWater, in Uncertain relativeDensity, in Uncertain discharge) =>
        1658.5 * Math.PI / 4 * (discharge * diameterInches * diameterInches * Uncertain.Sqrt(manifoldInchesOfWater / relativeDensity));
}
