using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Emissions;

/// <summary>Mass of a pollutant per heat.</summary>
/// <remarks>
/// 40 CFR 60 Method 19. Dry O2: E = C K Fd · 20.9/(20.9 − O2). Wet O2: E = C K Fw · 20.9/(20.9 (1 − Bwa) − O2). Dry CO2: E = C K Fc · 100/CO2.
/// C in ppm of the same basis, K in lb/scf per ppm, E in lb per million Btu of gross input; forms seen in 40 CFR 75 Appendix F, layout from memory.
/// Not usable in very dilute gas: the rules for boilers stop at 14 % O2 or 5 % CO2.
/// </remarks>
public static class EmissionRate
{
    /// <summary>ng/J for one lb per million Btu.</summary>
    public const double NanogramsPerJoule = 0.45359237e12 / (1e6 * Quantities.HeatRate.JoulesPerBtu);

    /// <summary>Dry O2, in %, above which no rate is stated: 40 CFR 75 Appendix F, 3.3.4.1, for boilers (value from memory; its twin, 5.0 % CO2, seen).</summary>
    public const double LargestOxygenPercent = 14;

    /// <summary>From dry O2; lb per million Btu of gross input.</summary>
    /// <param name="pollutant">Which.</param>
    /// <param name="dryFactor">Fd, dscf per million Btu.</param>
    /// <param name="ppm">Dry concentration.</param>
    /// <param name="oxygenPercent">O2, % dry.</param>
    public static Uncertain FromDryOxygen(Pollutant pollutant, double dryFactor, in Uncertain ppm, in Uncertain oxygenPercent) =>
        DryOxygenFormula(pollutant.PoundsPerCubicFootPerPpm * dryFactor, ppm, oxygenPercent);

    /// <summary>From dry O2, of numbers of any kind: factor · 20.9 · C/(20.9 − O2).</summary>
    /// <param name="factor">K Fd, in the unit of the rate per ppm.</param>
    /// <param name="ppm">Dry concentration.</param>
    /// <param name="oxygenPercent">O2, % dry.</param>
    public static T DryOxygenFormula<T>(double factor, in T ppm, in T oxygenPercent) where T : struct, IFormulaNumber<T> =>
        factor * 20.9 * (ppm / (20.9 - oxygenPercent));

    /// <summary>mg/kWh for one ng/J, by definition.</summary>
    public const double MilligramsPerKilowattHour = 3.6;

    /// <summary>From wet O2; lb per million Btu of gross input.</summary>
    /// <param name="pollutant">Which.</param>
    /// <param name="wetFactor">Fw, wscf per million Btu.</param>
    /// <param name="ppm">Wet concentration.</param>
    /// <param name="oxygenPercent">O2, % wet.</param>
    /// <param name="airWaterFraction">Bwa, water of the ambient air, mole fraction.</param>
    public static Uncertain FromWetOxygen(Pollutant pollutant, double wetFactor, in Uncertain ppm, in Uncertain oxygenPercent, double airWaterFraction) =>
        pollutant.PoundsPerCubicFootPerPpm * wetFactor * 20.9 * (ppm / (20.9 * (1 - airWaterFraction) - oxygenPercent));

    /// <summary>From dry CO2; lb per million Btu of gross input.</summary>
    /// <param name="pollutant">Which.</param>
    /// <param name="carbonDioxideFactor">Fc, scf of CO2 per million Btu.</param>
    /// <param name="ppm">Dry concentration.</param>
    /// <param name="carbonDioxidePercent">CO2, % dry.</param>
    public static Uncertain FromDryCarbonDioxide(Pollutant pollutant, double carbonDioxideFactor, in Uncertain ppm, in Uncertain carbonDioxidePercent) =>
        pollutant.PoundsPerCubicFootPerPpm * carbonDioxideFactor * 100 * (ppm / carbonDioxidePercent);

    /// <summary>Per useful heat instead of input: divided by the efficiency.</summary>
    /// <param name="perInput">Rate per gross input, any unit.</param>
    /// <param name="efficiency">Useful heat over gross input, 0 to 1; the rule says which efficiency.</param>
    public static Uncertain PerOutput(in Uncertain perInput, in Uncertain efficiency) => perInput / efficiency;

    /// <summary>NOx per useful heat by the formula of air-district rules for furnaces: N = 4.566e4 P U/(H C E), ng/J (value from memory).</summary>
    /// <remarks>About 1 % below the F-factor way.</remarks>
    /// <param name="ppm">P, NOx as measured, dry.</param>
    /// <param name="carbonDioxideMaximumPercent">U, CO2 of the fuel without excess air, % dry.</param>
    /// <param name="btuPerCubicFoot">H, gross heating value.</param>
    /// <param name="carbonDioxidePercent">C, CO2 as measured, % dry.</param>
    /// <param name="seasonalEfficiencyPercent">E, annual fuel utilization efficiency, %; not a combustion efficiency.</param>
    public static double FurnaceRule(
        double ppm, double carbonDioxideMaximumPercent, double btuPerCubicFoot, double carbonDioxidePercent, double seasonalEfficiencyPercent) =>
        4.566e4 * ppm * carbonDioxideMaximumPercent / (btuPerCubicFoot * carbonDioxidePercent * seasonalEfficiencyPercent);
}
