using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Tests.Support;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Tests.Judgement;

public sealed class ConformityTests
{
    /// <summary>Source: Reference/guarded_acceptance.csv (SciPy's normal distribution).</summary>
    [Fact]
    public void Every_row_of_the_guarded_acceptance_table_is_met()
    {
        Differences differences = new();
        foreach (ReferenceTable.Row row in ReferenceTable.Rows("guarded_acceptance"))
        {
            Limit limit = new(
                row.Has("lower_limit") ? row.Number("lower_limit") : null,
                row.Has("upper_limit") ? row.Number("upper_limit") : null, "table", IsSafety: false);
            Estimate measured = new(row.Number("measured_value"), row.Number("standard_uncertainty"));
            Conformity conformity = Conformity.Of(measured, limit)!.Value;

            differences.Compare(row, "expanded_uncertainty_k2", measured.ExpandedUncertainty, 0, 1e-15);
            differences.Compare(row, "probability_nonconforming", conformity.Nonconforming, 1e-15, 1e-11);
            differences.Compare(row, "probability_conforming", conformity.Conforming, 1e-15, 1e-11);
            differences.Compare(row, "probability_false_acceptance_if_accepted", conformity.FalseAcceptance ?? double.NaN, 1e-15, 1e-11);
            differences.Compare(row, "probability_false_rejection_if_rejected", conformity.FalseAcceptance is null ? conformity.Conforming : double.NaN, 1e-15, 1e-11);
            differences.Compare(row, "guarded_acceptance_low", conformity.AcceptanceLow ?? double.NaN, 1e-9, 0);
            differences.Compare(row, "guarded_acceptance_high", conformity.AcceptanceHigh ?? double.NaN, 1e-9, 0);
            Assert.Equal(row.Has("probability_false_acceptance_if_accepted"), conformity.FalseAcceptance is not null);
        }
        differences.AssertNone(atLeast: 125 * 5);
    }

    /// <summary>Source: normal distribution, calculated; limit 400, U 32.6.</summary>
    [Theory]
    [InlineData(360, 0.007)]
    [InlineData(385, 0.179)]
    [InlineData(420, 0.890)]
    public void Probability_above_the_limit_of_the_worked_example(double measured, double probability) =>
        Assert.Equal(probability, Conformity.Of(new(measured, 16.3), new(null, 400, "example", IsSafety: true))!.Value.Nonconforming, 0.0006);

    [Fact]
    public void Without_uncertainty_there_is_no_probability() =>
        Assert.Null(Conformity.Of(Estimate.Exactly(1), new(null, 400, "example", IsSafety: true)));

    /// <summary>Source: standard tables of the normal distribution; value from memory.</summary>
    [Theory]
    [InlineData(0, 0.5)]
    [InlineData(1, 0.8413447460685429)]
    [InlineData(1.959963984540054, 0.975)]
    [InlineData(3, 0.9986501019683699)]
    [InlineData(-3, 0.0013498980316300933)]
    [InlineData(-6, 9.865876450376946e-10)]
    [InlineData(-10, 7.619853024160487e-24)]
    public void The_normal_distribution_as_tabulated(double z, double probability) =>
        Assert.Equal(probability, NormalDistribution.Below(z), 1e-13 * probability);

    /// <summary>Source: standard tables of Student's t; value from memory.</summary>
    [Theory]
    [InlineData(0.95, 1, 6.314)]
    [InlineData(0.95, 2, 2.920)]
    [InlineData(0.975, 3, 3.182)]
    [InlineData(0.95, 10, 1.812)]
    [InlineData(0.975, 29, 2.045)]
    [InlineData(0.99, 120, 2.358)]
    public void Students_distribution_as_tabulated(double probability, int degreesOfFreedom, double t) =>
        Assert.Equal(t, StudentDistribution.Quantile(probability, degreesOfFreedom), 0.0006);
}
