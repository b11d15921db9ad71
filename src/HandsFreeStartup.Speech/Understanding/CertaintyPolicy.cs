using System.Text.Json;

namespace HandsFreeStartup.Speech.Understanding;

/// <summary>The evidence for a phrase. All are natural log-probabilities over the unmasked vocabulary.</summary>
/// <param name="Mean">Mean per token, of the ear that heard it better.</param>
/// <param name="WorseMean">Mean per token, of the ear that heard it worse.</param>
/// <param name="Ratio">Ratio to the free reading of the same sound, of the better ear.</param>
/// <param name="WorseRatio">The same of the worse ear.</param>
/// <param name="Margin">Distance to the second best meaning, of all ears together.</param>
/// <param name="RivalMargin">Distance to the nearest meaning that is easily confused with it, of all ears together.</param>
/// <param name="Lowest">Lowest log-probability of a token, of the better ear.</param>
/// <param name="WorseLowest">The same of the worse ear.</param>
/// <param name="End">Log-probability that the phrase ends where it does, of the better ear.</param>
public sealed record Measured(
    double Mean, double WorseMean, double Ratio, double WorseRatio, double Margin, double RivalMargin, double Lowest, double WorseLowest, double End);

/// <summary>What each piece of evidence is worth; together with a constant they give the log-odds that the phrase is what was said (logistic regression).</summary>
/// <param name="Constant">Log-odds without any evidence.</param>
/// <param name="Mean">For <see cref="Measured.Mean"/>.</param>
/// <param name="WorseMean">For <see cref="Measured.WorseMean"/>.</param>
/// <param name="Ratio">For <see cref="Measured.Ratio"/>.</param>
/// <param name="WorseRatio">For <see cref="Measured.WorseRatio"/>.</param>
/// <param name="Margin">For <see cref="Measured.Margin"/>.</param>
/// <param name="RivalMargin">For <see cref="Measured.RivalMargin"/>.</param>
/// <param name="Lowest">For <see cref="Measured.Lowest"/>.</param>
/// <param name="WorseLowest">For <see cref="Measured.WorseLowest"/>.</param>
/// <param name="End">For <see cref="Measured.End"/>.</param>
/// <param name="Least">Log-odds from which a phrase is entered without asking.</param>
public sealed record EvidenceWeights(
    double Constant, double Mean, double WorseMean, double Ratio, double WorseRatio, double Margin, double RivalMargin, double Lowest, double WorseLowest, double End, double Least)
{
    /// <summary>Log-odds that the phrase is what was said. Evidence counts within bounds, so that one extreme number never outweighs the others.</summary>
    public double LogOdds(Measured measured) =>
        Constant
        + Mean * Math.Clamp(measured.Mean, -6, 0)
        + WorseMean * Math.Clamp(measured.WorseMean, -8, 0)
        + Ratio * Math.Clamp(measured.Ratio, -12, 2)
        + WorseRatio * Math.Clamp(measured.WorseRatio, -12, 2)
        + Margin * Math.Min(measured.Margin, 8)
        + RivalMargin * Math.Min(measured.RivalMargin, 10)
        + Lowest * Math.Clamp(measured.Lowest, -12, 0)
        + WorseLowest * Math.Clamp(measured.WorseLowest, -14, 0)
        + End * Math.Clamp(measured.End, -8, 0);
}

/// <summary>What kinds of phrase must reach to be entered without asking.</summary>
/// <param name="Reading">A field with its value.</param>
/// <param name="Phrase">A command of two words or more.</param>
/// <param name="Word">A command or answer of one word: what noise and talk turn into first.</param>
public sealed record KindWeights(EvidenceWeights Reading, EvidenceWeights Phrase, EvidenceWeights Word);

/// <summary>What a phrase must at least reach, each by itself.</summary>
/// <param name="Mean">See <see cref="Measured.Mean"/>.</param>
/// <param name="Lowest">See <see cref="Measured.Lowest"/>.</param>
/// <param name="Ratio">See <see cref="Measured.Ratio"/>.</param>
/// <param name="Margin">See <see cref="Measured.Margin"/>.</param>
public sealed record Threshold(double Mean, double Lowest, double Ratio, double Margin);

/// <summary>The numbers of the certainty policy; they stand in one data file, <c>certainty.json</c>, and nowhere else.</summary>
/// <param name="Origin">How they were found.</param>
/// <param name="OneEar">For green when one model alone listened.</param>
/// <param name="TwoEars">For green when two models agree.</param>
/// <param name="Green">What a phrase must reach besides, to be entered without asking.</param>
/// <param name="Amber">For a reading that is read back and must be confirmed, with or without agreement.</param>
/// <param name="RivalMargin">Least distance, for each ear, of a reading to the number that sounds nearly the same (13 and 30).</param>
/// <param name="NoSpeechProbability">Above it nobody spoke, 0..1.</param>
/// <param name="Safety">For the two safety phrases, heard by one ear.</param>
/// <param name="AgreedSafety">For the two safety phrases where they are the likeliest for every ear.</param>
public sealed record CertaintyPolicy(
    string Origin,
    KindWeights OneEar,
    KindWeights TwoEars,
    Threshold Green,
    Threshold Amber,
    double RivalMargin,
    double NoSpeechProbability,
    Threshold Safety,
    Threshold AgreedSafety)
{
    static readonly JsonSerializerOptions Format = new(JsonSerializerDefaults.Web);

    /// <summary>The policy that ships with the program.</summary>
    public static CertaintyPolicy Shipped { get; } = Load();

    static CertaintyPolicy Load()
    {
        using Stream file = typeof(CertaintyPolicy).Assembly.GetManifestResourceStream("certainty.json")!;
        return JsonSerializer.Deserialize<CertaintyPolicy>(file, Format)!;
    }
}
