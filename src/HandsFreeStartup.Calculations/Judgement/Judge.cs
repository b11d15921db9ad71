using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Judgement;

/// <summary>Compares a value and its uncertainty with a limit, unrounded.</summary>
/// <remarks>
/// ILAC-G8:09/2019 section 4.2.3, non-binary statement with guard band w = U = 2 u (seen). A value exactly on the border of two zones belongs
/// to the better one. With two limits closer together than 2 U there is no pass zone. The rule is agreed before measuring.
/// </remarks>
public static class Judge
{
    /// <summary>The zone in which the value lies; <see cref="Judgement.Verdict.CannotTell"/> when there is no value that means anything.</summary>
    /// <exception cref="ArgumentException">The limit has no bound, or its bounds are no numbers or in the wrong order.</exception>
    public static Verdict Verdict(Estimate? value, Limit limit)
    {
        double lower = limit.Lower ?? double.NegativeInfinity;
        double upper = limit.Upper ?? double.PositiveInfinity;
        if (!(lower <= upper) || (double.IsInfinity(lower) && double.IsInfinity(upper)))
        {
            throw new ArgumentException($"A limit needs a lower or an upper bound, in this order; {limit.Source} gives {limit.Lower} and {limit.Upper}.", nameof(limit));
        }
        if (value is not { IsKnown: true } known)
        {
            return Judgement.Verdict.CannotTell;
        }
        double x = known.Value;
        double guard = known.ExpandedUncertainty;
        return x >= lower + guard && x <= upper - guard ? Judgement.Verdict.Pass
            : x >= lower && x <= upper ? Judgement.Verdict.ConditionalPass
            : x >= lower - guard && x <= upper + guard ? Judgement.Verdict.ConditionalFail
            : Judgement.Verdict.Fail;
    }

    /// <summary>Whether the verdict is enough to go on: for a safety limit only a pass, else a conditional pass too.</summary>
    /// <remarks>Inside the guard band of a safety limit nothing is proven: measure again with a better instrument or longer, else treat as failed.</remarks>
    public static bool IsProven(Verdict verdict, Limit limit) =>
        verdict == Judgement.Verdict.Pass || (verdict == Judgement.Verdict.ConditionalPass && !limit.IsSafety);
}
