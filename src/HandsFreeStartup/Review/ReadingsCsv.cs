using System.Globalization;
using System.Text.Json;
using CsvHelper;
using CsvHelper.Configuration;
using HandsFreeStartup.Reports.Review;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Review;

/// <summary>The readings and results of many jobs as one table (RFC 4180); no names of customers are in it.</summary>
static class ReadingsCsv
{
    static readonly CsvConfiguration Layout = new(CultureInfo.InvariantCulture) { NewLine = "\n" };

    /// <summary>Writes the table.</summary>
    /// <param name="path">The file; it is replaced.</param>
    /// <param name="records">The jobs' files, read one after the other.</param>
    /// <returns>Number of rows, and of records that could not be read.</returns>
    /// <exception cref="WrongUseException">It cannot be written.</exception>
    public static (int Rows, int Unreadable) Write(string path, IEnumerable<string> records)
    {
        try
        {
            using StreamWriter file = new(path);
            using CsvWriter csv = new(file, Layout);
            csv.Context.RegisterClassMap(new Columns());
            csv.WriteHeader<ReadingRow>();
            csv.NextRecord();
            int rows = 0, unreadable = 0;
            foreach (string record in records)
            {
                if (ReviewedRecord.Read(record) is { Job: { } job, Plan: { } plan })
                {
                    IReadOnlyList<ReadingRow> values = ReadingRow.Of(plan, job.Events);
                    csv.WriteRecords(values);
                    rows += values.Count;
                }
                else
                {
                    unreadable++;
                }
            }

            return (rows, unreadable);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException)
        {
            throw new WrongUseException($"The table {path} cannot be written: {error.Message.TrimEnd('.')}. Name another file.");
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

            Map(row => row.At).Name("at").TypeConverterOption.Format("O");
        }
    }
}
