namespace HandsFreeStartup.Compute;

/// <summary>Lines to be written, in UTF-8, in one buffer that is used again.</summary>
sealed class RowText
{
    byte[] _bytes = new byte[1 << 18];
    int _length;

    /// <summary>What was written so far.</summary>
    public ReadOnlySpan<byte> Written => _bytes.AsSpan(0, _length);

    public void Clear() => _length = 0;

    /// <summary>Room for at least so many bytes behind what was written; tell with <see cref="Advance"/> how many were used.</summary>
    public Span<byte> Room(int bytes)
    {
        if (_bytes.Length - _length < bytes)
        {
            Array.Resize(ref _bytes, Math.Max(2 * _bytes.Length, _length + bytes));
        }
        return _bytes.AsSpan(_length);
    }

    public void Advance(int bytes) => _length += bytes;

    public void Add(byte letter)
    {
        Room(1)[0] = letter;
        _length++;
    }

    public void Add(ReadOnlySpan<byte> text)
    {
        text.CopyTo(Room(text.Length));
        _length += text.Length;
    }
}
