using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.GasSide;

/// <summary>Which way to turn the regulator.</summary>
public enum AdjustmentDirection
{
    /// <summary>Nothing to do: the change would be smaller than can be set.</summary>
    Leave,
    /// <summary>More pressure, more gas, less O2.</summary>
    Raise,
    /// <summary>Less pressure, less gas, more O2.</summary>
    Lower,
}

/// <summary>How far to go for a wanted O2.</summary>
/// <param name="Target">Manifold pressure to set.</param>
/// <param name="Change">Target less the present pressure.</param>
/// <param name="Direction">Which way.</param>
/// <param name="FlowRatio">Gas flow, and input, after over before.</param>
public readonly record struct AdjustmentAdvice(Pressure Target, Pressure Change, AdjustmentDirection Direction, double FlowRatio);

/// <summary>What a change of manifold pressure does to the O2, and which pressure a wanted O2 needs.</summary>
/// <remarks>
/// Constant molar air flow; gas flow as the square root of the manifold pressure; dry air, complete combustion. lambda2 = lambda1/√(p2/p1).
/// Both assumptions are about the burner: a prediction tells where to go, the record needs a measurement afterwards.
/// The rating plate and the maker's limits of pressure and input come first.
/// </remarks>
public static class Adjustment
{
    /// <summary>O2 after a change of pressure, % dry; null where the air would not suffice for complete combustion.</summary>
    /// <param name="fuel">What burns.</param>
    /// <param name="oxygenPercent">O2 before, % dry, 0 to below 20.95.</param>
    /// <param name="flowRatio">Gas flow after over before, see <see cref="ManifoldPressure"/>.</param>
    public static Uncertain? OxygenAfterPercent(Fuel fuel, in Uncertain oxygenPercent, in Uncertain flowRatio)
    {
        FlueGas? after = FlueAfter(fuel, oxygenPercent, flowRatio);
        return after is { } flue ? 100 * (flue.Oxygen / flue.Dry) : null;
    }

    /// <summary>CO2 after a change of pressure, % dry; null where the air would not suffice for complete combustion.</summary>
    /// <param name="fuel">What burns.</param>
    /// <param name="oxygenPercent">O2 before, % dry, 0 to below 20.95.</param>
    /// <param name="flowRatio">Gas flow after over before.</param>
    public static Uncertain? CarbonDioxideAfterPercent(Fuel fuel, in Uncertain oxygenPercent, in Uncertain flowRatio)
    {
        FlueGas? after = FlueAfter(fuel, oxygenPercent, flowRatio);
        return after is { } flue ? 100 * (flue.CarbonDioxide / flue.Dry) : null;
    }

    /// <summary>The pressure for a wanted O2.</summary>
    /// <param name="fuel">What burns.</param>
    /// <param name="present">Manifold pressure now, above zero.</param>
    /// <param name="oxygenPercent">O2 now, % dry.</param>
    /// <param name="wantedOxygenPercent">Wanted O2, % dry.</param>
    /// <param name="smallestStep">Changes smaller than this are left alone.</param>
    public static AdjustmentAdvice Advise(
        Fuel fuel, Pressure present, double oxygenPercent, double wantedOxygenPercent, Pressure smallestStep)
    {
        double flowRatio = Burn(fuel, oxygenPercent).DryAir.Value / Burn(fuel, wantedOxygenPercent).DryAir.Value;
        Pressure target = ManifoldPressure.ForFlowRatio(present, flowRatio);
        Pressure change = target - present;
        AdjustmentDirection direction = Math.Abs(change.Pascals) < smallestStep.Pascals || change.Pascals == 0 ? AdjustmentDirection.Leave
            : change.Pascals > 0 ? AdjustmentDirection.Raise
            : AdjustmentDirection.Lower;
        return new(target, change, direction, flowRatio);
    }

    static FlueGas? FlueAfter(Fuel fuel, in Uncertain oxygenPercent, in Uncertain flowRatio)
    {
        FlueGas after = FlueGas.FromDryAir(fuel, DryAir.Conventional, Burn(fuel, oxygenPercent).DryAir / flowRatio);
        return after.Oxygen.Value >= 0 ? after : null;
    }

    static FlueGas Burn(Fuel fuel, in Uncertain oxygenPercent) =>
        FlueGas.FromOxygen(fuel, DryAir.Conventional, oxygenPercent / 100, 0, 0);
}
