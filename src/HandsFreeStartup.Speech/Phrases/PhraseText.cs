using System.Collections.Immutable;
using System.Globalization;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Speech.Phrases;

/// <summary>What a text means under an expectation.</summary>
/// <param name="Meanings">All readings, commands or answers that the text can be; more than one has to be asked.</param>
/// <param name="PointImplied">The number was said without its point.</param>
/// <param name="Reason">Why it means nothing legal, or several things, as one sentence; empty when there is exactly one meaning.</param>
public sealed record TextMeaning(ImmutableArray<Meaning> Meanings, bool PointImplied, string Reason);

/// <summary>Reads typed, or freely decoded, text: "oxygen 7.6", "Draft minus point oh two inches.", "disregard".</summary>
public static class PhraseText
{
    static readonly ImmutableArray<(Unit Unit, ImmutableArray<string> Words)> Units =
        [.. Unit.All.SelectMany(unit => unit.Spoken.Append(unit.Symbol).Select(way => (unit, PlainWords.Of(way))))];

    /// <summary>Said instead of a number above the field's range.</summary>
    internal const string Over = "over range";

    /// <summary>Said between the lowest and the highest of a range.</summary>
    internal const string To = "to";

    static readonly Expectation RoomAlone = new([ExpectedReading.Of(Fields.Find(FieldId.RoomCo)!)], [], []);

    static readonly ImmutableArray<string> OverRange = PlainWords.Of(Over);

    /// <summary>A line from the keyboard as a phrase; what cannot be read becomes <see cref="Phrase.NotUnderstood"/> with one sentence that says why.</summary>
    /// <param name="line">As typed.</param>
    /// <param name="expectation">What may be entered now.</param>
    public static Phrase Typed(string line, Expectation expectation)
    {
        Evidence evidence = Evidence.Typed(line.Trim());
        if (TextLength.Problem(evidence.Words, TextLength.Note, "The line") is { } tooLong)
        {
            return new Phrase.NotUnderstood(new Evidence("", evidence.Channel, Certainty.Red) { Why = tooLong });
        }

        TextMeaning text = TypedLine.Read(line, expectation);
        if (text.Meanings is [var meaning] && (!expectation.Dictation || IsSafety(meaning)))
        {
            return ToPhrase(meaning, evidence);
        }

        return expectation.Dictation && evidence.Words.Length > 0
            ? Dictated(evidence)
            : new Phrase.NotUnderstood(evidence with { Certainty = Certainty.Red, Why = text.Reason });
    }

    /// <summary>Free speech. A number for carbon monoxide in the room is one even there, if nothing else was said: no note may swallow it. Heard freely, it is in doubt.</summary>
    internal static Phrase Dictated(Evidence evidence)
    {
        bool isTyped = evidence.Channel == Channel.Keys;
        TextMeaning text = isTyped ? TypedLine.Read(evidence.Words, RoomAlone) : Read(evidence.Words, RoomAlone);
        return text.Meanings is [Meaning.Reading room] ? ToPhrase(room, isTyped ? evidence : evidence with { Certainty = Certainty.Amber, Why = "It was said in free speech." })
            : isTyped && evidence.Words.Any(char.IsNumber) && RoomAlone.Readings[0].Names.Any(name => StartsWith(PlainWords.Of(evidence.Words), PlainWords.Of(name)))
            ? new Phrase.NotUnderstood(evidence with { Certainty = Certainty.Red, Why = text.Reason })
            : new Phrase.Dictation(evidence);
    }

    /// <summary>Everything that <paramref name="text"/> can mean now.</summary>
    /// <param name="text">Typed or decoded; capitals, commas and a final stop do not matter.</param>
    /// <param name="expectation">What is legal.</param>
    public static TextMeaning Read(string text, Expectation expectation)
    {
        ImmutableArray<string> words = PlainWords.Of(text);
        return words.IsEmpty ? new TextMeaning([], false, "Nothing was said.") : ReadWord(words, expectation) ?? ReadNameless(words, expectation) ?? ReadReading(words, expectation);
    }

    internal static Phrase ToPhrase(Meaning meaning, Evidence evidence) => meaning switch
    {
        Meaning.Reading reading => new Phrase.Reading(reading.Field, reading.Value, evidence) { IsOver = reading.IsOver },
        Meaning.Range range => new Phrase.Range(range.Field, range.Lower, range.Upper, evidence),
        Meaning.Command command => new Phrase.Command(command.Word, evidence) { IsFire = command.IsFire },
        Meaning.Answer answer => new Phrase.Answer(answer.Word, evidence),
        Meaning.Choice choice => new Phrase.Choice(choice.Value, evidence),
        Meaning.Jump jump => new Phrase.Jump(jump.Step, evidence),
        _ => new Phrase.NotUnderstood(evidence),
    };

    internal static bool IsSafety(Meaning meaning) => meaning is Meaning.Command command && Commands.Of(command.Word).IsSafetyPhrase;

    internal static TextMeaning? ReadWord(ImmutableArray<string> words, Expectation expectation)
    {
        if (SafetyText.Of(words, expectation) is { } safety)
        {
            return One(safety);
        }

        foreach (SpokenChoice choice in expectation.Choices.Where(choice => PlainWords.Of(choice.Says).SequenceEqual(words) || PlainWords.Of(choice.Value).SequenceEqual(words)))
        {
            return One(new Meaning.Choice(choice.Value));
        }

        if (expectation.Steps.FirstOrDefault(step => PlainWords.Of(step.Says).SequenceEqual(words)) is { } gone)
        {
            return One(new Meaning.Jump(gone));
        }

        if (!expectation.Steps.IsEmpty && StartsWith(words, PlainWords.Of(SpokenStep.Before)))
        {
            return Nothing("No step of this furnace has that title.");
        }

        foreach (Command command in Commands.All.Where(command => PlainWords.Of(command.Id).SequenceEqual(words)))
        {
            return expectation.Commands.Contains(command.Word)
                ? One(new Meaning.Command(command.Word))
                : Nothing($"\"{command.Id}\" cannot be said now.");
        }

        foreach (Answer answer in Answers.All.Where(answer => words is [var word] && answer.Ways.Contains(word)))
        {
            return expectation.Answers.Contains(answer.Word) ? One(new Meaning.Answer(answer.Word)) : Nothing("Nothing was asked that could be answered now.");
        }

        return null;
    }

    /// <summary>A number, or a range, in answer to a question; null where it is none.</summary>
    static TextMeaning? ReadNameless(ImmutableArray<string> words, Expectation expectation)
    {
        Meaning[] found =
        [
            .. expectation.Numbers.SelectMany(field => NumbersOf(words, field).Select(number => new Meaning.Reading(field, number.Value))),
            .. from field in expectation.Ranges
               from at in Enumerable.Range(0, words.Length)
               where words[at] == To
               from lower in SpokenNumbers.Parse(words[..at], field)
               from upper in NumbersOf(words[(at + 1)..], field)
               where upper.Value > lower.Value
               select new Meaning.Range(field, lower.Value, upper.Value),
        ];
        return found switch { [] => null, [var only] => One(only), _ => Several(found, pointImplied: false) };
    }

    static TextMeaning ReadReading(ImmutableArray<string> words, Expectation expectation)
    {
        ImmutableArray<(Field Field, ImmutableArray<string> After)> named =
        [
            .. from reading in expectation.Readings
               from name in reading.Names
               let start = PlainWords.Of(name)
               where StartsWith(words, start)
               select (reading.Field, words[start.Length..]),
        ];
        if (named.IsEmpty)
        {
            return Nothing(WhyNoName(words));
        }

        var found = named
            .SelectMany(name => ReadingsOf(name.Field, name.After))
            .DistinctBy(reading => reading.Meaning).ToArray();
        return found switch
        {
            [] => Nothing(WhyNoNumber(named[^1].Field, named[^1].After)),
            [var only] => new TextMeaning([only.Meaning], only.PointImplied, ""),
            _ => Several([.. found.Select(reading => reading.Meaning)], found.Any(reading => reading.PointImplied)),
        };
    }

    /// <summary>What the words after a name can mean: a number, or more than the field's range.</summary>
    static IEnumerable<(Meaning.Reading Meaning, bool PointImplied)> ReadingsOf(Field field, ImmutableArray<string> words) =>
        field.MayBeOver && words.SequenceEqual(OverRange)
            ? [(Meaning.Reading.Over(field), false)]
            : NumbersOf(words, field).Select(number => (Meaning.Reading.Of(field, number.Value), number.PointImplied));

    /// <summary>What <paramref name="words"/> mean for a field whose name was typed before.</summary>
    internal static TextMeaning ReadSpoken(Field field, ImmutableArray<string> words) => ReadingsOf(field, words).ToArray() switch
    {
        [] => Nothing(WhyNoNumber(field, words)),
        [var only] => new TextMeaning([only.Meaning], only.PointImplied, ""),
        var several => Several([.. several.Select(reading => reading.Meaning)], several.Any(reading => reading.PointImplied)),
    };

    internal static TextMeaning Several(IReadOnlyCollection<Meaning> meanings, bool pointImplied) => new(
        [.. meanings], pointImplied, $"It can mean {string.Join(" or ", meanings)}: say the point, or each digit.");

    /// <summary>Why words that begin with nothing that can be said now mean nothing: who says a value where it is not asked for must not think that it is kept.</summary>
    internal static string WhyNoName(ImmutableArray<string> words) =>
        (from field in Fields.All from name in field.SpokenNames let said = PlainWords.Of(name) where words.Length > said.Length && StartsWith(words, said) orderby said.Length descending select field).FirstOrDefault() is { } known
            ? $"{known.Label} is not asked for in this step, and was not entered."
            : "It begins with no name or command that can be said now.";

    /// <summary>Why <paramref name="value"/> cannot be entered in the field, and how it would be typed; null where it can.</summary>
    internal static string? WhyNot(Field field, decimal value) =>
        !field.IsPossible(value) ? string.Create(CultureInfo.InvariantCulture, $"{field.Label} lies between {field.Lowest} and {field.Highest} {field.Unit.Symbol}.")
        : value.Scale < field.FewestDecimals
            ? $"{field.Label} needs {DecimalsOf(field)}: {value.ToString(FormattableString.Invariant($"F{field.FewestDecimals}"), CultureInfo.InvariantCulture)}."
        : value.Scale <= field.MostDecimals ? null
        : field.MostDecimals == 0 ? $"{field.Label} is a whole number, without a point."
        : $"{field.Label} has {DecimalsOf(field)}, not {value.Scale}.";

    static IEnumerable<SpokenNumber> NumbersOf(ImmutableArray<string> words, Field field) =>
        SpokenNumbers.Parse(WithoutUnit(words, field.Unit), field);

    static ImmutableArray<string> WithoutUnit(ImmutableArray<string> words, Unit unit)
    {
        IEnumerable<ImmutableArray<string>> ways = Unit.All.Contains(unit) ? Units.Where(known => known.Unit == unit).Select(known => known.Words) : unit.Spoken.Select(PlainWords.Of);
        int longest = ways.Where(way => EndsWith(words, way)).Select(way => way.Length).DefaultIfEmpty(0).Max();
        return words[..^longest];
    }

    static bool StartsWith(ImmutableArray<string> words, ImmutableArray<string> start) => words.Length >= start.Length && words[..start.Length].SequenceEqual(start);

    static bool EndsWith(ImmutableArray<string> words, ImmutableArray<string> end) =>
        words.Length > end.Length && words[^end.Length..].SequenceEqual(end);

    static string WhyNoNumber(Field field, ImmutableArray<string> rest)
    {
        Unit? other = Units.FirstOrDefault(known => known.Unit != field.Unit && EndsWith(rest, known.Words)).Unit;
        if (rest.IsEmpty)
        {
            return $"{field.Label}: the number is missing.";
        }

        if (other is not null)
        {
            return $"{field.Label} is entered in {field.Unit.Symbol}, not in {other.Symbol}.";
        }

        Field unlimited = field with { Lowest = -9999m, Highest = 9999m, FewestDecimals = 0, MostDecimals = 3 };
        return NumbersOf(rest, unlimited).Select(number => number.Value).ToArray() switch
        {
            [] => $"{field.Label}: \"{string.Join(' ', rest)}\" is not a number.",
            var values when !values.Any(field.IsPossible) => WhyNot(field, values[0])!,
            var values => WhyNot(field, values.First(field.IsPossible)) ?? $"{field.Label}: say the point, or each digit.",
        };
    }

    static string DecimalsOf(Field field) =>
        field.FewestDecimals == field.MostDecimals
            ? $"{NumberWord.Ones[field.MostDecimals]} decimal{(field.MostDecimals > 1 ? "s" : "")}"
            : $"{NumberWord.Ones[field.FewestDecimals]} to {NumberWord.Ones[field.MostDecimals]} decimals";

    internal static TextMeaning One(Meaning meaning) => new([meaning], false, "");

    internal static TextMeaning Nothing(string reason) => new([], false, reason);
}
