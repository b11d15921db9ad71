using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Gases;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Combustion;

/// <summary>Flue gas from one mole of dry fuel: moles of each product and of the dry air that made it.</summary>
/// <remarks>
/// Unknown are dry flue D and dry air A. With dry O2 o and dry CO c, both fractions, r = x(O2)/(1 − x(O2)), and the fuel's atoms:
/// inert balance A = (D (1 − o) − C − N/2 − Ar)/(1 − x(O2)); oxygen balance D (2 o − c) + 2 C + H/2 − O = 2 x(O2) A. Hence
/// D = (2 r (C + N/2 + Ar) + 2 C + H/2 − O) / (2 r (1 − o) − 2 o + c). CO replaces CO2; no H2, hydrocarbon or soot in the flue.
/// Range: 0 ≤ o below x(O2). Exact for an ideal gas; the method is that of any combustion textbook.
/// </remarks>
public readonly struct FlueGas
{
    /// <summary>Dry combustion air.</summary>
    public Uncertain DryAir { get; private init; }

    /// <summary>Flue gas without water.</summary>
    public Uncertain Dry { get; private init; }

    /// <summary>CO2.</summary>
    public Uncertain CarbonDioxide { get; private init; }

    /// <summary>CO.</summary>
    public Uncertain CarbonMonoxide { get; private init; }

    /// <summary>O2.</summary>
    public Uncertain Oxygen { get; private init; }

    /// <summary>N2.</summary>
    public Uncertain Nitrogen { get; private init; }

    /// <summary>Ar.</summary>
    public Uncertain Argon { get; private init; }

    /// <summary>Water as vapour, that of humid combustion air included.</summary>
    public Uncertain Water { get; private init; }

    /// <summary>Flue gas with its water, before any condensation.</summary>
    public Uncertain Wet => Dry + Water;

    /// <summary>From dry O2 and CO.</summary>
    /// <param name="fuel">What burns.</param>
    /// <param name="air">Dry combustion air.</param>
    /// <param name="oxygen">o, fraction of the dry flue.</param>
    /// <param name="carbonMonoxide">c, fraction of the dry flue.</param>
    /// <param name="waterPerDryAir">Moles of water vapour per mole of dry combustion air.</param>
    public static FlueGas FromOxygen(Fuel fuel, DryAir air, in Uncertain oxygen, in Uncertain carbonMonoxide, in Uncertain waterPerDryAir)
    {
        Atoms atoms = fuel.Atoms;
        double inert = atoms.Carbon + atoms.Nitrogen / 2 + atoms.Argon;
        Uncertain dry = DryFormula(fuel, air, oxygen, carbonMonoxide);
        Uncertain oxygenMoles = oxygen * dry;
        return FromAir(fuel, air, AirFormula(air, inert, dry, oxygenMoles), oxygenMoles, carbonMonoxide * dry, dry, waterPerDryAir);
    }

    /// <summary>Dry flue, moles per mole of fuel, of numbers of any kind: the balance above.</summary>
    /// <param name="fuel">What burns.</param>
    /// <param name="air">Dry combustion air.</param>
    /// <param name="oxygen">o, fraction of the dry flue.</param>
    /// <param name="carbonMonoxide">c, fraction of the dry flue.</param>
    public static T DryFormula<T>(Fuel fuel, DryAir air, in T oxygen, in T carbonMonoxide) where T : struct, IFormulaNumber<T>
    {
        double ratio = air.Oxygen / air.Rest;
        double inert = fuel.Atoms.Carbon + fuel.Atoms.Nitrogen / 2 + fuel.Atoms.Argon;
        return (2 * ratio * inert + 2 * fuel.StoichiometricOxygen) / (2 * ratio - (2 * ratio + 2) * oxygen + carbonMonoxide);
    }

    /// <summary>Dry air, moles per mole of fuel, of numbers of any kind: what is neither oxygen nor out of the fuel came with the air.</summary>
    /// <param name="air">Dry combustion air.</param>
    /// <param name="inert">Moles of dry products other than O2 that the fuel makes.</param>
    /// <param name="dry">Dry flue.</param>
    /// <param name="oxygen">O2 in it.</param>
    public static T AirFormula<T>(DryAir air, double inert, in T dry, in T oxygen) where T : struct, IFormulaNumber<T> => (dry - oxygen - inert) / air.Rest;

    /// <summary>From an amount of dry air, complete combustion. With less than the theoretical air the O2 comes out negative.</summary>
    /// <param name="fuel">What burns.</param>
    /// <param name="air">Dry combustion air.</param>
    /// <param name="dryAir">Moles of dry air per mole of fuel.</param>
    public static FlueGas FromDryAir(Fuel fuel, DryAir air, in Uncertain dryAir)
    {
        Uncertain oxygen = OxygenFormula(fuel, air, dryAir);
        return FromAir(fuel, air, dryAir, oxygen, 0, DryOfAirFormula(fuel, air, dryAir, oxygen), 0);
    }

    /// <summary>O2 left of an amount of dry air, moles per mole of fuel, of numbers of any kind.</summary>
    /// <param name="fuel">What burns, completely.</param>
    /// <param name="air">Dry combustion air.</param>
    /// <param name="dryAir">Moles of it.</param>
    public static T OxygenFormula<T>(Fuel fuel, DryAir air, in T dryAir) where T : struct, IFormulaNumber<T> => air.Oxygen * dryAir - fuel.StoichiometricOxygen;

    /// <summary>Dry flue of an amount of dry air, moles per mole of fuel, of numbers of any kind.</summary>
    /// <param name="fuel">What burns, completely.</param>
    /// <param name="air">Dry combustion air.</param>
    /// <param name="dryAir">Moles of it.</param>
    /// <param name="oxygen">Moles of O2 left.</param>
    public static T DryOfAirFormula<T>(Fuel fuel, DryAir air, in T dryAir, in T oxygen) where T : struct, IFormulaNumber<T> =>
        air.Rest * dryAir + (fuel.Atoms.Carbon + fuel.Atoms.Nitrogen / 2 + fuel.Atoms.Argon) + oxygen;

    /// <summary>Dry O2 that goes with a dry CO2 reading, a fraction of one.</summary>
    /// <remarks>D = C/(CO2 + CO); then the oxygen balance above for o. Only for air without CO2 and fuel with carbon.</remarks>
    /// <param name="fuel">What burns.</param>
    /// <param name="air">Dry combustion air; its CO2 is neglected.</param>
    /// <param name="carbonDioxide">Fraction of the dry flue, above zero.</param>
    /// <param name="carbonMonoxide">Fraction of the dry flue.</param>
    public static Uncertain OxygenFromCarbonDioxide(Fuel fuel, DryAir air, in Uncertain carbonDioxide, in Uncertain carbonMonoxide)
    {
        Atoms atoms = fuel.Atoms;
        double ratio = air.Oxygen / air.Rest;
        Uncertain dry = atoms.Carbon / (carbonDioxide + carbonMonoxide);
        double needed = 2 * ratio * (atoms.Carbon + atoms.Nitrogen / 2 + atoms.Argon) + 2 * fuel.StoichiometricOxygen;
        return (2 * ratio + carbonMonoxide - needed / dry) / (2 + 2 * ratio);
    }

    static FlueGas FromAir(
        Fuel fuel, DryAir air, in Uncertain dryAir, in Uncertain oxygen, in Uncertain carbonMonoxide, in Uncertain dry, in Uncertain waterPerDryAir) => new()
        {
            DryAir = dryAir,
            Dry = dry,
            Oxygen = oxygen,
            CarbonMonoxide = carbonMonoxide,
            CarbonDioxide = fuel.Atoms.Carbon + air.CarbonDioxide * dryAir - carbonMonoxide,
            Nitrogen = fuel.Atoms.Nitrogen / 2 + air.Nitrogen * dryAir,
            Argon = fuel.Atoms.Argon + air.Argon * dryAir,
            Water = fuel.Atoms.Hydrogen / 2 + waterPerDryAir * dryAir,
        };

    /// <summary>Enthalpy of all species as gases, formation included, J per mole of fuel.</summary>
    /// <param name="kelvin">Temperature, K; 200 K to 1000 K.</param>
    public Uncertain Enthalpy(in Uncertain kelvin) =>
        CarbonDioxide * Species.CarbonDioxide.Heat.Enthalpy(kelvin) + CarbonMonoxide * Species.CarbonMonoxide.Heat.Enthalpy(kelvin)
        + Oxygen * Species.Oxygen.Heat.Enthalpy(kelvin) + Nitrogen * Species.Nitrogen.Heat.Enthalpy(kelvin)
        + Argon * Species.Argon.Heat.Enthalpy(kelvin) + Water * Species.Water.Heat.Enthalpy(kelvin);
}
