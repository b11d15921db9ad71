using HandsFreeStartup.Procedure.Record;

namespace HandsFreeStartup.Reports.Review.Rules;

/// <summary>The exceptions of the job: the same list that stands first on every copy, in the same words.</summary>
static class ExceptionRules
{
    public static IEnumerable<ReviewFinding> All(ReviewedJob job) => job.Facts.Exceptions.Select(exception =>
        new ReviewFinding(RuleOf(exception.Kind), WeightOf(exception.Kind), $"{exception.Subject.Shown.TrimEnd('.')}.")
        {
            At = exception.At,
            StepId = exception.StepId,
            Quote = exception.Reason,
            Clips = exception.Clips,
            IsException = true,
        });

    static Weight WeightOf(ExceptionKind kind) => kind is ExceptionKind.Unsafe or ExceptionKind.Alarm or ExceptionKind.UnsafeAnswer or ExceptionKind.Misheard ? Weight.Danger : Weight.Doubt;

    static string RuleOf(ExceptionKind kind) => kind switch
    {
        ExceptionKind.Unsafe => "unsafe",
        ExceptionKind.Alarm => "alarm",
        ExceptionKind.UnsafeAnswer => "unsafe-answer",
        ExceptionKind.Misheard => "misheard",
        ExceptionKind.OutsideLimit => "outside-limit",
        ExceptionKind.StrangeLimit => "strange-limit",
        ExceptionKind.SkippedStep => "skipped-step",
        ExceptionKind.ShortenedWait => "shortened-wait",
        _ => "clock-jump",
    };
}
