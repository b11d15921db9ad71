using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Water;

namespace HandsFreeStartup.Calculations.Fuels;

/// <summary>A dry fuel gas by composition, with all that follows from it.</summary>
/// <remarks>Heating values: products CO2, H2O, N2; gross with liquid water, net with vapour; ideal gas; per mole of fuel.</remarks>
public sealed partial class Fuel
{
    /// <summary>Largest amount by which mole fractions may miss one before they are refused; below it they are scaled to one.</summary>
    /// <remarks>Published analyses are rounded to 0.01 %; a forgotten component misses by more. Common practice, no source.</remarks>
    public const double LargestSumError = 0.002;

    Fuel(string id, string name, ImmutableArray<FuelComponent> composition)
    {
        Id = id;
        Name = name;
        Composition = composition;
        foreach (FuelComponent component in composition)
        {
            Atoms += component.MoleFraction * component.Species.Atoms;
        }
        MolarMass = Atoms.MolarMass;
        HigherHeatingValue = HeatOfCombustion(MolarGas.ReferenceKelvin);
        LowerHeatingValue = HigherHeatingValue - Atoms.Hydrogen / 2 * LiquidWater.HeatOfVaporisation25;
    }

    /// <summary>Stable name, used in files: lower case with hyphens.</summary>
    public string Id { get; }

    /// <summary>As shown.</summary>
    public string Name { get; }

    /// <summary>The gases; mole fractions add up to one.</summary>
    public ImmutableArray<FuelComponent> Composition { get; }

    /// <summary>Atoms per mole of fuel.</summary>
    public Atoms Atoms { get; }

    /// <summary>Molar mass, kg/mol.</summary>
    public double MolarMass { get; }

    /// <summary>Gross heating value at 25 °C, J/mol.</summary>
    public double HigherHeatingValue { get; }

    /// <summary>Net heating value at 25 °C, J/mol.</summary>
    public double LowerHeatingValue { get; }

    /// <summary>Relative density (specific gravity) of the ideal gas: molar mass over that of real air.</summary>
    public double RelativeDensity => MolarMass / DryAir.MolarMass;

    /// <summary>Moles of O2 that burn one mole of fuel completely: C + H/4 − O/2.</summary>
    public double StoichiometricOxygen => Atoms.Carbon + Atoms.Hydrogen / 4 - Atoms.Oxygen / 2;

    /// <summary>A fuel of the user's own.</summary>
    /// <param name="id">Stable name.</param>
    /// <param name="name">As shown.</param>
    /// <param name="composition">Gases with mole fractions; a gas may come once only.</param>
    /// <exception cref="ArgumentException">A fraction is negative or not a number, a gas comes twice, the sum is not one, or nothing in it burns.</exception>
    public static Fuel FromComposition(string id, string name, params ReadOnlySpan<FuelComponent> composition)
    {
        double sum = 0;
        HashSet<string> seen = [];
        foreach (FuelComponent component in composition)
        {
            if (!(component.MoleFraction >= 0))
            {
                throw new ArgumentException($"Fuel {id}: the mole fraction of {component.Species.Symbol} is {component.MoleFraction}; give 0 to 1.");
            }
            if (!seen.Add(component.Species.Symbol))
            {
                throw new ArgumentException($"Fuel {id}: {component.Species.Symbol} comes twice; give each gas once.");
            }
            sum += component.MoleFraction;
        }
        if (!(Math.Abs(sum - 1) <= LargestSumError))
        {
            throw new ArgumentException($"Fuel {id}: the mole fractions add up to {sum:0.#####}; they must add up to 1.");
        }
        Fuel fuel = new(id, name, Scaled(composition, sum));
        return fuel.StoichiometricOxygen > 0 && fuel.LowerHeatingValue > 0
            ? fuel
            : throw new ArgumentException($"Fuel {id}: nothing in it burns.");
    }

    /// <summary>Gross or net heating value when fuel, oxygen and products are at another temperature than 25 °C, J/mol.</summary>
    /// <param name="combustion">Reference temperature of the combustion, 0 °C to 60 °C.</param>
    /// <param name="gross">Whether the water is liquid.</param>
    public double MolarHeatingValue(Temperature combustion, bool gross)
    {
        double higher = HeatOfCombustion(combustion.Kelvin);
        return gross
            ? higher
            : higher - Atoms.Hydrogen / 2 * (Species.Water.Heat.Enthalpy(combustion.Kelvin) - LiquidWater.Heat.Enthalpy(combustion.Kelvin));
    }

    /// <summary>Heating value of the ideal gas per volume, combustion and volume at the same base state.</summary>
    /// <param name="temperature">Base temperature, which is the reference temperature of the combustion too.</param>
    /// <param name="pressure">Base pressure.</param>
    /// <param name="gross">Whether the water is liquid.</param>
    public HeatingValue VolumetricHeatingValue(Temperature temperature, AbsolutePressure pressure, bool gross) =>
        new(MolarHeatingValue(temperature, gross) * MolarGas.MolesPerCubicMetre(pressure, temperature));

    // Σ h(fuel) + O2 − CO2 − N2 − Ar − H2O(liquid), all at one temperature.
    double HeatOfCombustion(double kelvin)
    {
        double heat = StoichiometricOxygen * Species.Oxygen.Heat.Enthalpy(kelvin)
            - Atoms.Carbon * Species.CarbonDioxide.Heat.Enthalpy(kelvin)
            - Atoms.Nitrogen / 2 * Species.Nitrogen.Heat.Enthalpy(kelvin)
            - Atoms.Argon * Species.Argon.Heat.Enthalpy(kelvin)
            - Atoms.Hydrogen / 2 * LiquidWater.Heat.Enthalpy(kelvin);
        foreach (FuelComponent component in Composition)
        {
            heat += component.MoleFraction * component.Species.Heat.Enthalpy(kelvin);
        }
        return heat;
    }

    static ImmutableArray<FuelComponent> Scaled(ReadOnlySpan<FuelComponent> composition, double sum)
    {
        ImmutableArray<FuelComponent>.Builder scaled = ImmutableArray.CreateBuilder<FuelComponent>(composition.Length);
        foreach (FuelComponent component in composition)
        {
            scaled.Add(component with { MoleFraction = component.MoleFraction / sum });
        }
        return scaled.MoveToImmutable();
    }
}
