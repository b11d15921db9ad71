using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Water;

namespace HandsFreeStartup.Calculations.AirSide;

/// <summary>Density and heat capacity of circulated air.</summary>
/// <remarks>
/// Real mixture to the second virial coefficient B (Hyland, Wexler; Harvey, Lemmon): partial pressure of water pw = RH f ps, mole fraction x = pw/p,
/// humidity ratio W = 0.6219 x/(1 − x), density = p M/(Z R T) with Z = 1 + B p/(R T), molar heat capacity = Σ x cp(ideal) − T p d²B/dT².
/// ps over ice below 0 °C; f is the enhancement factor of water in air (Buck, J. Appl. Meteorol. 20, 1981, 1527; from memory).
/// Against a multi-parameter model (reference table), −20 °C to 70 °C: see the test for how far each value agrees.
/// </remarks>
/// <param name="HumidityRatio">W, kg of water per kg of dry air.</param>
/// <param name="Density">kg of moist air per m³.</param>
/// <param name="HeatCapacity">J/(kg K) per kg of DRY air, at constant pressure and humidity.</param>
public readonly record struct MoistAir(double HumidityRatio, double Density, double HeatCapacity)
{
    /// <summary>Air at a state.</summary>
    /// <param name="temperature">−20 °C to 70 °C.</param>
    /// <param name="relativeHumidity">0 to 1, over ice below 0 °C.</param>
    /// <param name="pressure">Of the air.</param>
    public static MoistAir At(Temperature temperature, Fraction relativeHumidity, AbsolutePressure pressure)
    {
        double water = relativeHumidity.Value * Enhancement(temperature, pressure) * SaturationLine.Pressure(temperature.Kelvin);
        double fraction = water / pressure.Pascals;
        double kelvin = temperature.Kelvin;
        MoistAirVirial virial = MoistAirVirial.At(kelvin, fraction);
        double compressibility = 1 + virial.Value * pressure.Pascals / (MolarGas.Constant * kelvin);
        double dryMass = (1 - fraction) * DryAir.MolarMass;
        double waterMass = fraction * Species.Water.MolarMass;
        double molarHeat = (1 - fraction) * DryHeatCapacity(kelvin) + fraction * Species.Water.Heat.HeatCapacity(kelvin)
            - kelvin * pressure.Pascals * virial.SecondDerivative;
        return new(
            waterMass / dryMass,
            (dryMass + waterMass) * MolarGas.MolesPerCubicMetre(pressure, temperature) / compressibility,
            molarHeat / dryMass);
    }

    /// <summary>Heat per volume and kelvin at the state of the air, J/(m³ K), which is W for 1 m³/s and 1 K; the trade's 1.08 in SI.</summary>
    public double SensibleFactor => Density * HeatCapacity / (1 + HumidityRatio);

    /// <summary>The same in Btu/h for 1 cfm and 1 °F; 1.08 for the trade's standard air.</summary>
    public double SensibleFactorTrade => new HeatRate(SensibleFactor * VolumeFlow.FromCubicFeetPerMinute(1).CubicMetresPerSecond / 1.8).BtuPerHour;

    // Composition of real dry air; CO2 and traces counted as argon.
    static double DryHeatCapacity(double kelvin) => 0.78084 * Species.Nitrogen.Heat.HeatCapacity(kelvin)
        + 0.20946 * Species.Oxygen.Heat.HeatCapacity(kelvin) + 0.0097 * Species.Argon.Heat.HeatCapacity(kelvin);

    static double Enhancement(Temperature temperature, AbsolutePressure pressure)
    {
        double celsius = temperature.Celsius;
        return celsius < 0
            ? 1.00022 + pressure.Millibars * (3.83e-6 + 6.4e-10 * celsius * celsius)
            : 1.00072 + pressure.Millibars * (3.20e-6 + 5.9e-10 * celsius * celsius);
    }
}
