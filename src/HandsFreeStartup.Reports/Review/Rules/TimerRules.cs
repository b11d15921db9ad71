using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Reports.Review.Rules;

/// <summary>Whether time was given where time is needed, and whether the clock can be believed.</summary>
static class TimerRules
{
    /// <summary>What cold metal falsifies (common practice, no source).</summary>
    static readonly ImmutableArray<string> NeedsWarmth = [FieldId.Oxygen, FieldId.CarbonDioxide, FieldId.FlueCo, FieldId.FlueTemperature, FieldId.Draft, FieldId.SupplyTemperature];

    /// <summary>A timer is looked at a few times a second; below this nothing can be told of the clock.</summary>
    static readonly TimeSpan Shortest = TimeSpan.FromSeconds(2);

    static readonly TimeSpan Tolerance = TimeSpan.FromSeconds(1);

    public static IEnumerable<ReviewFinding> CutShort(ReviewedJob job)
    {
        foreach (TimerFate timer in job.Facts.Timers)
        {
            StepEnd step = job.Facts.Steps.FirstOrDefault(one => one.Step.Id == timer.StepId)?.End ?? StepEnd.UnderWay;
            bool isLeft = step is StepEnd.Done or StepEnd.Skipped || job.Facts.End == JobEnd.Signed;
            string? wrong = timer.Ended is null && isLeft ? "did not run to its end"
                : timer.Ended is { } ended && ended - timer.Started < timer.Duration - Tolerance ? $"ended after {Durations.Text(ended - timer.Started)}"
                : null;
            if (wrong is not null)
            {
                yield return new ReviewFinding("timer-cut-short", Weight.Doubt, $"The timer of \"{job.Title(timer.StepId)}\" ({Durations.Text(timer.Duration)}) {wrong}.")
                {
                    At = timer.Started,
                    StepId = timer.StepId,
                };
            }
        }
    }

    public static IEnumerable<ReviewFinding> BeforeWarmUp(ReviewedJob job)
    {
        ImmutableArray<Step> steps = job.Plan.Steps;
        foreach (Step wait in steps.Where(step => step.Kind == StepKind.Wait))
        {
            DateTimeOffset? over = job.Facts.AllTimers.FirstOrDefault(timer => timer.StepId == wait.Id && timer.Ended is not null)?.Ended;
            ReadingFate[] early = [.. job.Facts.Readings.Where(fate => fate.Counts && NeedsWarmth.Contains(fate.Reading.Key.FieldId)
                && IsLater(steps, wait, fate.StepId) && !(over <= fate.At))];
            if (early.Length > 0)
            {
                yield return new ReviewFinding("before-warm-up", Weight.Doubt,
                    $"Read before \"{wait.Title}\" was over: {string.Join(", ", early.Select(fate => Labels.Of(fate.Reading.Key)))}.")
                {
                    At = early[0].At,
                    StepId = wait.Id,
                    Clips = ReviewedJob.Clips(early.Select(fate => fate.Reading.Evidence)),
                };
            }
        }
    }

    public static IEnumerable<ReviewFinding> Early(ReviewedJob job) => job.Facts.Readings.Where(fate => fate.End == ReadingEnd.Early).Select(fate =>
        new ReviewFinding("early-reading", Weight.Note, $"{Labels.Of(fate.Reading.Key)} {ShownValue.Of(fate.Reading).Plain} was said before its time was over; it was not judged and does not count.")
        {
            At = fate.At,
            StepId = fate.StepId,
            Clips = ReviewedJob.Clips(fate.Reading.Evidence),
        });

    public static IEnumerable<ReviewFinding> ClockWentBack(ReviewedJob job) =>
        from jump in job.Facts.BackwardClock
        let text = $"The clock went back from {job.Facts.Times.Stamp(jump.Before)} to {job.Facts.Times.Stamp(jump.After)}: durations around it cannot be believed."
        select new ReviewFinding("clock-went-back", Weight.Doubt, text) { At = jump.After };

    public static IEnumerable<ReviewFinding> ClockWentForward(ReviewedJob job) =>
        from timer in job.Facts.AllTimers
        where timer.Ended is not null && timer.Halfway == timer.Ended && timer.Duration > Shortest
        select new ReviewFinding("clock-went-forward", Weight.Doubt,
            $"The timer of \"{job.Title(timer.StepId)}\" was half over and over at the same moment: the clock was set forward, or the program did not run meanwhile.")
        {
            At = timer.Ended,
            StepId = timer.StepId,
        };

    static bool IsLater(ImmutableArray<Step> steps, Step wait, string stepId) =>
        steps.IndexOf(wait) is var index && steps.Skip(index + 1).Any(step => step.Id == stepId);
}
