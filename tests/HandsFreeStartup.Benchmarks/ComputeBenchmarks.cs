using System.Globalization;
using System.Text;
using BenchmarkDotNet.Attributes;
using HandsFreeStartup.Compute;

namespace HandsFreeStartup.Benchmarks;

/// <summary>The command compute on a file of combustion readings, beside the bare reading and writing of the same rows: the ratio is what the numbers cost.</summary>
[MemoryDiagnoser]
public class ComputeBenchmarks
{
    const int Rows = 50_000;

    readonly string _folder = Directory.CreateTempSubdirectory("compute-").FullName;
    string _input = "", _output = "";
    string[] _worked = [];

    /// <summary>Rows that differ, and once what comes of them.</summary>
    [GlobalSetup]
    public void Write()
    {
        (_input, _output) = (Path.Combine(_folder, "in.csv"), Path.Combine(_folder, "out.csv"));
        StringBuilder rows = new("fuel,oxygen_dry_percent,flue_temperature_C,combustion_air_temperature_C,combustion_air_relative_humidity_percent,carbon_monoxide_dry_ppm,pressure_Pa\n");
        for (int i = 0; i < Rows; i++)
        {
            rows.Append(CultureInfo.InvariantCulture, $"natural-gas,{2 + i % 120 / 10.0:F1},{40 + i % 2500 / 10.0:F1},{-10 + i % 400 / 10.0:F1},{i % 101},{i % 700},{80_000 + i % 23_000}\n");
        }
        File.WriteAllText(_input, rows.ToString());
        Work();
        _worked = File.ReadAllLines(_output);
    }

    /// <summary>Removes the files.</summary>
    [GlobalCleanup]
    public void Remove() => Directory.Delete(_folder, recursive: true);

    /// <summary>Reads every input row and writes every finished row, and works nothing out.</summary>
    [Benchmark(Baseline = true)]
    public int Bare()
    {
        using StreamWriter output = new(_output);
        int letters = 0, row = 0;
        foreach (string line in File.ReadLines(_input))
        {
            letters += line.Length;
            output.WriteLine(_worked[row++]);
        }
        return letters;
    }

    /// <summary>The command's way.</summary>
    [Benchmark]
    public int Work()
    {
        using FileStream output = File.Create(_output);
        ComputeTable table = ComputeTables.All.Single(table => table.Name == "combustion");
        return new TableRun(table, FuelBook.Open(null), TextWriter.Null, TimeProvider.System).Over(_input, output.Write, CancellationToken.None);
    }
}
