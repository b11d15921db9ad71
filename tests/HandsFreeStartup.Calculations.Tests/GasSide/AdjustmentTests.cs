using FsCheck.Xunit;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.GasSide;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Tests.Support;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Tests.GasSide;

public sealed class AdjustmentTests
{
    static readonly Pressure Step = Pressure.FromInchesOfWater(0.05);

    [Theory]
    [InlineData(8.0, 7.0, AdjustmentDirection.Raise)]
    [InlineData(5.0, 7.0, AdjustmentDirection.Lower)]
    [InlineData(7.0, 7.0, AdjustmentDirection.Leave)]
    [InlineData(7.0, 7.05, AdjustmentDirection.Leave)]
    public void Too_much_oxygen_asks_for_more_gas_and_the_other_way_round(double now, double wanted, AdjustmentDirection direction)
    {
        AdjustmentAdvice advice = Adjustment.Advise(Fuel.NaturalGas, Pressure.FromInchesOfWater(3.5), now, wanted, Step);

        Assert.Equal(direction, advice.Direction);
        Assert.Equal(advice.Target.Pascals - Pressure.FromInchesOfWater(3.5).Pascals, advice.Change.Pascals, 1e-9);
        Assert.Equal(Math.Sqrt(advice.Target.InchesOfWater / 3.5), advice.FlowRatio, 1e-12);
    }

    [Fact]
    public void Too_little_air_is_no_prediction() => Assert.Null(Adjustment.OxygenAfterPercent(Fuel.NaturalGas, 1.0, Math.Sqrt(1000.0 / 870)));

    [Fact]
    public void Stages_agree_when_meter_and_manifold_do()
    {
        StageConsistency good = StageConsistency.Of(
            Uncertain.Input(58.6, 0.6, 0), Uncertain.Input(90, 0.9, 1), Uncertain.Input(1.48, 0.03, 2), Uncertain.Input(3.5, 0.03, 3));
        StageConsistency bad = StageConsistency.Of(
            Uncertain.Input(70, 0.6, 0), Uncertain.Input(90, 0.9, 1), Uncertain.Input(1.48, 0.03, 2), Uncertain.Input(3.5, 0.03, 3));

        Assert.True(good.Agrees);
        Assert.False(bad.Agrees);
        Assert.Equal(0.6503, good.PressureRatio.Value, 0.0001);
    }
}

[Properties(Arbitrary = [typeof(Readings)], MaxTest = 300)]
public sealed class AdjustmentLaws
{
    [Property]
    public bool The_advised_pressure_leads_to_the_wanted_oxygen(AnyCase any, Share wanted)
    {
        double now = any.Reading.Oxygen.Percent;
        double goal = 1 + 12 * wanted.Value;
        AdjustmentAdvice advice = Adjustment.Advise(any.Fuel, new(870), now, goal, default);
        double after = Adjustment.OxygenAfterPercent(any.Fuel, now, ManifoldPressure.FlowRatio(new Pressure(870), advice.Target))!.Value.Value;
        return Math.Abs(after - goal) < 1e-9;
    }
}
