using HandsFreeStartup.Simulation.Tests.Support;

namespace HandsFreeStartup.Simulation.Tests;

/// <summary>Which way each fault moves what is measured.</summary>
public sealed class SensitivityTests
{
    public static TheoryData<Fault, string, int> Signs => new()
    {
        { Fault.RegulatorHigh, "manifold", 1 }, { Fault.RegulatorHigh, "oxygen", -1 }, { Fault.RegulatorHigh, "input", 1 }, { Fault.RegulatorHigh, "rise", 1 }, { Fault.RegulatorHigh, "flue", 1 },
        { Fault.WrongOrifice, "input", 1 }, { Fault.WrongOrifice, "oxygen", -1 }, { Fault.WrongOrifice, "monoxide", 1 }, { Fault.WrongOrifice, "manifold", 0 },
        { Fault.BlockedVent, "draft", 1 }, { Fault.BlockedVent, "oxygen", -1 },
        { Fault.CrackedExchanger, "oxygen", 1 }, { Fault.CrackedExchanger, "monoxide", 1 }, { Fault.CrackedExchanger, "house", 1 },
        { Fault.DirtyFilter, "rise", 1 }, { Fault.DirtyFilter, "static", 1 }, { Fault.DirtyFilter, "flue", 1 },
        { Fault.UndersizedDuct, "rise", 1 }, { Fault.UndersizedDuct, "static", 1 },
        { Fault.ReversedPolarity, "flame", -1 },
        { Fault.BadlyZeroed, "shown monoxide", -1 },
        { Fault.LeakingProbe, "shown oxygen", 1 }, { Fault.LeakingProbe, "oxygen", 0 }, { Fault.LeakingProbe, "input", 0 },
        { Fault.ShortOfAir, "oxygen", -1 }, { Fault.ShortOfAir, "monoxide", 1 },
        { Fault.LowSupply, "inlet", -1 }, { Fault.LowSupply, "input", -1 },
        { Fault.GasLeak, "gas in air", 1 },
        { Fault.NotDerated, "input", 1 }, { Fault.NotDerated, "oxygen", -1 },
    };

    [Theory]
    [MemberData(nameof(Signs))]
    public void Each_fault_moves_each_value_its_way_on_every_sheet(Fault fault, string what, int sign)
    {
        int furnaces = 0;
        foreach (string sheet in Made.Sheets.Where(sheet => Furnace.WhyNot(fault, Made.Plan(sheet)) is null && !(fault == Fault.LowSupply && what == "input" && sheet != "furnace-one-stage-propane")))
        {
            double healthy = Of(Made.Furnace(sheet), what), faulty = Of(Made.Furnace(sheet, 7, fault), what);
            Assert.True(sign == 0 ? Math.Abs(faulty - healthy) < 1e-3 * Math.Abs(healthy) + 1e-9 : sign * (faulty - healthy) > 1e-3 * Math.Abs(healthy), $"{sheet}: {what} {healthy} became {faulty}");
            furnaces++;
        }

        Assert.True(furnaces > 0);
    }

    [Fact]
    public void A_valve_that_does_not_hold_creeps_up_after_a_turn_and_not_before()
    {
        foreach (string sheet in Made.Sheets)
        {
            Furnace furnace = Made.Furnace(sheet, 7, Fault.ValveNotHolding);
            FurnaceState early = Made.After(furnace, 5), late = Made.After(furnace, 15);
            Assert.True(Math.Abs(late.Manifold / early.Manifold - 1) < 0.005, sheet);

            Hands turned = Made.Measuring() with { HighTurns = -0.2, Turnings = 1 };
            FurnaceState lower = furnace.Step(late, turned, 10);
            Assert.True(lower.Manifold < 0.97 * late.Manifold, sheet);
            Assert.True(furnace.Step(lower, turned, 600).Manifold > 1.1 * late.Manifold, sheet);
        }
    }

    [Fact]
    public void What_is_put_right_is_as_if_it_had_never_been_wrong()
    {
        Furnace furnace = Made.Furnace("furnace-modulating", 7, Fault.DirtyFilter, Fault.ShortOfAir, Fault.LeakingProbe);
        FurnaceState repaired = Made.After(furnace, 25, Made.Measuring() with { PutRight = [Fault.DirtyFilter, Fault.ShortOfAir, Fault.LeakingProbe] });
        FurnaceState healthy = Made.After(Made.Furnace("furnace-modulating"), 25);

        Assert.Equal(healthy.Exhaust, repaired.Exhaust);
        Assert.Equal(healthy.Circulation, repaired.Circulation);
    }

    static double Of(Furnace furnace, string what)
    {
        Hands hands = Made.Measuring();
        FurnaceState state = Made.After(furnace, 25, hands);
        double Shown(string field) => (double)Displays.Of(furnace, state, hands, field)!.Value!.Value;
        return what switch
        {
            "manifold" => state.Manifold,
            "inlet" => state.Inlet,
            "input" => state.Exhaust.Input,
            "oxygen" => state.Exhaust.Oxygen,
            "monoxide" => state.Exhaust.Monoxide,
            "flue" => state.Exhaust.Kelvin,
            "rise" => state.SupplyKelvin - Furnace.RoomKelvin,
            "draft" => state.Draft,
            "house" => state.HouseMonoxide,
            "static" => Shown("supply_static") - Shown("return_static"),
            "flame" => Shown("flame_current"),
            "shown oxygen" => Shown("oxygen"),
            "shown monoxide" => Shown("flue_co"),
            "gas in air" => state.GasInAir,
            _ => throw new ArgumentOutOfRangeException(nameof(what)),
        };
    }
}
