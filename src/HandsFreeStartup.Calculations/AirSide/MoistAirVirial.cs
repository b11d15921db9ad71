namespace HandsFreeStartup.Calculations.AirSide;

/// <summary>Second virial coefficient of a mixture of dry air and water vapour, m³/mol, and its second derivative.</summary>
/// <remarks>
/// B = xa² Baa + 2 xa xw Baw + xw² Bww. Baa and Baw: Hyland and Wexler, ASHRAE Trans. 89-2A (1983), 500; Bww: Harvey and Lemmon,
/// J. Phys. Chem. Ref. Data 33 (2004), 369. Coefficients from memory. −20 °C to 100 °C.
/// </remarks>
readonly record struct MoistAirVirial(double Value, double SecondDerivative)
{
    public static MoistAirVirial At(double kelvin, double waterFraction)
    {
        double dryFraction = 1 - waterFraction;
        MoistAirVirial air = Powers(kelvin, [(34.9568e-6, 0), (-6687.72e-6, -1), (-2.10141, -2), (92.4746, -3)]);
        MoistAirVirial cross = Powers(kelvin, [(32.366097e-6, 0), (-14113.8e-6, -1), (-1.244535, -2), (-2348.789, -4)]);
        MoistAirVirial water = Powers(kelvin, [Harvey(0.34404, -0.5), Harvey(-0.75826, -0.8), Harvey(-24.219, -3.35), Harvey(-3978.2, -8.3)]);
        double aa = dryFraction * dryFraction;
        double aw = 2 * dryFraction * waterFraction;
        double ww = waterFraction * waterFraction;
        return new(
            aa * air.Value + aw * cross.Value + ww * water.Value,
            aa * air.SecondDerivative + aw * cross.SecondDerivative + ww * water.SecondDerivative);
    }

    // The source has 1000 cm³/mol times a power of T/100 K.
    static (double, double) Harvey(double coefficient, double power) => (1e-3 * coefficient * Math.Pow(100, -power), power);

    static MoistAirVirial Powers(double kelvin, ReadOnlySpan<(double Coefficient, double Power)> terms)
    {
        double value = 0;
        double second = 0;
        foreach ((double coefficient, double power) in terms)
        {
            double term = coefficient * Math.Pow(kelvin, power);
            value += term;
            second += term * power * (power - 1) / (kelvin * kelvin);
        }
        return new(value, second);
    }
}
