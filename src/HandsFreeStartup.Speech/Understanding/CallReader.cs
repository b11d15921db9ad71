using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Speech.Phrases;
using HandsFreeStartup.Speech.Recognising;

namespace HandsFreeStartup.Speech.Understanding;

/// <summary>Decides whether somebody called for help. Pure, as <see cref="PhraseReader"/>.</summary>
static class CallReader
{
    /// <summary>
    /// The safety phrases need little: a false stop costs a word, a missed one a life. A call alone counts by any ear. Among other words, and in a stretch out of what others say, one ear turns
    /// "smell again" into "smell of gas" while the other is surer of what was said: there the surer ear decides.
    /// </summary>
    public static Phrase? Read(Utterance utterance, Expectation expectation, CertaintyPolicy policy)
    {
        EarEvidence surest = utterance.Ears.MaxBy(ear => ear.FreeMean)!;
        Phrase? call = Alone(IsOthersTalk(expectation) ? [surest] : utterance.Ears, policy)
            ?? ByBoth(utterance.Ears, policy)
            ?? AmongWords(surest, utterance.Ears, expectation, policy);
        return call is Phrase.Command { Word: var word } && (MayGoOn(call, expectation) || IsInDoubt(word, utterance, expectation, policy)) ? call with { Evidence = call.Evidence with { Certainty = Certainty.Amber } } : call;
    }

    /// <summary>One that an ear heard by itself, with nothing around it; null where none did.</summary>
    static Phrase? Alone(ImmutableArray<EarEvidence> ears, CertaintyPolicy policy) =>
        ToCall(ears.SelectMany(CallsOf).Where(one => Reaches(one, policy.Safety.Mean, policy.Safety.Ratio)));

    /// <summary>Whether a whole call stands where speech is cut short and may go on to mean something else: "we have a fire" is the beginning of "we have a fire department". The next stretch shows it.</summary>
    static bool MayGoOn(Phrase call, Expectation expectation) => expectation.IsCutShort && SafetyText.Find(PlainWords.Of(call.Evidence.Words), expectation) is null;

    /// <summary>Ears that came across the same call make up for each other.</summary>
    static Phrase? ByBoth(ImmutableArray<EarEvidence> ears, CertaintyPolicy policy)
    {
        bool IsHeardByAll(CommandWord word) => ears.Length > 1
            && ears.All(ear => CallsOf(ear).Any(one => Word(one.Heard) == word && ear.RatioOf(one.Heard) >= policy.Safety.WorseRatio));

        return ToCall(ears.SelectMany(CallsOf).Where(one => Reaches(one, policy.Safety.BothMean, policy.Safety.BothRatio) && IsHeardByAll(Word(one.Heard))));
    }

    static IEnumerable<(EarEvidence Ear, Candidate Heard)> CallsOf(EarEvidence ear) => ear.IsNoise || SafetyText.IsNotMeant(PlainWords.Of(ear.FreeText))
        ? []
        : ear.Candidates.Where(candidate => PhraseText.IsSafety(candidate.Meaning)).Select(candidate => (ear, candidate));

    static Phrase? ToCall(IEnumerable<(EarEvidence Ear, Candidate Heard)> calls) => calls.OrderByDescending(one => one.Heard.Mean).FirstOrDefault() is ({ } by, { } safety)
        ? PhraseOf(by, safety, Certainty.Green, "")
        : null;

    static Phrase PhraseOf(EarEvidence by, Candidate safety, Certainty certainty, string why) =>
        PhraseText.ToPhrase(safety.Meaning, PhraseReader.EvidenceOf(safety, by.MarginOf(safety), by.RatioOf(safety), certainty, why));

    /// <summary>
    /// Out of talk in noise one ear makes a whole call that nobody made ("there's a fire in the basement"). Its own words are seldom clear, the other ear hears something else: one of the two must speak
    /// for it. What is heard over the tool's own voice is weighed with what the tool says instead.
    /// </summary>
    static Phrase? AmongWords(EarEvidence surest, ImmutableArray<EarEvidence> ears, Expectation expectation, CertaintyPolicy policy) =>
        !surest.IsNoise && surest.FreeMean >= policy.Safety.Among.FreeMean && CalledIn(surest, expectation) is { Meaning: var called }
        && (ears.Length == 1 || expectation.Over is not null || Clearness(surest, called.Word, expectation) >= policy.Safety.Among.Words
            || ears.Any(ear => ear != surest && Clearness(ear, called.Word, expectation) >= policy.Safety.Among.OtherWords))
            ? PhraseText.ToPhrase(called, new Evidence(surest.FreeText, Channel.Voice, IsTold(ears, called.Word, expectation) ? Certainty.Amber : Certainty.Green) { Score = surest.FreeMean })
            : null;

    /// <summary>Whether an ear read words that tell something of the call: how such a sentence ends ("the emergency stop is for ..."), an ear seldom knows.</summary>
    static bool IsTold(ImmutableArray<EarEvidence> ears, CommandWord word, Expectation expectation) =>
        ears.Any(ear => CalledIn(ear, expectation) is { IsTold: true } found && found.Meaning.Word == word);

    /// <summary>
    /// What one ear alone read as a call, while the other heard something else and was no less sure of it: it stops nothing, but is asked for. What was understood without it stays where neither read
    /// one, where one read words that are like a call and must not stop, and where it is carbon monoxide, which is never put aside. The tool's own voice is weighed otherwise.
    /// </summary>
    /// <param name="utterance">The evidence.</param>
    /// <param name="understood">What it was understood as without this: nothing, or a doubtful reading.</param>
    /// <param name="expectation">What could be said.</param>
    /// <param name="policy">Thresholds.</param>
    public static Phrase ByOneEar(Utterance utterance, Phrase understood, Expectation expectation, CertaintyPolicy policy)
    {
        bool isMonoxide = understood is Phrase.Reading reading && reading.Field.Unit == Unit.PartsPerMillion;
        if (isMonoxide || expectation.Over is not null || utterance.Ears.Length < 2 || HoldsNotMeant(utterance))
        {
            return understood;
        }

        double least = understood is Phrase.NotUnderstood && !expectation.IsForCallsAlone ? policy.Safety.Asked.Words : policy.Safety.Asked.Surely;
        return (from ear in utterance.Ears
                where !ear.IsNoise
                let call = CalledIn(ear, expectation)
                where call is not null
                let clearness = ear.FreeMeanOf(call.From, call.Count)
                where clearness >= least
                orderby clearness descending
                select PhraseText.ToPhrase(call.Meaning, Unclear(ear.FreeText, clearness))).FirstOrDefault(understood);
    }

    static bool HoldsNotMeant(Utterance utterance) => utterance.Ears.Any(ear => SafetyText.HoldsNotMeant(PlainWords.Of(ear.FreeText)));

    static Evidence Unclear(string words, double score) => new(words, Channel.Voice, Certainty.Amber) { Score = score, Why = PhraseReader.NotClear };

    /// <summary>
    /// Whether a call may be something that an ear made of what it does not understand. While the tool is silent it must be clear and heard by both ears, or clear with nothing around it, or stand when the
    /// same sound is heard again: what an ear makes of talk in noise seldom does. Over the tool's own voice it must be clear or heard by both ears.
    /// </summary>
    static bool IsInDoubt(CommandWord word, Utterance utterance, Expectation expectation, CertaintyPolicy policy)
    {
        if (utterance.Ears.Length < 2)
        {
            return false;
        }

        bool isClear = utterance.Ears.Any(ear => IsHeardBy(ear, word, policy.Safety.Among.Words, expectation, policy));
        bool isHeardByTwo = utterance.Ears.Count(ear => Clearness(ear, word, expectation) >= policy.Safety.Among.OtherWords || IsAmongCalls(ear, word, double.NegativeInfinity, policy)) > 1;
        return expectation.Over is not null ? !isClear && !isHeardByTwo
            : !(isClear && isHeardByTwo) && !IsClearAlone(utterance.Ears, policy) && !HasStood(utterance, word, isClear, expectation, policy);
    }

    /// <summary>Whether a call was found in every further hearing. What one ear makes of talk it may make each time: one that is not clear must have been heard by both, in one hearing or another.</summary>
    static bool HasStood(Utterance utterance, CommandWord word, bool isClear, Expectation expectation, CertaintyPolicy policy)
    {
        bool IsHeardEver(int ear) => utterance.Again.Add(utterance.Ears).Any(ears => IsHeardBy(ears[ear], word, policy.Safety.Among.OtherWords, expectation, policy));

        return utterance.Again.Length == ChangedSound.Ways && Stands(utterance, word, expectation, policy) && (isClear || Enumerable.Range(0, utterance.Ears.Length).Count(IsHeardEver) > 1);
    }

    /// <summary>Whether hearing the same sound once more may settle whether somebody called: it was in doubt, and has stood so far.</summary>
    public static bool WantsAnotherHearing(Utterance utterance, CommandWord word, Expectation expectation, CertaintyPolicy policy) =>
        expectation.Over is null && utterance.Again.Length < ChangedSound.Ways && IsInDoubt(word, utterance, expectation, policy) && Stands(utterance, word, expectation, policy);

    /// <summary>Whether one ear heard a call so clearly, with nothing around it, that no other need be asked.</summary>
    public static bool IsClearAlone(ImmutableArray<EarEvidence> ears, CertaintyPolicy policy) => Alone(ears, policy) is { } call && call.Evidence.Score >= policy.Safety.Among.Words;

    /// <summary>Whether an ear came across the call in every further hearing.</summary>
    static bool Stands(Utterance utterance, CommandWord word, Expectation expectation, CertaintyPolicy policy) =>
        utterance.Again.All(ears => ears.Any(ear => IsHeardBy(ear, word, policy.Safety.Among.OtherWords, expectation, policy)));

    static bool IsHeardBy(EarEvidence ear, CommandWord word, double mean, Expectation expectation, CertaintyPolicy policy) => Clearness(ear, word, expectation) >= mean || IsAmongCalls(ear, word, mean, policy);

    static bool IsAmongCalls(EarEvidence ear, CommandWord word, double mean, CertaintyPolicy policy) =>
        CallsOf(ear).Any(one => Word(one.Heard) == word && one.Heard.Mean >= mean && ear.RatioOf(one.Heard) >= policy.Safety.WorseRatio);

    /// <summary>How clear the words of a call are that an ear heard among others, mean log-probability per word; negative infinity where it heard none.</summary>
    static double Clearness(EarEvidence ear, CommandWord word, Expectation expectation) =>
        CalledIn(ear, expectation) is { } called && called.Meaning.Word == word ? ear.FreeMeanOf(called.From, called.Count) : double.NegativeInfinity;

    static SafetyText.Call? CalledIn(EarEvidence ear, Expectation expectation) => SafetyText.Find(PlainWords.Of(ear.FreeText), expectation, PlainWords.Of(expectation.Over ?? ""));

    static CommandWord Word(Candidate safety) => ((Meaning.Command)safety.Meaning).Word;

    static bool Reaches((EarEvidence Ear, Candidate Heard) one, double mean, double ratio) => one.Heard.Mean >= mean && one.Ear.RatioOf(one.Heard) >= ratio;

    /// <summary>What in an utterance may have been a call, however faint; null where nothing may, where an ear read words that are like one and must not stop, and over the tool's own voice.</summary>
    public static FaintCall? Faint(Utterance utterance, Expectation expectation, CertaintyPolicy policy)
    {
        if (expectation.Over is not null || HoldsNotMeant(utterance))
        {
            return null;
        }

        ImmutableArray<Phrase.Command> calls = [.. utterance.Ears.SelectMany(ear => FaintIn(ear, expectation, policy.Safety.Again)).Cast<Phrase.Command>().OrderByDescending(call => call.Evidence.Score)];
        return calls.IsEmpty ? null : new FaintCall(calls, [.. utterance.Ears.Select(ear => ear.FreeText)], !expectation.IsForCallsAlone);
    }

    /// <summary>The same of what was understood as a call.</summary>
    public static FaintCall Faint(Phrase.Command call, Utterance utterance, Expectation expectation, CertaintyPolicy policy) =>
        Faint(utterance, expectation, policy) is { } faint
            ? faint with { Calls = [call, .. faint.Calls] }
            : new FaintCall([call], [.. utterance.Ears.Select(ear => ear.FreeText)], !expectation.IsForCallsAlone);

    /// <summary>The calls that an ear found likelier than anything else that can be said, and the one that it read.</summary>
    static IEnumerable<Phrase> FaintIn(EarEvidence ear, Expectation expectation, AgainThreshold least)
    {
        foreach ((_, Candidate heard) in CallsOf(ear).Where(one => Reaches(one, least.Mean, least.Ratio) && ear.MarginOf(one.Heard) >= least.Margin))
        {
            yield return PhraseOf(ear, heard, Certainty.Amber, PhraseReader.NotClear);
        }

        if (!ear.IsNoise && CalledIn(ear, expectation) is { } called)
        {
            string way = string.Join(' ', PlainWords.Of(ear.FreeText).Skip(called.From).Take(called.Count));
            yield return PhraseText.ToPhrase(called.Meaning, Unclear(way, ear.FreeMeanOf(called.From, called.Count)));
        }
    }

    /// <summary>Whether somebody speaks on and on while the tool is silent: its own words are known, those of others are not.</summary>
    public static bool IsOthersTalk(Expectation expectation) => expectation.IsForCallsAlone && expectation.Over is null;
}
