namespace HandsFreeStartup.Calculations.Uncertainties;

/// <summary>How an expanded uncertainty is rounded for showing: two digits where the first is 1 or 2, else one, always up, so that no doubt is rounded away.</summary>
/// <remarks>One or two digits suffice, and rounding up is permitted (JCGM 100:2008, 7.2.6; value from memory); when to keep two is common practice, no source.</remarks>
public static class RoundedUncertainty
{
    /// <summary>What is said where no uncertainty is stated. It is never zero.</summary>
    public const string NoneStated = "no uncertainty stated";

    /// <summary>More is no uncertainty of anything that is measured here.</summary>
    const double Largest = 1e15;

    /// <summary>Noise of binary fractions is no reason to round up.</summary>
    const int DigitsOfNoise = 6;

    /// <summary>The rounded uncertainty without zeros at its end; null where none is stated, which is never the same as zero.</summary>
    /// <param name="expanded">U with k = 2, in the unit of its value.</param>
    public static decimal? Of(double? expanded)
    {
        if (expanded is not { } stated || !double.IsFinite(stated) || stated <= 1 / Largest || stated > Largest)
        {
            return null;
        }

        int first = (int)Math.Floor(Math.Log10(stated));
        double lead = stated / Math.Pow(10, first);
        int decimals = (lead < 3 ? 1 : 0) - first;
        decimal scaled = Math.Ceiling(Math.Round((decimal)(stated * Math.Pow(10, decimals)), DigitsOfNoise));
        decimal rounded = scaled * Power(-decimals);
        return rounded / 1.0000000000000000000000000000m;
    }

    /// <summary>Decimals that <paramref name="uncertainty"/> is shown with.</summary>
    public static int Decimals(decimal uncertainty) => (uncertainty / 1.0000000000000000000000000000m).Scale;

    static decimal Power(int exponent) => exponent >= 0 ? (decimal)Math.Pow(10, exponent) : 1 / (decimal)Math.Pow(10, -exponent);
}
