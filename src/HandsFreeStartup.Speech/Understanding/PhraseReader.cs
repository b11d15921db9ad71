using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Recognising;

namespace HandsFreeStartup.Speech.Understanding;

/// <summary>Decides how far an utterance can be trusted. Pure: evidence in, phrase out.</summary>
public static class PhraseReader
{
    /// <summary>Whether the ears that have listened are not enough: the first is not green, or it concerns carbon monoxide.</summary>
    public static bool WantsAnotherEar(Utterance utterance, Expectation expectation)
    {
        if (utterance.Ears[^1].IsNoise || utterance.Ears[^1].Best is null)
        {
            return false;
        }

        Phrase phrase = Read(utterance, expectation);
        return phrase.Evidence.Certainty != Certainty.Green || phrase is Phrase.Reading { Field.Id: "flue_co" or "room_co" };
    }

    /// <summary>The phrase, with its class and what kept it from green.</summary>
    public static Phrase Read(Utterance utterance, Expectation expectation) => Read(utterance, expectation, Certainties.Shipped);

    /// <summary>The phrase under other thresholds.</summary>
    public static Phrase Read(Utterance utterance, Expectation expectation, Certainties certainties)
    {
        if (utterance.Ears.IsEmpty)
        {
            return Doubted(PhraseText.Typed(utterance.FreeText, expectation));
        }

        if (utterance.Ears.All(ear => ear.IsNoise))
        {
            return NotUnderstood(utterance, "no speech");
        }

        if (utterance.Ears.FirstOrDefault(ear => IsSafety(ear.Best) && !ear.IsNoise && certainties.SafetyPhrase.IsReached(ear)) is { } alarm)
        {
            return new Phrase.Order(((Meaning.Order)alarm.Best!.Meaning).Word, Evidence(alarm, Certainty.Green, ""));
        }

        if (expectation.Dictation)
        {
            return new Phrase.Dictation(new Evidence(utterance.FreeText, Channel.Voice, Certainty.Green));
        }

        ImmutableArray<EarEvidence> ears = [.. utterance.Ears.Where(ear => ear.Best is not null)];
        if (ears.IsEmpty)
        {
            return NotUnderstood(utterance, "nothing that can be said here");
        }

        bool agree = ears.Length > 1 && ears.All(ear => ear.Best!.Meaning.Equals(ears[0].Best!.Meaning));
        bool disagree = ears.Length > 1 && !agree;
        EarEvidence better = ears.MaxBy(ear => ear.Best!.Mean)!;
        return better.Best!.Meaning switch
        {
            Meaning.Reading reading => Judge(reading, better, ears, agree, disagree, certainties),
            Meaning.Order order when IsAccepted(ears, agree, disagree, certainties) => new Phrase.Order(order.Word, Evidence(better, Certainty.Green, "")),
            Meaning.Answer answer when IsAccepted(ears, agree, disagree, certainties) => new Phrase.Answer(answer.Word, Evidence(better, Certainty.Green, "")),
            _ => new Phrase.NotUnderstood(Evidence(better, Certainty.Red, "a command needs to be clearer")),
        };
    }

    static Phrase Judge(Meaning.Reading reading, EarEvidence better, ImmutableArray<EarEvidence> ears, bool agree, bool disagree, Certainties certainties)
    {
        if (disagree || !(agree ? certainties.ReadingDoubtful.IsReached(ears) : certainties.ReadingDoubtful.IsReached(better)))
        {
            return new Phrase.NotUnderstood(Evidence(better, Certainty.Red, disagree ? "two recognisers heard different things" : "not clear enough"));
        }

        bool isClear = agree ? certainties.ReadingAgreed.IsReached(ears) : certainties.ReadingAlone.IsReached(better);
        string why = !isClear ? "not quite clear"
            : better.Best!.Ending.PointImplied ? "the point was not said"
            : better.Best.Ending.NameSpelled && reading.Value >= 10 ? "the spelled name may have run into the number"
            : !reading.Field.IsUsual(reading.Value) ? "an unusual value"
            : "";
        return new Phrase.Reading(reading.Field, reading.Value, Evidence(better, why.Length == 0 ? Certainty.Green : Certainty.Amber, why));
    }

    static bool IsAccepted(ImmutableArray<EarEvidence> ears, bool agree, bool disagree, Certainties certainties) =>
        !disagree && (certainties.CommandAlone.IsReached(ears[0]) || (agree && certainties.CommandAgreed.IsReached(ears)));

    static bool IsSafety(Candidate? candidate) => candidate?.Meaning is Meaning.Order { Word: CommandWord.EmergencyStop or CommandWord.GasSmell };

    static Phrase NotUnderstood(Utterance utterance, string why) =>
        new Phrase.NotUnderstood(new Evidence(utterance.FreeText, Channel.Voice, Certainty.Red, Why: why));

    static Evidence Evidence(EarEvidence ear, Certainty certainty, string why) =>
        new(ear.Best!.Words, Channel.Voice, certainty, Math.Round(ear.Best.Mean, 3), Math.Round(ear.Margin, 3), Math.Round(ear.Ratio, 3), why);

    /// <summary>Free text without scores: a reading is doubtful at best, a command must be confirmed by its wording alone.</summary>
    static Phrase Doubted(Phrase phrase) => phrase with
    {
        Evidence = phrase.Evidence with
        {
            Channel = Channel.Voice,
            Certainty = phrase is Phrase.Reading ? Certainty.Amber : phrase.Evidence.Certainty,
            Why = phrase is Phrase.Reading ? "heard without scores" : phrase.Evidence.Why,
        },
    };
}
