using System.Text.Json;
using HandsFreeStartup.Speech.Recognising;

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
/// <param name="End">Log-probability that the phrase ends where it does, of the better ear: low where the speaker said more.</param>
/// <param name="WorseEnd">The same of the worse ear.</param>
/// <param name="Agreeing">How many ears have the phrase as the likeliest.</param>
/// <param name="SignalToNoise">How far the speech stood above the noise, decibels.</param>
public sealed record Measured(
    double Mean, double WorseMean, double Ratio, double WorseRatio, double Margin, double RivalMargin, double Lowest, double WorseLowest, double End, double WorseEnd,
    int Agreeing, double SignalToNoise);

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
/// <param name="WorseEnd">For <see cref="Measured.WorseEnd"/>.</param>
/// <param name="Agreeing">For <see cref="Measured.Agreeing"/>.</param>
/// <param name="SignalToNoise">For <see cref="Measured.SignalToNoise"/>.</param>
/// <param name="Least">Log-odds that a phrase must reach.</param>
public sealed record EvidenceWeights(
    double Constant, double Mean, double WorseMean, double Ratio, double WorseRatio, double Margin, double RivalMargin, double Lowest, double WorseLowest, double End,
    double WorseEnd, double Agreeing, double SignalToNoise, double Least)
{
    /// <summary>Log-odds that the phrase is what was said. Evidence counts within bounds, so that one extreme number never outweighs the others.</summary>
    public double LogOdds(Measured measured) =>
        Constant
        + Mean * Math.Clamp(measured.Mean, -6, 0)
        + WorseMean * Math.Clamp(measured.WorseMean, -8, 0)
        + Ratio * Math.Clamp(measured.Ratio, -12, 2)
        + WorseRatio * Math.Clamp(measured.WorseRatio, -12, 2)
        + Margin * Math.Min(measured.Margin, 8)
        + RivalMargin * Math.Clamp(measured.RivalMargin, -10, 10)
        + Lowest * Math.Clamp(measured.Lowest, -12, 0)
        + WorseLowest * Math.Clamp(measured.WorseLowest, -14, 0)
        + End * Math.Clamp(measured.End, -8, 0)
        + WorseEnd * Math.Clamp(measured.WorseEnd, -8, 0)
        + Agreeing * measured.Agreeing
        + SignalToNoise * Math.Clamp(measured.SignalToNoise, 0, 30);
}

/// <summary>What kinds of phrase must reach to be entered without asking.</summary>
/// <param name="Reading">A field with its value.</param>
/// <param name="Phrase">A command of two words or more.</param>
/// <param name="Word">A command or answer of one word: what noise and talk turn into first.</param>
/// <param name="No">The shortest of them: what other words turn into that lost an end.</param>
public sealed record KindWeights(EvidenceWeights Reading, EvidenceWeights Phrase, EvidenceWeights Word, EvidenceWeights No);

/// <summary>What a phrase must at least reach, each by itself.</summary>
/// <param name="Mean">See <see cref="Measured.Mean"/>.</param>
/// <param name="Lowest">See <see cref="Measured.Lowest"/>.</param>
/// <param name="Ratio">See <see cref="Measured.Ratio"/>.</param>
/// <param name="Margin">See <see cref="Measured.Margin"/>.</param>
/// <param name="End">See <see cref="Measured.End"/>.</param>
public sealed record Threshold(double Mean, double Lowest, double Ratio, double Margin, double End);

/// <summary>What a reading must reach besides where it is not quiet: noise takes one digit for another, and then every ear may hear the same wrong one.</summary>
/// <param name="Below">Applies below this signal-to-noise ratio, decibels.</param>
/// <param name="Mean">See <see cref="Measured.Mean"/>.</param>
/// <param name="Margin">See <see cref="Measured.Margin"/>.</param>
/// <param name="Least">Log-odds.</param>
public sealed record NoiseThreshold(double Below, double Mean, double Margin, double Least);

/// <summary>What each ear adds where several came across the same safety phrase.</summary>
/// <param name="Margin">For its distance to the likeliest other phrase of the ear, beside the mean log-probability per token, which counts once.</param>
/// <param name="End">For <see cref="Candidate.End"/>: "gas valve is open" begins alike and goes on.</param>
/// <param name="NotHeard">For an ear that did not come across it; no ear counts for less.</param>
/// <param name="Least">What the ears must reach on average.</param>
/// <param name="QuietRatio">Where it is quiet an ear counts only from this ratio to its free reading on: there that reading can be believed, and "gas supply" is what was said. Noise spoils it.</param>
public sealed record SafetyWeights(double Margin, double End, double NotHeard, double Least, double QuietRatio)
{
    /// <summary>What an ear adds that came across the phrase.</summary>
    /// <param name="heard">As the ear heard it.</param>
    /// <param name="margin">See <see cref="EarEvidence.MarginOf"/>.</param>
    public double WorthOf(Candidate heard, double margin) => Math.Max(heard.Mean + Margin * margin + End * heard.End, NotHeard);
}

/// <summary>The numbers of the certainty policy; they stand in one data file, <c>certainty.json</c>, and nowhere else.</summary>
/// <param name="Origin">How they were found.</param>
/// <param name="OneEar">For green when the first ear alone listened.</param>
/// <param name="AllEars">For green when every ear listened and two of them agree.</param>
/// <param name="DoubtMargin">Least distance to the second best value, of all ears together, where the first ear alone was in doubt about a reading; see <see cref="Measured.Margin"/>.</param>
/// <param name="Noise">For a reading to be green where it is not quiet. No reading, and no single word, is green there before every ear has listened.</param>
/// <param name="LoudNoise">The same where the noise is loud.</param>
/// <param name="Green">What a phrase must reach besides, to be entered without asking.</param>
/// <param name="Amber">For a reading that is read back and must be confirmed, with or without agreement.</param>
/// <param name="TeenMargin">Least distance, for each ear, of a number in "-teen" to the one in "-ty" that sounds nearly the same (13 and 30).</param>
/// <param name="TyMargin">The same of a number in "-ty" to the one in "-teen": noise takes the end of "thirteen" away, but adds none to "thirty".</param>
/// <param name="NoSpeechProbability">Above it nobody spoke, 0..1.</param>
/// <param name="Safety">For the two safety phrases, heard by one ear.</param>
/// <param name="AgreedSafety">For the two safety phrases, heard by two ears or more, likeliest or not.</param>
public sealed record CertaintyPolicy(
    string Origin,
    KindWeights OneEar,
    KindWeights AllEars,
    double DoubtMargin,
    NoiseThreshold Noise,
    NoiseThreshold LoudNoise,
    Threshold Green,
    Threshold Amber,
    double TeenMargin,
    double TyMargin,
    double NoSpeechProbability,
    Threshold Safety,
    SafetyWeights AgreedSafety)
{
    /// <summary>Whether the speech stood so far above the noise that the first ear alone may be believed.</summary>
    public bool IsQuiet(double signalToNoise) => signalToNoise >= Noise.Below;

    /// <summary>What a phrase must reach by the number of ears that listened.</summary>
    public KindWeights For(int ears) => ears > 1 ? AllEars : OneEar;

    static readonly JsonSerializerOptions Format = new(JsonSerializerDefaults.Web);

    /// <summary>The policy that ships with the program.</summary>
    public static CertaintyPolicy Shipped { get; } = Load();

    static CertaintyPolicy Load()
    {
        using Stream file = typeof(CertaintyPolicy).Assembly.GetManifestResourceStream("certainty.json")!;
        return JsonSerializer.Deserialize<CertaintyPolicy>(file, Format)!;
    }
}
