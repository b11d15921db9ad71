using System.Globalization;
using System.Text;

namespace HandsFreeStartup.Compute;

/// <summary>What is written into one cell: a number with all its digits, a flag as 1 or 0, a word, or nothing where a result is undefined.</summary>
readonly struct Cell
{
    const int LongestNumber = ShortestNumber.Room;

    static readonly byte[] Zero = "0"u8.ToArray(), One = "1"u8.ToArray();

    readonly double _number;
    readonly byte[]? _word;

    Cell(double number, byte[]? word) => (_number, _word) = (number, word);

    public static implicit operator Cell(double value) => new(value, null);

    public static implicit operator Cell(double? value) => new(value ?? double.NaN, null);

    public static implicit operator Cell(bool flag) => new(0, flag ? One : Zero);

    public static implicit operator Cell(string word) => new(0, Encoding.UTF8.GetBytes(word));

    /// <summary>A number that stands in many rows, made into text once.</summary>
    public static Cell Repeated(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    /// <summary>Adds a comma and the cell to a line in UTF-8; the comma alone for a number that is none.</summary>
    public void AppendTo(RowText line)
    {
        Span<byte> room = line.Room(1 + Math.Max(LongestNumber, _word?.Length ?? 0));
        room[0] = (byte)',';
        int written = 0;
        if (_word is not null)
        {
            _word.CopyTo(room[1..]);
            written = _word.Length;
        }
        else if (double.IsFinite(_number))
        {
            written = ShortestNumber.Write(_number, room[1..]);
        }
        line.Advance(1 + written);
    }
}
