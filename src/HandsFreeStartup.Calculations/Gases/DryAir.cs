namespace HandsFreeStartup.Calculations.Gases;

/// <summary>Dry combustion air by mole fractions, which add up to one.</summary>
/// <param name="Oxygen">O2.</param>
/// <param name="Nitrogen">N2.</param>
/// <param name="Argon">Ar.</param>
/// <param name="CarbonDioxide">CO2.</param>
public readonly record struct DryAir(double Oxygen, double Nitrogen, double Argon = 0, double CarbonDioxide = 0)
{
    /// <summary>The convention of every result here: 20.95 % O2, the rest (argon too) counted as N2.</summary>
    public static DryAir Conventional { get; } = new(0.2095, 0.7905);

    /// <summary>The trade's 20.9 % O2, for the formulas that are defined with it.</summary>
    public static DryAir WithTradeOxygen { get; } = new(0.209, 0.791);

    /// <summary>Molar mass of real dry air, kg/mol, against which relative densities are stated (28.96546 g/mol, reference equation of state for air).</summary>
    public const double MolarMass = 0.02896546;

    /// <summary>Everything but oxygen.</summary>
    public double Rest => Nitrogen + Argon + CarbonDioxide;
}
