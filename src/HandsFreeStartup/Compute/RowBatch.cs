using System.Text;

namespace HandsFreeStartup.Compute;

/// <summary>Some rows of a table: the cells asked for, as bytes of UTF-8 in one buffer that is used again, so that a row costs no object.</summary>
/// <param name="places">Where in a line each cell stands that is asked for, from 0.</param>
sealed class RowBatch(int[] places)
{
    readonly List<int> _lines = [];
    readonly List<(int Start, int End)> _cells = [];
    readonly (int Start, int End)[] _inLine = new (int, int)[places.Length == 0 ? 0 : places.Max() + 1];

    byte[] _bytes = new byte[1 << 17];
    int _end;

    (int Start, int End, int Line) _block;

    /// <summary>How many rows; none of a block before <see cref="Split"/>.</summary>
    public int Count => _lines.Count;

    public void Clear()
    {
        _lines.Clear();
        _cells.Clear();
        (_end, _block) = (0, default);
    }

    /// <summary>The row that ends on that line of the file, cell by cell, by <see cref="Add"/>.</summary>
    public void Begin(int line) => _lines.Add(line);

    public void Add(string cell)
    {
        Span<byte> room = Room(_end + Encoding.UTF8.GetMaxByteCount(cell.Length))[_end..];
        int start = _end;
        _end += Encoding.UTF8.GetBytes(cell, room);
        _cells.Add((start, _end));
    }

    /// <summary>The buffer from its beginning, of at least so many bytes; what is in it stays.</summary>
    public Span<byte> Room(int bytes)
    {
        if (_bytes.Length < bytes)
        {
            Array.Resize(ref _bytes, Math.Max(2 * _bytes.Length, bytes));
        }
        return _bytes;
    }

    /// <summary>Whole lines without quotation marks stand in the buffer, the first of them on that line of the file.</summary>
    public void BeginBlock(int start, int end, int line) => _block = (start, end, line);

    /// <summary>Takes the lines of a block apart: every line that is not blank is a row, every comma ends a cell, and a cell that a short row lacks is empty.</summary>
    public void Split()
    {
        ReadOnlySpan<byte> block = _bytes.AsSpan(0, _block.End);
        for (int start = _block.Start, line = _block.Line; start < block.Length; line++)
        {
            int length = block[start..].IndexOfAny((byte)'\r', (byte)'\n');
            int end = length < 0 ? block.Length : start + length;
            if (end > start)
            {
                _lines.Add(line);
                SplitLine(block, start, end);
            }
            start = end + (end + 1 < block.Length && block[end] == '\r' && block[end + 1] == '\n' ? 2 : 1);
        }
        _block = default;
    }

    /// <summary>Line of the file on which a row ends, from 1.</summary>
    public int Line(int row) => _lines[row];

    /// <summary>A cell in UTF-8; good until the batch is cleared.</summary>
    public ReadOnlySpan<byte> Cell(int row, int column)
    {
        (int start, int end) = _cells[row * places.Length + column];
        return _bytes.AsSpan(start, end - start);
    }

    void SplitLine(ReadOnlySpan<byte> block, int start, int end)
    {
        int count = 0;
        for (int next = start; count < _inLine.Length && next <= end; count++)
        {
            int length = block[next..end].IndexOf((byte)',');
            int cellEnd = length < 0 ? end : next + length;
            _inLine[count] = (next, cellEnd);
            next = cellEnd + 1;
        }
        foreach (int place in places)
        {
            _cells.Add(place < count ? _inLine[place] : default);
        }
    }
}
