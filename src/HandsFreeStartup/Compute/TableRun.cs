using System.Globalization;
using System.Text;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Running;

namespace HandsFreeStartup.Compute;

/// <summary>
/// Works a CSV file through a table with constant memory: rows are read in order, worked out in batches on every core, and written in the order in which they were read.
/// </summary>
/// <param name="table">Which.</param>
/// <param name="fuels">Fuels by name.</param>
/// <param name="messages">For progress and what is wrong.</param>
/// <param name="clock">Paces the progress lines.</param>
sealed class TableRun(ComputeTable table, FuelBook fuels, TextWriter messages, TimeProvider clock)
{
    /// <summary>Problems beyond this many are counted, not printed.</summary>
    const int MostPrinted = 200;

    static readonly TimeSpan ProgressEvery = TimeSpan.FromSeconds(5);

    readonly Queue<Task<Batch>> _working = [];
    readonly Stack<Batch> _free = [];

    long _rows;
    long _problems;
    long _lastProgress;

    /// <summary>Rows on their way: what was read, what is to be written, and what was wrong. Used again.</summary>
    sealed class Batch(RowBatch rows)
    {
        public readonly RowBatch Rows = rows;
        public readonly RowText Text = new();
        public readonly List<(int Line, string Column, string Reason)> Problems = [];

        public Batch Cleared()
        {
            Rows.Clear();
            Text.Clear();
            Problems.Clear();
            return this;
        }
    }

    /// <summary>Reads every row and writes inputs and outputs; a row with a bad cell keeps its inputs and has empty outputs.</summary>
    /// <returns>The exit code: wrong use when any cell was bad.</returns>
    /// <param name="file">The rows.</param>
    /// <param name="output">Takes whole lines in UTF-8.</param>
    /// <param name="cancellation">Ends the work between two batches.</param>
    public int Over(string file, Action<ReadOnlySpan<byte>> output, CancellationToken cancellation)
    {
        using CsvRows rows = CsvRows.Open(file, table.Inputs);
        output(Encoding.UTF8.GetBytes(string.Join(',', [.. table.Inputs, .. table.Outputs]) + "\n"));
        _lastProgress = clock.GetTimestamp();
        try
        {
            while (Read(rows) is { } batch)
            {
                cancellation.ThrowIfCancellationRequested();
                _working.Enqueue(Task.Run(() => Work(batch), cancellation));
                if (_working.Count > 2 * Environment.ProcessorCount)
                {
                    Write(_working.Dequeue().GetAwaiter().GetResult(), file, output);
                }
            }
        }
        finally
        {
            // Rows before one that cannot be read are written all the same.
            while (_working.TryDequeue(out Task<Batch>? batch) && !batch.IsCanceled)
            {
                Write(batch.GetAwaiter().GetResult(), file, output);
            }
        }
        Sum();
        return _problems == 0 ? ExitCode.Done : ExitCode.WrongUse;
    }

    Batch? Read(CsvRows rows)
    {
        Batch batch = _free.TryPop(out Batch? used) ? used.Cleared() : new(rows.NewBatch());
        return rows.Next(batch.Rows) ? batch : null;
    }

    Batch Work(Batch batch)
    {
        batch.Rows.Split();
        RowInputs inputs = new(table.Inputs, batch.Rows, fuels);
        for (int row = 0; row < batch.Rows.Count; row++)
        {
            inputs.GoTo(row);
            AppendInputs(batch.Rows, row, batch.Text);
            table.Append(inputs, batch.Text);
            batch.Text.Add((byte)'\n');
            foreach ((string column, string reason) in inputs.Problems)
            {
                batch.Problems.Add((inputs.Line, column, reason));
            }
        }
        return batch;
    }

    void AppendInputs(RowBatch rows, int row, RowText line)
    {
        for (int column = 0; column < table.Inputs.Length; column++)
        {
            if (column > 0)
            {
                line.Add((byte)',');
            }
            ReadOnlySpan<byte> cell = rows.Cell(row, column);
            line.Add(IsHarmless(cell) ? cell : Encoding.UTF8.GetBytes(Quoted(TableCell.Of(Encoding.UTF8.GetString(cell)))));
        }
    }

    // A number, or figures, letters, _ and - inside: nothing that a spreadsheet or a reader of CSV would take for something else.
    static bool IsHarmless(ReadOnlySpan<byte> cell)
    {
        for (int i = 0; i < cell.Length; i++)
        {
            if (!(char.IsAsciiLetterOrDigit((char)cell[i]) || cell[i] is (byte)'.' or (byte)'_' || (cell[i] == '-' && i > 0)))
            {
                return TypedNumber.TryReadShort(cell, out _);
            }
        }
        return true;
    }

    static string Quoted(string cell) =>
        cell.Length > 0 && (cell[0] == ' ' || cell[^1] == ' ' || cell.AsSpan().IndexOfAny(",\"\r\n") >= 0) ? $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : cell;

    void Write(Batch batch, string file, Action<ReadOnlySpan<byte>> output)
    {
        foreach ((int line, string column, string reason) in batch.Problems)
        {
            Report($"{file}, line {line}, column {column}: {reason}.");
        }
        output(batch.Text.Written);
        _rows += batch.Rows.Count;
        _free.Push(batch);
        TellProgress();
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
