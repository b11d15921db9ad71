using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Record;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>
/// What of a returned record stands in the job that follows it. Only cold work does: what comes before the first opening on the gas side and the first fire. The burner has been off since, the
/// ports were plugged and people have lived there: every reading of gas, fire, flue and rooms, every wait, every opening and closing and every safety stop is done anew.
/// </summary>
public static class CarryingOver
{
    /// <summary>Why no more than this is carried, for whoever reads a copy.</summary>
    public const string Why = "Only what was done without gas and fire is carried over. The burner has been off since: every safety stop, leak check, opening, closing and wait, and every reading of gas, fire, flue and rooms, belongs to this job.";

    /// <summary>The events that carry it over; none where the lead has not named what is returned, where an alarm or an unsafe condition makes all of it doubtful, or where nothing stands.</summary>
    /// <param name="plan">What both jobs are led by.</param>
    /// <param name="returned">All events of the returned record.</param>
    /// <param name="now">The beginning of the job that follows.</param>
    public static IReadOnlyList<StartupEvent> Of(StartupPlan plan, IReadOnlyList<StartupEvent> returned, Now now)
    {
        JobRecord record = JobRecord.Of(plan, returned);
        if (record.Reviews.LastOrDefault() is not { Outcome: ReviewOutcome.Returned, Steps.IsEmpty: false } review
            || record.Unsafe.Count > 0 || returned.Any(happened => happened is StartupStopped))
        {
            return [];
        }

        ImmutableArray<Step> standing = Standing(plan, record, [.. review.Steps]);
        return
        [
            .. standing.Select(step => new StepCarried(
                now, step.Id, record.StepOf(step.Id)!.Left!.Value, [.. Readings(step, record).Select(fate => new CarriedReading(fate.At, Quiet(fate.Reading)))],
                record.Answer(step.Id) is { } answer ? new CarriedAnswer(answer.At, answer.Answer, answer.Evidence with { Clip = null }) : null, ChoiceOf(step, returned))),
            .. Limits(record, returned, standing, now),
        ];
    }

    /// <summary>Whether a step is cold work that can stand at all; the same for every job of a checklist.</summary>
    public static bool May(Step step) =>
        step.Kind is StepKind.Do or StepKind.Read or StepKind.Ask && !step.IsSafetyStop && !step.Guards && step.AgainAfter.IsEmpty && step.After is null
        && step.Opens.IsEmpty && step.Closes.IsEmpty && step.Proves.IsEmpty && step.Starts.IsEmpty
        && step.Readings.All(demand => demand.FieldId is FieldId.LineVoltage or FieldId.ControlVoltage);

    /// <summary>What a reading was judged by and how it was heard, without the recording, which stays beside its record.</summary>
    public static EnteredReading Quiet(EnteredReading reading) => reading with { Evidence = reading.Evidence with { Clip = null } };

    /// <summary>The source of a limit that was said in the returned job.</summary>
    public static string SourceIn(string jobId, string source) => $"{source}, as said in job {jobId}";

    static ImmutableArray<Step> Standing(StartupPlan plan, JobRecord record, HashSet<string> again)
    {
        ImmutableArray<Step> standing = [.. plan.Steps.TakeWhile(step => step.AgainAfter.IsEmpty && !step.Opens.Any(thing => thing.IsGasSide)).Where(step => May(step) && Stands(step, record))];
        while (true)
        {
            again.UnionWith(plan.Steps.Except(standing).SelectMany(step => step.Voids.Concat(step.Question?.Repeats ?? [])));
            ImmutableArray<Step> left = [.. standing.Where(step => !again.Contains(step.Id))];
            if (left.Length == standing.Length)
            {
                return left;
            }

            again.UnionWith(standing.Except(left).SelectMany(step => step.Voids.Concat(step.Question?.Repeats ?? [])));
            standing = left;
        }
    }

    static bool Stands(Step step, JobRecord record) =>
        record.StepOf(step.Id) is { End: StepEnd.Done, From.Length: 0 }
        && record.Exceptions.All(exception => exception.StepId != step.Id)
        && (step.Question is not { Choices.IsEmpty: true } question || record.Answer(step.Id)?.Answer == question.Proper)
        && Readings(step, record).Count() == step.Readings.Length;

    /// <summary>The values of a step that nobody must look at.</summary>
    static IEnumerable<ReadingFate> Readings(Step step, JobRecord record) => step.Readings
        .Select(demand => record.Reading(new ReadingKey(demand.FieldId, step.Scope ?? "")))
        .OfType<ReadingFate>()
        .Where(fate => fate.End == ReadingEnd.Final && fate.Reading.Verdict is null or Verdict.Pass && fate.Reading.Evidence.Certainty >= Certainty.Amber);

    static string? ChoiceOf(Step step, IReadOnlyList<StartupEvent> returned) =>
        returned.OfType<ChoiceMade>().LastOrDefault(made => made.Topic == ChoiceTopic.Step && made.StepId == step.Id)?.Value;

    /// <summary>Limits that were read from the plate, which is still the same; each once, as it was said last.</summary>
    static IEnumerable<LimitStated> Limits(JobRecord record, IReadOnlyList<StartupEvent> returned, ImmutableArray<Step> standing, Now now) =>
        standing.IsEmpty || record.Job is not { } job ? [] : returned.OfType<LimitStated>().GroupBy(stated => stated.Limit.Name).Select(same => same.Last())
            .Where(stated => record.Reviews[^1].Steps.All(step => step != stated.StepId))
            .Select(stated => stated with { At = now, Limit = stated.Limit with { Source = SourceIn(job.JobId, stated.Limit.Source) } });
}
