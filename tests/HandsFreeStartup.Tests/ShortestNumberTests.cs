using System.Globalization;
using System.Text;
using HandsFreeStartup.Compute;

namespace HandsFreeStartup.Tests;

/// <summary>Numbers of a table stand there as the framework would write them.</summary>
public sealed class ShortestNumberTests
{
    static string Written(double value)
    {
        byte[] text = new byte[ShortestNumber.Room];
        return Encoding.ASCII.GetString(text, 0, ShortestNumber.Write(value, text));
    }

    static string Expected(double value) => value.ToString("R", CultureInfo.InvariantCulture);

    [Theory]
    [InlineData(0.0)]
    [InlineData(-1e-7)]
    [InlineData(1.0)]
    [InlineData(-21.5)]
    [InlineData(0.0001)]
    [InlineData(0.00009999999999999999)]
    [InlineData(562949953421311.9)]
    [InlineData(562949953421312.0)]
    [InlineData(1e300)]
    [InlineData(5e-324)]
    [InlineData(0.1)]
    [InlineData(0.30000000000000004)]
    [InlineData(2.2250738585072014e-308)]
    public void A_number_at_an_edge_is_written_as_the_framework_writes_it(double value) => Assert.Equal(Expected(value), Written(value));

    [Fact]
    public void Half_a_million_numbers_are_written_as_the_framework_writes_them()
    {
        Random random = new(21);
        for (int i = 0; i < 500_000; i++)
        {
            double value = (i % 4) switch
            {
                0 => random.NextDouble() * 100 - 50,
                1 => Math.Pow(10, random.NextDouble() * 22 - 6),
                2 => Math.Round(random.NextDouble() * 1000, random.Next(8)),
                _ => BitConverter.Int64BitsToDouble(BitConverter.DoubleToInt64Bits(Math.Pow(2, random.Next(-15, 52))) + random.Next(-3, 4)),
            };
            if (Written(value) != Expected(value))
            {
                Assert.Equal(Expected(value), Written(value));
            }
        }
    }
}
