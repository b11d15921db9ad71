using HandsFreeStartup.Speech.Phrases;
using HandsFreeStartup.Speech.Recognising;

namespace HandsFreeStartup.Speech.Understanding;

/// <summary>What all ears together heard, with the evidence in the numbers of the policy.</summary>
/// <param name="Best">The likeliest phrase, as the ear heard it that heard it better.</param>
/// <param name="Agree">Whether it is the likeliest meaning for every ear that listened.</param>
/// <param name="Measured">The evidence.</param>
sealed record Weighing(Candidate Best, bool Agree, Measured Measured)
{
    /// <summary>Weighs the ears; null if none found a legal phrase.</summary>
    public static Weighing? Of(Utterance utterance)
    {
        EarEvidence[] heard = [.. utterance.Ears.Where(ear => ear.Best is not null).Select(WithoutBarerTwins)];
        if (heard.Length == 0)
        {
            return null;
        }

        (Meaning Meaning, double Sum)[] ranking =
        [
            .. heard.SelectMany(ear => ear.Candidates).Select(candidate => candidate.Meaning).Distinct()
                .Select(meaning => (meaning, heard.Sum(ear => Weight(ear, meaning))))
                .OrderByDescending(entry => entry.Item2),
        ];
        Meaning winner = ranking[0].Meaning;
        (EarEvidence Ear, Candidate Candidate)[] backing =
            [.. from ear in heard from candidate in ear.Candidates where candidate.Meaning == winner orderby candidate.Mean descending select (ear, candidate)];
        bool isHeardByAll = backing.Length == utterance.Ears.Length;
        Measured measured = new(
            backing[0].Candidate.Mean,
            isHeardByAll ? backing[^1].Candidate.Mean : double.NegativeInfinity,
            isHeardByAll ? backing.Min(entry => entry.Candidate.Lowest) : double.NegativeInfinity,
            isHeardByAll ? backing.Min(Ratio) : double.NegativeInfinity,
            ranking.Length > 1 ? ranking[0].Sum - ranking[1].Sum : heard.Length * EarEvidence.NotFound,
            backing.Max(Ratio),
            backing.Any(entry => IsTwinWithoutZero(entry.Ear, entry.Candidate)))
        {
            MayBeAnotherTen = backing.Any(entry => NumberWord.MayEndCovered(entry.Candidate.Words)),
        };
        return new Weighing(backing[0].Candidate, heard.Count(ear => ear.Best!.Meaning == winner) == utterance.Ears.Length, measured);
    }

    /// <summary>
    /// "C O two two six" is 226 of carbon monoxide, or 2.6 of carbon dioxide if a point went unsaid. Of the same words the meaning that needs nothing unsaid is the one to ask about, and so high a
    /// monoxide is never refused as unclear.
    /// </summary>
    static EarEvidence WithoutBarerTwins(EarEvidence ear) => ear with
    {
        Candidates = ear.Candidates.RemoveAll(one => one.Ending.PointImplied && ear.Candidates.Any(other => !other.Ending.PointImplied && other.Words == one.Words)),
    };

    static double Ratio((EarEvidence Ear, Candidate Candidate) backing) => backing.Ear.RatioOf(backing.Candidate);

    /// <summary>A zero said fast leaves a phrase that is as clear without it: "ten point oh nine".</summary>
    static bool IsTwinWithoutZero(EarEvidence ear, Candidate candidate) => ear.Candidates.Any(other =>
        other.Meaning != candidate.Meaning && other.Words.Length > candidate.Words.Length && WithoutZeros(other).SequenceEqual(WithoutZeros(candidate)));

    static IEnumerable<string> WithoutZeros(Candidate candidate) => candidate.Words.Split(' ').Where(word => word is not ("oh" or "zero"));

    static double Weight(EarEvidence ear, Meaning meaning) =>
        ear.Candidates.FirstOrDefault(candidate => candidate.Meaning == meaning)?.Weight ?? ear.Best!.Weight - EarEvidence.NotFound;
}
