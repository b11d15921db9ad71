using System.Globalization;
using System.Text;
using CsvHelper;
using CsvHelper.Configuration;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Compute;

/// <summary>The rows of a CSV file with a header, batch by batch; only the named columns are read, others are ignored.</summary>
/// <remarks>A file in UTF-8 without any quotation mark is only cut into blocks here, which <see cref="RowBatch.Split"/> takes apart; what may be quoted is read cell by cell.</remarks>
sealed class CsvRows : IDisposable
{
    const long MostBytes = 4L << 30;
    const int BatchRows = 512;

    readonly CsvReader? _csv;
    readonly PlainBlocks? _plain;
    readonly string _file;
    readonly int[] _places;

    CsvRows(CsvReader? csv, PlainBlocks? plain, string file, int[] places)
    {
        _csv = csv;
        _plain = plain;
        _file = file;
        _places = places;
    }

    /// <exception cref="WrongUseException">The file cannot be opened, or a column is missing or twice there.</exception>
    public static CsvRows Open(string file, IEnumerable<string> columns)
    {
        return IsPlain(file) ? OpenPlain(file, columns) : OpenQuoted(file, columns);
    }

    static CsvRows OpenPlain(string file, IEnumerable<string> columns)
    {
        string[] header = Header(file).Split(',');
        int[] places = [.. columns.Select(column => Place(file, header, column))];
        return new(null, new PlainBlocks(OpenFile(file), file), file, places);
    }

    /// <summary>The first line that is not blank; empty where there is none.</summary>
    static string Header(string file)
    {
        using StreamReader text = new(OpenFile(file));
        char[] letters = new char[PlainBlocks.LongestLine + 1];
        ReadOnlySpan<char> begin = letters.AsSpan(0, text.ReadBlock(letters)).TrimStart("\r\n");
        int end = begin.IndexOfAny('\r', '\n');
        return end >= 0 ? begin[..end].ToString() : begin.Length < letters.Length ? begin.ToString() : throw PlainBlocks.TooLong(file, 1);
    }

    static CsvRows OpenQuoted(string file, IEnumerable<string> columns)
    {
        CsvConfiguration configuration = new(CultureInfo.InvariantCulture) { MissingFieldFound = null, BadDataFound = null, IgnoreBlankLines = true, MaxFieldSize = PlainBlocks.LongestLine };
        CsvReader csv = new(new BoundedLines(new StreamReader(OpenFile(file)), file), configuration);
        try
        {
            string[] header = Read(csv, file) && csv.ReadHeader() ? csv.HeaderRecord! : [];
            return new(csv, null, file, [.. columns.Select(column => Place(file, header, column))]);
        }
        catch
        {
            csv.Dispose();
            throw;
        }
    }

    /// <summary>An empty batch for rows of this file.</summary>
    public RowBatch NewBatch() => new(_places);

    /// <summary>Fills an empty batch with the next rows, their cells in the order of the columns asked for; false at the end. A cell that a short row lacks is empty.</summary>
    public bool Next(RowBatch batch) => _plain?.Next(batch) ?? NextQuoted(batch);

    public void Dispose()
    {
        _csv?.Dispose();
        _plain?.Dispose();
    }

    bool NextQuoted(RowBatch batch)
    {
        while (batch.Count < BatchRows && Read(_csv!, _file))
        {
            batch.Begin(_csv!.Parser.RawRow);
            foreach (int place in _places)
            {
                batch.Add(_csv.TryGetField(place, out string? cell) ? cell ?? "" : "");
            }
        }
        return batch.Count > 0;
    }

    static bool IsPlain(string file)
    {
        using Stream bytes = OpenFile(file);
        byte[] buffer = new byte[1 << 16];
        bool isFirst = true;
        while (bytes.Read(buffer) is > 0 and int read)
        {
            ReadOnlySpan<byte> block = buffer.AsSpan(0, read);
            if (block.Contains((byte)'"') || (isFirst && IsWide(block)))
            {
                return false;
            }
            isFirst = false;
        }
        return true;
    }

    // The marks of UTF-16 and UTF-32, in either order of bytes.
    static bool IsWide(ReadOnlySpan<byte> text) =>
        text.StartsWith(Encoding.Unicode.Preamble) || text.StartsWith(Encoding.BigEndianUnicode.Preamble) || text.StartsWith(new UTF32Encoding(bigEndian: true, byteOrderMark: true).Preamble);

    static bool Read(CsvReader csv, string file)
    {
        try
        {
            return csv.Read();
        }
        catch (CsvHelperException)
        {
            throw new WrongUseException($"{file}, line {csv.Parser.RawRow}: this is no row of a table; look for a quotation mark that is not closed.");
        }
    }

    static FileStream OpenFile(string file)
    {
        try
        {
            return RegularFile.Open(file, MostBytes);
        }
        catch (Exception e) when (FileTrouble.Is(e))
        {
            throw new WrongUseException(FileTrouble.Sentence(e, $"{file} cannot be read", "name another file"));
        }
    }

    static int Place(string file, string[] header, string column)
    {
        string[] names = [.. header.Select(name => name.Trim())];
        int first = Array.IndexOf(names, column);
        return first < 0 ? throw new WrongUseException($"{file}, line 1: the column {column} is missing.")
            : Array.LastIndexOf(names, column) != first ? throw new WrongUseException($"{file}, line 1: the column {column} is there twice; keep one.")
            : first;
    }

    /// <summary>Text whose lines have an end: one that has none is no table, and would fill the memory.</summary>
    sealed class BoundedLines(TextReader text, string file) : TextReader
    {
        int _line = 1;
        int _letters;

        public override int Read(char[] buffer, int index, int count)
        {
            int read = text.Read(buffer, index, count);
            ReadOnlySpan<char> rest = buffer.AsSpan(index, read);
            for (int end; (end = rest.IndexOf('\n')) >= 0; rest = rest[(end + 1)..])
            {
                Count(end);
                (_line, _letters) = (_line + 1, 0);
            }

            Count(rest.Length);
            return read;
        }

        void Count(int letters)
        {
            _letters += letters;
            if (_letters > PlainBlocks.LongestLine)
            {
                throw PlainBlocks.TooLong(file, _line);
            }
        }

        protected override void Dispose(bool disposing)
        {
            text.Dispose();
            base.Dispose(disposing);
        }
    }
}
