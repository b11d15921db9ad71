using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Calculations.Fuels;

/// <summary>Real fuel gas near atmospheric pressure: compressibility factor and density.</summary>
/// <remarks>
/// Virial equation cut after the second coefficient, in density: p = R T ρ (1 + B ρ), hence Z = 1 + B ρ. B of each pair from the
/// corresponding-states correlation of Tsonopoulos (AIChE J. 20, 1974, 263; coefficients from memory) with the combining rules of Prausnitz:
/// Tc(ij) = √(Tc(i) Tc(j)), Vc(ij) = ((Vc(i)^⅓ + Vc(j)^⅓)/2)³ with Vc = Zc R Tc/pc, Zc = 0.291 − 0.08 ω, ω(ij) the mean.
/// Range: −20 °C to 60 °C, up to 150 kPa. Against a multi-parameter mixture model (reference tables) Z differs by less than 0.002.
/// </remarks>
public static class RealGas
{
    /// <summary>Pseudo-critical values of dry air (value from memory), for relative density.</summary>
    static readonly CriticalPoint Air = new(132.53, 3.786e6, 0.0335);

    /// <summary>Z = p/(ρ R T); NaN where part of the fuel would condense.</summary>
    /// <param name="fuel">The dry gas.</param>
    /// <param name="temperature">Of the gas.</param>
    /// <param name="pressure">Of the gas.</param>
    public static double CompressibilityFactor(Fuel fuel, Temperature temperature, AbsolutePressure pressure)
    {
        double kelvin = temperature.Kelvin;
        double liquid = 0;
        double second = 0;
        foreach (FuelComponent one in fuel.Composition)
        {
            liquid += one.MoleFraction * pressure.Pascals / VapourPressure(one.Species.Critical, kelvin);
            foreach (FuelComponent other in fuel.Composition)
            {
                second += one.MoleFraction * other.MoleFraction * SecondVirial(Pair(one.Species.Critical, other.Species.Critical), kelvin);
            }
        }
        return liquid > 1 ? double.NaN : Compressibility(second, kelvin, pressure.Pascals);
    }

    /// <summary>Density, kg/m³; NaN where part of the fuel would condense.</summary>
    /// <param name="fuel">The dry gas.</param>
    /// <param name="temperature">Of the gas.</param>
    /// <param name="pressure">Of the gas.</param>
    public static double Density(Fuel fuel, Temperature temperature, AbsolutePressure pressure) =>
        fuel.MolarMass * MolarGas.MolesPerCubicMetre(pressure, temperature) / CompressibilityFactor(fuel, temperature, pressure);

    /// <summary>Density of the fuel over density of dry air, both real and at the same state; NaN where part of the fuel would condense.</summary>
    /// <param name="fuel">The dry gas.</param>
    /// <param name="temperature">Of both.</param>
    /// <param name="pressure">Of both.</param>
    public static double RelativeDensity(Fuel fuel, Temperature temperature, AbsolutePressure pressure) =>
        fuel.RelativeDensity * Compressibility(SecondVirial(Air, temperature.Kelvin), temperature.Kelvin, pressure.Pascals)
        / CompressibilityFactor(fuel, temperature, pressure);

    /// <summary>Heating value per volume of real gas, combustion and volume at the same base state: ideal value / Z; NaN where part of the fuel would condense.</summary>
    /// <param name="fuel">The dry gas.</param>
    /// <param name="temperature">Base temperature, reference of the combustion too.</param>
    /// <param name="pressure">Base pressure.</param>
    /// <param name="gross">Whether the water is liquid.</param>
    public static HeatingValue HeatingValue(Fuel fuel, Temperature temperature, AbsolutePressure pressure, bool gross) =>
        new(fuel.VolumetricHeatingValue(temperature, pressure, gross).JoulesPerCubicMetre / CompressibilityFactor(fuel, temperature, pressure));

    // Positive root of p/(R T) = ρ (1 + B ρ), as Z = 1 + B ρ = (1 + √(1 + 4 B p/(R T)))/2.
    static double Compressibility(double second, double kelvin, double pascals) =>
        (1 + Math.Sqrt(1 + 4 * second * pascals / (MolarGas.Constant * kelvin))) / 2;

    static double SecondVirial(CriticalPoint critical, double kelvin)
    {
        double t = critical.Kelvin / kelvin;
        double simple = 0.1445 - 0.330 * t - 0.1385 * t * t - 0.0121 * t * t * t - 0.000607 * Math.Pow(t, 8);
        double acentric = 0.0637 + 0.331 * t * t - 0.423 * t * t * t - 0.008 * Math.Pow(t, 8);
        return MolarGas.Constant * critical.Kelvin / critical.Pascals * (simple + critical.AcentricFactor * acentric);
    }

    static CriticalPoint Pair(CriticalPoint one, CriticalPoint other)
    {
        if (one == other)
        {
            return one;
        }
        double factor = 0.291 - 0.08 * (one.AcentricFactor + other.AcentricFactor) / 2;
        double kelvin = Math.Sqrt(one.Kelvin * other.Kelvin);
        double edge = (Math.Cbrt(CriticalVolume(one)) + Math.Cbrt(CriticalVolume(other))) / 2;
        return new(kelvin, factor * MolarGas.Constant * kelvin / (edge * edge * edge), (one.AcentricFactor + other.AcentricFactor) / 2);
    }

    static double CriticalVolume(CriticalPoint critical) =>
        (0.291 - 0.08 * critical.AcentricFactor) * MolarGas.Constant * critical.Kelvin / critical.Pascals;

    // Straight line through the critical point and the definition of the acentric factor, lg(p/pc) = −(1 + ω) at T = 0.7 Tc.
    static double VapourPressure(CriticalPoint critical, double kelvin) =>
        kelvin >= critical.Kelvin
            ? double.PositiveInfinity
            : critical.Pascals * Math.Pow(10, -7.0 / 3 * (1 + critical.AcentricFactor) * (critical.Kelvin / kelvin - 1));
}
