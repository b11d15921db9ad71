using System.Collections.Immutable;
using HandsFreeStartup.Speech.Phrases;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>One thing that may have been said, with its evidence. All log-probabilities are natural, unmasked, and over the sound given.</summary>
/// <param name="Ending">What it means, and what about the wording calls for care.</param>
/// <param name="Words">The likeliest spelling.</param>
public sealed record Candidate(Ending Ending, string Words)
{
    /// <summary>Of the meaning: all its spellings that were found, added up.</summary>
    public required double LogProbability { get; init; }

    /// <summary>Of the likeliest spelling.</summary>
    public required double BestLogProbability { get; init; }

    /// <summary>Of the likeliest spelling, end included.</summary>
    public required int Tokens { get; init; }

    /// <summary>Mean log-probability per token of the likeliest spelling, end included.</summary>
    public required double Mean { get; init; }

    /// <summary>Lowest log-probability of one token of the likeliest spelling, end included.</summary>
    public required double Lowest { get; init; }

    /// <summary>Log-probability that the phrase ends where it does.</summary>
    public required double End { get; init; }

    /// <summary>What it means.</summary>
    public Meaning Meaning => Ending.Meaning;

    /// <summary>By this phrases of different length are compared.</summary>
    public double Weight => LogProbability + SearchLimits.Shipped.WorthOfToken * Tokens;
}

/// <summary>What one model heard.</summary>
/// <param name="Ear">Name of the model.</param>
/// <param name="Candidates">Legal phrases, likeliest meaning first; empty if none was likely enough to be found.</param>
/// <param name="FreeText">The likeliest words if nothing were known about what may be said.</param>
/// <param name="FreeLogProbability">Of those words, end included.</param>
/// <param name="NoSpeech">The model's own probability that nobody speaks, 0..1.</param>
/// <param name="IsNoise">The free reading is a mark of noise or music, or empty.</param>
/// <param name="FreeMean">Mean log-probability per token of the free reading, end included.</param>
public sealed record EarEvidence(
    string Ear, ImmutableArray<Candidate> Candidates, string FreeText, double FreeLogProbability, double NoSpeech, bool IsNoise, double FreeMean = 0)
{
    /// <summary>How likely each plain word of the free reading is: mean log-probability of the tokens that made it; empty where it is not known.</summary>
    public ImmutableArray<double> FreeWords { get; init; } = [];

    /// <summary>How likely some plain words of the free reading are, in a row: mean log-probability per word; that of the whole reading where single words are not known.</summary>
    /// <param name="from">The first of them.</param>
    /// <param name="count">How many.</param>
    public double FreeMeanOf(int from, int count) => from + count <= FreeWords.Length ? FreeWords.Skip(from).Take(count).Average() : FreeMean;

    /// <summary>The likeliest candidate, or null.</summary>
    public Candidate? Best => Candidates.FirstOrDefault();

    /// <summary>A meaning that an ear did not come across is at least this much less likely than what it found best: the search looks less deep.</summary>
    public static double NotFound => SearchLimits.Shipped.Depth;

    /// <summary>How much likelier the best meaning is than the second, as a log-probability; <see cref="NotFound"/> if there is no second.</summary>
    public double Margin => Best is { } best ? MarginOf(best) : NotFound;

    /// <summary>How much likelier one of its candidates is than the best of the others: negative where it is not the likeliest.</summary>
    public double MarginOf(Candidate candidate) =>
        Candidates.Where(other => other.Meaning != candidate.Meaning).Select(other => candidate.Weight - other.Weight).DefaultIfEmpty(NotFound).Min();

    /// <summary>How likely the best phrase is beside the free reading of the same sound: 0 if they are the same, strongly negative if something else was said.</summary>
    public double Ratio => Best is { } best ? RatioOf(best) : double.NegativeInfinity;

    /// <summary>The same for another of its candidates.</summary>
    public double RatioOf(Candidate candidate) => candidate.BestLogProbability - FreeLogProbability;
}

/// <summary>All evidence about one utterance.</summary>
/// <param name="Ears">One entry for each ear that listened, the one that listened first at the front; empty if only free text is known.</param>
/// <param name="FreeText">The words without any expectation.</param>
/// <param name="SignalToNoise">How far the speech stood above the noise of the surroundings, decibels.</param>
public sealed record Utterance(ImmutableArray<EarEvidence> Ears, string FreeText, double SignalToNoise)
{
    /// <summary>How unsteady the noise was, see <see cref="Recognising.NoiseSpread"/>, decibels; where it was not measured, very.</summary>
    public double NoiseSpread { get; init; } = double.PositiveInfinity;

    /// <summary>What all ears heard in the same sound changed a little, one entry for each <see cref="ChangedSound"/> that was heard; empty where that was not wanted.</summary>
    public ImmutableArray<ImmutableArray<EarEvidence>> Again { get; init; } = [];
}
