using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Calculations.Emissions;

/// <summary>A pollutant and how its mass is counted.</summary>
/// <param name="Name">As shown.</param>
/// <param name="MolarMass">kg/mol.</param>
public sealed record Pollutant(string Name, double MolarMass)
{
    /// <summary>Cubic feet of ideal gas per pound-mole at 68 °F and 29.92 in. of mercury, as 40 CFR 60 Method 19 and 40 CFR 75 Appendix F use it (seen).</summary>
    public const double StandardCubicFeetPerPoundMole = 385.3;

    /// <summary>Nitrogen oxides counted as NO2. Field instruments read NO and report it so; a few per cent of real NO2 are missed.</summary>
    public static Pollutant NitrogenOxides { get; } = new("NOx as NO2", 0.0460055);

    /// <summary>Carbon monoxide.</summary>
    public static Pollutant CarbonMonoxide { get; } = new("CO", 0.0280101);

    /// <summary>Mass per volume and ppm: lb/scf at 68 °F for one ppm; NOx 1.194e-7 (Method 19, table 19-1, seen).</summary>
    public double PoundsPerCubicFootPerPpm => MolarMass * 1000 / (StandardCubicFeetPerPoundMole * 1e6);

    /// <summary>Mass concentration, mg/m³, of a volume concentration at a state: ppm · M · p/(R T) (CO at 25 °C: 1.145 a ppm).</summary>
    /// <param name="ppm">By volume.</param>
    /// <param name="temperature">To which the volume refers.</param>
    /// <param name="pressure">To which the volume refers.</param>
    public double MilligramsPerCubicMetre(double ppm, Temperature temperature, AbsolutePressure pressure) =>
        ppm * MolarMass * Gases.MolarGas.MolesPerCubicMetre(pressure, temperature);
}
