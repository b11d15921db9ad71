namespace HandsFreeStartup.Compute;

/// <summary>Some rows of a table: the cells asked for, one behind the other in one buffer that is used again, so that a row costs no object.</summary>
/// <param name="columns">Cells of a row.</param>
sealed class RowBatch(int columns)
{
    readonly List<int> _lines = [];
    readonly List<int> _ends = [];

    char[] _letters = new char[1 << 12];

    /// <summary>How many rows.</summary>
    public int Count => _lines.Count;

    public void Clear()
    {
        _lines.Clear();
        _ends.Clear();
    }

    /// <summary>The row that ends on that line of the file, cell by cell, by <see cref="Add"/>.</summary>
    public void Begin(int line) => _lines.Add(line);

    public void Add(ReadOnlySpan<char> cell)
    {
        int start = _ends.Count == 0 ? 0 : _ends[^1];
        if (_letters.Length - start < cell.Length)
        {
            Array.Resize(ref _letters, Math.Max(2 * _letters.Length, start + cell.Length));
        }
        cell.CopyTo(_letters.AsSpan(start));
        _ends.Add(start + cell.Length);
    }

    /// <summary>Line of the file on which a row ends, from 1.</summary>
    public int Line(int row) => _lines[row];

    /// <summary>The text of a cell; good until the batch is cleared.</summary>
    public ReadOnlySpan<char> Cell(int row, int column)
    {
        int cell = row * columns + column;
        int start = cell == 0 ? 0 : _ends[cell - 1];
        return _letters.AsSpan(start, _ends[cell] - start);
    }
}
