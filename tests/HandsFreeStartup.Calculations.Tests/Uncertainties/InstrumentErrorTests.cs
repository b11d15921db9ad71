using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Tests.Uncertainties;

public sealed class InstrumentErrorTests
{
    /// <summary>Source: rectangular distributions, JCGM 100:2008, 4.3.7 and F.2.2.1 (values from memory).</summary>
    [Fact]
    public void The_parts_of_a_reading_add_up_by_squares()
    {
        InstrumentError cell = new(Limit: 0.3, RelativeLimit: 0, Resolution: 0.1, DriftPerYear: 0.2, "data sheet");

        Assert.Equal(["data sheet", "resolution", "drift", "scatter"], cell.Parts(8, yearsSinceCalibration: 0.5, scatter: 0.04).Select(part => part.Name));
        Assert.Equal(Math.Sqrt(0.03 + 0.01 / 12 + 0.01 / 3 + 0.0016), cell.StandardUncertainty(8, yearsSinceCalibration: 0.5, scatter: 0.04), 1e-12);
        Assert.Equal(["data sheet", "resolution"], cell.Parts(8).Select(part => part.Name));
    }

    [Theory]
    [InlineData(100, 20)]
    [InlineData(1000, 50)]
    public void The_greater_of_absolute_and_relative_limit_counts(double ppm, double limit) =>
        Assert.Equal(limit / Math.Sqrt(3), InstrumentError.OfClass("flue_co")!.Parts(ppm)[0].StandardUncertainty, 1e-12);

    [Fact]
    public void A_field_that_the_class_does_not_name_gets_no_guess() => Assert.Null(InstrumentError.OfClass("draft"));

    [Fact]
    public void An_estimate_that_nobody_made_is_unknown_and_proves_nothing()
    {
        Estimate none = default;

        Assert.False(none.IsKnown);
        Assert.True(double.IsNaN(none.Value) && double.IsNaN(none.StandardUncertainty));
        Assert.Equal(Estimate.Unknown, none);
        Assert.Equal(Verdict.CannotTell, Judge.Verdict(none, new Limit(null, 400, "example", IsSafety: true)));
        Assert.Equal((7.25, 0.5), (new Estimate(7.25, 0.5).Value, new Estimate(7.25, 0.5).StandardUncertainty));
    }
}
