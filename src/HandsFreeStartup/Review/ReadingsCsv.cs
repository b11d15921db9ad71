using System.Globalization;
using System.Text;
using System.Text.Json;
using CsvHelper;
using CsvHelper.Configuration;
using CsvHelper.TypeConversion;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Reports.Review;
using HandsFreeStartup.Storage.Log;

namespace HandsFreeStartup.Review;

/// <summary>The readings and results of many jobs as one table (RFC 4180); no names of customers are in it.</summary>
static class ReadingsCsv
{
    static readonly CsvConfiguration Layout = new(CultureInfo.InvariantCulture) { NewLine = "\n" };

    /// <summary>Writes the table.</summary>
    /// <param name="path">The file; it is replaced.</param>
    /// <param name="records">The jobs' files, read one after the other.</param>
    /// <returns>Number of rows, and of records that could not be read.</returns>
    /// <exception cref="UnusableFileException">It cannot be written.</exception>
    public static (int Rows, int Unreadable) Write(string path, IEnumerable<string> records)
    {
        int rows = 0, unreadable = 0;
        WholeFile.Write(path, file =>
        {
            using StreamWriter text = new(file, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false), leaveOpen: true);
            using CsvWriter csv = Begun(text);
            foreach (string record in records)
            {
                if (RowsOf(record) is { } values)
                {
                    csv.WriteRecords(values);
                    rows += values.Count;
                }
                else
                {
                    unreadable++;
                }
            }
        }, "The table");
        return (rows, unreadable);
    }

    /// <summary>The table of one job as text.</summary>
    public static string Of(IEnumerable<ReadingRow> rows)
    {
        StringWriter text = new();
        using (CsvWriter csv = Begun(text))
        {
            csv.WriteRecords(rows);
        }

        return text.ToString();
    }

    static CsvWriter Begun(TextWriter text)
    {
        CsvWriter csv = new(text, Layout);
        csv.Context.RegisterClassMap(new Columns());
        csv.WriteHeader<ReadingRow>();
        csv.NextRecord();
        return csv;
    }

    static IReadOnlyList<ReadingRow>? RowsOf(string record)
    {
        try
        {
            return ReviewedRecord.Read(record) is { Job: { } job, Plan: { } plan } ? ReadingRow.Of(plan, job.Events) : null;
        }
        catch (Exception error) when (Damage.Explains(error) || FileTrouble.Is(error))
        {
            return null;
        }
    }

    /// <summary>Every member of a row is a column, named as in the log: <c>step_id</c>.</summary>
    sealed class Columns : ClassMap<ReadingRow>
    {
        public Columns()
        {
            AutoMap(CultureInfo.InvariantCulture);
            foreach (MemberMap column in MemberMaps)
            {
                column.Name(JsonNamingPolicy.SnakeCaseLower.ConvertName(column.Data.Member!.Name));
            }

            foreach (MemberMap column in MemberMaps.Where(column => column.Data.Type == typeof(string)))
            {
                column.Data.TypeConverter = new SafeCell();
            }

            Map(row => row.At).Name("at").TypeConverterOption.Format("O");
        }
    }

    /// <summary>No text of a record is worked out by the spreadsheet that opens the table.</summary>
    sealed class SafeCell : DefaultTypeConverter
    {
        public override string? ConvertToString(object? value, IWriterRow row, MemberMapData memberMapData) => value is string text ? TableCell.Of(text) : "";
    }
}
