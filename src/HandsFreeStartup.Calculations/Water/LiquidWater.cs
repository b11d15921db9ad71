using HandsFreeStartup.Calculations.Gases;

namespace HandsFreeStartup.Calculations.Water;

/// <summary>Enthalpy of liquid water, in the same thermodynamic data as the gases.</summary>
/// <remarks>NASA TM-4513 (file nasa_condensed.yaml of Cantera), 273.15 K to 600 K; −285.828 kJ/mol at 25 °C.</remarks>
public static class LiquidWater
{
    /// <summary>Enthalpy and heat capacity of the liquid.</summary>
    public static NasaPolynomial Heat { get; } =
        new(72.5575005, -0.662445402, 2.56198746e-3, -4.36591923e-6, 2.78178981e-9, -41886.5499);

    /// <summary>Heat of vaporisation at 25 °C, J/mol: 44.0037 kJ/mol (the real fluid has 43.988, IAPWS).</summary>
    public static double HeatOfVaporisation25 { get; } =
        Species.Water.Heat.Enthalpy(MolarGas.ReferenceKelvin) - Heat.Enthalpy(MolarGas.ReferenceKelvin);

    /// <summary>Heat capacity at 25 °C, J/(mol K), taken as constant for the sensible heat of condensate.</summary>
    public static double HeatCapacity25 { get; } = Heat.HeatCapacity(MolarGas.ReferenceKelvin);
}
