using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Phrases;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>How a legal phrase ends: what it means, and what about its wording calls for care.</summary>
/// <param name="Meaning">What it means.</param>
/// <param name="PointImplied">The point was not said.</param>
public sealed record Ending(Meaning Meaning, bool PointImplied = false);

/// <summary>A place in the grammar of legal phrases. Its edges are made when somebody first looks at them.</summary>
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
/// The phrases that are legal under an expectation, put together from parts: names, numbers and units, in the words that are said.
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
            let place = NumberPlace.Of(reading.Field)
            from name in reading.Names
            let number = AfterName(place)
            select (" " + name, number);
        IEnumerable<(string, PhraseState)> commands =
            from command in Commands.All
            where !command.IsSafetyPhrase && expectation.Commands.Contains(command.Word)
            select (" " + command.Id, Final(new Ending(new Meaning.Command(command.Word))));
        IEnumerable<(string, PhraseState)> answers =
            from answer in expectation.Answers
            from way in Answers.Of(answer).Ways
            select (" " + way, Final(new Ending(new Meaning.Answer(answer))));
        IEnumerable<(string, PhraseState)> choices =
            from choice in expectation.Choices
            select (" " + choice.Says, Final(new Ending(new Meaning.Choice(choice.Value))));
        IEnumerable<(string, PhraseState)> steps = expectation.Steps.IsEmpty ? [] : [(" " + SpokenStep.Before, new PhraseState(() => expectation.Steps.Select(Titled)))];
        IEnumerable<(string, PhraseState)> numbers = expectation.Numbers.Select(NumberPlace.Of).SelectMany(place => Edges(place, place.Grammar.Start));
        IEnumerable<(string, PhraseState)> ranges = expectation.Ranges.Select(NumberPlace.Of).SelectMany(place => RangeEdges(place, place.Grammar.Start));
        return new PhraseState(() => [.. readings, .. numbers, .. ranges, .. commands, .. answers, .. choices, .. steps, .. SafetyPhrases()]);
    }

    static (string, PhraseState) Titled(SpokenStep step) => (" " + step.Title, Final(new Ending(new Meaning.Jump(step))));

    static IEnumerable<(string, PhraseState)> SafetyPhrases() =>
        from way in SafetyWords.Ways
        where way.IsLookedFor
        select (" " + way.Words, Final(new Ending(new Meaning.Command(way.Word) { IsFire = way.IsFire })));

    static PhraseState AfterName(NumberPlace place)
    {
        IEnumerable<(string, PhraseState)> over = place.Field.MayBeOver ? [($" {PhraseText.Over}", new PhraseState(() => [], new Ending(Meaning.Reading.Over(place.Field))))] : [];
        return new PhraseState(() => [.. Edges(place, place.Grammar.Start), .. over]);
    }

    static PhraseState AfterWord(NumberPlace place, NumberState state)
    {
        ImmutableArray<Ending> endings = [.. state.Values.Select(place.End)];
        return new PhraseState(() => [.. Edges(place, state), .. endings.SelectMany(ending => Units(place.Field, ending))], endings);
    }

    /// <summary>The lower number of a range, and behind each one that is whole the upper one.</summary>
    static IEnumerable<(string, PhraseState)> RangeEdges(NumberPlace place, NumberState state) =>
        from word in NumberWord.All
        let next = state.After(word)
        where next is not null
        select (" " + word.Text, new PhraseState(() => [.. RangeEdges(place, next), .. next.Values.Select(lower => ($" {PhraseText.To}", AfterTo(place, lower, place.Grammar.Start)))]));

    static PhraseState AfterTo(NumberPlace place, SpokenNumber lower, NumberState state)
    {
        ImmutableArray<Ending> endings = [.. state.Values.Where(upper => upper.Value > lower.Value).Select(upper => new Ending(new Meaning.Range(place.Field, lower.Value, upper.Value)))];
        IEnumerable<(string, PhraseState)> edges =
            from word in NumberWord.All
            let next = state.After(word)
            where next is not null
            select (" " + word.Text, AfterTo(place, lower, next));
        return new PhraseState(() => [.. edges, .. endings.SelectMany(ending => Units(place.Field, ending))], endings);
    }

    static IEnumerable<(string, PhraseState)> Edges(NumberPlace place, NumberState state) =>
        from word in NumberWord.All
        let next = state.After(word)
        where next is not null
        select (" " + word.Text, AfterWord(place, next));

    static IEnumerable<(string, PhraseState)> Units(Field field, Ending ending) =>
        from unit in field.Unit.Spoken
        select (" " + unit, Final(ending));

    static PhraseState Final(Ending ending) => new(() => [], ending);

    /// <summary>Whose number is being spelled.</summary>
    sealed record NumberPlace(Field Field, NumberGrammar Grammar)
    {
        public static NumberPlace Of(Field field) => new(field, NumberGrammar.Of(field));

        public Ending End(SpokenNumber number) => new(Meaning.Reading.Of(Field, number.Value), number.PointImplied);
    }
}
