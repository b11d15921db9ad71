using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Speech.Speaking;

namespace HandsFreeStartup.Tests.Fuzzing;

/// <summary>What the voice is given to say: sentences that quote whatever was typed or stands in a file. A number by itself is said as the number that it is.</summary>
public sealed class VoiceDoor() : FuzzedDoor("voice")
{
    public override IReadOnlyList<string> Words { get; } =
        [.. Unit.All.Select(unit => unit.Symbol), "CO2", "O₂", "CO", "-", "–", ",", ".", "±", "≤", "\u0001", "1,000", "80,000 Btu/h", "ft³/h", " in. w.c.", "0.00", "1 s", "7.6-8.2", "12345678901234567890"];

    protected override IEnumerable<byte[]> Seeds() => new[]
    {
        "Draft -0.02 in. w.c.", "O2 7.60 %, CO2 7.5 %", "Set 3.2–3.8 in. w.c. again", "CO air-free ≤ 400 ppm", "The photo plate.jpg cannot be kept: there is no such file.", "7.6", "-0.02", "328", "9999",
    }.Select(BytesOf).Concat(LinesOf("typed-lines.txt"));

    public override Outcome Try(byte[] input, Random random)
    {
        string shown = TextOf(input);
        string said = SpokenMessage.Of(Message.Written(shown), random.Next(2) == 0);
        Assert.Equal(shown, Message.Written(shown).Shown);
        Assert.DoesNotContain('\u0001', said);
        Assert.InRange(said.Length, 0, 30 * (shown.Length + 1));
        bool isReading = StrictNumber.Of(shown) is { } number && Math.Abs(number) < 10_000 && number.Scale < 6 && shown[0] is '-' or '−' or >= '0' and <= '9' && !shown.Contains(' ', StringComparison.Ordinal);
        Assert.True(
            !isReading || SpokenValue.Allows(said, new Phrase.Reading(Fields.Find("oxygen")!, StrictNumber.Of(shown)!.Value, Evidence.Typed(""))), $"'{shown}' is said as '{said}'");
        return new Outcome(true, isReading ? "number" : new string([.. said.Where(letter => !char.IsLetter(letter)).Distinct().Order()]));
    }
}
