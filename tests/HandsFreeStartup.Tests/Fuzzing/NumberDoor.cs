using System.Globalization;
using HandsFreeStartup.Doors;

namespace HandsFreeStartup.Tests.Fuzzing;

/// <summary>The one reader of typed numbers, behind the console, the command line, YAML and tables.</summary>
public sealed class NumberDoor() : FuzzedDoor("number")
{
    public override IReadOnlyList<string> Words { get; } = ["7.6", "-0.02", "12", "1234567890123456789012345678", ".", ",", "-", "+", " ", "\u2212", "0"];

    protected override IEnumerable<byte[]> Seeds() => Words.Append("0.0000000000000000000000000001").Append("328").Select(BytesOf);

    public override Outcome Try(byte[] input, Random random)
    {
        string text = TextOf(input);
        decimal? read = TypedNumber.Read(text, out string reason);
        decimal? strict = StrictNumber.Of(text);
        Assert.True(read is null || (read == strict && read.Value.Scale == strict!.Value.Scale), $"'{text}' became {read}");
        // A double is the nearest one to all the digits, however many.
        double? floating = TypedNumber.ReadDouble(text, out string floatingReason);
        Assert.Equal(read is not null || floating is not null, floatingReason.Length == 0);
        Assert.True(strict is null || floating is null || Math.Abs(floating.Value - (double)strict.Value) <= Math.Abs((double)strict.Value) * 1e-15, $"'{text}' became {floating}");
        int? whole = TypedNumber.ReadWhole(text, 0, 9999, out string wholeReason);
        Assert.True(whole is null ? wholeReason.Length > 0 : strict == whole && strict.Value.Scale == 0, $"'{text}' became {whole}");
        Assert.True(!TypedNumber.IsAbove(text, 9999) || strict is null || strict > 9999, $"'{text}' is not above 9999");
        if (read is null)
        {
            Assert.InRange(reason.Length, 10, 300);
            Assert.True(VisibleText.IsVisible(reason), reason);
        }

        return new Outcome(read is not null, read?.Scale.ToString(CultureInfo.InvariantCulture) ?? reason);
    }
}
