using System.Globalization;

namespace HandsFreeStartup.Compute;

/// <summary>What is written into one cell: a number with all its digits, a flag as 1 or 0, a word, or nothing where a result is undefined.</summary>
/// <param name="Text">As written.</param>
readonly record struct Cell(string Text)
{
    public static implicit operator Cell(double value) => new(double.IsFinite(value) ? value.ToString("R", CultureInfo.InvariantCulture) : "");

    public static implicit operator Cell(double? value) => value ?? double.NaN;

    public static implicit operator Cell(bool flag) => new(flag ? "1" : "0");

    public static implicit operator Cell(string word) => new(word);
}
