namespace HandsFreeStartup.Calculations.Gases;

/// <summary>Moles of atoms, per molecule of a species or per mole of a mixture.</summary>
/// <param name="Carbon">C.</param>
/// <param name="Hydrogen">H.</param>
/// <param name="Oxygen">O.</param>
/// <param name="Nitrogen">N.</param>
/// <param name="Argon">Ar.</param>
public readonly record struct Atoms(double Carbon = 0, double Hydrogen = 0, double Oxygen = 0, double Nitrogen = 0, double Argon = 0)
{
    /// <summary>Molar mass, kg/mol, from conventional atomic weights: C 12.011, H 1.008, O 15.999, N 14.007, Ar 39.95 (IUPAC).</summary>
    public double MolarMass => (12.011 * Carbon + 1.008 * Hydrogen + 15.999 * Oxygen + 14.007 * Nitrogen + 39.95 * Argon) / 1000;

    /// <summary>Sum, atom by atom.</summary>
    public static Atoms operator +(Atoms left, Atoms right) =>
        new(left.Carbon + right.Carbon, left.Hydrogen + right.Hydrogen, left.Oxygen + right.Oxygen,
            left.Nitrogen + right.Nitrogen, left.Argon + right.Argon);

    /// <summary>A multiple, atom by atom.</summary>
    public static Atoms operator *(double factor, Atoms atoms) =>
        new(factor * atoms.Carbon, factor * atoms.Hydrogen, factor * atoms.Oxygen, factor * atoms.Nitrogen, factor * atoms.Argon);
}
