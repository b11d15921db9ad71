namespace HandsFreeStartup.Reports.Review.Rules;

/// <summary>Whether the record itself can be believed.</summary>
static class RecordRules
{
    public static IEnumerable<ReviewFinding> Problems(ReviewedJob job) => job.Record.Problems.Select(problem => new ReviewFinding("record", Weight.Danger, problem));

    public static IEnumerable<ReviewFinding> Redacted(ReviewedJob job) => job.Record.Redaction is { } redaction ? [new ReviewFinding("redacted", Weight.Note, redaction)] : [];

    public static IEnumerable<ReviewFinding> Demonstration(ReviewedJob job) => job.Facts.Job is { IsDemonstration: true }
        ? [new ReviewFinding("demonstration", Weight.Note, "This is a demonstration, no record of a start-up: timers were shortened or recordings played.")]
        : [];
}
