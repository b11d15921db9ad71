namespace HandsFreeStartup.Calculations.Quantities;

/// <summary>A share of a whole: gas content by volume (equal to mole fraction), relative humidity, efficiency.</summary>
/// <param name="Value">1 is the whole.</param>
public readonly record struct Fraction(double Value)
{
    /// <summary>From percent.</summary>
    public static Fraction FromPercent(double percent) => new(percent / 100);

    /// <summary>From parts per million.</summary>
    public static Fraction FromPartsPerMillion(double ppm) => new(ppm / 1e6);

    /// <summary>Percent.</summary>
    public double Percent => Value * 100;

    /// <summary>Parts per million.</summary>
    public double PartsPerMillion => Value * 1e6;
}
