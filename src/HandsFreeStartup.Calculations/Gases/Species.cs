using System.Collections.Immutable;

namespace HandsFreeStartup.Calculations.Gases;

/// <summary>A pure gas: its atoms, its heat and its critical point.</summary>
/// <remarks>
/// Heat: NASA TM-4513 (file nasa_gas.yaml of Cantera, read for this table); hexane is not in it, see its own remark.
/// Critical points and acentric factors: standard handbook data, values from memory, checked here only through the compressibility
/// factors and densities that they lead to. They serve the real gas of the fuels alone.
/// </remarks>
/// <param name="Symbol">As in composition files: CH4, nC4H10, iC5H12, CO2 and so on.</param>
/// <param name="Name">As shown.</param>
/// <param name="Atoms">What one molecule is made of.</param>
/// <param name="Heat">Enthalpy and heat capacity of the ideal gas.</param>
/// <param name="Critical">Critical point and acentric factor.</param>
public sealed record Species(string Symbol, string Name, Atoms Atoms, NasaPolynomial Heat, CriticalPoint Critical)
{
    /// <summary>Molar mass, kg/mol.</summary>
    public double MolarMass { get; } = Atoms.MolarMass;

    /// <summary>Nitrogen.</summary>
    public static Species Nitrogen { get; } = new("N2", "nitrogen", new(Nitrogen: 2),
        new(3.53100528, -1.23660987e-4, -5.02999437e-7, 2.43530612e-9, -1.40881235e-12, -1046.97628), new(126.19, 3.396e6, 0.0372));

    /// <summary>Oxygen.</summary>
    public static Species Oxygen { get; } = new("O2", "oxygen", new(Oxygen: 2),
        new(3.78245636, -2.99673415e-3, 9.847302e-6, -9.68129508e-9, 3.24372836e-12, -1063.94356), new(154.58, 5.043e6, 0.0222));

    /// <summary>Argon.</summary>
    public static Species Argon { get; } = new("Ar", "argon", new(Argon: 1),
        new(2.5, 0, 0, 0, 0, -745.375), new(150.69, 4.863e6, -0.0022));

    /// <summary>Carbon dioxide.</summary>
    public static Species CarbonDioxide { get; } = new("CO2", "carbon dioxide", new(Carbon: 1, Oxygen: 2),
        new(2.35677352, 8.98459677e-3, -7.12356269e-6, 2.45919022e-9, -1.43699548e-13, -48371.9697), new(304.13, 7.377e6, 0.2239));

    /// <summary>Carbon monoxide.</summary>
    public static Species CarbonMonoxide { get; } = new("CO", "carbon monoxide", new(Carbon: 1, Oxygen: 1),
        new(3.57953347, -6.1035368e-4, 1.01681433e-6, 9.07005884e-10, -9.04424499e-13, -14344.086), new(132.86, 3.494e6, 0.0497));

    /// <summary>Water vapour.</summary>
    public static Species Water { get; } = new("H2O", "water vapour", new(Hydrogen: 2, Oxygen: 1),
        new(4.19864056, -2.0364341e-3, 6.52040211e-6, -5.48797062e-9, 1.77197817e-12, -30293.7267), new(647.10, 22.064e6, 0.3443));

    /// <summary>Hydrogen. The critical values are the effective ones that fit it into the correlation of the real gas of the fuels.</summary>
    public static Species Hydrogen { get; } = new("H2", "hydrogen", new(Hydrogen: 2),
        new(2.34433112, 7.98052075e-3, -1.9478151e-5, 2.01572094e-8, -7.37611761e-12, -917.935173), new(43.6, 2.05e6, 0));

    /// <summary>Methane.</summary>
    public static Species Methane { get; } = new("CH4", "methane", new(Carbon: 1, Hydrogen: 4),
        new(5.14987613, -0.0136709788, 4.91800599e-5, -4.84743026e-8, 1.66693956e-11, -10246.6476), new(190.56, 4.599e6, 0.0114));

    /// <summary>Ethane.</summary>
    public static Species Ethane { get; } = new("C2H6", "ethane", new(Carbon: 2, Hydrogen: 6),
        new(4.29142492, -5.5015427e-3, 5.99438288e-5, -7.08466285e-8, 2.68685771e-11, -11522.2055), new(305.32, 4.872e6, 0.0995));

    /// <summary>Ethylene.</summary>
    public static Species Ethylene { get; } = new("C2H4", "ethylene", new(Carbon: 2, Hydrogen: 4),
        new(3.95920148, -7.57052247e-3, 5.70990292e-5, -6.91588753e-8, 2.69884373e-11, 5089.77593), new(282.35, 5.042e6, 0.0866));

    /// <summary>Propane.</summary>
    public static Species Propane { get; } = new("C3H8", "propane", new(Carbon: 3, Hydrogen: 8),
        new(4.2110262, 1.71599803e-3, 7.06183472e-5, -9.19594116e-8, 3.64421372e-11, -14381.2106), new(369.83, 4.248e6, 0.1523));

    /// <summary>Propylene.</summary>
    public static Species Propylene { get; } = new("C3H6", "propylene", new(Carbon: 3, Hydrogen: 6),
        new(3.83464524, 3.29078405e-3, 5.05228184e-5, -6.66251418e-8, 2.63707585e-11, 753.838295), new(364.21, 4.555e6, 0.146));

    /// <summary>Normal butane.</summary>
    public static Species NormalButane { get; } = new("nC4H10", "n-butane", new(Carbon: 4, Hydrogen: 10),
        new(6.14746806, 1.55947389e-4, 9.67913517e-5, -1.2548391e-7, 4.97816555e-11, -17599.4402), new(425.12, 3.796e6, 0.2002));

    /// <summary>Isobutane.</summary>
    public static Species Isobutane { get; } = new("iC4H10", "isobutane", new(Carbon: 4, Hydrogen: 10),
        new(4.45479276, 8.26057985e-3, 8.29886664e-5, -1.14647642e-7, 4.64570101e-11, -18459.3931), new(407.81, 3.629e6, 0.1835));

    /// <summary>Normal pentane; heat from 298.15 K.</summary>
    public static Species NormalPentane { get; } = new("nC5H12", "n-pentane", new(Carbon: 5, Hydrogen: 12),
        new(1.8983679, 0.041203037, 1.2312175e-5, -3.6589501e-8, 1.5042509e-11, -20091.5), new(469.7, 3.370e6, 0.2515));

    /// <summary>Isopentane; heat from 298.15 K.</summary>
    public static Species Isopentane { get; } = new("iC5H12", "isopentane", new(Carbon: 5, Hydrogen: 12),
        new(1.0832882, 0.044571076, 8.2389934e-6, -3.5258047e-8, 1.5785762e-11, -20807.535), new(460.4, 3.378e6, 0.2275));

    /// <summary>Hexanes, as n-hexane.</summary>
    /// <remarks>
    /// Heat capacity linear through 142.6 J/(mol K) at 298.15 K and 181.5 at 400 K, heat of formation such that the gross heating value
    /// at 25 °C is 4194.95 kJ/mol (ISO 6976:2016). All three are values from memory. Good near room temperature only: heating values.
    /// </remarks>
    public static Species Hexane { get; } = new("nC6H14", "n-hexane", new(Carbon: 6, Hydrogen: 14),
        new(3.45498134, 0.0459361277, 0, 0, 0, -23144.6844), new(507.6, 3.025e6, 0.3013));

    /// <summary>Every gas that a fuel may hold. A new one is one entry here.</summary>
    public static ImmutableArray<Species> InFuels { get; } =
    [
        Methane, Ethane, Ethylene, Propane, Propylene, NormalButane, Isobutane, NormalPentane, Isopentane, Hexane,
        Hydrogen, CarbonMonoxide, CarbonDioxide, Nitrogen, Oxygen, Argon,
    ];

    /// <summary>The fuel gas of that symbol, or null. Upper and lower case differ.</summary>
    public static Species? Find(string symbol)
    {
        foreach (Species species in InFuels)
        {
            if (species.Symbol == symbol)
            {
                return species;
            }
        }
        return null;
    }
}
