using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;

namespace HandsFreeStartup.Calculations.Combustion;

/// <summary>Complete combustion of one mole of dry fuel in exactly the air that it needs.</summary>
/// <remarks>
/// Element balances: O2 needed = C + H/4 − O/2; air = O2 needed / x(O2); CO2 = C + CO2 of the air; H2O = H/2;
/// dry flue = CO2 + N/2 + everything of the air but O2 and CO2. Moles per mole of fuel. Exact for an ideal gas.
/// </remarks>
/// <param name="DryAir">Theoretical dry air.</param>
/// <param name="DryFlue">Flue gas without its water.</param>
/// <param name="CarbonDioxide">CO2.</param>
/// <param name="Water">H2O.</param>
public readonly record struct Stoichiometry(double DryAir, double DryFlue, double CarbonDioxide, double Water)
{
    /// <summary>The balances for one fuel and one air.</summary>
    public static Stoichiometry Of(Fuel fuel, DryAir air)
    {
        double dryAir = fuel.StoichiometricOxygen / air.Oxygen;
        double dryFlue = fuel.Atoms.Carbon + fuel.Atoms.Nitrogen / 2 + fuel.Atoms.Argon + air.Rest * dryAir;
        return new(dryAir, dryFlue, fuel.Atoms.Carbon + air.CarbonDioxide * dryAir, fuel.Atoms.Hydrogen / 2);
    }

    /// <summary>Flue gas with its water as vapour.</summary>
    public double WetFlue => DryFlue + Water;

    /// <summary>Largest CO2 that this fuel can show in the dry flue, a fraction of one.</summary>
    public double CarbonDioxideMaximum => CarbonDioxide / DryFlue;
}
