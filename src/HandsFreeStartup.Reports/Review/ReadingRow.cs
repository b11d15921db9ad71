using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Reports.Review;

/// <summary>One value of a job as a row of a table: every one that was heard, and every result that counts.</summary>
public sealed record ReadingRow
{
    /// <summary>Name of the job.</summary>
    public required string JobId { get; init; }

    /// <summary>Who measured: for what is carried over from the returned job, who worked there; empty where an older record does not say.</summary>
    public required string Technician { get; init; }

    /// <summary>When, by the clock on the wall of the job, with its offset.</summary>
    public required DateTimeOffset At { get; init; }

    /// <summary>In which step.</summary>
    public required string StepId { get; init; }

    /// <summary>Stage or room, or empty.</summary>
    public required string Scope { get; init; }

    /// <summary>Id of the field or the result.</summary>
    public required string Quantity { get; init; }

    /// <summary>As all copies show it: as spoken with its decimals, "over" the end of the range where more was read, or rounded where it was worked out; empty where it cannot be told.</summary>
    public required string Value { get; init; }

    /// <summary>Unit of value, uncertainty and limits.</summary>
    public required string Unit { get; init; }

    /// <summary>k = 2, rounded up as all copies show it; empty where none is stated.</summary>
    public required string ExpandedUncertainty { get; init; }

    /// <summary>Lower limit, or empty.</summary>
    public required string Lower { get; init; }

    /// <summary>Upper limit, or empty.</summary>
    public required string Upper { get; init; }

    /// <summary>Who sets the limit.</summary>
    public required string LimitSource { get; init; }

    /// <summary>Verdict, or empty where nothing was judged.</summary>
    public required string Verdict { get; init; }

    /// <summary>What became of it: final, provisional, disregarded, replaced, void, refused, unanswered, early; "carried" where it stands from the returned job, in which it was measured at that time; "result" where it was worked out.</summary>
    public required string State { get; init; }

    /// <summary>voice, keys or, where it was worked out, its formula.</summary>
    public required string Heard { get; init; }

    /// <summary>green or amber; empty for a result.</summary>
    public required string Certainty { get; init; }

    /// <summary>Recording, or empty.</summary>
    public required string Clip { get; init; }

    /// <summary>A result as it was worked out; empty for a reading, which is as it was spoken.</summary>
    public string Unrounded { get; init; } = "";

    /// <summary>The rows of a job, in the order of time.</summary>
    public static IReadOnlyList<ReadingRow> Of(StartupPlan plan, IReadOnlyList<StartupEvent> events)
    {
        JobRecord facts = JobRecord.Of(plan, events);
        (string jobId, string technician) = (facts.Job?.JobId ?? "", facts.Job?.Technician ?? "");
        return
        [
            .. facts.Readings.Select(fate => Of(jobId, fate.From.Length > 0 ? facts.Job?.Follows?.Technician ?? "" : technician, facts.Times.At(fate.At), fate))
                .Concat(facts.Results.Select(fate => Of(jobId, technician, facts.Times.At(fate.At), fate)))
                .OrderBy(row => row.At),
        ];
    }

    static ReadingRow Of(string jobId, string technician, DateTimeOffset at, ReadingFate fate) => new()
    {
        JobId = jobId,
        Technician = technician,
        At = at,
        StepId = fate.StepId,
        Scope = fate.Reading.Key.Scope,
        Quantity = fate.Reading.Key.FieldId,
        Value = ShownValue.Of(fate.Reading).Number,
        Unit = fate.Reading.UnitSymbol,
        ExpandedUncertainty = ShownValue.Of(fate.Reading).Uncertainty,
        Lower = Text(fate.Reading.Limit?.Lower),
        Upper = Text(fate.Reading.Limit?.Upper),
        LimitSource = fate.Reading.Limit?.Source ?? "",
        Verdict = Word(fate.Reading.Verdict),
        State = fate.From.Length > 0 && fate.Counts ? "carried" : fate.End.ToString().ToLowerInvariant(),
        Heard = fate.Reading.Evidence.Channel == Channel.Voice ? "voice" : "keys",
        Certainty = fate.Reading.Evidence.Certainty.ToString().ToLowerInvariant(),
        Clip = fate.Reading.Evidence.Clip ?? "",
    };

    static ReadingRow Of(string jobId, string technician, DateTimeOffset at, ResultFate fate) => new()
    {
        JobId = jobId,
        Technician = technician,
        At = at,
        StepId = fate.StepId,
        Scope = fate.Scope,
        Quantity = fate.Result.Id,
        Value = ShownValue.Of(fate.Result).Number,
        Unit = fate.Result.UnitSymbol,
        ExpandedUncertainty = ShownValue.Of(fate.Result).Uncertainty,
        Lower = Text(fate.Result.Limit?.Lower),
        Upper = Text(fate.Result.Limit?.Upper),
        LimitSource = fate.Result.Limit?.Source ?? "",
        Verdict = Word(fate.Result.Verdict),
        State = "result",
        Heard = fate.Result.Formula,
        Certainty = "",
        Clip = "",
        Unrounded = fate.Result.IsOver ? "" : Text(fate.Result.Value),
    };

    static string Text(IFormattable? number) => number?.ToString(null, System.Globalization.CultureInfo.InvariantCulture) ?? "";

    static string Word(Verdict? verdict) => VerdictWords.Of(verdict).ToLowerInvariant();
}
