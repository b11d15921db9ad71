namespace HandsFreeStartup.Calculations.Uncertainties;

/// <summary>How the possible values of an input are spread.</summary>
public enum Distribution
{
    /// <summary>Gaussian.</summary>
    Normal,
    /// <summary>Equally likely within value ± u √3.</summary>
    Rectangular,
}

/// <summary>An input of a Monte Carlo propagation.</summary>
/// <param name="Value">The best value.</param>
/// <param name="StandardUncertainty">u.</param>
/// <param name="Distribution">How it is spread.</param>
public readonly record struct RandomInput(double Value, double StandardUncertainty, Distribution Distribution);

/// <summary>What came out of a Monte Carlo propagation.</summary>
/// <param name="Mean">Mean of the draws.</param>
/// <param name="StandardDeviation">Standard deviation of the draws.</param>
/// <param name="Low">2.5 % point.</param>
/// <param name="High">97.5 % point.</param>
public readonly record struct PropagatedDistribution(double Mean, double StandardDeviation, double Low, double High);

/// <summary>Propagation of distributions by drawing, where first order fails.</summary>
/// <remarks>
/// JCGM 101:2008 (GUM Supplement 1; from memory): independent inputs, no truncation, percentiles of the sorted draws with linear interpolation. The same seed gives the same
/// result: numbers from SplitMix64, normal ones by the polar method of Marsaglia.
/// </remarks>
public static class MonteCarlo
{
    /// <summary>Draws that settle two digits of u and the ends of a 95 % interval.</summary>
    public const int Draws = 2_000_000;

    /// <summary>Propagates the inputs through a model.</summary>
    /// <param name="model">Result from one draw of every input, in order.</param>
    /// <param name="inputs">The inputs.</param>
    /// <param name="seed">Any number.</param>
    /// <param name="draws">At least 1000.</param>
    public static PropagatedDistribution Propagate(
        Func<ReadOnlySpan<double>, double> model, ReadOnlySpan<RandomInput> inputs, ulong seed, int draws = Draws)
    {
        double[] results = new double[draws];
        RandomNumbers numbers = new(seed);
        Span<double> drawn = stackalloc double[inputs.Length];
        double mean = 0;
        double squares = 0;
        for (int i = 0; i < draws; i++)
        {
            for (int j = 0; j < inputs.Length; j++)
            {
                drawn[j] = numbers.Next(inputs[j]);
            }
            double result = results[i] = model(drawn);
            double delta = result - mean;
            mean += delta / (i + 1);
            squares += delta * (result - mean);
        }
        return new(mean, Math.Sqrt(squares / (draws - 1)), Percentile(results, 0.025), Percentile(results, 0.975));
    }

    static double Percentile(Span<double> values, double share)
    {
        double place = share * (values.Length - 1);
        int below = (int)place;
        double first = OrderStatistic.Select(values, below);
        double second = first;
        if (below + 1 < values.Length)
        {
            second = double.PositiveInfinity;
            foreach (double value in values[(below + 1)..])
            {
                second = Math.Min(second, value);
            }
        }
        return first + (place - below) * (second - first);
    }
}
