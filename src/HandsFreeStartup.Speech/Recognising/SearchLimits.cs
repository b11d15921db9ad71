using System.Text.Json;

namespace HandsFreeStartup.Speech.Recognising;

/// <summary>How far the search for phrases goes.</summary>
public sealed record SearchLimits
{
    /// <summary>Phrases less likely than the best by more than this, as a log-probability, are not looked for; so far is at least what was not found.</summary>
    public required double Depth { get; init; }

    /// <summary>A phrase so much less likely than the free reading is refused whatever else speaks for it.</summary>
    public required double BelowFree { get; init; }

    /// <summary>The same for a call where nothing else is looked for, as speech goes on: there another ear is asked about every call that was found.</summary>
    public required double CallBelowFree { get; init; }

    /// <summary>Decodes of one sound after which a search ends.</summary>
    public required int MostDecodes { get; init; }

    /// <summary>What a token is worth in comparing phrases: the more tokens, the less likely is a phrase that was heard just as well.</summary>
    public required double WorthOfToken { get; init; }

    /// <summary>The same in the order of work: a badly heard name is followed by a well heard number more often than not.</summary>
    public required double WorthOfWork { get; init; }

    /// <summary>A unit that makes a phrase less likely by more than this adds nothing worth a decode.</summary>
    public required double TailDepth { get; init; }

    /// <summary>The longest free reading.</summary>
    public required int FreeTokens { get; init; }

    /// <summary>The longest dictation.</summary>
    public required int DictationTokens { get; init; }

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
