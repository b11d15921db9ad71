using System.Globalization;
using CsvHelper;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Compute;

/// <summary>Works a CSV file through a table, row by row, with constant memory.</summary>
/// <param name="table">Which.</param>
/// <param name="fuels">Fuels by name.</param>
/// <param name="messages">For progress and what is wrong.</param>
/// <param name="clock">Paces the progress lines.</param>
sealed class TableRun(ComputeTable table, FuelBook fuels, TextWriter messages, TimeProvider clock)
{
    /// <summary>Problems beyond this many are counted, not printed.</summary>
    const int MostPrinted = 200;

    static readonly TimeSpan ProgressEvery = TimeSpan.FromSeconds(5);

    long _rows;
    long _problems;
    long _lastProgress;

    /// <summary>Reads every row and writes inputs and outputs; a row with a bad cell keeps its inputs and has empty outputs.</summary>
    /// <returns>The exit code: wrong use when any cell was bad.</returns>
    public int Over(string file, TextWriter output, CancellationToken cancellation)
    {
        using CsvRows rows = CsvRows.Open(file, table.Inputs);
        using CsvWriter csv = new(output, new CsvHelper.Configuration.CsvConfiguration(CultureInfo.InvariantCulture) { NewLine = "\n" }, leaveOpen: true);
        string[] columns = [.. table.Inputs, .. table.Outputs];
        Write(csv, columns);
        _lastProgress = clock.GetTimestamp();
        while (rows.Next() is { } cells)
        {
            cancellation.ThrowIfCancellationRequested();
            RowInputs inputs = new(cells, fuels);
            Cell[]? results = table.Row(inputs);
            foreach ((string column, string reason) in inputs.Problems)
            {
                Report($"{file}, line {rows.Line}, column {column}: {reason}.");
            }
            Write(csv, [.. table.Inputs.Select(column => cells[column]), .. results?.Select(cell => cell.Text) ?? table.Outputs.Select(_ => "")]);
            _rows++;
            TellProgress();
        }
        Sum();
        return _problems == 0 ? ExitCode.Done : ExitCode.WrongUse;
    }

    static void Write(CsvWriter csv, IEnumerable<string> cells)
    {
        foreach (string cell in cells)
        {
            csv.WriteField(TableCell.Of(cell));
        }
        csv.NextRecord();
    }

    void Report(string problem)
    {
        if (++_problems <= MostPrinted)
        {
            messages.WriteLine(problem);
        }
    }

    void TellProgress()
    {
        if (clock.GetElapsedTime(_lastProgress) >= ProgressEvery)
        {
            _lastProgress = clock.GetTimestamp();
            messages.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{table.Name}: {_rows} rows so far"));
        }
    }

    void Sum()
    {
        if (_problems > MostPrinted)
        {
            messages.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{_problems - MostPrinted} more bad cells are not listed."));
        }
    }
}
