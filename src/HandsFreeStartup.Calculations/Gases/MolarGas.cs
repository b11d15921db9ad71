using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Calculations.Gases;

/// <summary>The ideal gas and its constant.</summary>
public static class MolarGas
{
    /// <summary>Molar gas constant R, J/(mol K), exact since the SI of 2019.</summary>
    public const double Constant = 8.31446261815324;

    /// <summary>The temperature at which heats of formation are tabulated, 25 °C, in kelvin.</summary>
    public const double ReferenceKelvin = 298.15;

    /// <summary>Amount of ideal gas in a volume: n/V = p/(R T), mol/m³.</summary>
    public static double MolesPerCubicMetre(AbsolutePressure pressure, Temperature temperature) =>
        pressure.Pascals / (Constant * temperature.Kelvin);
}
