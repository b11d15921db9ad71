using System.Globalization;
using CsvHelper;
using HandsFreeStartup.Tests.Support;

namespace HandsFreeStartup.Tests;

/// <summary>The command <c>compute</c>, run as its user runs it.</summary>
public sealed class ComputeTests : IDisposable
{
    const string Combustion = "fuel,oxygen_dry_percent,flue_temperature_C,combustion_air_temperature_C,combustion_air_relative_humidity_percent,carbon_monoxide_dry_ppm,pressure_Pa";

    readonly string _folder = Directory.CreateTempSubdirectory("compute-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    static string Reference(string file) => Path.Combine(AppContext.BaseDirectory, "Reference", file);

    string FileOf(string name, params string[] lines)
    {
        string file = Path.Combine(_folder, name);
        File.WriteAllLines(file, lines);
        return file;
    }

    static List<Dictionary<string, string>> Rows(string file)
    {
        using CsvReader csv = new(new StreamReader(file), CultureInfo.InvariantCulture);
        csv.Read();
        csv.ReadHeader();
        List<Dictionary<string, string>> rows = [];
        while (csv.Read())
        {
            rows.Add(csv.HeaderRecord!.ToDictionary(column => column, column => csv.GetField(column)!));
        }
        return rows;
    }

    /// <summary>Source: the reference tables beside the calculation core's tests, with the columns and tolerances agreed in compute-columns.csv.</summary>
    [Theory]
    [InlineData("combustion")]
    [InlineData("heating_values")]
    [InlineData("saturation")]
    [InlineData("dew_point")]
    [InlineData("moist_air")]
    [InlineData("gas_at_meter")]
    [InlineData("air_free_uncertainty")]
    [InlineData("siegert_uncertainty")]
    [InlineData("guarded_acceptance")]
    [InlineData("isa")]
    [InlineData("adjustment")]
    public async Task A_reference_table_comes_out_as_agreed(string table)
    {
        string output = Path.Combine(_folder, "out.csv");
        ProgramResult result = await ProgramProcess.Run(
            "compute", table, "--in", Reference(table + ".csv"), "--out", output, "--fuels", Reference("fuel_definitions.csv"));
        List<Dictionary<string, string>> columns = [.. Rows(Reference("compute-columns.csv")).Where(column => column["table"] == table)];
        List<Dictionary<string, string>> expected = Rows(Reference(table + ".csv"));
        List<Dictionary<string, string>> actual = Rows(output);

        Assert.Equal(0, result.ExitCode);
        Assert.Equal(string.Join(",", columns.Select(column => column["column"])), File.ReadLines(output).First());
        Assert.Equal(expected.Count, actual.Count);
        string[] wrong = [.. expected.Zip(actual).SelectMany(pair => columns.Where(column => !Agrees(column, pair.First, pair.Second))
            .Select(column => $"{column["column"]}: {pair.Second[column["column"]]} instead of {pair.First[column["column"]]}"))];
        Assert.True(wrong.Length == 0, string.Join("\n", wrong.Take(20)));
    }

    static bool Agrees(Dictionary<string, string> column, Dictionary<string, string> expected, Dictionary<string, string> actual)
    {
        string name = column["column"];
        string wanted = expected[name];
        if (column["role"] == "input" || !double.TryParse(wanted, CultureInfo.InvariantCulture, out double value))
        {
            // An empty reference cell is "not defined there": real-gas values may be known to one model and not to the other.
            return wanted == actual[name] || (wanted.Length == 0 && column["note"].Contains("skipped"));
        }
        // Both are drawn 2 000 000 times, so both have the same standard error.
        double tolerance = name.StartsWith("mc_interval_")
            ? 6 * Math.Sqrt(2) * Number(expected["mc_standard_error_" + name["mc_interval_".Length..]])
            : Math.Max(Number(column["absolute_tolerance"]), Number(column["relative_tolerance"]) * Math.Abs(value));
        return actual[name].Length > 0 && Math.Abs(Number(actual[name]) - value) <= tolerance;
    }

    static double Number(string text) => text.Length == 0 ? 0 : double.Parse(text, CultureInfo.InvariantCulture);

    [Fact]
    public async Task Bad_cells_are_named_with_line_and_column_and_the_other_rows_are_worked_out()
    {
        string input = FileOf("in.csv", Combustion + ",remark",
            "natural-gas,7.6,164,21,0,12,101325,good",
            "natural-gas,seven,164,21,0,12,101325,a word",
            "coal,7.6,164,21,0,,101325,two at once",
            "natural-gas,21.5,164,21,0,12,101325,more than air",
            "natural-gas,5,150,20,0,0",
            "propane,6,180,20,0,0,101325,good");
        string output = Path.Combine(_folder, "out.csv");

        ProgramResult result = await ProgramProcess.Run("compute", "combustion", "--in", input, "--out", output);

        Assert.Equal(2, result.ExitCode);
        Assert.Equal(
            [
                $"{input}, line 3, column oxygen_dry_percent: 'seven' is not a number: type its digits, such as 12.3.",
                $"{input}, line 4, column fuel: 'coal' is no known fuel or gas; give its composition with --fuels.",
                $"{input}, line 4, column carbon_monoxide_dry_ppm: is empty; a number is needed.",
                $"{input}, line 5, column oxygen_dry_percent: 21.5 is above 20.89.",
                $"{input}, line 6, column pressure_Pa: is empty; a number is needed.",
            ],
            result.Error.Trim().Split('\n').Select(line => line.TrimEnd()));
        List<Dictionary<string, string>> rows = Rows(output);
        Assert.Equal(["natural-gas", "natural-gas", "coal", "natural-gas", "natural-gas", "propane"], rows.Select(row => row["fuel"]));
        Assert.Equal([true, false, false, false, false, true], rows.Select(row => row["lambda"].Length > 0));
        Assert.Equal("seven", rows[1]["oxygen_dry_percent"]);
        Assert.DoesNotContain("remark", rows[0].Keys);
        // Source: golden point of propane at 6 % O2, 180 °C, 20 °C (calculated by other code).
        Assert.Equal(84.38, Number(rows[5]["efficiency_above_air_percent_HHV"]), 0.006);
    }

    [Fact]
    public async Task Without_out_the_table_goes_to_standard_output()
    {
        ProgramResult result = await ProgramProcess.Run("compute", "isa", "--in", FileOf("in.csv", "geopotential_altitude_m", "0", "1524"));

        Assert.Equal(0, result.ExitCode);
        Assert.Empty(result.Error);
        Assert.StartsWith("geopotential_altitude_m,temperature_C,pressure_Pa,pressure_ratio,density_kg_per_m3\n0,15,101325,1,", result.Output);
    }

    [Fact]
    public async Task A_missing_column_or_file_or_a_bad_fuel_is_one_sentence_and_leaves_an_old_result_alone()
    {
        string old = FileOf("out.csv", "old result");
        string noColumn = FileOf("in.csv", "altitude", "0");
        string badFuel = FileOf("fuels.csv", "fuel,component,mole_fraction", "mine,CH4,0.9", "mine,XYZ,0.1");

        ProgramResult column = await ProgramProcess.Run("compute", "isa", "--in", noColumn, "--out", old);
        ProgramResult absent = await ProgramProcess.Run("compute", "isa", "--in", Path.Combine(_folder, "absent.csv"), "--out", old);
        ProgramResult fuel = await ProgramProcess.Run("compute", "combustion", "--in", FileOf("c.csv", Combustion), "--out", old, "--fuels", badFuel);
        ProgramResult same = await ProgramProcess.Run("compute", "isa", "--in", noColumn, "--out", noColumn);

        Assert.All([column, absent, fuel, same], result => Assert.Equal(2, result.ExitCode));
        Assert.Contains("line 1: the column geopotential_altitude_m is missing", column.Error);
        Assert.Contains("absent.csv cannot be read", absent.Error);
        Assert.Contains("line 3, column component: 'XYZ' is none of CH4", fuel.Error);
        Assert.Contains("another file", same.Error);
        Assert.Equal("old result", File.ReadAllText(old).Trim());
    }

    [Fact]
    public async Task Memory_does_not_grow_with_the_rows()
    {
        const int Count = 200_000;
        string input = Path.Combine(_folder, "long.csv");
        await using (StreamWriter writer = new(input))
        {
            writer.WriteLine("geopotential_altitude_m");
            for (int i = 0; i < Count; i++)
            {
                writer.WriteLine(i % 4000);
            }
        }
        string output = Path.Combine(_folder, "out.csv");

        ProgramResult limited = await RunWithSmallHeap("compute", "isa", "--in", input, "--out", output);

        Assert.Equal(0, limited.ExitCode);
        Assert.Equal(Count + 1, File.ReadLines(output).Count());
    }

    // 32 MB of managed heap: the 200 000 rows alone, kept, would need more.
    static async Task<ProgramResult> RunWithSmallHeap(params string[] arguments)
    {
        System.Diagnostics.ProcessStartInfo start = new("dotnet", ["exec", typeof(CommandLine).Assembly.Location, .. arguments])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            Environment = { ["DOTNET_GCHeapHardLimit"] = "2000000" },
        };
        using System.Diagnostics.Process process = System.Diagnostics.Process.Start(start)!;
        return await ProgramProcess.Ended(process, process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
    }

    [Fact]
    public async Task One_reading_comes_out_as_a_sheet_with_uncertainties()
    {
        ProgramResult result = await ProgramProcess.Run(
            "compute", "reading", "--oxygen", "7.6", "--co", "12", "--flue", "328F", "--air", "70F", "--fuel", "natural-gas", "--co2", "7.8");

        Assert.Equal(0, result.ExitCode);
        Assert.Empty(result.Error);
        Assert.Contains("Combustion reading, natural gas", result.Output);
        // Source: 12 · 20.9/(20.9 − 7.6), by hand.
        Assert.Matches(@"CO air-free +19 ppm +± 36", result.Output);
        Assert.Matches(@"Excess air +\d\d\.\d % +± \d\.\d", result.Output);
        Assert.Contains("O2, CO2 and fuel belong together", result.Output);
        Assert.Contains("ASSUMED, not measured: anything between dry and saturated", result.Output);
        Assert.Contains("None is seasonal", result.Output);
    }

    [Theory]
    [InlineData("is no temperature", "--oxygen", "7.6", "--flue", "328")]
    [InlineData("O2 must be at least 0 % and below that of air", "--oxygen", "20.9", "--flue", "328F")]
    [InlineData("Give the O2", "--flue", "328F")]
    public async Task A_reading_that_cannot_be_used_is_one_sentence(string sentence, params string[] given)
    {
        ProgramResult result = await ProgramProcess.Run(["compute", "reading", "--co", "12", "--air", "70F", "--fuel", "natural-gas", .. given]);

        Assert.Equal(2, result.ExitCode);
        Assert.Empty(result.Output);
        Assert.Contains(sentence, Assert.Single(result.Error.Trim().Split('\n')));
    }

    [Theory]
    [InlineData("60F", true)]
    [InlineData("328F", false)]
    public async Task A_flue_that_is_colder_than_the_air_is_doubted_in_words(string flue, bool isDoubted)
    {
        ProgramResult result = await ProgramProcess.Run(
            "compute", "reading", "--oxygen", "7.6", "--co", "12", "--flue", flue, "--air", "70F", "--fuel", "natural-gas");

        Assert.Equal(isDoubted, result.Output.Contains("LOOK AGAIN: the flue is colder than the combustion air", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Above_the_oxygen_guard_the_sheet_states_no_air_free_value()
    {
        ProgramResult result = await ProgramProcess.Run(
            "compute", "reading", "--oxygen", "17", "--co", "40", "--flue", "200F", "--air", "70F", "--fuel", "natural-gas");

        Assert.Equal(0, result.ExitCode);
        Assert.Contains("CO air-free: not stated above 15 % O2", result.Output);
        Assert.DoesNotMatch(@"CO air-free +\d", result.Output);
    }

    [Fact]
    public async Task Rows_come_out_in_the_order_in_which_they_went_in_with_and_without_quotation_marks()
    {
        string[] rows = [.. Enumerable.Range(0, 5000).Select(i => FormattableString.Invariant($"{i * 2}"))];
        string plain = Path.Combine(_folder, "plain.csv"), quoted = Path.Combine(_folder, "quoted.csv");
        await ProgramProcess.Run("compute", "isa", "--in", FileOf("in.csv", ["geopotential_altitude_m", .. rows]), "--out", plain);
        await ProgramProcess.Run("compute", "isa", "--in", FileOf("in2.csv", ["geopotential_altitude_m", .. rows.Select(row => $"\"{row}\"")]), "--out", quoted);

        Assert.Equal(rows, Rows(plain).Select(row => row["geopotential_altitude_m"]));
        Assert.Equal(File.ReadAllText(plain), File.ReadAllText(quoted));
    }

    [Theory]
    [InlineData("0", "they agree")]
    [InlineData("0.9", "they agree")]
    [InlineData("0", "they do not agree", "oxygen=8.0/2.5")]
    public async Task Draws_check_the_uncertainty_of_an_explanation(string correlation, string verdict, string oxygen = "oxygen=8.0/0.3")
    {
        ProgramResult result = await ProgramProcess.Run(
            "compute", "explain", "co_air_free", oxygen, "flue_co=300/30", "--correlation", correlation, "--draws", "100000");

        Assert.Equal(0, result.ExitCode);
        Assert.StartsWith("Monte Carlo, 100000 draws: 95 % of them from ", result.Output.TrimEnd().Split('\n')[^1], StringComparison.Ordinal);
        Assert.Contains(verdict, result.Output, StringComparison.Ordinal);
        Assert.Equal(correlation != "0", result.Output.Contains("CO with O2", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_result_explains_itself_in_at_most_six_lines()
    {
        ProgramResult result = await ProgramProcess.Run(
            "compute", "explain", "co_air_free", "oxygen=8.0/0.3", "flue_co=100/20", "--most", "400", "--source", "ANSI Z21.47");

        Assert.Equal(0, result.ExitCode);
        string[] lines = result.Output.TrimEnd().Split('\n');
        Assert.InRange(lines.Length, 4, 6);
        Assert.Contains("COaf = CO × 20.9 / (20.9 − O2)", lines);
        Assert.Contains("= 100 × 20.9 / (20.9 − 8.0) = 162 ± 40 ppm, made of CO 99 %, O2 1 %", lines);
        Assert.EndsWith("passes by more than the guard band: allowed is at most 400 ppm (ANSI Z21.47)", lines[^1]);
    }

    [Theory]
    [InlineData("no result that can be explained", "warmth")]
    [InlineData("needs flue_co", "co_air_free", "oxygen=8")]
    [InlineData("is no input of co_air_free", "co_air_free", "oxygen=8", "flue_co=9", "color=3")]
    [InlineData("cannot be worked out", "co_air_free", "oxygen=17", "flue_co=9")]
    public async Task What_cannot_be_explained_is_one_sentence(string sentence, params string[] given)
    {
        ProgramResult result = await ProgramProcess.Run(["compute", "explain", .. given]);

        Assert.Equal(2, result.ExitCode);
        Assert.Empty(result.Output);
        Assert.Contains(sentence, Assert.Single(result.Error.Trim().Split('\n')));
    }
}
