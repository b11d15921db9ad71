using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace HandsFreeStartup.Simulation;

public sealed partial record Furnace
{
    /// <summary>How far a leaking hose thins the sample.</summary>
    const double HoseLeak = 0.35;

    /// <summary>Seconds that each instrument lags behind, in the order of <see cref="Channel"/> (common practice, no source).</summary>
    static readonly ImmutableArray<double> Lags = [10, 15, 8, 8, 15, 15, 1, 1, 3, 2, 2, 2, 1, 1];

    FurnaceState Sense(FurnaceState state, Hands hands, double dt)
    {
        bool isWet = Plan.Appliance.IsCondensing == true && hands.Probe == ProbePlace.Flue && state.Phase == BurnerPhase.Burning;
        double weak = state.Trap >= 1 ? 10 : 1;
        double[] truths = Truths(state, hands);
        Sensed[] sensed = new Sensed[truths.Length];
        for (int channel = 0; channel < sensed.Length; channel++)
        {
            sensed[channel] = Followed(state.Sensed[channel], truths[channel], Lags[channel] * (channel <= 1 ? weak : 1), dt);
        }

        bool isZeroed = hands.Zeroings > state.Zeroings;
        return state with
        {
            Sensed = ImmutableCollectionsMarshal.AsImmutableArray(sensed),
            Trap = hands.Emptyings > state.Emptyings ? 0 : state.Trap + (isWet ? dt / 9000 : 0),
            Emptyings = hands.Emptyings,
            Zeroings = hands.Zeroings,
            ZeroMonoxide = isZeroed ? truths[(int)Channel.Monoxide] : state.ZeroMonoxide,
        };
    }

    static Sensed Followed(Sensed before, double truth, double lag, double dt)
    {
        double fast = Toward(before.Fast, truth, lag, dt);
        return new Sensed(fast, Toward(before.Slow, fast, 30, dt));
    }

    /// <summary>What each instrument would show without lag, noise and rounding, in SI, in the order of <see cref="Channel"/>.</summary>
    internal double[] Truths(FurnaceState state, Hands hands)
    {
        (double oxygen, double monoxide) = Sample(state, hands);
        (double supply, double returned) = Resistance(hands);
        FireStage stage = StageOf(hands);
        double moved = state.Circulation / High.Circulation;
        double total = (Static.Supply + Static.Return) * moved * moved;
        bool burns = state.Phase == BurnerPhase.Burning;
        bool inFlue = hands.Probe == ProbePlace.Flue && hands.IsOpen("test hole");
        return
        [
            oxygen, monoxide,
            inFlue ? state.Exhaust.Kelvin : hands.Probe == ProbePlace.Outside ? OutdoorKelvin : RoomKelvin,
            hands.Probe == ProbePlace.Outside ? OutdoorKelvin : AirKelvin,
            hands.IsOpen("duct ports") ? state.SupplyKelvin : RoomKelvin, RoomKelvin,
            state.Inlet, state.Manifold, inFlue ? state.Draft : 0,
            total * supply, -total * returned,
            burns ? FlameCurrent * (Has(Fault.ReversedPolarity, hands) ? 0.2 : 1) * (0.8 + 0.2 * Math.Min(1, state.Manifold / stage.Manifold)) : 0,
            120 + Chance.Even(Seed, 105, 0), 25 + 0.5 * Chance.Even(Seed, 106, 0),
        ];
    }

    /// <summary>The gas that the analyzer draws: O2 and CO, fractions.</summary>
    (double Oxygen, double Monoxide) Sample(FurnaceState state, Hands hands)
    {
        double room = hands.Room.Length == 0 ? state.FurnaceRoomMonoxide : state.HouseMonoxide;
        switch (hands.Probe)
        {
            case ProbePlace.Flue when hands.IsOpen("test hole"):
                double leak = Has(Fault.LeakingProbe, hands) ? HoseLeak : 0;
                return (state.Exhaust.Oxygen * (1 - leak) + 0.2095 * leak, state.Exhaust.Monoxide * (1 - leak) + state.FurnaceRoomMonoxide * leak);
            case ProbePlace.Room or ProbePlace.Flue:
                return (0.2095, room);
            default:
                return (0.2095, 0);
        }
    }
}
