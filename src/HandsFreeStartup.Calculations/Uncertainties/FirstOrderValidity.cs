namespace HandsFreeStartup.Calculations.Uncertainties;

/// <summary>Whether first-order propagation is good enough, judged against a distribution propagated by Monte Carlo.</summary>
/// <remarks>
/// JCGM 101:2008, 8.1 (criterion from memory): with u written with one significant digit, both ends of the 95 % interval must agree within half a unit
/// of that digit. There is no safe ratio u(O2)/(20.9 − O2) in place of it; a dominating rectangular input fails it too.
/// </remarks>
public static class FirstOrderValidity
{
    /// <summary>97.5 % point of the standard normal distribution.</summary>
    public const double NormalPoint975 = 1.959963984540054;

    /// <summary>The 95 % interval that first order gives: value ± 1.96 u.</summary>
    public static (double Low, double High) Interval(Estimate firstOrder) =>
        (firstOrder.Value - NormalPoint975 * firstOrder.StandardUncertainty, firstOrder.Value + NormalPoint975 * firstOrder.StandardUncertainty);

    /// <summary>Half a unit of the last digit of u.</summary>
    /// <param name="standardUncertainty">u, above zero.</param>
    /// <param name="significantDigits">With which u would be stated, 1 or 2.</param>
    public static double Tolerance(double standardUncertainty, int significantDigits) =>
        0.5 * Math.Pow(10, Math.Floor(Math.Log10(standardUncertainty)) - significantDigits + 1);

    /// <summary>Whether both ends of the interval agree within the tolerance.</summary>
    /// <param name="firstOrder">Result of first-order propagation.</param>
    /// <param name="low">2.5 % point of the propagated distribution.</param>
    /// <param name="high">97.5 % point of the propagated distribution.</param>
    /// <param name="significantDigits">With which u would be stated, 1 or 2.</param>
    public static bool Holds(Estimate firstOrder, double low, double high, int significantDigits = 1)
    {
        (double first, double last) = Interval(firstOrder);
        double worst = Math.Max(Math.Abs(first - low), Math.Abs(last - high));
        return worst <= Tolerance(firstOrder.StandardUncertainty, significantDigits);
    }
}
