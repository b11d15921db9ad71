using HandsFreeStartup.Calculations.GasSide;
using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Simulation;

public sealed partial record Furnace
{
    /// <summary>One turn of a regulator screw, as a share of the pressure that the sheet wants (common practice, no source).</summary>
    internal const double RisePerTurn = 0.22;

    const double Play = 0.02, LockUp = 0.025, OtherAppliances = 0.5, ValveLoss = 60;

    const double CreepPerSecond = 0.045 / 60, MostCreep = 0.30;

    /// <summary>Flow through an orifice in thin air over the flow at sea level: volume at the same pressure drop goes with one over the root of the density.</summary>
    internal static double ThinnessOf(double barometer) => Math.Sqrt(101325 / barometer);

    FurnaceState Flow(FurnaceState state, Hands hands, double dt)
    {
        bool isTurned = hands.Turnings > state.Turnings;
        bool burns = state.Phase == BurnerPhase.Burning;
        double since = isTurned ? 0 : burns ? state.SinceTurn + dt : state.SinceTurn;
        FurnaceState sprung = state with
        {
            Turnings = hands.Turnings,
            SinceTurn = since,
            HighSpring = Math.Clamp(state.HighSpring, hands.HighTurns - Play, hands.HighTurns + Play),
            LowSpring = Math.Clamp(state.LowSpring, hands.LowTurns - Play, hands.LowTurns + Play),
        };
        double share = (state.GasFlow + (hands.OthersOn ? OtherAppliances * High.GasFlow : 0)) / High.GasFlow;
        double supply = hands.GasOn ? Math.Max(Supply * 0.2, Supply * (1 + LockUp * Math.Max(0, 1 - 10 * share)) - SupplyDrop * share * share) : 0;
        double inlet = Toward(state.Inlet, supply, 0.5, dt);
        double left = inlet - ValveLoss * share * share;
        double manifold = Toward(state.Manifold, burns ? Math.Max(0, Math.Min(SetPoint(sprung, hands), left)) : 0, 0.5, dt);
        double flow = burns ? FlowAt(manifold) : 0;
        return Clock(sprung with { Inlet = inlet, Manifold = manifold, GasFlow = flow }, hands, dt);
    }

    /// <summary>Gas through all burners, m³/s as in the meter.</summary>
    public double FlowAt(double manifold) =>
        Burners * Orifice.Flow(new Length(OrificeMetres), new Pressure(Math.Max(0, manifold)), Fuel.RelativeDensity).CubicMetresPerSecond * ThinnessOf(Barometer);

    double SetPoint(FurnaceState state, Hands hands)
    {
        FireStage stage = StageOf(hands);
        bool isHigh = hands.High || Plan.Appliance.Stages == 1;
        double turns = isHigh ? state.HighSpring + FaultTurns : state.LowSpring;
        double asMade = 0.006 * Chance.Even(Seed, isHigh ? 101 : 102, 0);
        double drift = 0.003 * Chance.Even(Seed, 103, 0) * Math.Min(1, state.BurnSeconds / 1800);
        double creep = Faults.Contains(Fault.ValveNotHolding) && state.Turnings > 0 ? Math.Min(MostCreep, CreepPerSecond * state.SinceTurn) : 0;
        return stage.Manifold * (1 + RisePerTurn * turns + asMade + drift + creep);
    }

    FurnaceState Clock(FurnaceState state, Hands hands, double dt)
    {
        if (hands.Clockings > state.Clockings)
        {
            return state with { Clockings = hands.Clockings, Clocked = 0, ClockSeconds = 0, TurnSeconds = null };
        }

        double two = 2 * Volume.FromCubicFeet((double)(Plan.Site.MeterDialCubicFeet ?? 1)).CubicMetres;
        double all = state.GasFlow + (hands.OthersOn ? OtherAppliances * High.GasFlow : 0);
        if (state.Clockings == 0 || state.TurnSeconds is not null || all <= 0)
        {
            return state;
        }

        double passed = state.Clocked + all * dt;
        double seconds = state.ClockSeconds + (passed < two ? dt : (two - state.Clocked) / all);
        return state with { Clocked = Math.Min(passed, two), ClockSeconds = seconds, TurnSeconds = passed < two ? null : seconds / 2 };
    }
}
