using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Combustion;

/// <summary>Excess air from a dry analysis without knowing the fuel.</summary>
/// <remarks>
/// EPA Method 3B, equation 3B-3: EA % = 100 (O2 − CO/2)/(0.264 N2 − (O2 − CO/2)), all in % dry, N2 = 100 − CO2 − O2 − CO; value from memory.
/// Within 0.1 points of the exact value for methane up to 8 % O2. Not the common 100 O2/(20.9 − O2), which reads 12 % too high.
/// </remarks>
public static class ExcessAirByMethod3B
{
    /// <summary>Excess air, %.</summary>
    /// <param name="oxygenPercent">O2, % dry.</param>
    /// <param name="carbonDioxidePercent">CO2, % dry.</param>
    /// <param name="carbonMonoxidePercent">CO, % dry; 100 ppm is 0.01 %.</param>
    public static Uncertain Percent(in Uncertain oxygenPercent, in Uncertain carbonDioxidePercent, in Uncertain carbonMonoxidePercent)
    {
        Uncertain free = oxygenPercent - 0.5 * carbonMonoxidePercent;
        Uncertain nitrogen = 100 - (carbonDioxidePercent + oxygenPercent + carbonMonoxidePercent);
        return 100 * (free / (0.264 * nitrogen - free));
    }
}
