using HandsFreeStartup.Calculations.Gases;

namespace HandsFreeStartup.Calculations.Fuels;

/// <summary>A gas and how much of it a fuel holds.</summary>
/// <param name="Species">Which gas.</param>
/// <param name="MoleFraction">Moles per mole of dry fuel, 0 to 1.</param>
public readonly record struct FuelComponent(Species Species, double MoleFraction);
