namespace HandsFreeStartup.Calculations.Uncertainties;

/// <summary>Student's t distribution for whole degrees of freedom.</summary>
/// <remarks>Finite sums for the probability (Abramowitz and Stegun 26.7.3 and 26.7.4; from memory), inverted by bisection.</remarks>
public static class StudentDistribution
{
    /// <summary>Probability of a value up to <paramref name="t"/>.</summary>
    /// <param name="t">Any number.</param>
    /// <param name="degreesOfFreedom">1 or more.</param>
    public static double Below(double t, int degreesOfFreedom)
    {
        double theta = Math.Atan(t / Math.Sqrt(degreesOfFreedom));
        double cosine = Math.Cos(theta);
        bool odd = degreesOfFreedom % 2 == 1;
        double term = odd ? cosine : 1;
        double sum = degreesOfFreedom == 1 ? 0 : term;
        for (int j = odd ? 3 : 2; j <= degreesOfFreedom - 2; j += 2)
        {
            term *= (j - 1.0) / j * cosine * cosine;
            sum += term;
        }
        double central = odd ? 2 / Math.PI * (theta + Math.Sin(theta) * sum) : Math.Sin(theta) * sum;
        return (1 + central) / 2;
    }

    /// <summary>The value that is not exceeded with a probability.</summary>
    /// <param name="probability">0.5 to 0.9999.</param>
    /// <param name="degreesOfFreedom">1 or more.</param>
    public static double Quantile(double probability, int degreesOfFreedom)
    {
        double low = 0;
        double high = 1e4;
        for (int i = 0; i < 80; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Below(middle, degreesOfFreedom) < probability ? (middle, high) : (low, middle);
        }
        return high;
    }
}
