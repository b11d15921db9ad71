using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Reports.Review.Rules;

namespace HandsFreeStartup.Reports.Review;

/// <summary>What a rule of the review looks at.</summary>
sealed record ReviewedJob(JobRecord Facts, RecordState Record)
{
    public StartupPlan Plan => Facts.Plan;

    public string Title(string stepId) => StepTitles.Of(Plan, stepId);

    /// <summary>The reading of a field that counts in a stage or room, or null.</summary>
    public ReadingFate? Counting(string fieldId, string scope) => Facts.Readings.LastOrDefault(fate => fate.Counts && fate.Reading.Key == new ReadingKey(fieldId, scope));

    /// <summary>The result that counts in a stage, or null where it cannot be told.</summary>
    public double? Result(string id, string scope) => Facts.Results.LastOrDefault(fate => fate.Scope == scope && fate.Result.Id == id)?.Result.Value;

    /// <summary>Stages and rooms that hold a reading that counts.</summary>
    public IEnumerable<string> Scopes => Facts.Readings.Where(fate => fate.Counts).Select(fate => fate.Reading.Key.Scope).Distinct();

    public static ImmutableArray<string> Clips(params IEnumerable<Evidence?> evidence) => [.. evidence.Select(one => one?.Clip).OfType<string>().Distinct()];
}

/// <summary>Every rule of the review. A rule is pure and small; a new one is one entry here.</summary>
static class ReviewRules
{
    public static ImmutableArray<Func<ReviewedJob, IEnumerable<ReviewFinding>>> All { get; } =
    [
        RecordRules.Problems,
        ExceptionRules.All,
        RecordRules.Redacted,
        RecordRules.Demonstration,
        RecordRules.Carried,
        EndRules.End,
        EndRules.Open,
        EndRules.NotReached,
        EndRules.Reviewed,
        StepRules.ImproperAnswers,
        StepRules.Missing,
        StepRules.Notes,
        StepRules.Photos,
        StepRules.Pauses,
        TimerRules.CutShort,
        TimerRules.BeforeWarmUp,
        TimerRules.Early,
        TimerRules.ClockWentBack,
        TimerRules.ClockWentForward,
        ReadingRules.Limits,
        ReadingRules.Corrections,
        ReadingRules.Doubtful,
        ReadingRules.Unsettled,
        ConsistencyRules.FuelFactorOutOfRange,
        ConsistencyRules.EfficiencyAgainstFlueTemperature,
        ConsistencyRules.FlueCoolerThanAir,
        ConsistencyRules.CondensingAgainstKind,
        ConsistencyRules.InputAgainstManifold,
        ConsistencyRules.IdenticalStages,
        ConsistencyRules.RiseAgainstAir,
    ];
}
