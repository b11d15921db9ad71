namespace HandsFreeStartup.Reports.Review.Rules;

/// <summary>Whether the record itself can be believed.</summary>
static class RecordRules
{
    public static IEnumerable<ReviewFinding> Problems(ReviewedJob job) => job.Record.Problems.Select(problem => new ReviewFinding("record", Weight.Danger, problem));

    public static IEnumerable<ReviewFinding> Redacted(ReviewedJob job) => job.Record.Redaction is { } redaction ? [new ReviewFinding("redacted", Weight.Note, redaction)] : [];

    public static IEnumerable<ReviewFinding> Carried(ReviewedJob job)
    {
        string[] steps = [.. job.Facts.Steps.Where(step => step.From.Length > 0).Select(step => step.Step.Title)];
        return job.Facts.Job?.Follows is not { } followed ? []
            : [new ReviewFinding("follows", Weight.Note, $"It follows the returned record {followed.JobId}{(steps.Length == 0 ? "; nothing was carried over" : $"; carried over: {string.Join(", ", steps)}")}.")];
    }

    public static IEnumerable<ReviewFinding> Demonstration(ReviewedJob job) => job.Facts.Job is { IsDemonstration: true }
        ? [new ReviewFinding("demonstration", Weight.Note, "This is a demonstration, no record of a start-up: timers were shortened or recordings played.")]
        : [];
}
