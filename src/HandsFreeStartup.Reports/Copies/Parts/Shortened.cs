namespace HandsFreeStartup.Reports.Copies.Parts;

/// <summary>How many lines of each kind the first page may hold. What is left out is counted there, never dropped in silence.</summary>
/// <param name="ReadingSize">Size of the readings in points.</param>
/// <param name="Breaks">Whether a stage may be broken between two columns to save room.</param>
/// <param name="Readings">Lines of readings.</param>
/// <param name="Questions">Points to be looked at.</param>
/// <param name="Others">Adjustments, opened things and notes, each.</param>
/// <param name="Letters">Length of one entry.</param>
/// <param name="Names">Length of a name or title at the head of the page.</param>
sealed record Shortened(double ReadingSize, bool Breaks, int Readings, int Questions, int Others, int Letters, int Names)
{
    /// <summary>Everything, in large to small letters.</summary>
    public static IReadOnlyList<Shortened> Nothing { get; } =
    [
        .. from size in new[] { 8.8, 8.4, 8.0, 7.6 }
           from breaks in new[] { false, true }
           select new Shortened(size, breaks, int.MaxValue, int.MaxValue, int.MaxValue, int.MaxValue, int.MaxValue),
    ];

    /// <summary>Everything, where one page is not enough anyway.</summary>
    public static Shortened Usual => Nothing[3];

    /// <summary>From everything to the little that always finds room, what matters most kept longest.</summary>
    public static IEnumerable<Shortened> Steps { get; } =
    [
        .. Nothing,
        .. new[] { (30, 240), (20, 240), (12, 160), (8, 120), (6, 90), (4, 90), (3, 70), (2, 60), (1, 60), (0, 60) }
            .Select(most => new Shortened(7.6, true, int.MaxValue, Math.Max(12, most.Item1), most.Item1, most.Item2, 150)),
        .. new[] { (7.6, 12, 60), (7.6, 8, 60), (7.2, 8, 60), (7.2, 5, 36), (6.8, 3, 36) }.Select(most => new Shortened(most.Item1, true, int.MaxValue, most.Item2, 0, 60, most.Item3)),
        .. Enumerable.Range(0, 15).Select(step => new Shortened(6.8, true, 76 - 5 * step, 3, 0, 60, 36)),
    ];

    /// <summary>What stands in place of the rest.</summary>
    public static string Text(int count) => FormattableString.Invariant($"+ {count} more in the office copy");

    /// <summary>A text of at most so many letters; what is cut off is said.</summary>
    public static string CutTo(string text, int letters) => text.Length <= letters ? text : $"{text[..letters].TrimEnd()} ... (whole in the office copy)";

    /// <summary>A name or title; <paramref name="times"/> as much for what is more than a name.</summary>
    public string Name(string text, int times = 1) => CutTo(text, Names > int.MaxValue / times ? int.MaxValue : times * Names);

    /// <summary>The entries that may be shown, and the count of the others.</summary>
    public IReadOnlyList<string> First(IReadOnlyList<string> entries, int most) =>
    [
        .. entries.Take(most).Select(entry => CutTo(entry, Letters)),
        .. entries.Count > most ? [Text(entries.Count - most)] : Array.Empty<string>(),
    ];
}
