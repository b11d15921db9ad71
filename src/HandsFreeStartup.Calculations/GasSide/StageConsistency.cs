using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.GasSide;

/// <summary>Whether meter and manifold tell the same story about two stages.</summary>
/// <remarks>
/// By the square-root law Q(low)/Q(high) = √(p(low)/p(high)). Difference = clocked ratio less pressure ratio. They agree when the difference is no larger
/// than its expanded uncertainty (k = 2). A larger one shows a misread dial, another appliance running, or a port not sealed.
/// </remarks>
/// <param name="ClockedRatio">Low over high gas flow by the meter; 1.</param>
/// <param name="PressureRatio">The same by the manifold pressures; 1.</param>
/// <param name="Difference">Clocked less pressure; 1.</param>
public readonly record struct StageConsistency(Estimate ClockedRatio, Estimate PressureRatio, Estimate Difference)
{
    /// <summary>Compares the stages.</summary>
    /// <param name="lowFlow">Gas flow at low fire, any one unit.</param>
    /// <param name="highFlow">Gas flow at high fire, the same unit.</param>
    /// <param name="lowPressure">Manifold pressure at low fire, any one unit.</param>
    /// <param name="highPressure">Manifold pressure at high fire, the same unit.</param>
    public static StageConsistency Of(in Uncertain lowFlow, in Uncertain highFlow, in Uncertain lowPressure, in Uncertain highPressure)
    {
        Uncertain clocked = lowFlow / highFlow;
        Uncertain expected = ManifoldPressure.FlowRatio(highPressure, lowPressure);
        return new(clocked.Estimate, expected.Estimate, (clocked - expected).Estimate);
    }

    /// <summary>Whether the difference is within its expanded uncertainty.</summary>
    public bool Agrees => Math.Abs(Difference.Value) <= Difference.ExpandedUncertainty;
}
