using System.Collections.Immutable;
using HandsFreeStartup.Speech.Recognising;

namespace HandsFreeStartup.Speech.Understanding;

/// <summary>What all ears together heard, with the evidence in the numbers of the policy.</summary>
/// <param name="Best">The likeliest phrase, as the ear heard it that heard it better.</param>
/// <param name="Agree">Whether it is the likeliest meaning for every ear.</param>
/// <param name="Measured">The evidence.</param>
/// <param name="Twin">The number that sounds nearly the same (13 and 30), or null if none was in question.</param>
/// <param name="TwinMargin">Distance to it, of the ear that tells them apart worse; infinite without one.</param>
sealed record Weighing(Candidate Best, bool Agree, Measured Measured, Candidate? Twin, double TwinMargin)
{
    /// <summary>Weighs the ears; null if none found a legal phrase.</summary>
    public static Weighing? Of(ImmutableArray<EarEvidence> ears)
    {
        EarEvidence[] heard = [.. ears.Where(ear => ear.Best is not null)];
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
        Candidate[] rivals = [.. Alike(heard, winner, SoundsAlike.Are)];
        Candidate? twin = Alike(heard, winner, SoundsAlike.AreTwins).FirstOrDefault();
        bool isHeardByAll = backing.Length == ears.Length;
        Measured measured = new(
            backing[0].Candidate.Mean,
            isHeardByAll ? backing[^1].Candidate.Mean : double.NegativeInfinity,
            backing.Max(Ratio),
            isHeardByAll ? backing.Min(Ratio) : double.NegativeInfinity,
            ranking.Length > 1 ? ranking[0].Sum - ranking[1].Sum : EarEvidence.NotFound,
            rivals.Length == 0 ? double.PositiveInfinity : rivals.Min(rival => heard.Sum(ear => Distance(ear, winner, rival.Meaning))),
            backing.Max(entry => entry.Candidate.Lowest),
            backing.Min(entry => entry.Candidate.Lowest),
            backing.Max(entry => entry.Candidate.End));
        return new Weighing(
            backing[0].Candidate,
            heard.Length == ears.Length && heard.All(ear => ear.Best!.Meaning == winner),
            measured,
            twin,
            twin is null ? double.PositiveInfinity : heard.Min(ear => Distance(ear, winner, twin.Meaning)));
    }

    static double Ratio((EarEvidence Ear, Candidate Candidate) backing) => backing.Candidate.BestLogProbability - backing.Ear.FreeLogProbability;

    static double Weight(EarEvidence ear, Meaning meaning) =>
        ear.Candidates.FirstOrDefault(candidate => candidate.Meaning == meaning)?.Weight ?? ear.Best!.Weight - EarEvidence.NotFound;

    static double Distance(EarEvidence ear, Meaning winner, Meaning other) => Weight(ear, winner) - Weight(ear, other);

    static IEnumerable<Candidate> Alike(EarEvidence[] ears, Meaning winner, Func<Meaning.Reading, Meaning.Reading, bool> areAlike) =>
        from ear in ears
        from candidate in ear.Candidates
        where candidate.Meaning is Meaning.Reading other && winner is Meaning.Reading reading && other != reading && areAlike(reading, other)
        select candidate;
}
