using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Record;

namespace HandsFreeStartup.Reports.Facts;

/// <summary>Whether the rooms of an address were walked with everything running that was started up there.</summary>
static class WithOthers
{
    /// <summary>Whether the technician has said that everything ran, and a room was measured after that.</summary>
    public static bool IsAnswered(JobRecord facts) =>
        facts.Plan.Steps.FirstOrDefault(OthersRunning.Is) is { } asked && facts.Answer(asked.Id) is { } answer && answer.Answer == asked.Question!.Proper
        && facts.StepOf(asked.Id) is { End: StepEnd.Done }
        && facts.Readings.Any(fate => fate.Counts && fate.Reading.Key.FieldId == FieldId.RoomCo && fate.At >= answer.At);

    /// <summary>The job whose rooms were walked with all the other appliances of these jobs running; null where there is none, and the rooms must be measured again. One that was not put into service is off and needs not run.</summary>
    /// <param name="jobs">The jobs of one address.</param>
    public static JobRecord? WalkOf(IReadOnlyList<JobRecord> jobs) => jobs.LastOrDefault(job => job.End == JobEnd.Signed && IsAnswered(job)
        && jobs.All(other => other == job || other.End == JobEnd.OutOfService || (other.End == JobEnd.Signed && (job.Job!.Beside ?? []).Any(beside => beside.JobId == other.Job?.JobId))));
}
