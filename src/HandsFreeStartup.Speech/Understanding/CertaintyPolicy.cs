using System.Text.Json;

namespace HandsFreeStartup.Speech.Understanding;

/// <summary>What a phrase must reach. All are natural log-probabilities over the unmasked vocabulary.</summary>
/// <param name="Mean">Least mean per token, of the ear that heard it better.</param>
/// <param name="WorseMean">Least mean per token, of the ear that heard it worse.</param>
/// <param name="Ratio">Least ratio to the free reading of the same sound, of the better ear.</param>
/// <param name="Margin">Least distance to the second best meaning, of all ears together.</param>
/// <param name="Lowest">Least log-probability of any single token, of the better ear.</param>
public sealed record Threshold(double Mean, double WorseMean, double Ratio, double Margin, double Lowest);

/// <summary>What kinds of phrase must reach to be entered without asking.</summary>
/// <param name="Reading">A field with its value.</param>
/// <param name="Phrase">A command of two words or more.</param>
/// <param name="Word">A command or answer of one word: what noise and talk turn into first.</param>
public sealed record KindThresholds(Threshold Reading, Threshold Phrase, Threshold Word);

/// <summary>The numbers of the certainty policy; they stand in one data file, <c>certainty.json</c>, and nowhere else.</summary>
/// <param name="Origin">How they were found.</param>
/// <param name="OneEar">For green when one model alone listened.</param>
/// <param name="TwoEars">For green when two models agree.</param>
/// <param name="Amber">For amber, with or without agreement.</param>
/// <param name="RivalMargin">Least distance of a reading to one that is easily confused with it.</param>
/// <param name="LeastEnd">Least log-probability that a reading ends where it does: below it there was probably one more digit.</param>
/// <param name="LongestSyllableSeconds">Speech that lasts longer than this for each syllable of the words holds more words, in seconds.</param>
/// <param name="NoSpeechProbability">Above it nobody spoke, 0..1.</param>
/// <param name="Safety">For the two safety phrases.</param>
public sealed record CertaintyPolicy(
    string Origin,
    KindThresholds OneEar,
    KindThresholds TwoEars,
    Threshold Amber,
    double RivalMargin,
    double LeastEnd,
    double LongestSyllableSeconds,
    double NoSpeechProbability,
    Threshold Safety)
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
