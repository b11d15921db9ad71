using System.Collections.Frozen;
using System.Collections.Immutable;

namespace HandsFreeStartup.Speech.Phrases;

/// <summary>The part that a word plays in a spoken number.</summary>
enum NumberPart
{
    Digit,
    Teen,
    Ten,
    Hundred,
    Thousand,
    And,
    A,
    Point,
    Minus,
}

/// <summary>One word of a spoken number.</summary>
/// <param name="Text">In lower case.</param>
/// <param name="Part">What it does.</param>
/// <param name="Value">Of digits 0..9, teens 10..19, tens 20..90; else 0.</param>
sealed record NumberWord(string Text, NumberPart Part, int Value = 0)
{
    /// <summary>"oh" is a nought within a number, never a number by itself.</summary>
    public bool IsOh => Text == "oh";

    /// <summary>0 to 19 by index.</summary>
    public static ImmutableArray<string> Ones { get; } =
    [
        "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine",
        "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
    ];

    /// <summary>20, 30, ... 90 by index 2 to 9.</summary>
    public static ImmutableArray<string> Tens { get; } = ["", "", "twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety"];

    /// <summary>Every word; a synonym is one more entry.</summary>
    public static ImmutableArray<NumberWord> All { get; } =
    [
        .. Ones.Select((text, value) => new NumberWord(text, value < 10 ? NumberPart.Digit : NumberPart.Teen, value)),
        .. Enumerable.Range(2, 8).Select(tens => new NumberWord(Tens[tens], NumberPart.Ten, 10 * tens)),
        new("oh", NumberPart.Digit),
        new("niner", NumberPart.Digit, 9),
        new("fife", NumberPart.Digit, 5),
        new("hundred", NumberPart.Hundred),
        new("thousand", NumberPart.Thousand),
        new("and", NumberPart.And),
        new("a", NumberPart.A),
        new("point", NumberPart.Point),
        new("decimal", NumberPart.Point),
        new("minus", NumberPart.Minus),
        new("negative", NumberPart.Minus),
    ];

    static readonly FrozenDictionary<string, NumberWord> ByText = All.ToFrozenDictionary(word => word.Text);

    /// <summary>Whether the number in <paramref name="words"/> ends like a ten or a teen, or like what noise leaves of one: "sixty" sounds like "six two", "eighty" like "eight".</summary>
    public static bool MayEndCovered(string words) =>
        words.Split(' ').Select(Find).LastOrDefault(word => word is not null) is { } last && (last.Part is NumberPart.Ten || last.Value is 2 or 8 or > 12);

    /// <summary>Whether the number in <paramref name="words"/> is said digit by digit, in two of them or more.</summary>
    public static bool IsDigitByDigit(string words) =>
        words.Split(' ').Select(Find).OfType<NumberWord>().ToArray() is { Length: > 1 } number && number.All(word => word.Part == NumberPart.Digit);

    /// <summary>The number word spelled <paramref name="text"/> (lower case), or null.</summary>
    public static NumberWord? Find(string text) => ByText.GetValueOrDefault(text == "o" ? "oh" : text);
}
