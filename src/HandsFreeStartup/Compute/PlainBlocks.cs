using System.Text;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Compute;

/// <summary>A table without quotation marks in blocks of whole lines, the first of which, the header, is passed over; somebody else takes them apart, several blocks at a time.</summary>
/// <param name="bytes">UTF-8, with or without its mark.</param>
/// <param name="file">For the sentence about a line that has no end.</param>
sealed class PlainBlocks(Stream bytes, string file) : IDisposable
{
    /// <summary>Letters that a line may have: a text with longer ones is no table, and would fill the memory.</summary>
    public const int LongestLine = 100_000;

    const int BlockBytes = 1 << 16;

    byte[] _rest = [];
    bool _isBegun, _isPastHeader;
    int _line = 1, _lineByFeeds = 1, _letters;

    /// <summary>The next whole lines, not yet taken apart; false at the end.</summary>
    /// <exception cref="WrongUseException">A line is too long.</exception>
    public bool Next(RowBatch batch)
    {
        int length = _rest.Length, end = 0;
        bool isEnded = false;
        for (int most = length + BlockBytes; end == 0 && !isEnded; most = 2 * length)
        {
            batch.Room(most);
            _rest.CopyTo(batch.Room(most));
            int read = bytes.ReadAtLeast(batch.Room(most)[length..most], most - length, throwOnEndOfStream: false);
            isEnded = read < most - length;
            length += read;
            end = isEnded ? length : End(batch.Room(most)[..length]);
            Refuse(end == 0 ? batch.Room(most)[..length] : default);
        }
        _rest = batch.Room(length)[end..length].ToArray();
        Begin(batch, batch.Room(length)[..end]);
        return end > 0;
    }

    public static WrongUseException TooLong(string file, int line) =>
        new(FormattableString.Invariant($"{file}, line {line}: the line is longer than {LongestLine} letters, so that this is no table. Name another file."));

    public void Dispose() => bytes.Dispose();

    /// <summary>Where the last whole line ends; 0 where none does. A return ends a line too, once it is seen that no feed follows.</summary>
    static int End(ReadOnlySpan<byte> block)
    {
        int feed = block.LastIndexOf((byte)'\n');
        return feed >= 0 || block.IsEmpty ? feed + 1 : block[..^1].LastIndexOf((byte)'\r') + 1;
    }

    void Begin(RowBatch batch, ReadOnlySpan<byte> block)
    {
        int start = !_isBegun && block.StartsWith(Encoding.UTF8.Preamble) ? Encoding.UTF8.Preamble.Length : 0;
        _isBegun = true;
        int header = _isPastHeader ? -1 : block[start..].IndexOfAnyExcept((byte)'\r', (byte)'\n');
        if (header >= 0)
        {
            // What is left of its line is a blank one.
            int length = block[(start + header)..].IndexOfAny((byte)'\r', (byte)'\n');
            Count(block[start..(start + header)]);
            start = length < 0 ? block.Length : start + header + length;
            _isPastHeader = true;
        }
        batch.BeginBlock(start, block.Length, _line);
        Count(block[start..]);
    }

    void Count(ReadOnlySpan<byte> lines)
    {
        _line += lines.Count((byte)'\n') + lines.Count((byte)'\r') - lines.Count("\r\n"u8);
        for (int end; (end = lines.IndexOf((byte)'\n')) >= 0; lines = lines[(end + 1)..])
        {
            Refuse(lines[..end]);
            (_lineByFeeds, _letters) = (_lineByFeeds + 1, 0);
        }
        Refuse(lines);
        _letters += Encoding.UTF8.GetCharCount(lines);
    }

    void Refuse(ReadOnlySpan<byte> more)
    {
        if (_letters + Encoding.UTF8.GetCharCount(more) > LongestLine)
        {
            throw TooLong(file, _lineByFeeds);
        }
    }
}
