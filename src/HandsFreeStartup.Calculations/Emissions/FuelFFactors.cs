using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Quantities;

namespace HandsFreeStartup.Calculations.Emissions;

/// <summary>Volumes of stoichiometric flue gas per gross heat of the fuel, at 68 °F and 29.92 in. of mercury.</summary>
/// <remarks>
/// National defaults: 40 CFR 60 Method 19 and 40 CFR 75 Appendix F, table 1 (Fd and Fc seen in a reprint, Fw from memory). They differ from the fuel analysis
/// by up to 2.6 % (propane and butane Fd and Fw), which is no error of either.
/// </remarks>
/// <param name="Dry">Fd, dry standard cubic feet per million Btu.</param>
/// <param name="Wet">Fw, wet standard cubic feet per million Btu.</param>
/// <param name="CarbonDioxide">Fc, standard cubic feet of CO2 per million Btu.</param>
public readonly record struct FuelFFactors(double Dry, double Wet, double CarbonDioxide)
{
    /// <summary>National default for natural gas.</summary>
    public static FuelFFactors NaturalGas { get; } = new(8710, 10610, 1040);

    /// <summary>National default for propane.</summary>
    public static FuelFFactors Propane { get; } = new(8710, 10200, 1190);

    /// <summary>National default for butane.</summary>
    public static FuelFFactors Butane { get; } = new(8710, 10390, 1250);

    /// <summary>From the composition: complete combustion in air with 20.9 % O2, gross heating value at 25 °C.</summary>
    public static FuelFFactors Of(Fuel fuel)
    {
        Stoichiometry theory = Stoichiometry.Of(fuel, DryAir.WithTradeOxygen);
        double molesPerCubicFoot = MolarGas.MolesPerCubicMetre(AbsolutePressure.FromInchesOfMercury(29.92), Temperature.FromFahrenheit(68))
            * Volume.CubicMetresPerCubicFoot;
        double perMillionBtu = 1e6 * HeatRate.JoulesPerBtu / fuel.HigherHeatingValue / molesPerCubicFoot;
        return new(theory.DryFlue * perMillionBtu, theory.WetFlue * perMillionBtu, theory.CarbonDioxide * perMillionBtu);
    }

    /// <summary>Fd from an ultimate analysis: 1e6 (3.64 H + 1.53 C + 0.57 S + 0.14 N − 0.46 O)/GCV (Method 19, equation 19-13; 1.53 seen, the rest from memory).</summary>
    /// <param name="carbon">C, mass %.</param>
    /// <param name="hydrogen">H, mass %.</param>
    /// <param name="sulphur">S, mass %.</param>
    /// <param name="nitrogen">N, mass %.</param>
    /// <param name="oxygen">O, mass %.</param>
    /// <param name="btuPerPound">Gross heating value, Btu/lb.</param>
    public static double DryFromUltimateAnalysis(double carbon, double hydrogen, double sulphur, double nitrogen, double oxygen, double btuPerPound) =>
        1e6 * (3.64 * hydrogen + 1.53 * carbon + 0.57 * sulphur + 0.14 * nitrogen - 0.46 * oxygen) / btuPerPound;

    /// <summary>Fuel factor Fo that goes with them: 0.209 Fd/Fc (40 CFR 60; value from memory).</summary>
    public double FuelFactor => 0.209 * Dry / CarbonDioxide;
}
