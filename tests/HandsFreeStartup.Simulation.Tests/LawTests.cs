using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Tests.Support;
using HandsFreeStartup.Calculations.Water;
using HandsFreeStartup.Simulation.Tests.Support;

namespace HandsFreeStartup.Simulation.Tests;

/// <summary>What holds for every furnace, with any faults, at any moment.</summary>
public sealed class LawTests
{
    /// <summary>A furnace with faults that has run for a while.</summary>
    static (Furnace Furnace, FurnaceState State, Hands Hands) Any(byte sheet, ushort faults, bool high, byte minutes, byte turns)
    {
        string name = Made.Sheets[sheet % Made.Sheets.Length];
        Fault[] wrong = [.. Enum.GetValues<Fault>().Where(fault => (faults >> (int)fault & 1) == 1 && Furnace.WhyNot(fault, Made.Plan(name)) is null)];
        Furnace furnace = Made.Furnace(name, faults, wrong);
        Hands hands = Made.Measuring(high) with { HighTurns = (turns % 21 - 10) / 10.0, LowTurns = (turns % 7 - 3) / 10.0, Turnings = 1 };
        return (furnace, Made.After(furnace, 0.5 + minutes % 20, hands), hands);
    }

    [Property(MaxTest = 60)]
    public bool Atoms_that_go_in_come_out(byte sheet, ushort faults, bool high, byte minutes, byte turns)
    {
        (Furnace furnace, FurnaceState state, _) = Any(sheet, faults, high, minutes, turns);
        Exhaust flue = state.Exhaust;
        Atoms fuel = furnace.Fuel.Atoms;
        double carbonDioxide = fuel.Carbon * flue.FuelMoles - flue.Monoxide * flue.DryMoles;
        double oxygenIn = fuel.Oxygen * flue.FuelMoles + 2 * 0.2095 * flue.AirMoles;
        double oxygenOut = flue.DryMoles * (2 * flue.Oxygen + flue.Monoxide) + 2 * carbonDioxide + flue.WaterMoles;
        double nitrogenIn = fuel.Nitrogen / 2 * flue.FuelMoles + 0.7905 * flue.AirMoles;
        double nitrogenOut = flue.DryMoles * (1 - flue.Oxygen - flue.Monoxide) - carbonDioxide;
        return state.Phase != BurnerPhase.Burning
            || (Near(oxygenIn, oxygenOut) && Near(nitrogenIn, nitrogenOut) && Near(fuel.Hydrogen / 2 * flue.FuelMoles, flue.WaterMoles) && flue.Oxygen is >= 0 and < 0.2095);
    }

    [Property(MaxTest = 60)]
    public bool Heat_that_goes_in_is_in_the_exhaust_the_cabinet_the_air_or_the_metal(byte sheet, ushort faults, bool high, byte minutes, byte turns)
    {
        (Furnace furnace, FurnaceState before, Hands hands) = Any(sheet, faults, high, minutes, turns);
        FurnaceState after = furnace.Step(before, hands, 1);
        Exhaust flue = after.Exhaust;
        double stored = (after.ExchangerKelvin - before.ExchangerKelvin) * furnace.ExchangerHeat;
        return after.Phase != BurnerPhase.Burning
            || Math.Abs(flue.Input - FlueHeat(furnace, flue) - Furnace.Jacket * flue.Input - after.ToAir - stored) < 1e-4 * flue.Input;
    }

    /// <summary>By absolute enthalpies: what leaves as gas and as water, less what came as air and as the products of the fuel at 25 °C.</summary>
    static double FlueHeat(Furnace furnace, Exhaust flue)
    {
        Fuel fuel = furnace.Fuel;
        FlueGas gas = FlueGas.FromOxygen(fuel, DryAir.Conventional, flue.Oxygen, flue.Monoxide, 0);
        double condensate = flue.Condensate / flue.FuelMoles;
        double air = gas.DryAir.Value * (0.2095 * (Species.Oxygen.Heat.Enthalpy(furnace.AirKelvin) - Species.Oxygen.Heat.Enthalpy(298.15))
            + 0.7905 * (Species.Nitrogen.Heat.Enthalpy(furnace.AirKelvin) - Species.Nitrogen.Heat.Enthalpy(298.15)));
        double monoxide = gas.CarbonMonoxide.Value * (Species.CarbonMonoxide.Heat.Enthalpy(298.15) + Species.Oxygen.Heat.Enthalpy(298.15) / 2 - Species.CarbonDioxide.Heat.Enthalpy(298.15));
        double sensible = gas.Enthalpy(flue.Kelvin).Value - gas.Enthalpy(298.15).Value;
        double latent = (gas.Water.Value - condensate) * LiquidWater.HeatOfVaporisation25;
        double liquid = condensate * (LiquidWater.Heat.Enthalpy(flue.Kelvin) - LiquidWater.Heat.Enthalpy(298.15)
            - Species.Water.Heat.Enthalpy(flue.Kelvin) + Species.Water.Heat.Enthalpy(298.15));
        return flue.FuelMoles * (sensible + latent + liquid + monoxide - air);
    }

    [Property(MaxTest = 20)]
    public bool The_same_seed_is_the_same_run(byte sheet, ushort faults, bool high, byte minutes, byte turns) =>
        AllText(Any(sheet, faults, high, minutes, turns)) == AllText(Any(sheet, faults, high, minutes, turns));

    [Property(MaxTest = 20)]
    public bool One_long_step_is_many_short_ones(byte sheet, ushort faults, byte seconds)
    {
        (Furnace furnace, FurnaceState state, Hands hands) = Any(sheet, faults, true, 3, 10);
        FurnaceState shortly = Enumerable.Range(0, seconds).Aggregate(state, (at, _) => furnace.Step(at, hands, 1));
        return AllText((furnace, shortly, hands)) == AllText((furnace, furnace.Step(state, hands, seconds), hands));
    }

    /// <summary>What a run shows is a part of the program: a machine that shows anything else computes otherwise. Text, so that a last bit that is not shown does not count.</summary>
    [Fact]
    public void A_seed_shows_the_same_numbers_on_every_machine()
    {
        Assert.Equal(PinnedDisplays, Pinned);
    }

    public static string Pinned
    {
        get
        {
            Furnace furnace = Made.Furnace("furnace-modulating", 18);
            return AllText((furnace, Made.After(furnace, 10), Made.Measuring()));
        }
    }

    const string PinnedDisplays =
        "Oxygen 6.5 %; CO in flue 6 ppm; CO in room 6 ppm; Flue temperature 110 °F; Combustion air 41 °F; Draft 0.07 in. w.c.; Inlet pressure 7.0 in. w.c.; Manifold pressure 3.5 in. w.c.; Meter, one turn 77.6 s of two turns; Supply temperature 124 °F; Return temperature 70 °F; Supply static 0.31 in. w.c.; Return static -0.25 in. w.c.; Flame current 4.4 µA; Line voltage 120 V; Control voltage 25 V";

    static string AllText((Furnace Furnace, FurnaceState State, Hands Hands) run) => string.Join("; ", Procedure.Hearing.Fields.All
        .Select(field => Displays.Of(run.Furnace, run.State, run.Hands, field.Id)?.Text).OfType<string>());

    /// <summary>adjustment.csv of the reference tables: computed with another program from the same assumptions, constant air and a flow with the root of the pressure.</summary>
    [Fact]
    public void A_turned_screw_changes_oxygen_as_the_reference_table_of_adjustments_has_it()
    {
        int compared = 0;
        foreach (ReferenceTable.Row row in ReferenceTable.Rows("adjustment").Where(row => row.Has("oxygen_dry_after_percent") && SheetOf(row.Text("fuel")) is not null))
        {
            Furnace furnace = Made.Furnace(SheetOf(row.Text("fuel"))!);
            double ratio = furnace.FlowAt(row.Number("manifold_pressure_after_Pa")) / furnace.FlowAt(row.Number("manifold_pressure_before_Pa"));
            double air = FlueGas.FromOxygen(furnace.Fuel, DryAir.Conventional, row.Number("oxygen_dry_before_percent") / 100, 0, 0).DryAir.Value;
            Assert.Equal(row.Number("gas_flow_ratio"), ratio, 9);
            Assert.Equal(row.Number("oxygen_dry_after_percent"), 100 * furnace.Gases(ratio, air, 0).Oxygen, 7);
            compared++;
        }

        Assert.True(compared >= 20, $"{compared} rows");
    }

    /// <summary>combustion.csv of the reference tables (Cantera 3.2.0): oxygen and monoxide of a given amount of air.</summary>
    [Fact]
    public void Air_and_monoxide_give_the_oxygen_of_the_reference_table_of_combustion()
    {
        int compared = 0;
        foreach (ReferenceTable.Row row in ReferenceTable.Rows("combustion").Where(row => SheetOf(row.Text("fuel")) is not null))
        {
            Furnace furnace = Made.Furnace(SheetOf(row.Text("fuel"))!);
            double monoxide = row.Number("carbon_monoxide_dry_ppm") / 1e6;
            double whole = row.Number("dry_flue_mol_per_mol"), moles = monoxide * whole;
            double airFree = moles / (whole - moles / 2 - (row.Number("oxygen_dry_percent") / 100 * whole - moles / 2) / 0.2095);
            (double oxygen, double shown, double dry) = furnace.Gases(1, row.Number("dry_air_mol_per_mol"), airFree);
            Assert.Equal(row.Number("oxygen_dry_percent"), 100 * oxygen, 1e-7);
            Assert.Equal(whole, dry, 1e-7);
            Assert.Equal(monoxide, shown, 1e-10);
            compared++;
        }

        Assert.True(compared >= 20, $"{compared} rows");
    }

    static string? SheetOf(string fuel) => fuel switch { "typical_natural_gas" => "furnace-modulating", "propane" => "furnace-one-stage-propane", _ => null };

    static bool Near(double one, double other) => Math.Abs(one - other) < 1e-9 * Math.Max(1e-6, Math.Abs(one));
}
