namespace HandsFreeStartup.Calculations.Gases;

/// <summary>What the corresponding-states correlation of the real gas of the fuels needs to know of a substance.</summary>
/// <param name="Kelvin">Critical temperature, K.</param>
/// <param name="Pascals">Critical pressure, Pa.</param>
/// <param name="AcentricFactor">Pitzer's acentric factor.</param>
public readonly record struct CriticalPoint(double Kelvin, double Pascals, double AcentricFactor);
