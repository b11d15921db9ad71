using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Simulation.Tests.Support;

namespace HandsFreeStartup.Simulation.Tests;

/// <summary>Furnaces made of the shipped sheets do what their sheets want.</summary>
public sealed class FurnaceTests
{
    public static TheoryData<string, bool> Fires
    {
        get
        {
            TheoryData<string, bool> rows = [];
            foreach (string sheet in Made.Sheets)
            {
                rows.Add(sheet, true);
                if (Made.Plan(sheet).Appliance.Stages > 1)
                {
                    rows.Add(sheet, false);
                }
            }

            return rows;
        }
    }

    [Theory]
    [MemberData(nameof(Fires))]
    public void A_warm_furnace_without_a_fault_shows_what_its_sheet_wants(string sheet, bool high)
    {
        foreach (ulong seed in new ulong[] { 1, 2, 3 })
        {
            Furnace furnace = Made.Furnace(sheet, seed);
            Hands hands = Made.Measuring(high);
            FurnaceState state = Made.After(furnace, 25, hands);
            string scope = high ? "high" : "low";

            Assert.Equal(BurnerPhase.Burning, state.Phase);
            foreach (string field in new[] { "inlet_pressure", "manifold_pressure", "oxygen", "flue_temperature", "draft", "flame_current", "supply_temperature" })
            {
                Display shown = Displays.Of(furnace, state, hands, field)!;
                Assert.True(shown.IsSettled, shown.Text);
                Inside(furnace.Plan.Limit(field, scope), shown.Value, shown.Text);
            }

            Inside(furnace.Plan.Limit("input_rate", scope), (decimal)(state.Exhaust.Input / Unit.BtuPerHour.Scale), "input");
            Inside(furnace.Plan.Limit("temperature_rise", scope), (decimal)((state.SupplyKelvin - Furnace.RoomKelvin) * 1.8), "rise");
            Inside(furnace.Plan.Limit("external_static", scope), Shown(furnace, state, hands, "supply_static") - Shown(furnace, state, hands, "return_static"), "static");
            Assert.True(Shown(furnace, state, hands, "flue_co") is >= 0 and < 60);
            Assert.True(state.FurnaceRoomMonoxide < 3e-6 && state.HouseMonoxide < 3e-6);
        }
    }

    [Fact]
    public void A_cold_start_shows_more_monoxide_and_less_temperature_than_the_warm_furnace()
    {
        foreach (string sheet in Made.Sheets)
        {
            Furnace furnace = Made.Furnace(sheet);
            FurnaceState cold = Made.After(furnace, 1), warm = Made.After(furnace, 20);

            Assert.True(cold.Exhaust.Monoxide > warm.Exhaust.Monoxide + 20e-6, sheet);
            Assert.True(cold.Exhaust.Kelvin < warm.Exhaust.Kelvin, sheet);
            Assert.False(Displays.Of(furnace, cold, Made.Measuring(), "flue_temperature")!.IsSettled);
        }
    }

    [Fact]
    public void Without_flow_the_supply_locks_up_above_its_running_pressure_and_the_manifold_shows_nothing()
    {
        foreach (string sheet in Made.Sheets)
        {
            Furnace furnace = Made.Furnace(sheet);
            FurnaceState standing = Made.After(furnace, 2, Made.Measuring() with { Calls = false }), running = Made.After(furnace, 5);

            Assert.True(standing.Inlet > running.Inlet + 50, sheet);
            Assert.Equal(0, standing.Manifold, 6);
            Assert.True(Made.After(furnace, 5, Made.Measuring() with { OthersOn = true }).Inlet < running.Inlet, sheet);
        }
    }

    [Fact]
    public void A_screw_has_play_and_clockwise_turns_of_the_sheet_raise_the_pressure()
    {
        Furnace furnace = Made.Furnace("furnace-two-stage-altitude");
        FurnaceState warm = Made.After(furnace, 5);
        FurnaceState Turned(FurnaceState from, double turns, int times) => furnace.Step(from, Made.Measuring() with { HighTurns = turns, Turnings = times }, 30);

        FurnaceState up = Turned(warm, 0.25, 1);
        FurnaceState back = Turned(up, 0, 2);

        Assert.InRange(up.Manifold / warm.Manifold, 1.04, 1.06);
        Assert.True(back.Manifold > warm.Manifold + 2);
    }

    [Fact]
    public void Without_gas_it_tries_three_times_and_locks_out_until_it_is_reset()
    {
        Furnace furnace = Made.Furnace("furnace-modulating");
        Hands shut = Made.Measuring() with { GasOn = false };
        FurnaceState burning = Made.After(furnace, 3);
        FurnaceState locked = furnace.Step(burning, shut, 90);

        Assert.Equal((BurnerPhase.LockedOut, 0.0), (locked.Phase, locked.GasFlow));
        Assert.Equal(BurnerPhase.LockedOut, furnace.Step(locked, Made.Measuring(), 60).Phase);
        Assert.Equal(BurnerPhase.Burning, furnace.Step(locked, Made.Measuring() with { Resets = 1 }, 60).Phase);
    }

    [Theory]
    [InlineData("rollout circuit")]
    [InlineData("pressure hose")]
    [InlineData("blocked-vent circuit")]
    [InlineData("covered return")]
    public void Each_safety_control_stops_the_burner_and_lets_it_light_again(string thing)
    {
        foreach (string sheet in Made.Sheets)
        {
            Furnace furnace = Made.Furnace(sheet);
            FurnaceState warm = Made.After(furnace, 15);
            Hands opened = Made.Measuring() with { Open = Made.Measuring().Open.Add(thing) };
            FurnaceState stopped = furnace.Step(warm, opened, 600);

            Assert.True(stopped.Phase != BurnerPhase.Burning || Enumerable.Range(1, 60).Any(seconds => furnace.Step(warm, opened, 10 * seconds).Phase == BurnerPhase.Tripped), sheet);
            Assert.Equal(BurnerPhase.Burning, furnace.Step(stopped, Made.Measuring(), 900).Phase);
        }
    }

    static decimal Shown(Furnace furnace, FurnaceState state, Hands hands, string field) => Displays.Of(furnace, state, hands, field)!.Value!.Value;

    static void Inside(DeclaredLimit? limit, decimal? value, string what) =>
        Assert.True(limit is null || (value >= (limit.Lower ?? value) && value <= (limit.Upper ?? value)), $"{what} is {value}, not {limit?.Text}");
}
