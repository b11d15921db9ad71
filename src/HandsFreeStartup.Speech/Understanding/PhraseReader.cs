using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Recognising;

namespace HandsFreeStartup.Speech.Understanding;

/// <summary>Decides what was said and how far it can be trusted. Pure: the same evidence always gives the same phrase.</summary>
public static class PhraseReader
{
    /// <summary>The phrase that an utterance is under the shipped policy.</summary>
    /// <param name="utterance">The evidence.</param>
    /// <param name="expectation">What could be said; the same that the recogniser was given.</param>
    public static Phrase Read(Utterance utterance, Expectation expectation) => Read(utterance, expectation, CertaintyPolicy.Shipped);

    /// <summary>The phrase that an utterance is under some policy.</summary>
    /// <param name="utterance">The evidence.</param>
    /// <param name="expectation">What could be said; the same that the recogniser was given.</param>
    /// <param name="policy">Thresholds.</param>
    public static Phrase Read(Utterance utterance, Expectation expectation, CertaintyPolicy policy)
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

        if (SafetyPhrase(utterance, policy) is { } safety)
        {
            return safety;
        }

        if (expectation.Dictation)
        {
            return new Phrase.Dictation(new Evidence(utterance.FreeText, Channel.Voice, Certainty.Green));
        }

        return weighing is null ? Refuse(utterance, null, "It was nothing that can be said now.") : Classify(utterance, weighing, policy);
    }

    /// <summary>Whether the other ears should listen before a decision: where the first is not sure, for carbon monoxide always, and for a single word unless it is quiet.</summary>
    /// <param name="alone">The evidence of the first ear.</param>
    /// <param name="expectation">What could be said.</param>
    /// <param name="policy">Thresholds.</param>
    public static bool WantsOtherEars(Utterance alone, Expectation expectation, CertaintyPolicy policy) =>
        !expectation.Dictation && Read(alone, expectation, policy) switch
        {
            Phrase.Order or Phrase.Answer => !policy.IsQuiet(alone.SignalToNoise) && !IsSeveralWords(alone.Ears[0].Best),
            Phrase.Reading reading => reading.Evidence.Certainty != Certainty.Green || reading.Field.Unit == Unit.PartsPerMillion,
            _ => true,
        };

    static bool IsSeveralWords(Candidate? candidate) => candidate?.Words.Contains(' ') ?? false;

    static bool IsNobody(Utterance utterance, CertaintyPolicy policy) =>
        utterance.Ears.All(ear => ear.IsNoise) || utterance.Ears.All(ear => ear.NoSpeech > policy.NoSpeechProbability);

    /// <summary>"Emergency stop" and "gas smell" need little: a false stop costs a word, a missed one a life. Ears that came across the same one make up for each other.</summary>
    static Phrase? SafetyPhrase(Utterance utterance, CertaintyPolicy policy)
    {
        (EarEvidence Ear, Candidate Heard)[] heard =
        [
            .. from ear in utterance.Ears
               where !ear.IsNoise
               from candidate in ear.Candidates
               where PhraseText.IsSafety(candidate.Meaning)
               orderby candidate.Mean descending
               select (ear, candidate),
        ];

        bool IsTaken((EarEvidence Ear, Candidate Heard) one) => Reaches(one.Heard, one.Ear, policy.Safety) || IsHeardTogether(one.Heard.Meaning);

        bool IsHeardTogether(Meaning safety)
        {
            double leastRatio = policy.IsQuiet(utterance.SignalToNoise) ? policy.AgreedSafety.QuietRatio : double.NegativeInfinity;
            double[] worths =
            [
                .. from one in heard
                   where one.Heard.Meaning == safety && one.Ear.RatioOf(one.Heard) >= leastRatio
                   select policy.AgreedSafety.WorthOf(one.Heard, one.Ear.MarginOf(one.Heard)),
            ];
            int others = utterance.Ears.Length - worths.Length;
            return worths.Length > 1 && (worths.Sum() + others * policy.AgreedSafety.NotHeard) / utterance.Ears.Length >= policy.AgreedSafety.Least;
        }

        return heard.FirstOrDefault(IsTaken) is ({ } by, { } safety)
            ? PhraseText.ToPhrase(safety.Meaning, EvidenceOf(safety, by.MarginOf(safety), by.RatioOf(safety), Certainty.Green, ""))
            : null;
    }

    static bool Reaches(Candidate safety, EarEvidence ear, Threshold needed) => safety.Mean >= needed.Mean && safety.Lowest >= needed.Lowest
        && ear.RatioOf(safety) >= needed.Ratio;

    static Phrase Classify(Utterance utterance, Weighing weighing, CertaintyPolicy policy)
    {
        KindWeights weights = policy.For(utterance.Ears.Length);
        if (weighing.Best.Meaning is not Meaning.Reading reading)
        {
            EvidenceWeights wanted = IsSeveralWords(weighing.Best) ? weights.Phrase : weighing.Best.Meaning is Meaning.Answer { Word: AnswerWord.No } ? weights.No : weights.Word;
            return weighing.Agree && !Short(weighing.Measured, wanted, policy.Green).Any()
                ? PhraseText.ToPhrase(weighing.Best.Meaning, EvidenceOf(weighing, Certainty.Green, ""))
                : Refuse(utterance, weighing, $"It was perhaps \"{weighing.Best.Words.TrimEnd('.', '?', '!').ToLowerInvariant()}\", but not clearly.");
        }

        ImmutableArray<string> doubts = [.. Doubts(utterance, weighing, reading, policy)];
        if (doubts.IsEmpty)
        {
            return new Phrase.Reading(reading.Field, reading.Value, EvidenceOf(weighing, Certainty.Green, ""));
        }

        return !Short(weighing.Measured, policy.Amber).Any()
            ? new Phrase.Reading(reading.Field, reading.Value, EvidenceOf(weighing, Certainty.Amber, string.Join(' ', doubts)))
            : Refuse(utterance, weighing, "It was not clear enough to guess.");
    }

    /// <summary>Everything that keeps a reading from green, in plain words.</summary>
    static IEnumerable<string> Doubts(Utterance utterance, Weighing weighing, Meaning.Reading reading, CertaintyPolicy policy)
    {
        if (!weighing.Agree)
        {
            yield return "The ears heard different things.";
        }

        bool isOneEar = utterance.Ears.Length == 1;
        EvidenceWeights weights = policy.For(utterance.Ears.Length).Reading;
        if (isOneEar ? !policy.IsQuiet(utterance.SignalToNoise) : IsLost(weighing.Measured, weights, policy.Noise) || IsLost(weighing.Measured, weights, policy.LoudNoise))
        {
            yield return "It was not quiet enough to be sure.";
        }

        foreach (string missing in Short(weighing.Measured, weights, isOneEar ? policy.Green : policy.Green with { Margin = policy.DoubtMargin }))
        {
            yield return missing;
        }

        foreach ((Meaning.Reading twin, _) in weighing.Twins.Where(twin => twin.Margin < (SoundsAlike.IsTeen(reading, twin.Meaning) ? policy.TeenMargin : policy.TyMargin)))
        {
            yield return $"{Say(reading)} sounds like {Say(twin)}.";
        }

        if (weighing.Best.Ending.PointImplied)
        {
            yield return "The point was not said.";
        }

        if (weighing.Best.Ending.NameSpelled && (Math.Abs(reading.Value) >= 10 || IsNothingButLetters(weighing.Best.Words)))
        {
            yield return "\"C O\" runs into the number after it.";
        }

        if (!reading.Field.IsUsual(reading.Value))
        {
            yield return $"{reading.Field.Label} is seldom {SpokenNumbers.Say(reading.Value)}.";
        }
    }

    static bool IsLost(Measured measured, EvidenceWeights weights, NoiseThreshold noise) => measured.SignalToNoise < noise.Below
        && (measured.Mean < noise.Mean || measured.Margin < noise.Margin || weights.LogOdds(measured) < noise.Least);

    /// <summary>What is missing to be entered without asking.</summary>
    static IEnumerable<string> Short(Measured measured, EvidenceWeights weights, Threshold least) =>
        Short(measured, least) is var missing && missing.Any() ? missing
        : weights.LogOdds(measured) < weights.Least ? ["It was not clear."]
        : [];

    static IEnumerable<string> Short(Measured measured, Threshold wanted)
    {
        if (measured.Mean < wanted.Mean || measured.Lowest < wanted.Lowest)
        {
            yield return "It was not clear.";
        }

        if (measured.Ratio < wanted.Ratio)
        {
            yield return "It sounded more like something else.";
        }

        if (measured.Margin < wanted.Margin)
        {
            yield return "Something else is nearly as likely.";
        }

        if (measured.End < wanted.End)
        {
            yield return "It seems to go on.";
        }
    }

    /// <summary>A lone "zero" sounds like "C O"; a word before the letters ("room C O") shows that a name was said.</summary>
    static bool IsNothingButLetters(string words) => words.TrimStart().StartsWith('C');

    static string Say(Meaning.Reading reading) => $"{reading.Field.SpokenNames[0]} {SpokenNumbers.Say(reading.Value)}";

    /// <summary>Free text without scores: never better than amber.</summary>
    static Phrase ReadText(string text, Expectation expectation)
    {
        TextMeaning meaning = PhraseText.Read(text, expectation);
        Evidence evidence = new(text, Channel.Voice, Certainty.Amber, Why: "This recogniser cannot tell how sure it is.");
        return meaning.Meanings switch
        {
            [var safety] when PhraseText.IsSafety(safety) => PhraseText.ToPhrase(safety, evidence),
            _ when expectation.Dictation => new Phrase.Dictation(evidence),
            [Meaning.Reading reading] => PhraseText.ToPhrase(reading, evidence),
            [Meaning.Order or Meaning.Answer] => PhraseText.ToPhrase(meaning.Meanings[0], evidence),
            _ => new Phrase.NotUnderstood(evidence with { Certainty = Certainty.Red, Why = meaning.Reason }),
        };
    }

    static Phrase.NotUnderstood Refuse(Utterance utterance, Weighing? weighing, string why) => new(
        weighing is null
            ? new Evidence(utterance.FreeText, Channel.Voice, Certainty.Red, Why: why)
            : EvidenceOf(weighing, Certainty.Red, why) with { Words = utterance.FreeText });

    static Evidence EvidenceOf(Weighing weighing, Certainty certainty, string why) =>
        EvidenceOf(weighing.Best, weighing.Measured.Margin, weighing.Measured.Ratio, certainty, why);

    static Evidence EvidenceOf(Candidate candidate, double margin, double ratio, Certainty certainty, string why) =>
        new(candidate.Words, Channel.Voice, certainty, candidate.Mean, margin, ratio, why);
}
