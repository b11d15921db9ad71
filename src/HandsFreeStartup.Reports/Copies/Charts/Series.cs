using HandsFreeStartup.Calculations.Settling;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Reports.Facts;

namespace HandsFreeStartup.Reports.Copies.Charts;

/// <summary>How a value of a series is marked.</summary>
enum Mark
{
    /// <summary>It stands.</summary>
    Standing,
    /// <summary>A later value took its place.</summary>
    Replaced,
    /// <summary>It no longer counts, or never did.</summary>
    Void,
    /// <summary>It was said before its time was over.</summary>
    Early,
}

/// <summary>A value of a series.</summary>
sealed record Point(DateTimeOffset At, double Value, Mark Mark);

/// <summary>Repeated values of one reading.</summary>
/// <param name="Title">What was read, and where.</param>
/// <param name="Unit">Of all values.</param>
/// <param name="Points">In the order of time.</param>
sealed record Series(string Title, string Unit, IReadOnlyList<Point> Points)
{
    /// <summary>Lowest permitted value, or null.</summary>
    public required double? Lower { get; init; }

    /// <summary>Highest permitted value, or null.</summary>
    public required double? Upper { get; init; }

    /// <summary>The limit as all copies show it, and when the series begins.</summary>
    public required string Below { get; init; }

    /// <summary>Since when the series counts as settled, or null.</summary>
    public required DateTimeOffset? SettledAt { get; init; }

    /// <summary>The value that stands as all copies show it, or null.</summary>
    public required string? Left { get; init; }

    /// <summary>Every reading that was entered more than once.</summary>
    public static IReadOnlyList<Series> Of(CopyFacts copy) =>
    [
        .. from fate in copy.Facts.Readings
           where fate.End is not (ReadingEnd.Refused or ReadingEnd.Unanswered or ReadingEnd.Disregarded)
           group fate by fate.Reading.Key into same
           where same.Count() > 1
           select Of(copy, same.Key, [.. same.OrderBy(fate => fate.At)]),
    ];

    static Series Of(CopyFacts copy, ReadingKey key, IReadOnlyList<ReadingFate> fates)
    {
        ReadingFate? left = fates.LastOrDefault(fate => fate.Counts);
        Procedure.Checklists.DeclaredLimit? limit = (left ?? fates[^1]).Reading.Limit;
        string title = copy.Language.Name(Labels.Of(key with { Scope = "" })), begins = copy.Times.Stamp(fates[0].At);
        return new Series(key.Scope.Length == 0 ? title : $"{title}, {copy.Language.Name(ReadingGroups.Title(key.Scope)).ToLowerInvariant()}", fates[0].Reading.UnitSymbol, [.. fates.Select(fate => new Point(fate.At, (double)fate.Reading.Value, MarkOf(fate)))])
        {
            Lower = (double?)limit?.Lower,
            Upper = (double?)limit?.Upper,
            Below = copy.Told(limit is null ? (Message)$"No limit; from {begins}" : $"Limit {limit}; from {begins}"),
            SettledAt = SettledSince(copy.Facts.Series.Where(judged => judged.Key == key), left),
            Left = left is null ? null : copy.Language.Value(ShownValue.Of(left.Reading)),
        };
    }

    /// <summary>The first of the judgments "settled" up to the end; one that was followed by "not yet" does not count.</summary>
    static DateTimeOffset? SettledSince(IEnumerable<SeriesJudged> judgments, ReadingFate? left) =>
        left is null ? null : judgments.Reverse().TakeWhile(judged => judged.Settled == Settled.Yes).LastOrDefault()?.At;

    static Mark MarkOf(ReadingFate fate) => fate.End switch
    {
        ReadingEnd.Final or ReadingEnd.Provisional => Mark.Standing,
        ReadingEnd.Replaced => Mark.Replaced,
        ReadingEnd.Early => Mark.Early,
        _ => Mark.Void,
    };
}
