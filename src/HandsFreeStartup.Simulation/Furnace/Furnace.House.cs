using HandsFreeStartup.Calculations.AirSide;
using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Simulation;

public sealed partial record Furnace
{
    const double ExchangerLag = 120, VentLag = 150, MolesPerCubicMetre = 41.5;

    const double FurnaceRoom = 40, House = 300, Between = 0.05;

    /// <summary>Resistance of the ducts over that of clean and wide ones: supply, return with filter.</summary>
    (double Supply, double Return) Resistance(Hands hands)
    {
        double duct = Faults.Contains(Fault.UndersizedDuct) ? 4 : 1;
        double filter = Has(Fault.DirtyFilter, hands) ? 18 : 1;
        return (0.55 * duct, 0.30 * duct + 0.15 * filter + (hands.IsOpen("covered return") ? 60 : 0));
    }

    FurnaceState Circulate(FurnaceState state, Hands hands, double dt)
    {
        FireStage stage = StageOf(hands);
        (double supply, double returned) = Resistance(hands);
        double speed = state.BlowerOn ? Math.Sqrt(2.2 / (1.2 + supply + returned)) : 0;
        double conductance = stage.ToAir / stage.ExchangerRise;
        double toAir = conductance * (state.BlowerOn ? Math.Min(1.1, speed) : 0.04) * (state.ExchangerKelvin - RoomKelvin);
        double mass = High.ToAir / High.ExchangerRise * ExchangerLag;
        double jacket = Jacket * state.Exhaust.Input;
        double circulation = speed * stage.Circulation;
        double supplied = circulation > 0 ? RoomKelvin + toAir / (SensibleFactor * circulation) : RoomKelvin + 0.3 * (state.ExchangerKelvin - RoomKelvin);
        return state with
        {
            ToAir = toAir,
            Circulation = circulation,
            ExchangerKelvin = state.ExchangerKelvin + dt * (state.Exhaust.ToExchanger - jacket - toAir) / mass,
            SupplyKelvin = Toward(state.SupplyKelvin, supplied, 5, dt),
        };
    }

    /// <summary>Heat that stays in the metal for each kelvin, J/K.</summary>
    public double ExchangerHeat => High.ToAir / High.ExchangerRise * ExchangerLag;

    FurnaceState Vent(FurnaceState state, Hands hands, double dt)
    {
        bool burns = state.Phase == BurnerPhase.Burning;
        double vent = Toward(state.VentKelvin, burns ? VentMean(state.Exhaust.Kelvin) : (RoomKelvin + OutdoorKelvin) / 2, VentLag, dt);
        bool blocked = Has(Fault.BlockedVent, hands);
        double flow = burns ? (state.Exhaust.AirMoles + state.Exhaust.FuelMoles) / (High.AirMoles + High.GasFlow * HeatPerCubicMetre / Fuel.HigherHeatingValue) : state.Phase == BurnerPhase.Purging ? 0.9 : 0;
        double draws = VentMetres == 0 ? 0 : Draft.Theoretical(new Length(VentMetres), new Temperature(OutdoorKelvin), new Temperature(vent), new AbsolutePressure(Barometer)).Pascals;
        double house = hands.IsOpen("worst case") ? 2.5 : 0;
        double pushes = blocked && burns ? IsNatural ? 1.5 : 6 : 0;
        return state with
        {
            VentKelvin = vent,
            Draft = VentMetres > 0 ? -draws * (blocked ? 0.08 : 1) + house + pushes : VentPressure * flow * flow * (blocked ? 4 : 1),
        };
    }

    /// <summary>Share of the exhaust that comes into the room of the furnace.</summary>
    double Spilled(FurnaceState state, Hands hands) => state.Phase != BurnerPhase.Burning ? 0
        : VentMetres > 0 ? Math.Clamp(state.Draft / 5, 0, 1) * (IsNatural ? 1 : 0.3)
        : Has(Fault.BlockedVent, hands) ? 0.02
        : hands.IsOpen("test hole") && hands.Probe != ProbePlace.Flue ? 0.02 : 0;

    FurnaceState Rooms(FurnaceState state, Hands hands, double dt)
    {
        double monoxide = state.Exhaust.DryMoles * state.Exhaust.Monoxide;
        double cracked = Has(Fault.CrackedExchanger, hands) && state.BlowerOn ? 0.05 : 0;
        double change = (hands.WindowsOpen ? 8 : hands.IsOpen("worst case") ? 0.2 : 0.4) / 3600;
        double between = state.BlowerOn ? Between : Between / 10;
        double room = state.FurnaceRoomMonoxide, house = state.HouseMonoxide;
        bool leaks = Has(Fault.GasLeak, hands) && hands.GasOn;
        return state with
        {
            FurnaceRoomMonoxide = Math.Max(0, room + dt * (monoxide * Spilled(state, hands) / (FurnaceRoom * MolesPerCubicMetre) - change * room + between / FurnaceRoom * (house - room))),
            HouseMonoxide = Math.Max(0, house + dt * (monoxide * cracked / (House * MolesPerCubicMetre) - change * house + between / House * (room - house))),
            GasInAir = Math.Max(0, state.GasInAir + dt * ((leaks ? 1e-5 : 0) - (change + 1.0 / 300) * state.GasInAir)),
        };
    }
}
