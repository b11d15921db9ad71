using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Speech.Phrases;

/// <summary>A number that some words mean.</summary>
/// <param name="Value">With the decimals as spoken; "seven point six zero" is 7.60.</param>
/// <param name="PointImplied">The point was not said ("seven six" for 7.6), so that a lost word could have moved it.</param>
public readonly record struct SpokenNumber(decimal Value, bool PointImplied);

/// <summary>
/// The closed grammar of spoken numbers of one field, as an automaton over words. The parser runs it over a text; the recognizer grows its trie from it.
/// </summary>
/// <remarks>
/// Only numbers within the field's physical range, with a legal number of decimals, can be finished. A bare whole number is not legal where at least one decimal
/// must be said: it is what a reading looks like that lost its tail. An instance remembers what it found and is used by one thread.
/// </remarks>
/// <param name="lowest">Lowest legal value; below zero "minus" is legal.</param>
/// <param name="highest">Highest legal value.</param>
/// <param name="fewestDecimals">Decimals that must at least be said.</param>
/// <param name="mostDecimals">Decimals that may at most be said, 0 to 3.</param>
sealed class NumberGrammar(decimal lowest, decimal highest, int fewestDecimals, int mostDecimals)
{
    readonly int _mostWhole = (int)Math.Max(Math.Abs(lowest), Math.Abs(highest));
    readonly Dictionary<Thread, bool> _canFinish = [];

    /// <summary>The highest number that is understood where a field may be over its range.</summary>
    const decimal HighestOver = 99_999;

    /// <summary>The grammar of a field's numbers, and of those above its range where it may be over.</summary>
    public static NumberGrammar Of(Field field) => new(field.Lowest, field.MayBeOver ? HighestOver : field.Highest, field.FewestDecimals, field.MostDecimals);

    /// <summary>Before the first word.</summary>
    public NumberState Start => new(this, [new(Stage.Start)]);

    /// <summary>Whether a value may be said for the field, as it is written.</summary>
    public bool IsLegal(decimal value) => value >= lowest && value <= highest && value.Scale >= fewestDecimals && value.Scale <= mostDecimals;

    /// <summary>The ways on from <paramref name="at"/> that can still end in a legal number.</summary>
    public IEnumerable<Thread> Continue(Thread at, NumberWord word) => Follow(at, word).Where(CanFinish);

    /// <summary>What the words mean if they end here, or null.</summary>
    public SpokenNumber? Finish(Thread at)
    {
        bool complete = at.Stage is not (Stage.Start or Stage.Minus or Stage.Oh or Stage.A or Stage.HundredsAnd or Stage.PairOh)
            && at.Decimals >= fewestDecimals && (at.Decimals > 0 || !at.HasPoint);
        if (!complete)
        {
            return null;
        }

        int scaled = at.Whole * Power(at.Decimals) + at.Fraction;
        decimal value = new(scaled, 0, 0, at.Negative && scaled > 0, (byte)at.Decimals);
        return value >= lowest && value <= highest ? new SpokenNumber(value, at.Implied) : null;
    }

    bool CanFinish(Thread at)
    {
        if (!_canFinish.TryGetValue(at, out bool can))
        {
            can = at.Whole <= _mostWhole && (Finish(at) is not null || NumberWord.All.Any(word => Follow(at, word).Any(CanFinish)));
            _canFinish[at] = can;
        }

        return can;
    }

    static int Power(int decimals) => decimals switch { 0 => 1, 1 => 10, 2 => 100, _ => 1000 };

    IEnumerable<Thread> Follow(Thread at, NumberWord word)
    {
        if (at.HasPoint)
        {
            return AfterPoint(at, word);
        }

        IEnumerable<Thread> whole = Whole(at, word) is { } next ? [next] : [];
        return [.. whole, .. WithoutPoint(at, word)];
    }

    /// <summary>The whole part, one word further.</summary>
    Thread? Whole(Thread at, NumberWord word) => (at.Stage, word.Part) switch
    {
        (Stage.Start, NumberPart.Minus) when lowest < 0 => at with { Stage = Stage.Minus, Negative = true },
        (Stage.Start or Stage.Minus, NumberPart.Digit) => at.To(word.IsOh ? Stage.Oh : word.Value == 0 ? Stage.Zero : Stage.OneDigit, word.Value),
        (Stage.Start or Stage.Minus, NumberPart.Teen) => at.To(Stage.TwoDigits, word.Value),
        (Stage.Start or Stage.Minus, NumberPart.Ten) => at.To(Stage.Tens, word.Value),
        (Stage.Start or Stage.Minus, NumberPart.A) => at.To(Stage.A, 1),
        (not Stage.A and not Stage.HundredsAnd and not Stage.PairOh, NumberPart.Point) => mostDecimals > 0 ? at.To(Stage.Fraction, at.Whole) with { HasPoint = true } : null,

        // "three hundred", "eleven hundred", "two thousand", "twelve thousand"
        (Stage.OneDigit or Stage.A, NumberPart.Hundred) => at.To(Stage.Hundreds, 100 * at.Whole),
        (Stage.TwoDigits, NumberPart.Hundred) when at.Whole % 10 != 0 => at.To(Stage.Hundreds, 100 * at.Whole),
        (Stage.OneDigit or Stage.TwoDigits or Stage.Tens or Stage.A, NumberPart.Thousand) => at.To(Stage.Thousands, 1000 * at.Whole),

        // "three two eight", digit by digit
        (Stage.OneDigit, NumberPart.Digit) => at.To(Stage.TwoSingles, 10 * at.Whole + word.Value),
        (Stage.TwoSingles, NumberPart.Digit) => at.To(Stage.ThreeSingles, 10 * at.Whole + word.Value),
        (Stage.ThreeSingles, NumberPart.Digit) => at.To(Stage.FourSingles, 10 * at.Whole + word.Value),
        (Stage.FourSingles, NumberPart.Digit) => at.To(Stage.Closed, 10 * at.Whole + word.Value),

        // "twenty eight"
        (Stage.Tens, NumberPart.Digit) when word.Value > 0 => at.To(Stage.TwoDigits, at.Whole + word.Value),

        // "three twenty eight", "eleven fifty", "eleven oh five"
        (Stage.OneDigit or Stage.TwoDigits or Stage.Tens, NumberPart.Teen) => at.To(Stage.Closed, 100 * at.Whole + word.Value),
        (Stage.OneDigit or Stage.TwoDigits or Stage.Tens, NumberPart.Ten) => at.To(Stage.OpenTens, 100 * at.Whole + word.Value),
        (Stage.TwoDigits or Stage.Tens, NumberPart.Digit) when word.Value == 0 => at.To(Stage.PairOh, 100 * at.Whole),
        (Stage.PairOh, NumberPart.Digit) when word.Value > 0 => at.To(Stage.Closed, at.Whole + word.Value),

        // "three hundred (and) twenty eight", "two thousand (and) five", "two thousand one hundred"
        (Stage.Hundreds or Stage.Thousands, NumberPart.And) => at.To(Stage.HundredsAnd, at.Whole),
        (Stage.Thousands, NumberPart.Digit) when word.Value > 0 => at.To(Stage.ThousandsDigit, at.Whole + word.Value),
        (Stage.ThousandsDigit, NumberPart.Hundred) => at.To(Stage.Hundreds, at.Whole + 99 * (at.Whole % 10)),
        (Stage.Hundreds or Stage.HundredsAnd, NumberPart.Digit) when word.Value > 0 => at.To(Stage.Closed, at.Whole + word.Value),
        (Stage.Hundreds or Stage.HundredsAnd or Stage.Thousands, NumberPart.Teen) => at.To(Stage.Closed, at.Whole + word.Value),
        (Stage.Hundreds or Stage.HundredsAnd or Stage.Thousands, NumberPart.Ten) => at.To(Stage.OpenTens, at.Whole + word.Value),
        (Stage.OpenTens, NumberPart.Digit) when word.Value > 0 => at.To(Stage.Closed, at.Whole + word.Value),
        _ => null,
    };

    /// <summary>"seven six" for 7.6: only where a decimal must be said, so that the words cannot be a whole number.</summary>
    IEnumerable<Thread> WithoutPoint(Thread at, NumberWord word)
    {
        bool head = at.Stage is Stage.Zero or Stage.Oh or Stage.OneDigit or Stage.TwoDigits || at.Stage is Stage.TwoSingles;
        return head && fewestDecimals > 0 && word.Part is NumberPart.Digit or NumberPart.Teen or NumberPart.Ten
            ? AfterPoint(at.To(Stage.Fraction, at.Whole) with { HasPoint = true, Implied = true }, word)
            : [];
    }

    /// <summary>The decimals, one word further: digit by digit, or two of them as "forty two".</summary>
    IEnumerable<Thread> AfterPoint(Thread at, NumberWord word) => (at.Stage, word.Part) switch
    {
        (Stage.Fraction, NumberPart.Digit) when at.Decimals < mostDecimals => [at with { Fraction = 10 * at.Fraction + word.Value, Decimals = at.Decimals + 1 }],
        (Stage.Fraction, NumberPart.Teen) when at.Decimals == 0 && mostDecimals >= 2 => [at with { Stage = Stage.Closed, Fraction = word.Value, Decimals = 2 }],
        (Stage.Fraction, NumberPart.Ten) when at.Decimals == 0 && mostDecimals >= 2 => [at with { Stage = Stage.OpenTens, Fraction = word.Value, Decimals = 2 }],
        (Stage.OpenTens, NumberPart.Digit) when word.Value > 0 => [at with { Stage = Stage.Closed, Fraction = at.Fraction + word.Value }],
        _ => [],
    };

    /// <summary>How the words so far are understood.</summary>
    internal enum Stage
    {
        Start,
        Minus,
        Zero,
        Oh,
        A,
        OneDigit,
        TwoDigits,
        Tens,
        TwoSingles,
        ThreeSingles,
        FourSingles,
        PairOh,
        Hundreds,
        HundredsAnd,
        Thousands,
        ThousandsDigit,
        OpenTens,
        Closed,
        Fraction,
    }

    /// <summary>One way to understand the words so far; there may be several at once.</summary>
    internal readonly record struct Thread(
        Stage Stage, int Whole = 0, int Fraction = 0, int Decimals = 0, bool Negative = false, bool HasPoint = false, bool Implied = false)
    {
        public Thread To(Stage stage, int whole) => this with { Stage = stage, Whole = whole };
    }
}

/// <summary>Where the automaton of spoken numbers stands after some words.</summary>
sealed class NumberState(NumberGrammar grammar, ImmutableArray<NumberGrammar.Thread> threads)
{
    /// <summary>All numbers that the words mean if they end here: none, one, or several.</summary>
    public IEnumerable<SpokenNumber> Values => threads
        .Select(grammar.Finish).OfType<SpokenNumber>()
        .GroupBy(number => number.Value)
        .Select(same => same.OrderBy(number => number.PointImplied).First());

    /// <summary>The state after one more word, or null if no legal number goes on that way.</summary>
    public NumberState? After(NumberWord word)
    {
        ImmutableArray<NumberGrammar.Thread> next = [.. threads.SelectMany(at => grammar.Continue(at, word)).Distinct()];
        return next.IsEmpty ? null : new NumberState(grammar, next);
    }
}
