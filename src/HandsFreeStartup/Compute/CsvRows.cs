using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Compute;

/// <summary>The rows of a CSV file with a header, one at a time; only the named columns are read, others are ignored.</summary>
sealed class CsvRows : IDisposable
{
    const long MostBytes = 4L << 30;
    const int LongestLine = 100_000;

    readonly CsvReader? _csv;
    readonly PlainLines? _plain;
    readonly string _file;
    readonly int[] _places;

    CsvRows(CsvReader? csv, PlainLines? plain, string file, int[] places)
    {
        _csv = csv;
        _plain = plain;
        _file = file;
        _places = places;
    }

    /// <exception cref="WrongUseException">The file cannot be opened, or a column is missing or twice there.</exception>
    public static CsvRows Open(string file, IEnumerable<string> columns)
    {
        return HasQuotes(file) ? OpenQuoted(file, columns) : OpenPlain(file, columns);
    }

    static CsvRows OpenPlain(string file, IEnumerable<string> columns)
    {
        PlainLines plain = new(new BoundedLines(OpenText(file), file));
        try
        {
            string[] header = plain.Next(out ReadOnlySpan<char> line) ? line.ToString().Split(',') : [];
            return new(null, plain, file, [.. columns.Select(column => Place(file, header, column))]);
        }
        catch
        {
            plain.Dispose();
            throw;
        }
    }

    static CsvRows OpenQuoted(string file, IEnumerable<string> columns)
    {
        CsvConfiguration configuration = new(CultureInfo.InvariantCulture) { MissingFieldFound = null, BadDataFound = null, IgnoreBlankLines = true, MaxFieldSize = LongestLine };
        CsvReader csv = new(new BoundedLines(OpenText(file), file), configuration);
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

    /// <summary>Adds the next row in the order of the columns asked for; false at the end. A cell that a short row lacks is empty.</summary>
    public bool Next(RowBatch batch)
    {
        if (_plain is not null)
        {
            if (!_plain.Next(out ReadOnlySpan<char> line))
            {
                return false;
            }
            batch.Begin(_plain.Line);
            PlainLines.AddCells(line, _places, batch);
            return true;
        }
        if (!Read(_csv!, _file))
        {
            return false;
        }
        batch.Begin(_csv!.Parser.RawRow);
        foreach (int place in _places)
        {
            batch.Add(_csv.TryGetField(place, out string? cell) ? cell : "");
        }
        return true;
    }

    public void Dispose()
    {
        _csv?.Dispose();
        _plain?.Dispose();
    }

    static bool HasQuotes(string file)
    {
        using StreamReader text = OpenText(file);
        char[] buffer = new char[1 << 16];
        while (text.Read(buffer, 0, buffer.Length) is > 0 and int read)
        {
            if (buffer.AsSpan(0, read).Contains('"'))
            {
                return true;
            }
        }
        return false;
    }

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

    static StreamReader OpenText(string file)
    {
        try
        {
            return new StreamReader(RegularFile.Open(file, MostBytes));
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
            if (_letters > LongestLine)
            {
                throw new WrongUseException(FormattableString.Invariant($"{file}, line {_line}: the line is longer than {LongestLine} letters, so that this is no table. Name another file."));
            }
        }

        protected override void Dispose(bool disposing)
        {
            text.Dispose();
            base.Dispose(disposing);
        }
    }
}
