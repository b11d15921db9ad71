using System.Text.Json;
using HandsFreeStartup.Speech.Recognising;

namespace HandsFreeStartup.Speech.Understanding;

/// <summary>What a candidate must reach for one class; natural log-probabilities, unmasked.</summary>
/// <param name="Mean">Mean per token, end included.</param>
/// <param name="Ratio">Against the best free reading of the same sound.</param>
/// <param name="Margin">Best meaning against the second best.</param>
/// <param name="End">That the phrase ends where it does; a number that lost its tail ends badly.</param>
/// <param name="Lowest">Of one token.</param>
public sealed record Threshold(double Mean, double Ratio, double Margin, double End, double Lowest)
{
    /// <summary>Whether one ear's best candidate reaches it by itself.</summary>
    public bool IsReached(EarEvidence ear) => ear.Best is { } best && IsReached(best.Mean, ear.Ratio, ear.Margin, best.End, best.Lowest);

    /// <summary>Whether ears that agree reach it together: the better score counts, margins add up.</summary>
    public bool IsReached(IReadOnlyCollection<EarEvidence> agreed) => IsReached(
        agreed.Max(ear => ear.Best!.Mean), agreed.Max(ear => ear.Ratio), agreed.Sum(ear => ear.Margin),
        agreed.Max(ear => ear.Best!.End), agreed.Max(ear => ear.Best!.Lowest));

    bool IsReached(double mean, double ratio, double margin, double end, double lowest) =>
        mean >= Mean && ratio >= Ratio && margin >= Margin && end >= End && lowest >= Lowest;
}

/// <summary>The thresholds of the certainty policy, kept in one data file.</summary>
/// <param name="ReadingAlone">A reading is green by one ear.</param>
/// <param name="ReadingAgreed">A reading is green by two ears that agree.</param>
/// <param name="ReadingDoubtful">A reading is amber; below it is red.</param>
/// <param name="CommandAlone">A command or answer is accepted by one ear; one-word commands are what noise turns into first.</param>
/// <param name="CommandAgreed">A command or answer is accepted by two ears that agree.</param>
/// <param name="SafetyPhrase">A safety phrase is accepted from any ear: a false stop costs a word, a missed one a life.</param>
public sealed record Certainties(
    Threshold ReadingAlone, Threshold ReadingAgreed, Threshold ReadingDoubtful, Threshold CommandAlone, Threshold CommandAgreed, Threshold SafetyPhrase)
{
    static readonly JsonSerializerOptions Format = new(JsonSerializerDefaults.Web);

    /// <summary>Those that are shipped.</summary>
    public static Certainties Shipped { get; } = Read();

    static Certainties Read()
    {
        using Stream stream = typeof(Certainties).Assembly.GetManifestResourceStream("certainty.json")!;
        return JsonSerializer.Deserialize<Certainties>(stream, Format)!;
    }
}
