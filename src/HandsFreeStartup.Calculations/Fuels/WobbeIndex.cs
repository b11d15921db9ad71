using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Calculations.Fuels;

/// <summary>Wobbe index: heating value over the square root of the relative density. Input through an orifice goes with W √p.</summary>
/// <remarks>Ideal: heating value and relative density of the ideal gas. Real: both of the real gas at the base state (as ISO 6976 does). J/m³ as the heating value.</remarks>
public static class WobbeIndex
{
    /// <summary>From gross heating value and relative density.</summary>
    public static HeatingValue Of(HeatingValue gross, double relativeDensity) => new(gross.JoulesPerCubicMetre / Math.Sqrt(relativeDensity));

    /// <summary>Of the ideal gas at a base state.</summary>
    public static HeatingValue Ideal(Fuel fuel, Temperature temperature, AbsolutePressure pressure) =>
        Of(fuel.VolumetricHeatingValue(temperature, pressure, gross: true), fuel.RelativeDensity);

    /// <summary>Of the real gas at a base state; NaN where part of the fuel would condense.</summary>
    public static HeatingValue Real(Fuel fuel, Temperature temperature, AbsolutePressure pressure) =>
        Of(RealGas.HeatingValue(fuel, temperature, pressure, gross: true), RealGas.RelativeDensity(fuel, temperature, pressure));
}
