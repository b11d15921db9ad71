using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Water;

namespace HandsFreeStartup.Simulation;

public sealed partial record Furnace
{
    /// <summary>Heat that the cabinet loses, as a share of the input (common practice, no source).</summary>
    internal const double Jacket = 0.015;

    /// <summary>Less air than this share of the theoretical one is not worked out: the fire would go out.</summary>
    const double LeastLambda = 1.02;

    const double MostMonoxide = 0.02;

    FurnaceState Burn(FurnaceState state, Hands hands)
    {
        if (state.Phase != BurnerPhase.Burning || state.GasFlow <= 0)
        {
            return state with { Exhaust = new Exhaust { Oxygen = 0.2095, Kelvin = Toward(state.Exhaust.Kelvin, state.ExchangerKelvin, 30, 0.5) } };
        }

        FireStage stage = StageOf(hands);
        double input = state.GasFlow * HeatPerCubicMetre;
        double fuel = input / Fuel.HigherHeatingValue;
        double theoretical = Stoichiometry.Of(Fuel, DryAir.Conventional).DryAir * fuel;
        double lambda = stage.AirMoles * AirFactor(state, stage, hands) / theoretical;
        double air = theoretical * Math.Max(lambda, LeastLambda);
        (double oxygen, double monoxide, double dry) = Gases(fuel, air, MonoxideAirFree(state, lambda, input / (stage.GasFlow * HeatPerCubicMetre), hands));
        double flame = FlameKelvin(Fuel, fuel, air, AirKelvin);
        double nominal = stage.AirMoles + stage.GasFlow * HeatPerCubicMetre / Fuel.HigherHeatingValue;
        double slip = Math.Clamp(stage.Slip * (1 + 0.8 * ((air + fuel) / nominal - 1)), 0, 0.9);
        double kelvin = state.ExchangerKelvin + (flame - state.ExchangerKelvin) * slip;
        (double toExchanger, double condensate) = Heat(new MoleFlows(fuel, air, dry, oxygen * dry, monoxide * dry, Fuel.Atoms.Hydrogen / 2 * fuel), kelvin);
        return state with
        {
            Exhaust = new Exhaust
            {
                Lambda = lambda,
                Oxygen = oxygen,
                Monoxide = monoxide,
                FuelMoles = fuel,
                AirMoles = air,
                DryMoles = dry,
                WaterMoles = Fuel.Atoms.Hydrogen / 2 * fuel,
                Kelvin = kelvin,
                Input = input,
                ToExchanger = toExchanger,
                Condensate = condensate,
            },
        };
    }

    /// <summary>Air that the fire gets, over what it gets when all is well.</summary>
    double AirFactor(FurnaceState state, FireStage stage, Hands hands)
    {
        double all = stage.AirMoles / (Stoichiometry.Of(Fuel, DryAir.Conventional).DryAir * stage.GasFlow * HeatPerCubicMetre / Fuel.HigherHeatingValue);
        return (Has(Fault.ShortOfAir, hands) ? Math.Min(1, 1.10 / all) : 1)
            * (Has(Fault.BlockedVent, hands) ? IsNatural ? 0.95 : 0.82 : 1)
            * (Has(Fault.CrackedExchanger, hands) && state.BlowerOn ? 1.10 : 1);
    }

    /// <summary>CO as it would be without excess air: little while there is air enough; more with less of it, where too large a flame touches metal, and while all is cold.</summary>
    double MonoxideAirFree(FurnaceState state, double lambda, double load, Hands hands)
    {
        double missing = Math.Max(0, 1.22 - lambda);
        double touching = Math.Max(0, load - 1.12);
        double cold = Math.Max(0, 1 - state.BurnSeconds / 150);
        double blown = Has(Fault.CrackedExchanger, hands) && state.BlowerOn ? 60e-6 : 0;
        return Math.Min(MostMonoxide, (10 + 4 * Chance.Even(Seed, 104, 0)) * 1e-6 + 0.06 * missing * missing + 0.002 * touching + 120e-6 * cold + blown);
    }

    /// <summary>Dry flue gas of that much fuel and air: complete combustion, then CO2 that stayed CO with half an O2 for each; atoms are kept.</summary>
    internal (double Oxygen, double Monoxide, double Dry) Gases(double fuel, double air, double airFree)
    {
        double moles = air / fuel;
        double oxygen = DryAir.Conventional.Oxygen * moles - Fuel.StoichiometricOxygen;
        double dry = DryAir.Conventional.Rest * moles + Fuel.Atoms.Carbon + Fuel.Atoms.Nitrogen / 2 + oxygen;
        double monoxide = airFree * (dry - oxygen / DryAir.Conventional.Oxygen);
        double whole = dry + monoxide / 2;
        return ((oxygen + monoxide / 2) / whole, monoxide / whole, whole * fuel);
    }

    /// <summary>mol/s.</summary>
    readonly record struct MoleFlows(double Fuel, double Air, double Dry, double Oxygen, double Monoxide, double Water);

    /// <summary>First law: fuel at 25 °C and air at its temperature in, flue gas and what condenses at the outlet out. What condenses leaves saturated gas behind.</summary>
    /// <returns>Heat that stays, W, and condensate, mol/s.</returns>
    (double Heat, double Condensate) Heat(MoleFlows flow, double kelvin)
    {
        double carbonDioxide = Fuel.Atoms.Carbon * flow.Fuel - flow.Monoxide;
        double nitrogen = flow.Dry - flow.Oxygen - flow.Monoxide - carbonDioxide;
        double saturation = kelvin < 373 ? SaturationLine.Pressure(kelvin) : Barometer;
        double vapour = saturation < Barometer ? Math.Min(flow.Water, flow.Dry * saturation / (Barometer - saturation)) : flow.Water;
        double brought = flow.Air * (DryAir.Conventional.Oxygen * Above25(Species.Oxygen, AirKelvin) + DryAir.Conventional.Rest * Above25(Species.Nitrogen, AirKelvin));
        double taken = flow.Oxygen * Above25(Species.Oxygen, kelvin) + nitrogen * Above25(Species.Nitrogen, kelvin) + carbonDioxide * Above25(Species.CarbonDioxide, kelvin)
            + flow.Monoxide * (Above25(Species.CarbonMonoxide, kelvin) + HeatOfMonoxide) + vapour * (Above25(Species.Water, kelvin) + LiquidWater.HeatOfVaporisation25)
            + (flow.Water - vapour) * (LiquidWater.Heat.Enthalpy(kelvin) - LiquidWater.Heat.Enthalpy(MolarGas.ReferenceKelvin));
        return (flow.Fuel * Fuel.HigherHeatingValue + brought - taken, flow.Water - vapour);
    }

    /// <summary>Heat of combustion of CO at 25 °C, J/mol, from the same data.</summary>
    static readonly double HeatOfMonoxide = Species.CarbonMonoxide.Heat.Enthalpy(MolarGas.ReferenceKelvin)
        + Species.Oxygen.Heat.Enthalpy(MolarGas.ReferenceKelvin) / 2 - Species.CarbonDioxide.Heat.Enthalpy(MolarGas.ReferenceKelvin);

    static double Above25(Species species, double kelvin) => species.Heat.Enthalpy(kelvin) - species.Heat.Enthalpy(MolarGas.ReferenceKelvin);
}
