using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Phrases;
using HandsFreeStartup.Speech.Recognising;

namespace HandsFreeStartup.Speech.Understanding;

/// <summary>Decides what was said and how far it can be trusted. Pure: the same evidence always gives the same phrase.</summary>
public static class PhraseReader
{
    /// <summary>Why what one ear or both did not hear well is doubtful.</summary>
    internal const string NotClear = "It was not clear.";

    /// <summary>The phrase that an utterance is under the shipped policy.</summary>
    /// <param name="utterance">The evidence.</param>
    /// <param name="expectation">What could be said; the same that the recognizer was given.</param>
    public static Phrase Read(Utterance utterance, Expectation expectation) => Read(utterance, expectation, CertaintyPolicy.Shipped);

    /// <summary>The phrase that an utterance is under some policy.</summary>
    /// <param name="utterance">The evidence.</param>
    /// <param name="expectation">What could be said; the same that the recognizer was given.</param>
    /// <param name="policy">Thresholds.</param>
    public static Phrase Read(Utterance utterance, Expectation expectation, CertaintyPolicy policy)
    {
        Phrase understood = Decide(utterance, expectation, policy);
        bool isInDoubt = understood is Phrase.NotUnderstood or Phrase.Reading { Evidence.Certainty: Certainty.Amber };
        return (isInDoubt && !IsNobody(utterance, policy) ? CallReader.ByOneEar(utterance, understood, expectation, policy) : understood) switch
        {
            Phrase.Command { IsSafetyPhrase: true } call => call with { Faint = CallReader.Faint(call, utterance, expectation, policy) },
            Phrase.NotUnderstood refused => refused with { Faint = CallReader.Faint(utterance, expectation, policy) },
            Phrase phrase => phrase,
        };
    }

    static Phrase Decide(Utterance utterance, Expectation expectation, CertaintyPolicy policy)
    {
        if (utterance.Ears.IsEmpty)
        {
            return ReadText(utterance.FreeText, expectation);
        }

        Weighing? weighing = Weighing.Of(utterance);
        if (IsNobody(utterance, policy))
        {
            return Refuse(utterance, weighing, "It sounded like noise, not like speech.");
        }

        if (CallReader.Read(utterance, expectation, policy) is { } call)
        {
            return call;
        }

        if (expectation.Dictation)
        {
            return PhraseText.Dictated(new Evidence(utterance.FreeText, Channel.Voice, Certainty.Green));
        }

        return weighing is null ? Refuse(utterance, null, "It was nothing that can be said now.") : Classify(utterance, weighing, policy);
    }

    /// <summary>
    /// Whether the other ear should listen before a decision: where the first is not sure, and always for carbon monoxide and where a zero said fast and lost would leave another legal value
    /// ("ten point oh nine" as 10.9). Speech that goes on is searched for calls again and again, and both ears would be late for whatever is said next: there only where the first heard something
    /// like one.
    /// </summary>
    /// <param name="alone">The evidence of the first ear.</param>
    /// <param name="expectation">What could be said.</param>
    /// <param name="policy">Thresholds.</param>
    public static bool WantsOtherEars(Utterance alone, Expectation expectation, CertaintyPolicy policy) =>
        !expectation.Dictation && Decide(alone, expectation, policy) switch
        {
            Phrase.Range => true,
            Phrase.NotUnderstood => !expectation.IsForCallsAlone || HasFoundACall(alone),
            Phrase.Command { IsSafetyPhrase: true } => CallReader.IsOthersTalk(expectation) || !CallReader.IsClearAlone(alone.Ears, policy),
            Phrase.Reading reading => reading.Evidence.Certainty != Certainty.Green || reading.Field.Unit == Unit.PartsPerMillion || MayHaveLostAZero(reading),
            _ => false,
        };

    /// <summary>
    /// What else should be heard before a decision: the other ears, or the same sound changed a little where a call for help is not clear. A reading gains nothing by it: what is wrong is as far
    /// ahead in every hearing as what is right.
    /// </summary>
    /// <param name="heard">The evidence so far.</param>
    /// <param name="expectation">What could be said.</param>
    /// <param name="policy">Thresholds.</param>
    public static Wanted WantsMore(Utterance heard, Expectation expectation, CertaintyPolicy policy) =>
        heard.Ears.Length == 1 ? (WantsOtherEars(heard, expectation, policy) ? Wanted.OtherEars : Wanted.Nothing)
        : !expectation.Dictation && Decide(heard, expectation, policy) is Phrase.Command { IsSafetyPhrase: true, Word: var word } && CallReader.WantsAnotherHearing(heard, word, expectation, policy) ? Wanted.AnotherHearing
        : Wanted.Nothing;

    /// <summary>The same by the policy that ships with the program.</summary>
    public static Wanted AsksForMore(Utterance heard, Expectation expectation) => WantsMore(heard, expectation, CertaintyPolicy.Shipped);

    static bool HasFoundACall(Utterance alone) => alone.Ears.Any(ear => !ear.IsNoise && ear.Candidates.Any(candidate => PhraseText.IsSafety(candidate.Meaning)));

    static bool MayHaveLostAZero(Phrase.Reading reading) => reading.Value.Scale > 0 && reading.Value.Scale < reading.Field.MostDecimals;

    static bool IsSeveralWords(Candidate? candidate) => candidate?.Words.Contains(' ') ?? false;

    static bool IsNobody(Utterance utterance, CertaintyPolicy policy) =>
        utterance.Ears.All(ear => ear.IsNoise) || utterance.Ears.All(ear => ear.NoSpeech > policy.NoSpeechProbability);

    static Phrase Classify(Utterance utterance, Weighing weighing, CertaintyPolicy policy)
    {
        KindThresholds needed = policy.For(utterance.Ears.Length);
        if (weighing.Best.Meaning is Meaning.Range range)
        {
            return Missing(weighing.Measured, policy.Amber).Any()
                ? Refuse(utterance, weighing, "It was not clear enough to guess.")
                : PhraseText.ToPhrase(range, EvidenceOf(weighing, Certainty.Amber, "Two numbers at once are always asked."));
        }

        if (weighing.Best.Meaning is not Meaning.Reading reading)
        {
            // Where somebody wants to go is asked before it is done.
            bool isAsked = weighing.Best.Meaning is Meaning.Jump && utterance.Ears.Length > 1;
            Threshold least = isAsked ? policy.Step : IsSeveralWords(weighing.Best) ? needed.Phrase : policy.ForWord(utterance);
            return weighing.Agree && !PhraseText.IsSafety(weighing.Best.Meaning) && !Missing(weighing.Measured, least).Any()
                ? PhraseText.ToPhrase(weighing.Best.Meaning, EvidenceOf(weighing, isAsked ? Certainty.Amber : Certainty.Green, ""))
                : Refuse(utterance, weighing, $"It was perhaps \"{weighing.Best.Words.ToLowerInvariant()}\", but not clearly.");
        }

        ImmutableArray<string> doubts = [.. Doubts(weighing, reading, policy.ForReading(utterance, weighing.Measured)), .. Swallowed(weighing.Best.Words, reading, utterance, policy)];
        return doubts.IsEmpty ? PhraseText.ToPhrase(reading, EvidenceOf(weighing, Certainty.Green, ""))
            : !Missing(weighing.Measured, policy.Amber).Any() ? PhraseText.ToPhrase(reading, EvidenceOf(weighing, Certainty.Amber, string.Join(' ', doubts)))
            : Refuse(utterance, weighing, "It was not clear enough to guess.");
    }

    /// <summary>Everything that keeps a reading from green, in plain words.</summary>
    static IEnumerable<string> Doubts(Weighing weighing, Meaning.Reading reading, Threshold needed)
    {
        if (!weighing.Agree)
        {
            yield return "The ears heard different things.";
        }

        foreach (string missing in Missing(weighing.Measured, needed))
        {
            yield return missing;
        }

        if (weighing.Measured.HasTwinWithZero)
        {
            yield return "A zero may have been lost.";
        }

        if (weighing.Best.Ending.PointImplied)
        {
            yield return "The point was not said.";
        }

        if (MayBeDioxide(weighing.Best.Words, reading))
        {
            yield return "\"C O two\" may be carbon dioxide: say monoxide.";
        }

        if (!reading.Field.IsUsual(reading.Value))
        {
            yield return $"{reading.Field.Label} is seldom {(reading.IsOver ? "over its range" : SpokenNumbers.Say(reading.Value))}.";
        }
    }

    /// <summary>What noise swallows without a trace, because the rest is as clear without it: the "C" of "C O two four point four", and one of the digits alike of "three eight eight".</summary>
    static IEnumerable<string> Swallowed(string words, Meaning.Reading reading, Utterance utterance, CertaintyPolicy policy)
    {
        if (reading.Field.Id == FieldId.Oxygen && policy.IsUnsteady(utterance) && PlainWords.Of(words) is ["o", "two", ..])
        {
            yield return "\"O two\" may be C O two: say oxygen.";
        }

        if (reading.Field.Unit == Unit.PartsPerMillion && policy.IsLoud(utterance) && NumberWord.IsDigitByDigit(words) && reading.Field.IsUsual((10 * reading.Value) + (reading.Value % 10)))
        {
            yield return "One of two digits alike may have been lost.";
        }
    }

    /// <summary>"C O two eight" is 28 of one gas or 8 of the other, and "C O two" may be the beginning of the other.</summary>
    static bool MayBeDioxide(string words, Meaning.Reading reading) =>
        reading.Field.Id == FieldId.FlueCo && PlainWords.Of(words) is ["co", "two", ..] and not ["co", "two", "hundred" or "thousand", ..];

    /// <summary>What is missing to be entered without asking.</summary>
    static IEnumerable<string> Missing(Measured measured, Threshold needed)
    {
        if (measured.Mean < needed.Mean || measured.WorseMean < needed.WorseMean || measured.WorseLowest < needed.WorseLowest)
        {
            yield return NotClear;
        }

        if (measured.WorseRatio < needed.WorseRatio)
        {
            yield return "It sounded more like something else.";
        }

        if (measured.Margin < needed.Margin)
        {
            yield return "Something else is nearly as likely.";
        }
    }

    /// <summary>Free text without scores: never better than amber.</summary>
    static Phrase ReadText(string text, Expectation expectation)
    {
        TextMeaning meaning = PhraseText.Read(text, expectation);
        Evidence evidence = new(text, Channel.Voice, Certainty.Amber) { Why = "This recognizer cannot tell how sure it is." };
        return meaning.Meanings switch
        {
            [var safety] when PhraseText.IsSafety(safety) => PhraseText.ToPhrase(safety, evidence with { Certainty = Certainty.Green }),
            _ when expectation.Dictation => new Phrase.Dictation(evidence),
            [Meaning.Reading reading] => PhraseText.ToPhrase(reading, evidence),
            [Meaning.Command or Meaning.Answer or Meaning.Choice or Meaning.Jump or Meaning.Range] => PhraseText.ToPhrase(meaning.Meanings[0], evidence),
            _ => new Phrase.NotUnderstood(evidence with { Certainty = Certainty.Red, Why = meaning.Reason }),
        };
    }

    static Phrase.NotUnderstood Refuse(Utterance utterance, Weighing? weighing, string why) => new(
        weighing is null
            ? new Evidence(utterance.FreeText, Channel.Voice, Certainty.Red) { Why = why }
            : EvidenceOf(weighing, Certainty.Red, why) with { Words = utterance.FreeText });

    static Evidence EvidenceOf(Weighing weighing, Certainty certainty, string why) =>
        EvidenceOf(weighing.Best, weighing.Measured.Margin, weighing.Measured.Ratio, certainty, why);

    internal static Evidence EvidenceOf(Candidate candidate, double margin, double ratio, Certainty certainty, string why) =>
        new(candidate.Words, Channel.Voice, certainty) { Score = candidate.Mean, Margin = margin, Ratio = ratio, Why = why };
}
