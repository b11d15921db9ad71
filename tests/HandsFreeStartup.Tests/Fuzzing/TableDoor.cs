using System.Globalization;
using System.Text.RegularExpressions;
using CsvHelper;
using HandsFreeStartup.Compute;
using HandsFreeStartup.Tests.Support;
using HandsFreeStartup.Tests.Surroundings;

namespace HandsFreeStartup.Tests.Fuzzing;

/// <summary>A table that is worked through by <c>compute</c>. A row has results only where every number in it is a strict one.</summary>
public sealed partial class TableDoor() : FuzzedDoor("table")
{
    static readonly (string Name, string File)[] Tables =
        [("isa", "isa"), ("combustion", "combustion"), ("dew-point", "dew_point"), ("saturation", "saturation"), ("moist-air", "moist_air"), ("gas-at-meter", "gas_at_meter"), ("adjustment", "adjustment")];

    public override IReadOnlyList<string> Words { get; } = ["natural-gas", "propane", ",", "\"", "\"\"", "\r\n", "\n\n", ";", "\t", "\ufeff", "101325", "7.6", "-", .. Seeded().SelectMany(text => text.Split('\n')[0].Split(','))];

    protected override IEnumerable<byte[]> Seeds() => Seeded().Select(BytesOf);

    static IEnumerable<string> Seeded() => Tables.Select(table => $"{string.Join('\n', File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Reference", $"{table.File}.csv")).Take(4))}\n");

    public override Outcome Try(byte[] input, Random random)
    {
        string path = In("table.csv"), results = In("results.csv");
        File.WriteAllBytes(path, input);
        File.Delete(results);
        // The table whose columns the file has; another one is refused by its columns.
        string header = TextOf(input).Split('\n')[0];
        ComputeTable table = ComputeTables.All.Where(one => one.Inputs.All(column => header.Contains(column, StringComparison.Ordinal))).OrderByDescending(one => one.Inputs.Length)
            .FirstOrDefault() ?? ComputeTables.All[random.Next(ComputeTables.All.Length)];
        ProgramResult result = InProcess.Run("compute", table.Name, "--in", path, "--out", results, "--data", Folder).GetAwaiter().GetResult();
        Assert.True(result.ExitCode is 0 or 1 or 2, $"{result.ExitCode} {result.Error}");
        foreach (string problem in result.Error.Split('\n', StringSplitOptions.RemoveEmptyEntries))
        {
            SurroundingsTests.AssertSentence(problem);
        }

        int worked = File.Exists(results) ? Check(results, table) : 0;
        return new Outcome(worked > 0, result.Error.Split('\n')[0]);
    }

    static int Check(string results, ComputeTable table)
    {
        using CsvReader rows = new(new StreamReader(results), CultureInfo.InvariantCulture);
        int worked = 0;
        for (bool _ = rows.Read() && rows.ReadHeader(); rows.Read();)
        {
            if (rows.HeaderRecord!.Except(table.Inputs).Any(column => rows.GetField(column) is { Length: > 0 } && column != "problem"))
            {
                worked++;
                Assert.All(table.Inputs.Where(column => column is not ("fuel" or "gas") && !(column == "altitude_m" && table.Name == "moist_air")), column => Assert.True(IsNumber(rows.GetField(column)!), rows.GetField(column)));
            }
        }

        return worked;
    }

    /// <summary>A cell as it is written again: an apostrophe before what would be a formula, marks for tabs and line ends. A dash stands for what is not given, letters for a word.</summary>
    static bool IsNumber(string cell) =>
        cell.TrimStart('\'').Trim('␉', '\uFFFD', ' ') is var plain && (plain == "-" || plain.All(char.IsAsciiLetter) || Number().IsMatch(plain.Trim()));

    [GeneratedRegex($"^{StrictNumber.Signs}?\\s*{StrictNumber.Digits}$")]
    private static partial Regex Number();
}
