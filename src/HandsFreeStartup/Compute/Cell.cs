using System.Globalization;
using System.Text;

namespace HandsFreeStartup.Compute;

/// <summary>What is written into one cell: a number with all its digits, a flag as 1 or 0, a word, or nothing where a result is undefined.</summary>
readonly struct Cell
{
    readonly double _number;
    readonly string? _word;

    Cell(double number, string? word) => (_number, _word) = (number, word);

    public static implicit operator Cell(double value) => new(value, null);

    public static implicit operator Cell(double? value) => new(value ?? double.NaN, null);

    public static implicit operator Cell(bool flag) => new(0, flag ? "1" : "0");

    public static implicit operator Cell(string word) => new(0, word);

    /// <summary>A number that stands in many rows, made into text once.</summary>
    public static Cell Repeated(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>Adds the cell to a line; nothing for a number that is none.</summary>
    public void AppendTo(StringBuilder line)
    {
        if (_word is not null)
        {
            line.Append(_word);
        }
        else if (double.IsFinite(_number))
        {
            Span<char> digits = stackalloc char[32];
            _number.TryFormat(digits, out int written, "R", CultureInfo.InvariantCulture);
            line.Append(digits[..written]);
        }
    }
}
