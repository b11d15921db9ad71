using System.Globalization;
using System.Text.RegularExpressions;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Phrases;

namespace HandsFreeStartup.Tests.Fuzzing;

/// <summary>
/// The line that a technician types. What is taken for a reading must be one by a second reading of the line: in figures the name, one strict number and the unit; in words a
/// number that these words can mean.
/// </summary>
public sealed partial class TypedLineDoor() : FuzzedDoor("typed-line")
{
    static readonly Expectation[] Expectations =
    [
        Expectation.Open,
        Expectation.Open with { Answers = [AnswerWord.Confirm, AnswerWord.Yes, AnswerWord.No] },
        Expectation.Open with { Dictation = true },
        Expectation.Open with { Choices = [new SpokenChoice("II", "category two"), new SpokenChoice("upper-bedroom", "upper bedroom")] },
        new([new ExpectedReading(Fields.Find("room_co")!, ["monoxide", "C O", "room monoxide"])], [CommandWord.Done], []),
        new([ExpectedReading.Of(FieldUnits.In(Fields.Find("manifold_pressure")!, Unit.Pascals)), ExpectedReading.Of(FieldUnits.In(Fields.Find("flue_temperature")!, Unit.Celsius))], [], []),
        new([.. Fields.PlateBounds.Select(bound => ExpectedReading.Of(bound with { Highest = 15, MostDecimals = 2 }))], [], []),
        .. Fields.All.Select(field => new Expectation([ExpectedReading.Of(field)], [], [])),
    ];

    public override IReadOnlyList<string> Words { get; } =
    [
        .. Fields.All.SelectMany(field => field.SpokenNames.Append(field.Label)), .. Unit.All.SelectMany(unit => unit.Spoken.Append(unit.Symbol)), .. Commands.All.Select(command => command.Id),
        .. SafetyWords.Ways.Select(way => way.Words), .. SpokenValue.Words, "over range", "minus", "°", "%", ":", "=", " ", ".", ",",
    ];

    protected override IEnumerable<byte[]> Seeds() => LinesOf("typed-lines.txt");

    public override Outcome Try(byte[] input, Random random)
    {
        string line = TextOf(input);
        Expectation expectation = Expectations[random.Next(Expectations.Length)];
        Phrase phrase = PhraseText.Typed(line, expectation);
        switch (phrase)
        {
            case Phrase.NotUnderstood refused:
                Assert.Matches(@"[.:]\S*$", refused.Evidence.Why.TrimEnd());
                Assert.InRange(refused.Evidence.Why.Length, 5, 6000);
                return new Outcome(false, refused.Evidence.Why);
            case Phrase.Reading reading:
                Assert.Contains(expectation.Readings, expected => expected.Field.Id == reading.Field.Id);
                Assert.True(reading.Field.IsPossible(reading.Value));
                Check(line, reading, expectation.Readings.First(expected => expected.Field.Id == reading.Field.Id).Names);
                return new Outcome(true, $"reading {reading.Field.Id} {reading.IsOver}");
            case Phrase.Command order:
                Assert.True(Commands.Of(order.Word).IsSafetyPhrase || expectation.Commands.Contains(order.Word));
                return new Outcome(true, $"order {order.Word} {order.IsFire}");
            default:
                return new Outcome(true, phrase.GetType().Name);
        }
    }

    /// <summary>Fails where the line does not hold that reading.</summary>
    internal static void Check(string line, Phrase.Reading reading, IEnumerable<string> names)
    {
        IReadOnlyList<string> numbers = line.Any(char.IsNumber) && line.AsSpan().IndexOfAnyInRange('0', '9') >= 0 && InFigures(line, reading, names) is { Count: > 0 } figures ? figures : [];
        string shown = string.Create(CultureInfo.InvariantCulture, $"'{line}' became {reading.Field.Id} {reading.Value}{(reading.IsOver ? " over" : "")}");
        if (numbers.Count > 0)
        {
            Assert.True(numbers.Any(number => Fits(StrictNumber.Of(number), number, reading)), shown);
            return;
        }

        Assert.True(SpokenValue.Allows(line, reading), $"{shown}, which its words do not mean");
    }

    static bool Fits(decimal? number, string text, Phrase.Reading reading) => reading.IsOver
        ? (number is { } over && over > reading.Field.Highest) || text.TrimStart('+').Count(char.IsAsciiDigit) > 28
        : number == reading.Value && number?.Scale == reading.Value.Scale;

    /// <summary>The numbers that the line has in figures after the name, of which one ends it but for the unit.</summary>
    static IReadOnlyList<string> InFigures(string line, Phrase.Reading reading, IEnumerable<string> names)
    {
        string units = string.Join('|', Unit.All.Where(unit => unit == reading.Field.Unit).SelectMany(unit => unit.Spoken.Append(unit.Symbol)).Select(way => Regex.Escape(way.TrimEnd('.'))));
        Match end = Regex.Match(
            line.Trim(), $@"(?<sign>(?:minus|negative)\s*|{StrictNumber.Signs}\s*)?(?<number>(?<![0-9.,/]){StrictNumber.Digits})\s*(?:{units})?[.\s]*$", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant);
        string head = end.Success ? line.Trim()[..end.Index] : "";
        return end.Success && names.Select(Letters).Contains(Letters(head)) && !DoubtfulEnd().IsMatch(head)
            ? [$"{(end.Groups["sign"].Value.Trim() is { Length: > 0 } sign ? sign.Length > 1 ? "-" : sign : "")}{end.Groups["number"].Value}"]
            : [];
    }

    /// <summary>A name as letters and figures alone: "C.O. 2" and "C O two" are the same.</summary>
    static string Letters(string name) => NotALetter().Replace(Regex.Replace(name.ToLowerInvariant(), @"\btwo\b", "2"), "");

    [GeneratedRegex(@"[^a-z0-9]")]
    private static partial Regex NotALetter();

    [GeneratedRegex(@"[^\p{L}0-9\s:=,.][\s:=,.]*$")]
    private static partial Regex DoubtfulEnd();
}
