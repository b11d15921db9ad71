using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Judgement;

/// <summary>How likely a true value keeps a limit, and where guarded acceptance ends.</summary>
/// <remarks>
/// True value normal around the measured one with standard deviation u, nothing known before (JCGM 106:2012; from memory). Accepting a measured value has
/// then the probability of nonconformity as its risk. Guarded acceptance: limit drawn in by U = 2 u.
/// </remarks>
/// <param name="Conforming">Probability that the true value keeps the limit.</param>
/// <param name="Nonconforming">Probability that it does not.</param>
/// <param name="FalseAcceptance">Risk of accepting; null where the measured value lies outside and would not be accepted.</param>
/// <param name="AcceptanceLow">Smallest value that passes with the guard band; null without lower limit.</param>
/// <param name="AcceptanceHigh">Largest value that passes with the guard band; null without upper limit.</param>
public readonly record struct Conformity(
    double Conforming, double Nonconforming, double? FalseAcceptance, double? AcceptanceLow, double? AcceptanceHigh)
{
    /// <summary>Evaluates a value against a limit; null when there is no value that means anything, or no uncertainty.</summary>
    public static Conformity? Of(Estimate value, Limit limit)
    {
        if (!value.IsKnown || value.StandardUncertainty == 0)
        {
            return null;
        }
        double u = value.StandardUncertainty;
        double toLower = ((limit.Lower ?? double.NegativeInfinity) - value.Value) / u;
        double toUpper = ((limit.Upper ?? double.PositiveInfinity) - value.Value) / u;
        double nonconforming = NormalDistribution.Below(toLower) + NormalDistribution.Above(toUpper);
        // The smaller tails are subtracted from one another, so nothing is lost far outside of the limits.
        double conforming = toLower > 0
            ? NormalDistribution.Above(toLower) - NormalDistribution.Above(toUpper)
            : NormalDistribution.Below(toUpper) - NormalDistribution.Below(toLower);
        bool inside = toLower <= 0 && toUpper >= 0;
        return new(conforming, nonconforming, inside ? nonconforming : null,
            limit.Lower + value.ExpandedUncertainty, limit.Upper - value.ExpandedUncertainty);
    }
}
