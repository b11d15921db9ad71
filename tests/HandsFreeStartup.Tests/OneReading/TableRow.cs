using System.Globalization;
using CsvHelper;

namespace HandsFreeStartup.Tests.OneReading;

/// <summary>A row of the table as a spreadsheet reads it, by the names of its columns.</summary>
sealed record TableRow(IReadOnlyDictionary<string, string> Cells)
{
    public string this[string column] => Cells[column];

    public static IReadOnlyList<TableRow> Of(string csv)
    {
        using CsvReader reader = new(new StringReader(csv), CultureInfo.InvariantCulture);
        reader.Read();
        reader.ReadHeader();
        List<TableRow> rows = [];
        while (reader.Read())
        {
            rows.Add(new TableRow(reader.HeaderRecord!.ToDictionary(column => column, column => reader.GetField(column)!)));
        }

        return rows;
    }
}
