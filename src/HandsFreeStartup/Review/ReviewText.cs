using System.Globalization;
using HandsFreeStartup.Reports.Review;

namespace HandsFreeStartup.Review;

/// <summary>A review as lines.</summary>
static class ReviewText
{
    /// <summary>Of a folder: all jobs, then what must be looked at in each.</summary>
    public static void Write(IReadOnlyList<FolderEntry> entries, TextWriter output)
    {
        int pending = entries.Count(entry => entry.Review.MustBeLookedAt);
        Pieces text = new(output);
        text.Line(FormattableString.Invariant($"{pending} of {entries.Count} jobs must be looked at."));
        text.Line();
        foreach (FolderEntry entry in entries)
        {
            text.Line(Line(entry.Review));
        }

        foreach (FolderEntry entry in entries.Where(entry => entry.Review.MustBeLookedAt))
        {
            text.Line();
            text.Line(entry.Path);
            foreach (ReviewFinding finding in entry.Review.Findings.Where(finding => finding.Weight > Weight.Note))
            {
                text.Line($"  {Of(finding.Weight),-7} {finding.Text}");
            }
        }

        text.HandOn();
    }

    /// <summary>Of one job: every finding with what was dictated about it and where it can be heard.</summary>
    public static void Write(ReviewedRecord record, TextWriter output)
    {
        JobReview review = record.Review;
        output.WriteLine(record.Path);
        output.WriteLine(Line(review));
        output.WriteLine(record.Checkpoint is null ? "No checkpoint: the record is not whole." : $"Checkpoint: {record.Checkpoint}");
        output.WriteLine(review.MustBeLookedAt ? "Must be looked at." : "Nothing must be looked at.");
        output.WriteLine();
        foreach (ReviewFinding finding in review.Findings)
        {
            output.WriteLine($"  {Of(finding.Weight),-7} {Time(finding.At),-8} {finding.Text}");
            if (finding.Quote.Length > 0)
            {
                output.WriteLine($"{new string(' ', 19)}\"{finding.Quote}\"");
            }

            foreach (string clip in finding.Clips)
            {
                output.WriteLine($"{new string(' ', 19)}recording {clip}");
            }
        }

        if (review.Findings.IsEmpty)
        {
            output.WriteLine("  No findings.");
        }
    }

    /// <summary>A job in one line.</summary>
    public static string Line(JobReview review) => string.Create(CultureInfo.InvariantCulture,
        $"{(review.MustBeLookedAt ? '!' : ' ')} {review.JobId,-22} {review.Began,-23:yyyy-MM-dd HH:mm zzz} {Of(review.Status),-14} {Counts(review),-30} {review.Technician}; {review.Appliance}{(review.IsDemonstration ? "; DEMONSTRATION" : "")}");

    /// <summary>The findings by weight, as counts.</summary>
    public static string Counts(JobReview review) => string.Join(", ", new[] { Weight.Danger, Weight.Doubt, Weight.Note }
        .Select(weight => (Weight: weight, Count: review.Findings.Count(finding => finding.Weight == weight)))
        .Where(one => one.Count > 0)
        .Select(one => FormattableString.Invariant($"{one.Count} {Of(one.Weight).ToLowerInvariant()}{(one.Count == 1 ? "" : "s")}")));

    /// <summary>A weight in words.</summary>
    public static string Of(Weight weight) => weight switch
    {
        Weight.Danger => "DANGER",
        Weight.Doubt => "DOUBT",
        _ => "note",
    };

    /// <summary>A status in words.</summary>
    public static string Of(JobStatus status) => status switch
    {
        JobStatus.Unfinished => "unfinished",
        JobStatus.Stopped => "STOPPED",
        JobStatus.OutOfService => "out of service",
        JobStatus.Signed => "signed",
        JobStatus.Returned => "returned",
        JobStatus.Accepted => "accepted",
        JobStatus.UnderWay => "under way",
        _ => "UNREADABLE",
    };

    /// <summary>Time of day by the clock on the wall of the job; empty for none.</summary>
    public static string Time(DateTimeOffset? at) => at?.ToString("HH:mm:ss", CultureInfo.InvariantCulture) ?? "";
}
