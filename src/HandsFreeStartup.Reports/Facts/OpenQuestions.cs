using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Reports.Facts;

/// <summary>What stands against a job besides its exceptions, what can hurt first.</summary>
static class OpenQuestions
{
    /// <summary>All of them.</summary>
    /// <param name="facts">The record.</param>
    /// <param name="language">In which they are told; null for English.</param>
    public static IReadOnlyList<string> Of(JobRecord facts, Language? language = null) => [.. All(facts).Select((language ?? Language.English).Shown)];

    static IEnumerable<Message> All(JobRecord facts) =>
    [
        .. Returned(facts),
        .. StillOpen(facts),
        .. Judged(facts, isSafety: true),
        .. ImproperAnswers(facts),
        .. Missing(facts),
        .. Judged(facts, isSafety: false),
        .. Unsettled(facts),
    ];

    static IEnumerable<Message> Returned(JobRecord facts) =>
        facts.Reviews.LastOrDefault() is { Outcome: ReviewOutcome.Returned } review ? [(Message)$"RETURNED by the lead technician {review.Lead}: {review.Remark}{Again(facts, review)}"] : [];

    static Message Again(JobRecord facts, RecordReviewed review) =>
        review.Steps.IsEmpty ? "" : (Message)$" (to be done again: {string.Join("; ", review.Steps.Select(step => StepTitles.Of(facts.Plan, step)))})";

    static IEnumerable<Message> StillOpen(JobRecord facts) => facts.Things
        .Where(thing => thing.IsOpen)
        .Select(thing => thing.Closed is null ? (Message)$"STILL OPEN: {thing.Thing.Name}" : $"CLOSED BUT NOT CHECKED FOR LEAKS: {thing.Thing.Name}");

    static IEnumerable<Message> Judged(JobRecord facts, bool isSafety)
    {
        foreach (ReadingFate fate in facts.Readings.Where(fate => fate.Counts && VerdictWords.MustBeLookedAt(fate.Reading.Verdict, fate.Reading.Limit)))
        {
            if (fate.Reading.Limit!.IsSafety == isSafety)
            {
                yield return $"{Labels.Of(fate.Reading.Key)} {ShownValue.Of(fate.Reading)}: {VerdictWords.Of(fate.Reading.Verdict!.Value, fate.Reading.Limit)} ({fate.Reading.Limit})";
            }
        }

        foreach (ResultFate fate in facts.Results.Where(fate => VerdictWords.MustBeLookedAt(fate.Result.Verdict, fate.Result.Limit)))
        {
            if (fate.Result.Limit!.IsSafety == isSafety)
            {
                yield return $"{Labels.Of(fate.Result, fate.Scope)} {ResultWords.Told(fate.Result)}: {VerdictWords.Of(fate.Result.Verdict!.Value, fate.Result.Limit)} ({fate.Result.Limit})";
            }
        }
    }

    static IEnumerable<Message> ImproperAnswers(JobRecord facts) =>
        from step in facts.Steps
        where step.Step.Question is not null
        let last = facts.Answer(step.Step.Id)
        where last is not null && last.Answer != step.Step.Question!.Proper
        select (Message)$"\"{step.Step.Question!.Text}\" was last answered {Labels.YesNo(last.Answer)}. {step.Step.Question.Otherwise}";

    static IEnumerable<Message> Missing(JobRecord facts)
    {
        foreach (StepFate step in facts.Steps.Where(step => step.Step.Kind is StepKind.Read && step.End is StepEnd.Done or StepEnd.UnderWay))
        {
            foreach (ReadingDemand demand in step.Step.Readings)
            {
                ReadingKey key = new(demand.FieldId, step.Step.Scope ?? "");
                if (!facts.Readings.Any(fate => fate.Counts && fate.Reading.Key == key))
                {
                    yield return $"No {Labels.Of(key)} counts (step \"{step.Step.Title}\")";
                }
            }
        }

        int notReached = facts.Steps.Count(step => step.End == StepEnd.NotReached);
        if (notReached > 0)
        {
            yield return notReached == 1 ? (Message)"1 step was not reached" : $"{notReached} steps were not reached";
        }
    }

    static IEnumerable<Message> Unsettled(JobRecord facts) =>
    [
        .. facts.Readings.Where(fate => fate.End == ReadingEnd.Unanswered)
            .Select(fate => (Message)$"{Labels.Of(fate.Reading.Key)} {ShownValue.Of(fate.Reading)} was read back and never confirmed; it is not in the record"),
        .. facts.Readings.Where(fate => fate.End == ReadingEnd.Provisional)
            .Select(fate => (Message)$"{Labels.Of(fate.Reading.Key)} {ShownValue.Of(fate.Reading)} was entered last and nothing was accepted after it"),
        .. facts.Timers.Where(timer => timer.Ended is null)
            .Select(timer => (Message)$"The timer of \"{StepTitles.Of(facts.Plan, timer.StepId)}\" did not run to its end"),
    ];
}
