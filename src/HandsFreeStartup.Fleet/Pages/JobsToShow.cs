using System.Collections.Immutable;
using HandsFreeStartup.Fleet.Figures;
using HandsFreeStartup.Fleet.Reading;

namespace HandsFreeStartup.Fleet.Pages;

/// <summary>A series with what is to be looked at in it.</summary>
/// <param name="Series">The values.</param>
/// <param name="Limits">Their control limits, or null.</param>
/// <param name="Outliers">The gravest first.</param>
sealed record JudgedSeries(FleetSeries Series, ControlLimits? Limits, ImmutableArray<Outlier> Outliers)
{
    public static JudgedSeries Of(FleetSeries series)
    {
        ControlLimits? limits = series.Limits;
        return new JudgedSeries(series, limits, [.. series.Outliers(limits).OrderByDescending(one => one.Gravity).ThenBy(one => one.Point.At)]);
    }
}

/// <summary>What is to be looked at, in its order, and which jobs have a page of their own: the gravest of the day and those of the gravest values, and no more than a folder should hold.</summary>
/// <param name="Today">Jobs of the day, those that must be looked at first.</param>
/// <param name="Series">The values over time.</param>
/// <param name="WithPage">Numbers of the jobs that have one.</param>
sealed record JobsToShow(ImmutableArray<FleetJob> Today, ImmutableArray<JudgedSeries> Series, ImmutableSortedSet<long> WithPage)
{
    /// <summary>Jobs of the day, and jobs of the values over time, that have a page at most.</summary>
    public const int Most = 500;

    public static JobsToShow Of(FleetPicture picture)
    {
        ImmutableArray<FleetJob> today = [.. picture.Jobs.Where(job => DateOnly.FromDateTime(job.Began.DateTime) == picture.Day)
            .OrderByDescending(job => job.MustBeLookedAt).ThenByDescending(Gravest).ThenBy(job => job.Began)];
        ImmutableArray<JudgedSeries> series = [.. picture.Charted.Select(JudgedSeries.Of)];
        HashSet<long> known = [.. picture.Jobs.Select(job => job.Key)];
        IEnumerable<long> grave = series.SelectMany(one => one.Outliers).OrderByDescending(one => one.Gravity).Select(one => one.Point.Job).Where(known.Contains).Distinct().Take(Most);
        return new JobsToShow(today, series, [.. today.Take(Most).Select(job => job.Key), .. grave]);
    }

    public bool HasPage(long job) => WithPage.Contains(job);

    static int Gravest(FleetJob job) => job.Findings.Select(finding => finding.Weight).DefaultIfEmpty(-1).Max();
}
