using System.Text.Json;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>How far the search for phrases goes.</summary>
/// <param name="Depth">Phrases less likely than the best by more than this, as a log-probability, are not looked for; so far is at least what was not found.</param>
/// <param name="BelowFree">A phrase so much less likely than the free reading is refused whatever else speaks for it.</param>
/// <param name="MostDecodes">Decodes of one sound after which a search ends.</param>
/// <param name="WorthOfToken">What a token is worth in comparing phrases: the more tokens, the less likely is a phrase that was heard just as well.</param>
/// <param name="WorthOfWork">The same in the order of work: a badly heard name is followed by a well heard number more often than not.</param>
/// <param name="TailDepth">A unit that makes a phrase less likely by more than this adds nothing worth a decode.</param>
/// <param name="FreeTokens">The longest free reading.</param>
/// <param name="DictationTokens">The longest dictation.</param>
public sealed record SearchLimits(
    double Depth, double BelowFree, int MostDecodes, double WorthOfToken, double WorthOfWork, double TailDepth, int FreeTokens, int DictationTokens)
{
    static readonly JsonSerializerOptions Format = new(JsonSerializerDefaults.Web);

    /// <summary>The limits that ship with the program, in the same file as the numbers that decide.</summary>
    public static SearchLimits Shipped { get; } = Load();

    static SearchLimits Load()
    {
        using Stream file = typeof(SearchLimits).Assembly.GetManifestResourceStream("certainty.json")!;
        using JsonDocument numbers = JsonDocument.Parse(file);
        return numbers.RootElement.GetProperty("search").Deserialize<SearchLimits>(Format)!;
    }
}
