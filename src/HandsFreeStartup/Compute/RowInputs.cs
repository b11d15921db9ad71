using System.Globalization;
using System.Text;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Compute;

/// <summary>The input cells of one row after another. What is wrong with a row is collected, so that one look at the file finds everything.</summary>
/// <param name="columns">Names of the input columns.</param>
/// <param name="rows">Their cells, in the same order.</param>
/// <param name="fuels">Fuels and pure gases by name.</param>
sealed class RowInputs(string[] columns, RowBatch rows, FuelBook fuels)
{
    const int LongestFuel = 64;

    int _row;

    readonly List<(string Column, string Reason)> _problems = [];

    /// <summary>What is wrong, by column.</summary>
    public IReadOnlyList<(string Column, string Reason)> Problems => _problems;

    /// <summary>Goes to a row, of which nothing is known to be wrong yet.</summary>
    public void GoTo(int row)
    {
        _row = row;
        _problems.Clear();
    }

    /// <summary>Line of the file on which the row ends.</summary>
    public int Line => rows.Line(_row);

    /// <summary>The cell, without white space around it.</summary>
    public string Text(string column) => Encoding.UTF8.GetString(Cell(column)).Trim();

    /// <summary>A number, from <paramref name="least"/> to <paramref name="most"/>, both allowed; NaN and a problem if it is none.</summary>
    public double Number(string column, double least = double.MinValue, double most = double.MaxValue) =>
        TypedNumber.TryReadShort(Cell(column), out double value) && value >= least && value <= most ? value : AnyNumber(column, least, most);

    double AnyNumber(string column, double least, double most)
    {
        string text = Text(column);
        if (text.Length == 0)
        {
            return Refuse(column, "is empty; a number is needed");
        }
        if (TypedNumber.ReadDouble(text, out string reason) is not { } value)
        {
            return Refuse(column, reason);
        }
        return value < least ? Refuse(column, $"{text} is below {Shown(least)}")
            : value > most ? Refuse(column, $"{text} is above {Shown(most)}")
            : value;
    }

    /// <summary>One of some words; the first of them and a problem if it is none.</summary>
    public string OneOf(string column, params string[] words)
    {
        string text = Text(column);
        if (words.Contains(text))
        {
            return text;
        }
        Refuse(column, $"'{text}' is none of {string.Join(", ", words)}");
        return words[0];
    }

    /// <summary>A fuel or a pure gas; natural gas and a problem if it is unknown.</summary>
    public Fuel Fuel(string column)
    {
        ReadOnlySpan<byte> cell = Cell(column);
        Span<char> letters = stackalloc char[LongestFuel];
        ReadOnlySpan<char> name = cell.Length <= LongestFuel ? letters[..Encoding.UTF8.GetChars(cell, letters)].Trim() : Text(column);
        if (fuels.Find(name) is { } fuel)
        {
            return fuel;
        }
        Refuse(column, $"'{name}' is no known fuel or gas; give its composition with --fuels");
        return Calculations.Fuels.Fuel.NaturalGas;
    }

    /// <summary>Notes a problem and gives back that there is no number.</summary>
    public double Refuse(string column, string reason)
    {
        _problems.Add((column, reason));
        return double.NaN;
    }

    ReadOnlySpan<byte> Cell(string column)
    {
        // Those who ask use the words of the array itself, as a rule.
        int place = 0;
        while (place < columns.Length && !ReferenceEquals(columns[place], column))
        {
            place++;
        }
        return rows.Cell(_row, place < columns.Length ? place : Array.IndexOf(columns, column));
    }

    static string Shown(double bound) => bound.ToString("R", CultureInfo.InvariantCulture);
}
