using HandsFreeStartup.Calculations.GasSide;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Tests.GasSide;

public sealed class MeterClockingTests
{
    /// <summary>Source: clocking rows of a trade page (hvacprotech.org, clocking_gas_meter), seen in reprint; rounded as printed there.</summary>
    [Theory]
    [InlineData(0.5, 1, 29, 62.07, 0.005)]
    [InlineData(1, 1, 40, 90, 1e-9)]
    [InlineData(2, 1, 60, 120, 1e-9)]
    [InlineData(0.25, 1, 10, 90, 1e-9)]
    [InlineData(5, 1, 36, 500, 1e-9)]
    [InlineData(1, 2, 70, 102.86, 0.005)]
    public void Clocking_gives_the_published_flow(double cubicFeet, int turns, double seconds, double cubicFeetPerHour, double rounding) =>
        Assert.Equal(cubicFeetPerHour, MeterClocking.Flow(Volume.FromCubicFeet(cubicFeet), turns, TimeSpan.FromSeconds(seconds)).CubicFeetPerHour, rounding);

    /// <summary>Source: the same page, metric dial.</summary>
    [Fact]
    public void A_metric_dial_gives_the_published_flow() =>
        Assert.Equal(79.46, MeterClocking.Flow(Volume.FromCubicMetres(0.01), 1, TimeSpan.FromSeconds(16)).CubicFeetPerHour, 0.005);

    /// <summary>Source: annex table "gas input to burner" of NFPA 54, seen in reprint, printed as whole cfh.</summary>
    [Theory]
    [InlineData(0.5, new double[] { 180, 90, 60, 45, 36, 30 })]
    [InlineData(1, new double[] { 360, 180, 120, 90, 72, 60 })]
    [InlineData(2, new double[] { 720, 360, 240, 180, 144, 120 })]
    [InlineData(5, new double[] { 1800, 900, 600, 450, 360, 300 })]
    public void Clocking_gives_the_annex_table(double cubicFeet, double[] printed)
    {
        for (int i = 0; i < printed.Length; i++)
        {
            VolumeFlow flow = MeterClocking.Flow(Volume.FromCubicFeet(cubicFeet), 1, TimeSpan.FromSeconds(10 * (i + 1)));
            Assert.Equal(printed[i], flow.CubicFeetPerHour, 1e-9);
        }
    }

    /// <summary>Source: the clocking page, 90 cfh at 1035 Btu/ft³.</summary>
    [Fact]
    public void Input_is_flow_times_heating_value() =>
        Assert.Equal(93150, MeterClocking.Input(VolumeFlow.FromCubicFeetPerHour(90), 1, HeatingValue.FromBtuPerCubicFoot(1035)).BtuPerHour, 1e-6);

    [Fact]
    public void Half_a_second_of_doubt_in_forty_seconds_is_one_and_a_quarter_percent()
    {
        Uncertain flow = MeterClocking.Flow(1.0, 1, Uncertain.Input(40, 0.5, 0));

        Assert.Equal(0.0125, flow.StandardUncertainty / flow.Value, 1e-12);
    }

    /// <summary>Source: arithmetic of the square-root law, calculated.</summary>
    [Theory]
    [InlineData(3.5, 3.2, 0.9562)]
    [InlineData(3.5, 1.7, 0.6969)]
    public void Flow_goes_with_the_square_root_of_manifold_pressure(double before, double after, double ratio) =>
        Assert.Equal(ratio, ManifoldPressure.FlowRatio(Pressure.FromInchesOfWater(before), Pressure.FromInchesOfWater(after)), 0.00005);

    /// <summary>Source: arithmetic of the square-root law, calculated.</summary>
    [Theory]
    [InlineData(1.03, 3.713)]
    [InlineData(0.65, 1.479)]
    public void A_wanted_flow_needs_its_square_in_pressure(double ratio, double inches) =>
        Assert.Equal(inches, ManifoldPressure.ForFlowRatio(Pressure.FromInchesOfWater(3.5), ratio).InchesOfWater, 0.0005);
}
