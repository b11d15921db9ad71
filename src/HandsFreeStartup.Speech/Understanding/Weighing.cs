using System.Collections.Immutable;
using HandsFreeStartup.Speech.Recognising;

namespace HandsFreeStartup.Speech.Understanding;

/// <summary>What all ears together heard, with the evidence in the numbers of the policy.</summary>
/// <param name="Best">The likeliest phrase, as the ear heard it that heard it better.</param>
/// <param name="Agree">Whether it is the likeliest meaning for every ear.</param>
/// <param name="Reached">The evidence.</param>
/// <param name="Rival">The nearest reading that is easily confused with it, or null.</param>
/// <param name="RivalMargin">Distance to that reading; infinite without one.</param>
/// <param name="End">Log-probability that the phrase ends where it does.</param>
sealed record Weighing(Candidate Best, bool Agree, Threshold Reached, Candidate? Rival, double RivalMargin, double End)
{
    /// <summary>A meaning that an ear did not come across is at least this much less likely than what it found best.</summary>
    const double NotFound = 9;

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
                .Select(meaning => (meaning, heard.Sum(ear => Likelihood(ear, meaning))))
                .OrderByDescending(entry => entry.Item2),
        ];
        Meaning winner = ranking[0].Meaning;
        (EarEvidence Ear, Candidate Candidate)[] backing =
            [.. from ear in heard from candidate in ear.Candidates where candidate.Meaning == winner orderby candidate.Mean descending select (ear, candidate)];
        bool agree = heard.Length == ears.Length && heard.All(ear => ear.Best!.Meaning == winner);
        double apart = ranking.Length > 1 ? ranking[0].Sum - ranking[1].Sum : NotFound;
        Candidate? rival = Rivals(heard, winner).MinBy(other => Distance(heard, winner, other.Meaning));
        return new Weighing(
            backing[0].Candidate,
            agree,
            new Threshold(
                backing[0].Candidate.Mean,
                backing.Length < ears.Length ? double.NegativeInfinity : backing[^1].Candidate.Mean,
                backing.Max(entry => entry.Candidate.BestLogProbability - entry.Ear.FreeLogProbability),
                agree ? heard.Sum(ear => ear.Margin) : apart,
                backing.Max(entry => entry.Candidate.Lowest)),
            rival,
            rival is null ? double.PositiveInfinity : Distance(heard, winner, rival.Meaning),
            backing.Max(entry => entry.Candidate.End));
    }

    static double Likelihood(EarEvidence ear, Meaning meaning) =>
        ear.Candidates.FirstOrDefault(candidate => candidate.Meaning == meaning)?.LogProbability ?? ear.Best!.LogProbability - NotFound;

    static double Distance(EarEvidence[] ears, Meaning winner, Meaning other) => ears.Sum(ear => Likelihood(ear, winner) - Likelihood(ear, other));

    static IEnumerable<Candidate> Rivals(EarEvidence[] ears, Meaning winner) =>
        from ear in ears
        from candidate in ear.Candidates
        where candidate.Meaning is Meaning.Reading other && winner is Meaning.Reading reading && other != reading && SoundsAlike.Are(reading, other)
        select candidate;
}
