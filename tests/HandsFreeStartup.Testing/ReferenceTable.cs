using System.Globalization;
using CsvHelper;

namespace HandsFreeStartup.Calculations.Tests.Support;

/// <summary>Rows of a table in Reference/, by column name.</summary>
static class ReferenceTable
{
    public static IReadOnlyList<Row> Rows(string table)
    {
        using StreamReader text = new(Path.Combine(AppContext.BaseDirectory, "Reference", table + ".csv"));
        using CsvReader csv = new(text, CultureInfo.InvariantCulture);
        List<Row> rows = [];
        csv.Read();
        csv.ReadHeader();
        while (csv.Read())
        {
            rows.Add(new(csv.HeaderRecord!.ToDictionary(name => name, name => csv.GetField(name)!)));
        }
        Assert.NotEmpty(rows);
        return rows;
    }

    public sealed class Row(Dictionary<string, string> cells)
    {
        public string Text(string column) => cells[column];

        public bool HasColumn(string column) => cells.ContainsKey(column);

        public bool Has(string column) => cells[column].Length > 0;

        public double Number(string column) => double.Parse(cells[column], CultureInfo.InvariantCulture);

        public override string ToString() => string.Join(" ", cells.Values.Take(7));
    }
}
