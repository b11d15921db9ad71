using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Water;

/// <summary>Saturation pressure of water and its inverse.</summary>
/// <remarks>
/// Over liquid: IAPWS-IF97 region 4, equations 30 and 31, 273.15 K to 647.096 K; within 7.1e-5 of IAPWS-95.
/// Over ice: IAPWS R14-08, 190 K to 273.16 K. All in Pa and K.
/// </remarks>
public static class SaturationLine
{
    const double N1 = 0.11670521452767e4, N2 = -0.72421316703206e6, N3 = -0.17073846940092e2, N4 = 0.12020824702470e5,
        N5 = -0.32325550322333e7, N6 = 0.14915108613530e2, N7 = -0.48232657361591e4, N8 = 0.40511340542057e6,
        N9 = -0.23855557567849, N10 = 0.65017534844798e3;

    const double TripleKelvin = 273.16, TriplePascals = 611.657;

    /// <summary>Saturation pressure, Pa; over ice below 0 °C, over liquid from 0 °C.</summary>
    /// <param name="kelvin">T, K; 190 K to 647.096 K.</param>
    public static double Pressure(double kelvin) => kelvin < 273.15 ? OverIce(kelvin) : OverLiquid(kelvin);

    /// <summary>Saturation pressure, Pa, with the uncertainty of the temperature.</summary>
    /// <param name="kelvin">T, K; 190 K to 647.096 K.</param>
    public static Uncertain Pressure(in Uncertain kelvin)
    {
        double pascals = Pressure(kelvin.Value);
        return kelvin.Through(pascals, Slope(kelvin.Value, pascals));
    }

    /// <summary>dp/dT on the saturation line, Pa/K.</summary>
    /// <param name="kelvin">T, K; 190 K to 647.096 K.</param>
    public static double Slope(double kelvin) => Slope(kelvin, Pressure(kelvin));

    /// <summary>Saturation temperature over liquid, K: the dew point of a partial pressure.</summary>
    /// <param name="pascals">Partial pressure of water, Pa; 611 Pa (0 °C) to 22.064 MPa.</param>
    public static double Temperature(double pascals)
    {
        double beta = Math.Sqrt(Math.Sqrt(pascals / 1e6));
        double e = beta * beta + N3 * beta + N6;
        double f = N1 * beta * beta + N4 * beta + N7;
        double g = N2 * beta * beta + N5 * beta + N8;
        double d = 2 * g / (-f - Math.Sqrt(f * f - 4 * e * g));
        return (N10 + d - Math.Sqrt((N10 + d) * (N10 + d) - 4 * (N9 + N10 * d))) / 2;
    }

    /// <summary>Saturation temperature over liquid, K, with the uncertainty of the partial pressure.</summary>
    /// <param name="pascals">Partial pressure of water, Pa; 611 Pa to 22.064 MPa.</param>
    public static Uncertain Temperature(in Uncertain pascals)
    {
        double kelvin = Temperature(pascals.Value);
        return pascals.Through(kelvin, 1 / LiquidSlope(kelvin, pascals.Value));
    }

    static double OverLiquid(double kelvin)
    {
        double theta = kelvin + N9 / (kelvin - N10);
        double a = theta * theta + N1 * theta + N2;
        double b = N3 * theta * theta + N4 * theta + N5;
        double c = N6 * theta * theta + N7 * theta + N8;
        double beta = 2 * c / (-b + Math.Sqrt(b * b - 4 * a * c));
        return 1e6 * beta * beta * beta * beta;
    }

    static double OverIce(double kelvin)
    {
        double theta = kelvin / TripleKelvin;
        double exponent = -21.2144006 * Math.Pow(theta, 0.00333333333) + 27.3203819 * Math.Pow(theta, 1.20666667)
            - 6.10598130 * Math.Pow(theta, 1.70333333);
        return TriplePascals * Math.Exp(exponent / theta);
    }

    static double Slope(double kelvin, double pascals) =>
        kelvin < 273.15 ? IceSlope(kelvin, pascals) : LiquidSlope(kelvin, pascals);

    // The line is F(β, θ) = 0 with β = p^(1/4) in MPa; dβ/dθ = -(∂F/∂θ)/(∂F/∂β).
    static double LiquidSlope(double kelvin, double pascals)
    {
        double beta = Math.Sqrt(Math.Sqrt(pascals / 1e6));
        double theta = kelvin + N9 / (kelvin - N10);
        double byTheta = beta * beta * (2 * theta + N1) + beta * (2 * N3 * theta + N4) + 2 * N6 * theta + N7;
        double byBeta = 2 * beta * (theta * theta + N1 * theta + N2) + N3 * theta * theta + N4 * theta + N5;
        double thetaByKelvin = 1 - N9 / ((kelvin - N10) * (kelvin - N10));
        return 4e6 * beta * beta * beta * (-byTheta / byBeta) * thetaByKelvin;
    }

    static double IceSlope(double kelvin, double pascals)
    {
        double theta = kelvin / TripleKelvin;
        double byTheta = 21.2144006 * 0.99666666667 * Math.Pow(theta, -1.99666666667)
            + 27.3203819 * 0.20666667 * Math.Pow(theta, -0.79333333) - 6.10598130 * 0.70333333 * Math.Pow(theta, -0.29666667);
        return pascals * byTheta / TripleKelvin;
    }
}
