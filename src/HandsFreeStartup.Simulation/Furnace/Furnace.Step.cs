using HandsFreeStartup.Calculations.Fuels;

namespace HandsFreeStartup.Simulation;

public sealed partial record Furnace
{
    /// <summary>Longest step, s; a longer one is cut.</summary>
    const double LongestStep = 1;

    const double PurgeSeconds = 12, LightSeconds = 4, BlowerDelay = 30;

    const int MostTries = 3;

    /// <summary>As it stands before the first hand: cold, gas closed, nothing connected.</summary>
    public FurnaceState Start()
    {
        FurnaceState cold = new()
        {
            ExchangerKelvin = RoomKelvin,
            SupplyKelvin = RoomKelvin,
            VentKelvin = (RoomKelvin + OutdoorKelvin) / 2,
            ZeroMonoxide = Faults.Contains(Fault.BadlyZeroed) ? 18e-6 : 0,
            Exhaust = new Exhaust { Oxygen = 0.2095, Kelvin = RoomKelvin },
        };
        return cold with { Sensed = [.. Truths(cold, new Hands()).Select(truth => new Sensed(truth, truth))] };
    }

    /// <summary>What becomes of a state when the hands stand so for a while. Pure: the same in gives the same out on every machine.</summary>
    /// <param name="state">Before.</param>
    /// <param name="hands">How everything stands.</param>
    /// <param name="seconds">How long, s, zero or above.</param>
    public FurnaceState Step(FurnaceState state, Hands hands, double seconds)
    {
        for (double left = seconds; left > 1e-9; left -= LongestStep)
        {
            state = One(state, hands, Math.Min(left, LongestStep));
        }

        return state;
    }

    FurnaceState One(FurnaceState state, Hands hands, double dt)
    {
        FurnaceState next = Flow(Control(state, hands, dt), hands, dt);
        next = Circulate(Burn(next, hands), hands, dt);
        next = Rooms(Vent(next, hands, dt), hands, dt);
        return Sense(next, hands, dt) with { Moment = state.Moment + 1, Seconds = state.Seconds + dt };
    }

    /// <summary>The fire that is set.</summary>
    public FireStage StageOf(Hands hands) => hands.High ? High : Low;

    /// <summary>Whether a safety circuit is open or the limit has acted.</summary>
    static bool IsBarred(FurnaceState state, Hands hands, double limit) =>
        hands.IsOpen("rollout circuit") || hands.IsOpen("blocked-vent circuit") || hands.IsOpen("pressure hose") || hands.IsOpen("drain") || state.SupplyKelvin > limit
        || (state.Phase == BurnerPhase.Tripped && state.SupplyKelvin > limit - 20);

    FurnaceState Control(FurnaceState state, Hands hands, double dt)
    {
        bool isReset = hands.Resets > state.Resets;
        bool calls = hands.Calls && !hands.IsOpen("blower door");
        BurnerPhase phase = state.Phase;
        int tries = isReset || !calls ? 0 : state.Tries;
        double inPhase = state.PhaseSeconds + dt;
        BurnerPhase next = !calls ? BurnerPhase.Off
            : phase == BurnerPhase.LockedOut && !isReset ? phase
            : IsBarred(state, hands, LimitKelvin) ? BurnerPhase.Tripped
            : phase switch
            {
                BurnerPhase.Purging when inPhase >= PurgeSeconds => BurnerPhase.Igniting,
                BurnerPhase.Igniting when inPhase >= LightSeconds => hands.GasOn ? BurnerPhase.Burning : tries + 1 >= MostTries ? BurnerPhase.LockedOut : BurnerPhase.Purging,
                BurnerPhase.Burning when !hands.GasOn => BurnerPhase.Purging,
                BurnerPhase.Off or BurnerPhase.Tripped or BurnerPhase.LockedOut => BurnerPhase.Purging,
                _ => phase,
            };
        bool failed = phase == BurnerPhase.Igniting && next is BurnerPhase.Purging or BurnerPhase.LockedOut && phase != next;
        double burns = next == BurnerPhase.Burning ? state.BurnSeconds + dt : 0;
        bool blows = !hands.IsOpen("blower door")
            && (burns >= BlowerDelay || (state.BlowerOn && (next is BurnerPhase.Tripped or BurnerPhase.Burning || state.ExchangerKelvin > RoomKelvin + 12)));
        return state with
        {
            Phase = next,
            PhaseSeconds = next == phase ? inPhase : 0,
            Tries = failed ? tries + 1 : tries,
            Resets = hands.Resets,
            BurnSeconds = burns,
            BlowerOn = blows,
            BlowerSeconds = blows ? state.BlowerSeconds + dt : 0,
        };
    }

    /// <summary>Moves <paramref name="value"/> toward <paramref name="target"/> as a first-order lag of <paramref name="lag"/> seconds does; implicit, so it needs no exponential and never overshoots.</summary>
    static double Toward(double value, double target, double lag, double dt) => value + (target - value) * dt / (lag + dt);

    /// <summary>Flame temperature without loss, K: the lower heating value spread over the wet flue at a mean heat capacity of hot flue gas, 36 J/(mol K) (value from memory).</summary>
    internal static double FlameKelvin(Fuel fuel, double fuelMoles, double airMoles, double airKelvin) =>
        airKelvin + fuel.LowerHeatingValue * fuelMoles / ((fuelMoles + airMoles) * 36);

    /// <summary>Mean of a warm vent whose exhaust enters at that temperature (common practice, no source).</summary>
    internal static double VentMean(double flueKelvin) => 0.7 * flueKelvin + 0.3 * OutdoorKelvin;
}
