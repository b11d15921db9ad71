using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Reports.Review.Rules;

/// <summary>What was left out, answered badly or said beside the readings.</summary>
static class StepRules
{
    /// <summary>A longer pause than this is told (common practice, no source).</summary>
    static readonly TimeSpan LongPause = TimeSpan.FromMinutes(10);

    public static IEnumerable<ReviewFinding> ImproperAnswers(ReviewedJob job) =>
        from step in job.Facts.Steps
        where step.Step.Question is { Choices.IsEmpty: true }
        let last = job.Facts.Answer(step.Step.Id)
        where last is not null && last.Answer != step.Step.Question!.Proper
        select new ReviewFinding("improper-answer", step.Step.IsSafetyStop ? Weight.Danger : Weight.Doubt,
            $"\"{step.Step.Question!.Text}\" was last answered {Labels.YesNo(last.Answer)}.")
        {
            At = last.At,
            StepId = step.Step.Id,
            Clips = ReviewedJob.Clips(last.Evidence),
        };

    public static IEnumerable<ReviewFinding> Missing(ReviewedJob job) =>
        from step in job.Facts.Steps
        where step.Step.Kind == StepKind.Read && step.End is StepEnd.Done or StepEnd.UnderWay
        from demand in step.Step.Readings
        let key = new ReadingKey(demand.FieldId, step.Step.Scope ?? "")
        where !job.Facts.Readings.Any(fate => fate.Counts && fate.Reading.Key == key)
        select new ReviewFinding("missing-reading", Weight.Doubt, $"No {Labels.Of(key)} counts in step \"{step.Step.Title}\".") { StepId = step.Step.Id };

    public static IEnumerable<ReviewFinding> Notes(ReviewedJob job) => job.Facts.Notes.Select(note =>
        new ReviewFinding("note", Weight.Note, $"Note in step \"{job.Title(note.StepId)}\".")
        {
            At = note.At,
            StepId = note.StepId,
            Quote = note.Text,
            Clips = ReviewedJob.Clips(note.Evidence),
        });

    public static IEnumerable<ReviewFinding> Photos(ReviewedJob job) => job.Facts.Photos.Select(photo =>
        new ReviewFinding("photo", Weight.Note, $"Photo in step \"{job.Title(photo.StepId)}\": {photo.Name}.") { At = photo.At, StepId = photo.StepId });

    public static IEnumerable<ReviewFinding> Pauses(ReviewedJob job)
    {
        foreach (ListeningPause pause in job.Facts.Pauses)
        {
            TimeSpan? span = pause.To - pause.From;
            if (!(span <= LongPause))
            {
                yield return new ReviewFinding("pause", Weight.Note, span is { } known
                    ? $"Listening was paused for {Durations.Text(known)}."
                    : $"Listening was paused at {job.Facts.Times.Time(pause.From)} and never went on.")
                {
                    At = pause.From,
                };
            }
        }
    }
}
