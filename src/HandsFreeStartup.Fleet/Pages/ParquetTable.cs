using HandsFreeStartup.Doors;
using HandsFreeStartup.Fleet.Reading;
using Parquet;
using Parquet.Schema;

namespace HandsFreeStartup.Fleet.Pages;

/// <summary>All readings and results of some days as a Parquet table; nothing personal but the technician's name is in it.</summary>
public static class ParquetTable
{
    /// <summary>Rows that are held in memory at a time.</summary>
    const int GroupRows = 50_000;

    static readonly string[] Texts = ["van", "job_id", "began_exact", "technician", "model", "step", "scope", "quantity", "shown", "unit", "limit_source", "verdict", "state", "heard"];
    static readonly string[] Numbers = ["value", "uncertainty", "lower", "upper"];

    static readonly DataField<DateTime> At = new("at");
    static readonly DataField<string>[] TextFields = [.. Texts.Select(name => new DataField<string>(name))];
    static readonly DataField<double?>[] NumberFields = [.. Numbers.Select(name => new DataField<double?>(name))];

    /// <summary>Writes the table.</summary>
    /// <param name="database">From where.</param>
    /// <param name="path">The file; it is replaced only when the new one is whole.</param>
    /// <param name="since">First day, by the clock on the wall of each job.</param>
    /// <param name="until">Last day, by the same clock.</param>
    /// <param name="cancellation">Ends it.</param>
    /// <returns>Number of rows.</returns>
    /// <exception cref="FleetException">The database cannot be asked.</exception>
    /// <exception cref="IOException">It cannot be written.</exception>
    public static async Task<long> Write(FleetDatabase database, string path, DateOnly since, DateOnly until, CancellationToken cancellation = default)
    {
        RegularFile.Check(path, long.MaxValue);
        string unfinished = $"{path}.part";
        try
        {
            long rows = await WriteRows(database, unfinished, since, until, cancellation);
            File.Move(unfinished, path, overwrite: true);
            return rows;
        }
        catch
        {
            File.Delete(unfinished);
            throw;
        }
    }

    static async Task<long> WriteRows(FleetDatabase database, string path, DateOnly since, DateOnly until, CancellationToken cancellation)
    {
        long rows = 0;
        await using FileStream file = new(path, FileMode.Create, FileAccess.ReadWrite);
        await using ParquetWriter writer = await ParquetWriter.CreateAsync(new ParquetSchema([At, .. TextFields, .. NumberFields]), file, cancellationToken: cancellation);
        Rows group = new();
        await foreach (FleetRow row in new FigureReader(database).Rows(Texts, Numbers, since, until, cancellation))
        {
            group.Add(row);
            if (group.Count == GroupRows)
            {
                rows += await group.Write(writer);
            }
        }

        return rows + await group.Write(writer);
    }

    sealed class Rows
    {
        readonly List<DateTime> _at = [];
        readonly List<string>[] _texts = [.. Texts.Select(_ => new List<string>())];
        readonly List<double?>[] _numbers = [.. Numbers.Select(_ => new List<double?>())];

        public int Count => _at.Count;

        public void Add(FleetRow row)
        {
            _at.Add(row.At.UtcDateTime);
            for (int i = 0; i < _texts.Length; i++)
            {
                _texts[i].Add(row.Texts[i]);
            }

            for (int i = 0; i < _numbers.Length; i++)
            {
                _numbers[i].Add(row.Numbers[i]);
            }
        }

        public async Task<int> Write(ParquetWriter writer)
        {
            int count = Count;
            using ParquetRowGroupWriter group = writer.CreateRowGroup();
            await group.WriteAsync<DateTime>(At, _at.ToArray());
            for (int i = 0; i < _texts.Length; i++)
            {
                await group.WriteAsync(TextFields[i], _texts[i]);
                _texts[i].Clear();
            }

            for (int i = 0; i < _numbers.Length; i++)
            {
                await group.WriteAsync<double>(NumberFields[i], _numbers[i].ToArray());
                _numbers[i].Clear();
            }

            group.CompleteValidate();
            _at.Clear();
            return count;
        }
    }
}
