using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Reports.Review;

/// <summary>One value of a job as a row of a table: every one that was heard, and every result that counts.</summary>
/// <param name="JobId">Name of the job.</param>
/// <param name="Technician">Who measured: for what is carried over from the returned job, who worked there; empty where an older record does not say.</param>
/// <param name="At">When, by the clock on the wall of the job, with its offset.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Scope">Stage or room, or empty.</param>
/// <param name="Quantity">Id of the field or the result.</param>
/// <param name="Value">As all copies show it: as spoken with its decimals, "over" the end of the range where more was read, or rounded where it was worked out; empty where it cannot be told.</param>
/// <param name="Unit">Unit of value, uncertainty and limits.</param>
/// <param name="ExpandedUncertainty">k = 2, rounded up as all copies show it; empty where none is stated.</param>
/// <param name="Lower">Lower limit, or empty.</param>
/// <param name="Upper">Upper limit, or empty.</param>
/// <param name="LimitSource">Who sets the limit.</param>
/// <param name="Verdict">Verdict, or empty where nothing was judged.</param>
/// <param name="State">What became of it: final, provisional, disregarded, replaced, void, refused, unanswered, early; "carried" where it stands from the returned job, in which it was measured at that time; "result" where it was worked out.</param>
/// <param name="Heard">voice, keys or, where it was worked out, its formula.</param>
/// <param name="Certainty">green or amber; empty for a result.</param>
/// <param name="Clip">Recording, or empty.</param>
public sealed record ReadingRow(
    string JobId, string Technician, DateTimeOffset At, string StepId, string Scope, string Quantity, string Value, string Unit, string ExpandedUncertainty,
    string Lower, string Upper, string LimitSource, string Verdict, string State, string Heard, string Certainty, string Clip)
{
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

    static ReadingRow Of(string jobId, string technician, DateTimeOffset at, ReadingFate fate) => new(
        jobId, technician, at, fate.StepId, fate.Reading.Key.Scope, fate.Reading.Key.FieldId, ShownValue.Of(fate.Reading).Number, fate.Reading.UnitSymbol,
        ShownValue.Of(fate.Reading).Uncertainty, Text(fate.Reading.Limit?.Lower), Text(fate.Reading.Limit?.Upper), fate.Reading.Limit?.Source ?? "", Word(fate.Reading.Verdict),
        fate.From.Length > 0 && fate.Counts ? "carried" : fate.End.ToString().ToLowerInvariant(), fate.Reading.Evidence.Channel == Channel.Voice ? "voice" : "keys",
        fate.Reading.Evidence.Certainty.ToString().ToLowerInvariant(), fate.Reading.Evidence.Clip ?? "");

    static ReadingRow Of(string jobId, string technician, DateTimeOffset at, ResultFate fate) => new(
        jobId, technician, at, fate.StepId, fate.Scope, fate.Result.Id, ShownValue.Of(fate.Result).Number, fate.Result.UnitSymbol,
        ShownValue.Of(fate.Result).Uncertainty, Text(fate.Result.Limit?.Lower), Text(fate.Result.Limit?.Upper), fate.Result.Limit?.Source ?? "", Word(fate.Result.Verdict),
        "result", fate.Result.Formula, "", "")
    {
        Unrounded = fate.Result.IsOver ? "" : Text(fate.Result.Value),
    };

    static string Text(IFormattable? number) => number?.ToString(null, System.Globalization.CultureInfo.InvariantCulture) ?? "";

    static string Word(Verdict? verdict) => VerdictWords.Of(verdict).ToLowerInvariant();
}
