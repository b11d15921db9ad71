using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Phrases;

namespace HandsFreeStartup.Speech.Understanding;

/// <summary>Whether words may go on after a pause. Pure: the same words under the same expectation always give the same answer.</summary>
public enum PhraseEnd
{
    /// <summary>More may come: a number that can grow ("one" may become "one forty five"), half a phrase, free speech, or words that are not legal yet.</summary>
    Open,

    /// <summary>A reading that no number word can continue; at most its unit follows.</summary>
    Complete,

    /// <summary>A command, an answer, or a reading with its unit: nothing legal can follow.</summary>
    Closed,
}

/// <summary>Tells from the words so far how long to wait for more.</summary>
public static class PhraseEnds
{
    /// <summary>Whether <paramref name="words"/> may go on.</summary>
    /// <param name="words">As decoded or typed, spoken ("seven point six") or in figures ("7.6").</param>
    /// <param name="expectation">What may be said.</param>
    public static PhraseEnd Of(string words, Expectation expectation)
    {
        TextMeaning text = PhraseText.Read(words, expectation);
        ImmutableArray<string> plain = PlainWords.Of(words);
        return text.Meanings switch
        {
            [] => PhraseEnd.Open,
            [Meaning.Command or Meaning.Answer or Meaning.Choice or Meaning.Jump] => (!expectation.Dictation || PhraseText.IsSafety(text.Meanings[0])) && !BeginsLonger(plain, expectation) ? PhraseEnd.Closed : PhraseEnd.Open,
            [Meaning.Range range] => EndsInUnit(plain, range.Field) ? PhraseEnd.Closed : PhraseEnd.Open,
            _ when text.Meanings.OfType<Meaning.Reading>().Any(reading => EndsInUnit(plain, reading.Field)) || EndsIn(plain, PlainWords.Of(PhraseText.Over)) => PhraseEnd.Closed,
            _ => text.Meanings.OfType<Meaning.Reading>().Any(CanGrow) ? PhraseEnd.Open : PhraseEnd.Complete,
        };
    }

    static bool BeginsLonger(ImmutableArray<string> words, Expectation expectation) =>
        expectation.Commands.Select(command => Commands.Of(command).Id)
            .Concat(expectation.Readings.SelectMany(reading => reading.Names))
            .Concat(expectation.Choices.Select(choice => choice.Says))
            .Concat(expectation.Steps.Select(step => step.Says))
            .Select(PlainWords.Of)
            .Any(other => other.Length > words.Length && other[..words.Length].SequenceEqual(words));

    static bool EndsInUnit(ImmutableArray<string> words, Field field) =>
        field.Unit.Spoken.Append(field.Unit.Symbol).Select(PlainWords.Of).Any(unit => EndsIn(words, unit));

    static bool EndsIn(ImmutableArray<string> words, ImmutableArray<string> end) => words.Length > end.Length && words[^end.Length..].SequenceEqual(end);

    /// <summary>A model writes figures for words, so that "45" may have been "forty five" or "four five": the number is open if it is for any way of saying it.</summary>
    static bool CanGrow(Meaning.Reading reading) =>
        reading.IsOver || SpokenNumbers.AllSpellings(reading.Value, reading.Field).Any(spelling => CanGrow(spelling.Split(' '), reading.Field));

    static bool CanGrow(IEnumerable<string> number, Field field)
    {
        NumberState? state = NumberGrammar.Of(field).Start;
        foreach (string word in number)
        {
            state = NumberWord.Find(word) is { } found ? state?.After(found) : null;
        }

        return state is not null && NumberWord.All.Any(word => state.After(word) is not null);
    }
}
