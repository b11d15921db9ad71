using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Compute.Tables;

/// <summary>First-order propagation and Monte Carlo beside it. The drawn cells are empty where a draw could reach the pole of the formula.</summary>
/// <param name="FirstOrder">Value and standard uncertainty.</param>
/// <param name="Drawn">What Monte Carlo gives; null where it would mean nothing.</param>
readonly record struct Propagation(Estimate FirstOrder, PropagatedDistribution? Drawn)
{
    /// <summary>Seed of every row, so that the same row gives the same result in any file.</summary>
    const ulong Seed = 20240;

    /// <summary>A normal draw goes beyond this many u on one side with a probability of 3e-8: percentiles do not feel it.</summary>
    const double NormalReach = 5.4;

    public static Propagation Of(Uncertain firstOrder, Func<ReadOnlySpan<double>, double> model, RandomInput[] inputs, RandomInput oxygen, double pole)
    {
        double reach = oxygen.StandardUncertainty * (oxygen.Distribution == Distribution.Normal ? NormalReach : Math.Sqrt(3));
        return new(firstOrder.Estimate, oxygen.Value + reach > pole ? null : MonteCarlo.Propagate(model, inputs, Seed));
    }

    public (double Low, double High) Interval => FirstOrderValidity.Interval(FirstOrder);

    public bool IsValid => Drawn is { } drawn && FirstOrderValidity.Holds(FirstOrder, drawn.Low, drawn.High);

    public static RandomInput Input(RowInputs inputs, string value, string uncertainty, string distribution, double least, double most) => new(
        inputs.Number(value, least, most), inputs.Number(uncertainty, 0),
        inputs.OneOf(distribution, "normal", "rectangular") == "normal" ? Distribution.Normal : Distribution.Rectangular);
}
