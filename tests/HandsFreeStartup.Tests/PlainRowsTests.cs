using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using HandsFreeStartup.Compute;

namespace HandsFreeStartup.Tests;

/// <summary>
/// A table without quotation marks is cut into blocks that are taken apart on several cores. What comes of it is, byte by byte, what comes of the same table when its header has a
/// quotation mark, so that a library for CSV reads every cell.
/// </summary>
public sealed class PlainRowsTests : IDisposable
{
    const string Columns = "fuel,oxygen_dry_percent,flue_temperature_C,combustion_air_temperature_C,combustion_air_relative_humidity_percent,carbon_monoxide_dry_ppm,pressure_Pa";

    readonly string _folder = Directory.CreateTempSubdirectory("plain-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    static readonly string[] Fuels = ["natural-gas", "propane", "n-butane", "natural_gas", " propane ", "coal", "", "CH4", "Erdgas-Ä"];

    static readonly string[] BadNumbers =
    [
        "", " ", "7,6", "1e3", "-", "+", ".", "5.", "..5", "1.2.3", "007", "-0", "+4", "\u22125", "- 5", "٣", "12a", "1 000", "NaN", "=1+1", "-A1", "@x", "\u00A05", "5\u00A0", "5\t", "0.1234567890123456789",
        "9007199254740993", "123456789012345678901234567890", "99999", "-99999", "1_0", "0x10", "\uFFFD", "a\u0007b",
    ];

    static string Cell(Random random, int column) => column switch
    {
        0 => random.Next(8) == 0 ? Fuels[random.Next(Fuels.Length)] : "natural-gas",
        _ when random.Next(12) == 0 => BadNumbers[random.Next(BadNumbers.Length)],
        1 => Number(random, 0, 15),
        2 => Number(random, 40, 300),
        3 => Number(random, -20, 40),
        4 => Number(random, 0, 100),
        5 => random.Next(700).ToString(CultureInfo.InvariantCulture),
        6 => Number(random, 80_000, 103_000),
        _ => random.Next(3) == 0 ? "Prüfer 7" : "note",
    };

    static string Number(Random random, int least, int most) =>
        (least + random.NextDouble() * (most - least)).ToString($"F{random.Next(5)}", CultureInfo.InvariantCulture);

    static string Table(Random random, int rows, string lineEnd)
    {
        int before = random.Next(3), behind = random.Next(70);
        string[] header = [.. Enumerable.Range(0, before).Select(i => $"note {i}"), .. Columns.Split(','), .. Enumerable.Range(0, behind == 69 ? 70 : behind % 3).Select(i => $"further {i}")];
        StringBuilder text = new(random.Next(4) == 0 ? lineEnd : "");
        text.Append(string.Join(',', header.Select(name => random.Next(20) == 0 ? $" {name} " : name))).Append(lineEnd);
        for (int row = 0; row < rows; row++)
        {
            int cells = random.Next(30) == 0 ? random.Next(header.Length) : header.Length;
            text.Append(string.Join(',', Enumerable.Range(0, cells).Select(i => Cell(random, i < before ? 9 : i - before)))).Append(lineEnd);
        }
        return random.Next(2) == 0 ? text.ToString() : text.ToString().TrimEnd('\r', '\n');
    }

    (int Code, string Messages, byte[] Bytes) Worked(string text, Encoding encoding)
    {
        string file = Path.Combine(_folder, "table.csv");
        File.WriteAllText(file, text, encoding);
        using StringWriter messages = new();
        using MemoryStream output = new();
        ComputeTable table = ComputeTables.All.Single(one => one.Name == "combustion");
        int code = new TableRun(table, FuelBook.Open(null), messages, TimeProvider.System).Over(file, output.Write, CancellationToken.None);
        return (code, messages.ToString(), output.ToArray());
    }

    static string WithQuotes(string text) => Regex.Replace(text, " ?pressure_Pa ?", "\"$0\"");

    [Theory]
    [InlineData("\n", 120, 12)]
    [InlineData("\r\n", 120, 12)]
    [InlineData("\r", 120, 12)]
    [InlineData("\n\n", 40, 12)]
    [InlineData("\n", 1, 12)]
    [InlineData("\n", 0, 12)]
    [InlineData("\n", 6, 2500)]
    [InlineData("\r\n", 6, 2500)]
    [InlineData("\r", 1, 1500)]
    public void Without_quotation_marks_a_table_comes_out_as_with_them(string lineEnd, int tables, int rows)
    {
        for (int seed = 0; seed < tables; seed++)
        {
            Random random = new(seed);
            string text = Table(random, rows, lineEnd);
            (int code, string messages, byte[] bytes) = Worked(text, new UTF8Encoding(random.Next(2) == 0));
            (int quotedCode, string quotedMessages, byte[] quotedBytes) = Worked(WithQuotes(text), Encoding.UTF8);

            Assert.Equal(quotedMessages, messages);
            Assert.Equal(Encoding.UTF8.GetString(quotedBytes), Encoding.UTF8.GetString(bytes));
            Assert.Equal(quotedBytes, bytes);
            Assert.Equal(quotedCode, code);
        }
    }

    [Fact]
    public void A_table_in_two_bytes_a_letter_is_read_too()
    {
        string text = Table(new Random(1), 20, "\n");

        Assert.Equal(Worked(text, Encoding.UTF8).Bytes, Worked(text, Encoding.Unicode).Bytes);
        Assert.Equal(Worked(text, Encoding.UTF8).Bytes, Worked(text, Encoding.BigEndianUnicode).Bytes);
        Assert.Equal(Worked(text, Encoding.UTF8).Bytes, Worked(text, Encoding.UTF32).Bytes);
    }

    [Theory]
    [InlineData(100_000, "")]
    [InlineData(100_001, "line 3: the line is longer than 100000 letters")]
    [InlineData(900_000, "line 3: the line is longer than 100000 letters")]
    public void A_line_without_end_is_refused_by_letters_and_what_stands_before_it_is_worked_out(int letters, string sentence)
    {
        string row = "natural-gas,7.6,160,20,50,25,101325";
        string text = $"{Columns}\n{row}\n{row}{new string('ä', letters - row.Length)}";
        string message = Record.Exception(() => Worked(text, Encoding.UTF8))?.Message ?? "";

        Assert.Equal(sentence.Length > 0, message.Length > 0);
        Assert.Contains(sentence, message, StringComparison.Ordinal);
    }
}
