using System.Collections.Immutable;
using System.Globalization;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Understanding;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>How a legal phrase ends: what it means, and what about its wording calls for care.</summary>
/// <param name="Meaning">What it means.</param>
/// <param name="PointImplied">The point was not said.</param>
/// <param name="NameSpelled">The name ends in a letter spelled out ("C O"), which runs into the number after it.</param>
public sealed record Ending(Meaning Meaning, bool PointImplied = false, bool NameSpelled = false);

/// <summary>A place in the grammar of legal phrases, as the model would write them. Its edges are made when somebody first looks at them.</summary>
/// <param name="edges">Texts that may follow, with the place they lead to.</param>
/// <param name="endings">What the phrase means if it ends here.</param>
sealed class PhraseState(Func<IEnumerable<(string Text, PhraseState Next)>> edges, params ImmutableArray<Ending> endings)
{
    readonly Lazy<ImmutableArray<(string Text, PhraseState Next)>> _edges = new(() => [.. edges()]);

    /// <summary>Texts that may follow, with the place they lead to.</summary>
    public ImmutableArray<(string Text, PhraseState Next)> Edges => _edges.Value;

    /// <summary>What the phrase means if it ends here.</summary>
    public ImmutableArray<Ending> Endings => endings;
}

/// <summary>
/// The phrases that are legal under an expectation, put together from parts: names, numbers, units, endings; spoken ("seven point six") and written ("7.6").
/// Edges are made when somebody looks at them, so that hundreds of thousands of phrases cost nothing until then.
/// </summary>
static class PhraseGrammar
{
    /// <summary>Before the first word.</summary>
    public static PhraseState Of(Expectation expectation)
    {
        if (expectation.Dictation)
        {
            return new PhraseState(SafetyPhrases);
        }

        IEnumerable<(string, PhraseState)> readings =
            from reading in expectation.Readings
            let grammar = NumberGrammar.Of(reading.Field)
            from name in reading.Names
            let number = AfterName(new NumberPlace(reading.Field, grammar, EndsSpelled(name)))
            from text in Written(name)
            select (text, number);
        IEnumerable<(string, PhraseState)> commands =
            from command in Commands.All
            where !command.IsSafetyPhrase && expectation.Commands.Contains(command.Word)
            from text in Written(command.Id)
            select (text, Final(new Ending(new Meaning.Order(command.Word))));
        IEnumerable<(string, PhraseState)> answers =
            from answer in expectation.Answers
            from way in Answers.Of(answer).Ways
            from text in Written(way)
            select (text, Final(new Ending(new Meaning.Answer(answer))));
        IEnumerable<(string, PhraseState)> choices =
            from choice in expectation.Choices
            from text in Written(choice.Says)
            select (text, Final(new Ending(new Meaning.Choice(choice.Value))));
        return new PhraseState(() => [.. readings, .. commands, .. answers, .. choices, .. SafetyPhrases()]);
    }

    static IEnumerable<(string, PhraseState)> SafetyPhrases() =>
        from way in SafetyWords.Ways
        from text in Written(way.Words)
        select (text, Final(new Ending(new Meaning.Order(way.Word) { IsFire = way.IsFire })));

    /// <summary>The ways the model writes a name or command: capital or not at the start; spelled letters apart or joined, with a digit or a word after them.</summary>
    static IEnumerable<string> Written(string words)
    {
        IEnumerable<string> ways = [words];
        if (words.Contains("C O", StringComparison.Ordinal) || words.StartsWith("O ", StringComparison.Ordinal))
        {
            string joined = words.Replace("C O", "CO", StringComparison.Ordinal);
            ways = [words, joined, joined.Replace(" two", "2", StringComparison.Ordinal), joined.Replace(" two", " 2", StringComparison.Ordinal)];
        }

        return ways.SelectMany(way => (string[])[" " + way, $" {char.ToUpperInvariant(way[0])}{way[1..]}"]).Distinct();
    }

    static bool EndsSpelled(string name) => name.EndsWith(" O", StringComparison.Ordinal);

    static PhraseState AfterName(NumberPlace place)
    {
        PhraseState number = NumberStart(place);
        IEnumerable<(string, PhraseState)> over = place.Field.MayBeOver ? [($" {PhraseText.Over}", Final(new Ending(Meaning.Reading.Over(place.Field))))] : [];
        return new PhraseState(() => [.. number.Edges, (",", number), .. over]);
    }

    static PhraseState NumberStart(NumberPlace place)
    {
        NumberState start = place.Grammar.Start;
        return new PhraseState(() => [.. SpokenEdges(place, start), .. WrittenEdges(place, false), .. SignEdges(place)]);
    }

    static PhraseState Spoken(NumberPlace place, NumberState state, NumberWord last)
    {
        ImmutableArray<Ending> endings = [.. state.Values.Select(number => place.End(number))];
        IEnumerable<(string, PhraseState)> written = last.Part == NumberPart.Minus ? WrittenEdges(place, true) : [];
        return new PhraseState(() => [.. SpokenEdges(place, state), .. written, .. endings.SelectMany(AfterNumber)], endings);
    }

    static IEnumerable<(string, PhraseState)> SpokenEdges(NumberPlace place, NumberState state)
    {
        foreach (NumberWord word in NumberWord.All)
        {
            if (state.After(word) is { } next)
            {
                PhraseState after = Spoken(place, next, word);
                yield return (" " + word.Text, after);
                if (word.Part == NumberPart.Digit && !word.IsOh)
                {
                    yield return (string.Create(CultureInfo.InvariantCulture, $" {word.Value}"), after);
                }
            }
        }
    }

    /// <summary>" 7.6", " .02", " 328", " 1,100".</summary>
    static IEnumerable<(string, PhraseState)> WrittenEdges(NumberPlace place, bool negative, string space = " ")
    {
        int most = (int)(negative ? -place.Field.Lowest : place.Field.Highest);
        for (int whole = 0; whole <= most; whole++)
        {
            if (place.Field.MostDecimals == 0 && place.EndIfLegal(negative ? -whole : whole).IsEmpty)
            {
                continue;
            }

            PhraseState after = WrittenWhole(place, negative, whole);
            yield return (string.Create(CultureInfo.InvariantCulture, $"{space}{whole}"), after);
            if (whole >= 1000)
            {
                yield return (string.Create(CultureInfo.InvariantCulture, $"{space}{whole:#,##0}"), after);
            }
        }

        if (place.Field.MostDecimals > 0 && place.Field.Lowest < 1)
        {
            yield return (space + ".", Decimals(place, negative, 0));
        }
    }

    /// <summary>" -0.02", " -.02".</summary>
    static IEnumerable<(string, PhraseState)> SignEdges(NumberPlace place) => place.Field.Lowest >= 0
        ? []
        : [(" -", new PhraseState(() => WrittenEdges(place, true, "").Where(edge => edge.Item1 != "."))), (" -.", Decimals(place, true, 0))];

    static PhraseState WrittenWhole(NumberPlace place, bool negative, int whole)
    {
        ImmutableArray<Ending> endings = place.EndIfLegal(negative ? -whole : whole);
        IEnumerable<(string, PhraseState)> point = place.Field.MostDecimals > 0 ? [(".", Decimals(place, negative, whole))] : [];
        return new PhraseState(() => [.. point, .. endings.SelectMany(AfterNumber)], endings);
    }

    static PhraseState Decimals(NumberPlace place, bool negative, int whole) => new(() =>
        from decimals in Enumerable.Range(place.Field.FewestDecimals, place.Field.MostDecimals - place.Field.FewestDecimals + 1)
        where decimals > 0
        let power = (int)Math.Pow(10, decimals)
        from fraction in Enumerable.Range(0, power)
        let scaled = whole * power + fraction
        let ending = place.EndIfLegal(new decimal(scaled, 0, 0, negative && scaled > 0, (byte)decimals))
        where !ending.IsEmpty
        select (fraction.ToString(CultureInfo.InvariantCulture).PadLeft(decimals, '0'), new PhraseState(() => AfterNumber(ending[0]), ending)));

    /// <summary>Unit, final stop, both or neither.</summary>
    static IEnumerable<(string, PhraseState)> AfterNumber(Ending ending)
    {
        PhraseState final = new(() => [], ending);
        PhraseState stop = new(() => [(".", final)], ending);
        yield return (".", final);
        foreach (string unit in ((Meaning.Reading)ending.Meaning).Field.Unit.Spoken)
        {
            yield return (" " + unit, stop);
            if (unit == "P P M")
            {
                yield return (" PPM", stop);
                yield return (" ppm", stop);
            }
            else if (unit == "percent")
            {
                yield return ("%", final);
                yield return ("%.", final);
            }
        }
    }

    static PhraseState Final(Ending ending)
    {
        PhraseState final = new(() => [], ending);
        return new PhraseState(() => [(".", final), ("?", final), ("!", final)], ending);
    }

    /// <summary>Whose number is being spelled.</summary>
    sealed record NumberPlace(Field Field, NumberGrammar Grammar, bool NameSpelled)
    {
        public Ending End(SpokenNumber number) => new(Meaning.Reading.Of(Field, number.Value), number.PointImplied, NameSpelled);

        public ImmutableArray<Ending> EndIfLegal(decimal value) => Grammar.IsLegal(value) ? [End(new SpokenNumber(value, false))] : [];
    }
}
