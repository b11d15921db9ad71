using System.Globalization;
using CsvHelper;
using CsvHelper.Configuration;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Compute;

/// <summary>The rows of a CSV file with a header, one at a time; only the named columns are read, others are ignored.</summary>
sealed class CsvRows : IDisposable
{
    readonly CsvReader _csv;
    readonly (string Name, int Index)[] _columns;

    CsvRows(CsvReader csv, (string, int)[] columns)
    {
        _csv = csv;
        _columns = columns;
    }

    /// <summary>Line of the file on which the present row ends, from 1.</summary>
    public int Line => _csv.Parser.RawRow;

    /// <exception cref="WrongUseException">The file cannot be opened, or a column is missing or twice there.</exception>
    public static CsvRows Open(string file, IEnumerable<string> columns)
    {
        CsvConfiguration configuration = new(CultureInfo.InvariantCulture) { MissingFieldFound = null, BadDataFound = null, IgnoreBlankLines = true };
        CsvReader csv = new(OpenText(file), configuration);
        try
        {
            string[] header = csv.Read() && csv.ReadHeader() ? csv.HeaderRecord! : [];
            return new(csv, [.. columns.Select(column => (column, Place(file, header, column)))]);
        }
        catch
        {
            csv.Dispose();
            throw;
        }
    }

    /// <summary>The next row by column name, or null at the end. A cell that a short row lacks is empty.</summary>
    public Dictionary<string, string>? Next() =>
        _csv.Read() ? _columns.ToDictionary(column => column.Name, column => _csv.GetField(column.Index) ?? "") : null;

    public void Dispose() => _csv.Dispose();

    static StreamReader OpenText(string file)
    {
        try
        {
            return new StreamReader(file);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new WrongUseException($"{file} cannot be read: {e.Message}");
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
}
