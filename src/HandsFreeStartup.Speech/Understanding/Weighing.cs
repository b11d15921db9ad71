using System.Collections.Immutable;
using HandsFreeStartup.Speech.Recognising;

namespace HandsFreeStartup.Speech.Understanding;

/// <summary>What all ears together heard, with the evidence in the numbers of the policy.</summary>
/// <param name="Best">The likeliest phrase, as the ear heard it that heard it better.</param>
/// <param name="Agree">Whether it is the likeliest meaning for two ears, or for the only one.</param>
/// <param name="Measured">The evidence.</param>
/// <param name="Twins">Numbers that sound nearly the same (13 and 30), with their distance, of the ear that tells them apart worse.</param>
sealed record Weighing(Candidate Best, bool Agree, Measured Measured, ImmutableArray<(Meaning.Reading Meaning, double Margin)> Twins)
{
    /// <summary>Weighs the ears; null if none found a legal phrase.</summary>
    public static Weighing? Of(Utterance utterance)
    {
        EarEvidence[] heard = [.. utterance.Ears.Where(ear => ear.Best is not null)];
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
        Meaning.Reading[] rivals = [.. Alike(heard, winner, SoundsAlike.Are)];
        bool isHeardByAll = backing.Length == utterance.Ears.Length;
        Measured measured = new(
            backing[0].Candidate.Mean,
            isHeardByAll ? backing[^1].Candidate.Mean : double.NegativeInfinity,
            backing.Max(Ratio),
            isHeardByAll ? backing.Min(Ratio) : double.NegativeInfinity,
            ranking.Length > 1 ? ranking[0].Sum - ranking[1].Sum : heard.Length * EarEvidence.NotFound,
            rivals.Length == 0 ? double.PositiveInfinity : rivals.Min(rival => heard.Sum(ear => Distance(ear, winner, rival))),
            backing.Max(entry => entry.Candidate.Lowest),
            backing.Min(entry => entry.Candidate.Lowest),
            backing.Max(entry => entry.Candidate.End),
            isHeardByAll ? backing.Min(entry => entry.Candidate.End) : double.NegativeInfinity,
            heard.Count(ear => ear.Best!.Meaning == winner),
            utterance.SignalToNoise);
        return new Weighing(
            backing[0].Candidate,
            measured.Agreeing >= Math.Min(2, utterance.Ears.Length),
            measured,
            [.. Alike(heard, winner, SoundsAlike.AreTwins).Select(twin => (twin, heard.Min(ear => Distance(ear, winner, twin))))]);
    }

    static double Ratio((EarEvidence Ear, Candidate Candidate) backing) => backing.Ear.RatioOf(backing.Candidate);

    static double Weight(EarEvidence ear, Meaning meaning) =>
        ear.Candidates.FirstOrDefault(candidate => candidate.Meaning == meaning)?.Weight ?? ear.Best!.Weight - EarEvidence.NotFound;

    static double Distance(EarEvidence ear, Meaning winner, Meaning other) => Weight(ear, winner) - Weight(ear, other);

    static IEnumerable<Meaning.Reading> Alike(EarEvidence[] ears, Meaning winner, Func<Meaning.Reading, Meaning.Reading, bool> areAlike) =>
        ears.SelectMany(ear => ear.Candidates).Select(candidate => candidate.Meaning).OfType<Meaning.Reading>().Distinct()
            .Where(other => winner is Meaning.Reading reading && other != reading && areAlike(reading, other));
}
