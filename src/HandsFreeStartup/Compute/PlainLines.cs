namespace HandsFreeStartup.Compute;

/// <summary>The lines of a text without quotation marks, where every line is a row and every comma ends a cell; several times as fast as reading what may be quoted.</summary>
/// <param name="text">Read with its own buffer.</param>
sealed class PlainLines(TextReader text) : IDisposable
{
    const int MostCells = 64;

    char[] _buffer = new char[1 << 16];
    int _start;
    int _end;
    bool _isLast;

    /// <summary>Number of the present line, from 1.</summary>
    public int Line { get; private set; }

    /// <summary>The next line that is not blank; false at the end.</summary>
    public bool Next(out ReadOnlySpan<char> line)
    {
        while (Raw(out line))
        {
            Line++;
            if (line.Length > 0)
            {
                return true;
            }
        }
        return false;
    }

    /// <summary>Adds the cells of a line at some places; a cell that a short line lacks is empty.</summary>
    public static void AddCells(ReadOnlySpan<char> line, int[] places, RowBatch batch)
    {
        Span<Range> cells = stackalloc Range[MostCells];
        int last = places.Max();
        if (last >= MostCells - 1)
        {
            cells = new Range[last + 2];
        }
        int count = line.Split(cells[..(last + 2)], ',');
        foreach (int place in places)
        {
            batch.Add(place < count ? line[cells[place]] : "");
        }
    }

    public void Dispose() => text.Dispose();

    bool Raw(out ReadOnlySpan<char> line)
    {
        int searched = 0;
        while (true)
        {
            int length = _buffer.AsSpan(_start + searched, _end - _start - searched).IndexOfAny('\r', '\n') + searched;
            if (length >= searched && (_buffer[_start + length] == '\n' || _start + length + 1 < _end || _isLast))
            {
                line = _buffer.AsSpan(_start, length);
                bool isPair = _buffer[_start + length] == '\r' && _start + length + 1 < _end && _buffer[_start + length + 1] == '\n';
                _start += length + (isPair ? 2 : 1);
                return true;
            }
            if (_isLast)
            {
                line = _buffer.AsSpan(_start, _end - _start);
                bool isLine = _end > _start;
                _start = _end;
                return isLine;
            }
            searched = Math.Max(0, length >= searched ? length : _end - _start);
            Fill();
        }
    }

    // What is not used yet moves to the front; the reader below refuses a line that has no end.
    void Fill()
    {
        if (_end - _start == _buffer.Length)
        {
            Array.Resize(ref _buffer, 2 * _buffer.Length);
        }
        Array.Copy(_buffer, _start, _buffer, 0, _end - _start);
        (_start, _end) = (0, _end - _start);
        int read = text.Read(_buffer, _end, _buffer.Length - _end);
        _end += read;
        _isLast = read == 0;
    }
}
