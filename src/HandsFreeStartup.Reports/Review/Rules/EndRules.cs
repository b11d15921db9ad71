using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Record;

namespace HandsFreeStartup.Reports.Review.Rules;

/// <summary>How the job ended, and what was left open.</summary>
static class EndRules
{
    public static IEnumerable<ReviewFinding> End(ReviewedJob job) => job.Facts.End switch
    {
        JobEnd.Unfinished => [new ReviewFinding("unfinished", Weight.Doubt, FormattableString.Invariant(
            $"It was neither signed nor ended: {job.Facts.Steps.Count(step => step.End == StepEnd.Done)} of {job.Facts.Steps.Count} steps are done."))],
        JobEnd.Stopped => [new ReviewFinding("stopped", Weight.Danger, "It was stopped for safety and not resumed.")],
        JobEnd.OutOfService => [OutOfService(job.Facts.OutOfService!)],
        _ => [],
    };

    static ReviewFinding OutOfService(EndedOutOfService ended) =>
        new("out-of-service", Weight.Doubt, "It ended without putting the furnace into service.") { At = ended.At, Quote = ended.Reason };

    public static IEnumerable<ReviewFinding> Open(ReviewedJob job) =>
        from thing in job.Facts.Things
        where thing.IsOpen
        let text = thing.Closed is null ? $"Still open: {thing.Thing.Name}." : $"Closed, but not checked for leaks: {thing.Thing.Name}."
        select new ReviewFinding("left-open", Weight.Danger, text) { At = thing.Opened };

    public static IEnumerable<ReviewFinding> NotReached(ReviewedJob job)
    {
        string[] titles = [.. job.Facts.Steps.Where(step => step.End == StepEnd.NotReached).Select(step => step.Step.Title)];
        return titles.Length == 0 || job.Facts.End == JobEnd.Unfinished
            ? []
            : [new ReviewFinding("not-reached", job.Facts.End == JobEnd.Signed ? Weight.Danger : Weight.Note, $"Never reached: {string.Join(", ", titles)}.")];
    }

    public static IEnumerable<ReviewFinding> Reviewed(ReviewedJob job) => job.Facts.Reviews.Select(reviewed => new ReviewFinding(
        "reviewed", Weight.Note, $"{(reviewed.Outcome == ReviewOutcome.Accepted ? "Accepted" : "Returned")} by {reviewed.Lead} on {job.Facts.Times.Stamp(reviewed.At)}.")
    {
        At = reviewed.At,
        Quote = reviewed.Remark,
    });
}
