using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Gases;

/// <summary>Enthalpy and heat capacity of a substance by the NASA 7-coefficient form, low range.</summary>
/// <remarks>
/// cp/R = a1 + a2 T + a3 T² + a4 T³ + a5 T⁴; h/(R T) = a1 + a2 T/2 + a3 T²/3 + a4 T³/4 + a5 T⁴/5 + a6/T, T in K.
/// h includes the heat of formation. Range 200 K to 1000 K where the species says nothing else.
/// Source: McBride, Gordon and Reno, NASA TM-4513 (1993). Differs from the JANAF tables by less than 0.01 kJ/mol up to 600 K.
/// </remarks>
/// <param name="A1">Coefficient of T⁰.</param>
/// <param name="A2">Coefficient of T¹, 1/K.</param>
/// <param name="A3">Coefficient of T², 1/K².</param>
/// <param name="A4">Coefficient of T³, 1/K³.</param>
/// <param name="A5">Coefficient of T⁴, 1/K⁴.</param>
/// <param name="A6">Constant of integration of the enthalpy, K.</param>
public readonly record struct NasaPolynomial(double A1, double A2, double A3, double A4, double A5, double A6)
{
    /// <summary>Molar enthalpy including formation, J/mol.</summary>
    /// <param name="kelvin">T, K.</param>
    public double Enthalpy(double kelvin) =>
        MolarGas.Constant * (A6 + kelvin * (A1 + kelvin * (A2 / 2 + kelvin * (A3 / 3 + kelvin * (A4 / 4 + kelvin * (A5 / 5))))));

    /// <summary>Molar heat capacity at constant pressure, J/(mol K).</summary>
    /// <param name="kelvin">T, K.</param>
    public double HeatCapacity(double kelvin) =>
        MolarGas.Constant * (A1 + kelvin * (A2 + kelvin * (A3 + kelvin * (A4 + kelvin * A5))));

    /// <summary>Molar enthalpy including formation, J/mol, with the uncertainty of the temperature: dh/dT = cp.</summary>
    /// <param name="kelvin">T, K.</param>
    public Uncertain Enthalpy(in Uncertain kelvin) => kelvin.Through(Enthalpy(kelvin.Value), HeatCapacity(kelvin.Value));
}
