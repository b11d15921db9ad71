using HandsFreeStartup.Calculations.Fuels;

namespace HandsFreeStartup.Calculations.Combustion;

/// <summary>Air and water from a full dry analysis (CO2, CO, O2 measured, rest N2) by carbon and nitrogen balance.</summary>
/// <remarks>
/// Carbon: dry flue D = C/(CO2 + CO). Nitrogen: O2 of the air = (D · N2 − N/2)/(N2/O2 of air). Water = H/2. The oxygen balance is not used:
/// with O2, CO2 and the fuel known the data are over-determined, and a large difference between the balances shows a bad reading.
/// Textbook method; readings as fractions of the dry flue.
/// </remarks>
/// <param name="DryFlue">Moles of dry flue per mole of fuel.</param>
/// <param name="TheoreticalAirRatio">Actual air over air for complete combustion; 1.</param>
/// <param name="WaterFraction">Water in the wet flue, dry air; mole fraction.</param>
public readonly record struct DryAnalysis(double DryFlue, double TheoreticalAirRatio, double WaterFraction)
{
    /// <summary>N2 per O2 of air that textbooks use.</summary>
    public const double TextbookNitrogenPerOxygen = 3.76;

    /// <summary>The balances.</summary>
    /// <param name="fuel">A fuel with carbon.</param>
    /// <param name="carbonDioxide">CO2, fraction of the dry flue.</param>
    /// <param name="carbonMonoxide">CO, fraction of the dry flue; together with CO2 above zero.</param>
    /// <param name="oxygen">O2, fraction of the dry flue.</param>
    /// <param name="nitrogenPerOxygen">N2 per O2 of the air.</param>
    public static DryAnalysis Of(Fuel fuel, double carbonDioxide, double carbonMonoxide, double oxygen, double nitrogenPerOxygen)
    {
        double dry = fuel.Atoms.Carbon / (carbonDioxide + carbonMonoxide);
        double nitrogen = dry * (1 - carbonDioxide - carbonMonoxide - oxygen);
        double oxygenOfAir = (nitrogen - fuel.Atoms.Nitrogen / 2) / nitrogenPerOxygen;
        double water = fuel.Atoms.Hydrogen / 2;
        return new(dry, oxygenOfAir / fuel.StoichiometricOxygen, water / (dry + water));
    }
}
