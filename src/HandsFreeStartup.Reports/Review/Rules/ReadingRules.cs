using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Reports.Review.Rules;

/// <summary>Readings and results one by one: their verdicts, and how surely they were heard.</summary>
static class ReadingRules
{
    /// <summary>From so many values given up before one stood, the value itself is in doubt (common practice, no source).</summary>
    const int ManyTries = 2;

    public static IEnumerable<ReviewFinding> Limits(ReviewedJob job) =>
    [
        .. job.Facts.Readings.Where(fate => fate.Counts).SelectMany(fate => Judged(
            $"{Labels.Of(fate.Reading.Key)} {ShownValue.Of(fate.Reading).Text}", fate.Reading.Verdict, fate.Reading.Limit, fate.At, fate.StepId, fate.Reading.Evidence)),
        .. job.Facts.Results.Where(fate => fate.Result.Id != ResultId.FuelFactor).SelectMany(fate => Judged(
            $"{fate.Result.Label}{Labels.In(fate.Scope)} {ResultWords.Of(fate.Result)}", fate.Result.Verdict, fate.Result.Limit, fate.At, fate.StepId, null)),
    ];

    public static IEnumerable<ReviewFinding> Corrections(ReviewedJob job)
    {
        foreach (IGrouping<ReadingKey, ReadingFate> tries in job.Facts.Readings.GroupBy(fate => fate.Reading.Key))
        {
            ReadingFate[] given = [.. tries];
            ReadingFate[] up = [.. given.Where((fate, index) => IsGivenUp(job, fate, given.Skip(index + 1)))];
            if (up.Length > 0)
            {
                string stands = job.Counting(tries.Key.FieldId, tries.Key.Scope) is { } kept ? $"; {ShownValue.Of(kept.Reading).Plain} stands" : "; none stands";
                yield return new ReviewFinding("corrections", up.Length >= ManyTries ? Weight.Doubt : Weight.Note,
                    FormattableString.Invariant($"{Labels.Of(tries.Key)}: {up.Length + 1} tries. {string.Join(", ", up.Select(Fate))}{stands}."))
                {
                    At = up[0].At,
                    StepId = up[0].StepId,
                    Clips = ReviewedJob.Clips(given.Select(fate => fate.Reading.Evidence)),
                };
            }
        }
    }

    public static IEnumerable<ReviewFinding> Doubtful(ReviewedJob job) => job.Facts.Readings
        .Where(fate => fate.Counts && fate.Reading.Evidence.Certainty == Certainty.Amber)
        .Select(fate => new ReviewFinding("doubtful-reading", Weight.Note,
            $"{Labels.Of(fate.Reading.Key)} {ShownValue.Of(fate.Reading).Plain} was doubtful ({fate.Reading.Evidence.Why.TrimEnd('.')}) and was confirmed.")
        {
            At = fate.At,
            StepId = fate.StepId,
            Clips = ReviewedJob.Clips(fate.Reading.Evidence),
        });

    public static IEnumerable<ReviewFinding> Unsettled(ReviewedJob job) => job.Facts.Readings
        .Where(fate => fate.End is ReadingEnd.Unanswered or ReadingEnd.Provisional)
        .Select(fate => new ReviewFinding("unsettled-reading", Weight.Doubt, fate.End == ReadingEnd.Unanswered
            ? $"{Labels.Of(fate.Reading.Key)} {ShownValue.Of(fate.Reading).Plain} was read back and never confirmed; it is not in the record."
            : $"{Labels.Of(fate.Reading.Key)} {ShownValue.Of(fate.Reading).Plain} was entered last, and nothing was accepted after it.")
        {
            At = fate.At,
            StepId = fate.StepId,
            Clips = ReviewedJob.Clips(fate.Reading.Evidence),
        });

    static IEnumerable<ReviewFinding> Judged(string what, Verdict? verdict, DeclaredLimit? limit, DateTimeOffset at, string stepId, Evidence? evidence)
    {
        if (verdict is { } found and not Verdict.Pass && limit is not null)
        {
            bool isNear = found is Verdict.ConditionalPass or Verdict.ConditionalFail;
            yield return new ReviewFinding(
                isNear ? "guard-band" : "limit",
                limit.IsSafety || (limit.Carries == LimitWeight.Must && found != Verdict.ConditionalPass) ? Weight.Danger : found == Verdict.ConditionalPass ? Weight.Note : Weight.Doubt,
                $"{what}: {VerdictWords.Of(found, limit)} ({limit.Text.TrimEnd()}, {limit.Source}).")
            {
                At = at,
                StepId = stepId,
                Clips = ReviewedJob.Clips(evidence),
            };
        }
    }

    /// <summary>A value said anew while adjusting, or until it settles, is no correction.</summary>
    static bool IsGivenUp(ReviewedJob job, ReadingFate fate, IEnumerable<ReadingFate> later) => fate.End switch
    {
        ReadingEnd.Disregarded or ReadingEnd.Refused => true,
        ReadingEnd.Replaced => later.FirstOrDefault()?.StepId == fate.StepId && job.Plan.Steps.FirstOrDefault(step => step.Id == fate.StepId) is { } step
            && step.Kind != StepKind.Adjust && step.Readings.All(demand => demand.FieldId != fate.Reading.Key.FieldId || demand.Settles is null),
        _ => false,
    };

    static string Fate(ReadingFate fate) => $"{ShownValue.Of(fate.Reading).Plain} {fate.End switch
    {
        ReadingEnd.Disregarded => "disregarded",
        ReadingEnd.Refused => "not confirmed",
        _ => "replaced",
    }}";
}
