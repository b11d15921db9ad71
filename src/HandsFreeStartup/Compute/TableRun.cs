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

    const int BatchRows = 512;

    static readonly TimeSpan ProgressEvery = TimeSpan.FromSeconds(5);

    readonly Queue<Task<Batch>> _working = [];
    readonly Stack<StringBuilder> _texts = [];

    long _rows;
    long _problems;
    long _lastProgress;

    readonly record struct InputRow(string[] Cells, int Line);

    readonly record struct Batch(int Rows, StringBuilder Text, List<(int Line, string Column, string Reason)> Problems);

    /// <summary>Reads every row and writes inputs and outputs; a row with a bad cell keeps its inputs and has empty outputs.</summary>
    /// <returns>The exit code: wrong use when any cell was bad.</returns>
    public int Over(string file, TextWriter output, CancellationToken cancellation)
    {
        using CsvRows rows = CsvRows.Open(file, table.Inputs);
        output.Write(string.Join(',', [.. table.Inputs, .. table.Outputs]));
        output.Write('\n');
        _lastProgress = clock.GetTimestamp();
        try
        {
            while (Read(rows) is { Count: > 0 } batch)
            {
                cancellation.ThrowIfCancellationRequested();
                StringBuilder text = _texts.TryPop(out StringBuilder? used) ? used.Clear() : new();
                _working.Enqueue(Task.Run(() => Work(batch, text), cancellation));
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

    static List<InputRow> Read(CsvRows rows)
    {
        List<InputRow> batch = new(BatchRows);
        while (batch.Count < BatchRows && rows.Next() is { } cells)
        {
            batch.Add(new(cells, rows.Line));
        }
        return batch;
    }

    Batch Work(List<InputRow> rows, StringBuilder text)
    {
        List<(int, string, string)> problems = [];
        foreach (InputRow row in rows)
        {
            RowInputs inputs = new(table.Inputs, row.Cells, fuels);
            AppendInputs(row.Cells, text);
            table.Append(inputs, text);
            text.Append('\n');
            problems.AddRange(inputs.Problems.Select(problem => (row.Line, problem.Column, problem.Reason)));
        }
        return new(rows.Count, text, problems);
    }

    static void AppendInputs(string[] cells, StringBuilder line)
    {
        for (int i = 0; i < cells.Length; i++)
        {
            if (i > 0)
            {
                line.Append(',');
            }
            if (IsHarmless(cells[i]))
            {
                line.Append(cells[i]);
            }
            else
            {
                AppendQuoted(TableCell.Of(cells[i]), line);
            }
        }
    }

    // Figures, letters, _ and - inside: nothing that a spreadsheet or a reader of CSV would take for something else.
    static bool IsHarmless(string cell)
    {
        for (int i = 0; i < cell.Length; i++)
        {
            if (!(char.IsAsciiLetterOrDigit(cell[i]) || cell[i] is '.' or '_' || (cell[i] == '-' && i > 0)))
            {
                return false;
            }
        }
        return true;
    }

    static void AppendQuoted(string cell, StringBuilder line)
    {
        bool isQuoted = cell.Length > 0 && (cell[0] == ' ' || cell[^1] == ' ' || cell.AsSpan().IndexOfAny(",\"\r\n") >= 0);
        line.Append(isQuoted ? $"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : cell);
    }

    void Write(Batch batch, string file, TextWriter output)
    {
        foreach ((int line, string column, string reason) in batch.Problems)
        {
            Report($"{file}, line {line}, column {column}: {reason}.");
        }
        foreach (ReadOnlyMemory<char> chunk in batch.Text.GetChunks())
        {
            output.Write(chunk.Span);
        }
        _texts.Push(batch.Text);
        _rows += batch.Rows;
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
