using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.GasSide;

/// <summary>Gas flow and input rate from the time of the meter's test dial.</summary>
/// <remarks>
/// flow = dial · turns / time, at the state of the gas in the meter; input = flow · heating value at that state, which is
/// flow · volume factor · heating value at the base state. Arithmetic of the annex table "gas input to burner" of NFPA 54 (seen in reprints).
/// Only the furnace runs; at least two turns; after warm-up. Firing above the rating plate is prohibited.
/// </remarks>
public static class MeterClocking
{
    /// <summary>Gas flow at the state in the meter.</summary>
    /// <param name="dial">Volume of one turn of the test dial.</param>
    /// <param name="turns">Turns timed, 1 or more.</param>
    /// <param name="time">For all turns, above zero.</param>
    public static VolumeFlow Flow(Volume dial, int turns, TimeSpan time) => new(dial.CubicMetres * turns / time.TotalSeconds);

    /// <summary>Gas flow at the state in the meter, m³/s.</summary>
    /// <param name="dialCubicMetres">Volume of one turn, m³.</param>
    /// <param name="turns">Turns timed, 1 or more.</param>
    /// <param name="seconds">For all turns, s.</param>
    public static Uncertain Flow(in Uncertain dialCubicMetres, int turns, in Uncertain seconds) => FlowFormula(dialCubicMetres, turns, seconds);

    /// <summary>Gas flow of numbers of any kind, in the unit of the dial per unit of time.</summary>
    /// <param name="dial">Volume of one turn.</param>
    /// <param name="turns">Turns timed, 1 or more.</param>
    /// <param name="time">For all turns.</param>
    public static T FlowFormula<T>(in T dial, double turns, in T time) where T : struct, IFormulaNumber<T> => turns * dial / time;

    /// <summary>Input rate.</summary>
    /// <param name="flow">In the meter.</param>
    /// <param name="volumeFactor">Base volume per metered volume, see <see cref="MeterCorrection"/>.</param>
    /// <param name="heatingValue">Gross, at the same base state, of the actual gas.</param>
    public static HeatRate Input(VolumeFlow flow, double volumeFactor, HeatingValue heatingValue) =>
        heatingValue * new VolumeFlow(flow.CubicMetresPerSecond * volumeFactor);

    /// <summary>Input rate, W.</summary>
    /// <param name="flow">In the meter, m³/s.</param>
    /// <param name="volumeFactor">Base volume per metered volume.</param>
    /// <param name="heatingValue">Gross, at the same base state, J/m³.</param>
    public static Uncertain Input(in Uncertain flow, in Uncertain volumeFactor, in Uncertain heatingValue) => InputFormula(flow, volumeFactor, heatingValue);

    /// <summary>Input rate of numbers of any kind and of one system of units.</summary>
    /// <param name="flow">In the meter.</param>
    /// <param name="volumeFactor">Base volume per metered volume.</param>
    /// <param name="heatingValue">Gross, at the same base state.</param>
    public static T InputFormula<T>(in T flow, in T volumeFactor, in T heatingValue) where T : struct, IFormulaNumber<T> =>
        flow * volumeFactor * heatingValue;
}
