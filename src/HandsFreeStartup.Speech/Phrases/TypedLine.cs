using System.Collections.Immutable;
using HandsFreeStartup.Doors;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Speech.Phrases;

/// <summary>
/// Reads what a technician types: the words that could be said, and numbers in figures. Figures are read by <see cref="TypedNumber"/> alone and never turned into words, which have
/// no sign for a comma, a fraction or a bound and would drop it.
/// </summary>
static class TypedLine
{
    /// <summary>No name is longer.</summary>
    const int LongestName = 60;

    /// <summary>Every way to write a unit, the longest first.</summary>
    static readonly ImmutableArray<(Unit Unit, string Way)> Units =
        [.. Unit.All.SelectMany(unit => unit.Spoken.Append(unit.Symbol).Select(way => (unit, way))).OrderByDescending(one => one.way.Length)];

    /// <summary>Everything that <paramref name="line"/> can mean now.</summary>
    public static TextMeaning Read(string line, Expectation expectation)
    {
        ImmutableArray<string> words = PlainWords.Of(line);
        if (PhraseText.ReadWord(words, expectation) is { } word)
        {
            return HasOnlyWords(line.TrimEnd('.', '!', ' ')) || word.Meanings.Any(meaning => PhraseText.IsSafety(meaning) || meaning is Meaning.Jump || (meaning is Meaning.Choice && IsPlain(line))) ? word
                : PhraseText.Nothing($"\"{string.Join(' ', words)}\" is typed alone, without figures or signs.");
        }

        // "CO 2" is the name of another gas, and its number is missing.
        if (Fields.All.FirstOrDefault(field => field.SpokenNames.Any(name => PlainWords.Of(name) is var whole && NumberWord.Find(whole[^1]) is not null && whole.SequenceEqual(words))) is { } alone)
        {
            return PhraseText.Nothing($"{alone.Label}: the number is missing.{(line.Any(char.IsDigit) ? " If the figure was meant as a number, type the name in words before it." : "")}");
        }

        (Field Field, string After, bool IsDoubtful)[] named = [.. Named(line, expectation)];
        if (named.Length == 0)
        {
            return PhraseText.Nothing(line.Trim().Length == 0 ? "Nothing was said." : PhraseText.WhyNoName(words));
        }

        TextMeaning[] readings = [.. named.Select(name => name.IsDoubtful ? Doubtful(name.Field) : ReadingOf(name.Field, name.After))];
        TextMeaning[] found = [.. readings.Where(reading => !reading.Meanings.IsEmpty)];
        Meaning[] meanings = [.. found.SelectMany(reading => reading.Meanings).Distinct()];
        return meanings switch
        {
            [] => named.FirstOrDefault(name => name.IsDoubtful) is { IsDoubtful: true } doubtful ? Doubtful(doubtful.Field) : readings[^1],
            [_] => found[0],
            _ => PhraseText.Several(meanings, found.Any(reading => reading.PointImplied)),
        };
    }

    /// <summary>"O2.6" and "C O two point six": the figure can belong to the name and to the number.</summary>
    static TextMeaning Doubtful(Field field) =>
        PhraseText.Nothing($"{field.Label}: its figure can be the beginning of the number; type a space after the name, and the nought before a point.");

    /// <summary>The fields whose name begins the line, each with what stands after it, and whether its last figure may belong to that.</summary>
    static IEnumerable<(Field Field, string After, bool IsDoubtful)> Named(string line, Expectation expectation)
    {
        string text = line.TrimStart();
        (int End, ImmutableArray<string> Words)[] beginnings =
        [
            .. Enumerable.Range(1, Math.Min(text.Length, LongestName))
                .Where(end => char.IsLetterOrDigit(text[end - 1]) && (end == text.Length || EndsThere(text[end - 1], text[end])))
                .Select(end => (end, PlainWords.Of(text[..end]))),
        ];
        return from reading in expectation.Readings
               let end = reading.Names.Max(name => EndOf(PlainWords.Of(name)))
               where end > 0
               select (reading.Field, After(text, end), IsDoubtful(text[..end], text[end..]));

        int EndOf(ImmutableArray<string> name) => beginnings.FirstOrDefault(beginning => beginning.Words.SequenceEqual(name)).End;
    }

    static bool IsDoubtful(string name, string after) =>
        (char.IsDigit(name[^1]) && after is ['.' or ',', var next, ..] && char.IsDigit(next))
        || (NumberWord.Find(PlainWords.Of(name)[^1]) is not null && PlainWords.Of(after) is [var word, ..] && NumberWord.Find(word) is { Part: NumberPart.Point } && char.IsLetter(after.TrimStart()[0]));

    static bool EndsThere(char last, char next) => !char.IsLetter(next) && !(char.IsDigit(last) && char.IsDigit(next));

    /// <summary>
    /// What follows a name: a stop belongs to an abbreviation ("C.O."), a colon or an equals sign to nothing; a comma before a digit may be a
    /// decimal one whose digit is missing, and stays.
    /// </summary>
    static string After(string text, int end)
    {
        bool isAbbreviation = text[..end].Contains('.', StringComparison.Ordinal) && end < text.Length && text[end] == '.';
        string rest = text[(isAbbreviation ? end + 1 : end)..].Trim();
        return rest is [':' or '=', ..] or [','] || (rest is [',', var next, ..] && !char.IsNumber(next)) ? rest[1..].TrimStart() : rest;
    }

    static TextMeaning ReadingOf(Field field, string after)
    {
        string number = WithoutUnit(after, field.Unit);
        return HasOnlyWords(number) ? PhraseText.ReadSpoken(field, PlainWords.Of(number)) : ReadFigures(field, WithFiguredSign(number));
    }

    /// <summary>"minus 0.02" as "-0.02".</summary>
    static string WithFiguredSign(string number)
    {
        string word = number.Split(' ', 2)[0];
        return NumberWord.Find(word.ToLowerInvariant()) is { Part: NumberPart.Minus } ? $"-{number[word.Length..].TrimStart()}" : number;
    }

    static TextMeaning ReadFigures(Field field, string number)
    {
        Unit? other = Units.FirstOrDefault(known => known.Unit.Symbol != field.Unit.Symbol && Ends(number, known.Way)).Unit;
        if (other is not null)
        {
            return PhraseText.Nothing($"{field.Label} is entered in {field.Unit.Symbol}, not in {other.Symbol}.");
        }

        if (field.MayBeOver && TypedNumber.IsAbove(number, field.Highest))
        {
            return PhraseText.One(Meaning.Reading.Over(field));
        }

        return TypedNumber.Read(number, out string reason, ExampleOf(field)) is not { } value
            ? PhraseText.Nothing($"{field.Label}: {reason}{(field.MayBeOver ? $", or \"{PhraseText.Over}\"" : "")}.")
            : PhraseText.WhyNot(field, value) is { } why ? PhraseText.Nothing(why) : PhraseText.One(new Meaning.Reading(field, value));
    }

    /// <summary>A number of the right form, and one that no instrument shows by chance.</summary>
    static string ExampleOf(Field field) => field.FewestDecimals switch { 0 => "123", 1 => "12.3", _ => "0.12" };

    static string WithoutUnit(string text, Unit unit)
    {
        string plain = WithoutStop(text);
        string way = Units.FirstOrDefault(known => known.Unit == unit && Ends(plain, known.Way)).Way ?? "";
        return plain[..^WithoutStop(way).Length].TrimEnd();
    }

    /// <summary>Whether a number in figures or words ends with that unit: "7.6%", "0.02 in. w.c", "twelve parts per million".</summary>
    static bool Ends(string text, string way)
    {
        string end = WithoutStop(way);
        return text.Length > end.Length && text.EndsWith(end, StringComparison.OrdinalIgnoreCase) && !(char.IsLetter(end[0]) && char.IsLetter(text[^(end.Length + 1)]));
    }

    /// <summary>A stop after a letter ends a sentence or an abbreviation; one after a digit is a point whose decimals are missing.</summary>
    static string WithoutStop(string text) => text.TrimEnd('.') is { Length: > 0 } rest && char.IsLetter(rest[^1]) ? rest : text;

    static bool IsPlain(string line) => line.All(letter => char.IsLetter(letter) || char.IsAsciiDigit(letter) || letter is ' ' or '-' or '.');

    static bool HasOnlyWords(string text) => text.All(letter => char.IsLetter(letter) || char.IsWhiteSpace(letter) || letter is '-' or '\'' or '\u2019');
}
