using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.AirSide;

/// <summary>Circulated air from measured output and temperature rise.</summary>
/// <remarks>
/// flow = (input · efficiency + blower heat)/(sensible factor · rise). Output is MEASURED input times steady-state efficiency, not the rating plate; blower heat
/// counts when the sensors straddle the blower (trade pages, seen). Sensible factor: <see cref="MoistAir"/> at the place where the flow is meant.
/// The trade's cfm = Btu/h/(1.08 °F) is this with standard air.
/// </remarks>
public static class AirFlow
{
    /// <summary>The trade's factor for standard air, Btu/h for 1 cfm and 1 °F: 0.075 · 0.24 · 60.</summary>
    public const double TradeFactor = 1.08;

    /// <summary>Air flow.</summary>
    /// <param name="output">Heat into the air.</param>
    /// <param name="rise">Of the air, above zero.</param>
    /// <param name="air">State of the air whose volume flow is meant.</param>
    public static VolumeFlow Of(HeatRate output, TemperatureDifference rise, MoistAir air) => new(output.Watts / (air.SensibleFactor * rise.Kelvin));

    /// <summary>Air flow of standard air by the trade's factor.</summary>
    /// <param name="output">Heat into the air.</param>
    /// <param name="rise">Of the air, above zero.</param>
    public static VolumeFlow OfStandardAir(HeatRate output, TemperatureDifference rise) =>
        VolumeFlow.FromCubicFeetPerMinute(output.BtuPerHour / (TradeFactor * rise.Fahrenheit));

    /// <summary>Air flow, m³/s, with uncertainties.</summary>
    /// <param name="input">Measured gross input, W.</param>
    /// <param name="efficiency">Steady-state, on the same heating value, 0 to 1.</param>
    /// <param name="blower">Blower heat, W.</param>
    /// <param name="rise">K, above zero.</param>
    /// <param name="sensibleFactor">J/(m³ K).</param>
    public static Uncertain Of(in Uncertain input, in Uncertain efficiency, in Uncertain blower, in Uncertain rise, in Uncertain sensibleFactor) =>
        Formula(input, efficiency, blower, rise, sensibleFactor);

    /// <summary>Air flow of numbers of any kind and of one system of units: W, K and J/(m³ K) give m³/s; Btu/h, °F and Btu/h per cfm and °F give cfm.</summary>
    /// <param name="input">Measured gross input.</param>
    /// <param name="efficiency">Steady-state, on the same heating value, 0 to 1.</param>
    /// <param name="blower">Blower heat.</param>
    /// <param name="rise">Of the air, above zero.</param>
    /// <param name="sensibleFactor">Heat per flow and degree.</param>
    public static T Formula<T>(in T input, in T efficiency, in T blower, in T rise, in T sensibleFactor) where T : struct, IFormulaNumber<T> =>
        (input * efficiency + blower) / (sensibleFactor * rise);
}
