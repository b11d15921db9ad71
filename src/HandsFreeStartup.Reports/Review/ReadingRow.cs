using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Reports.Facts;

namespace HandsFreeStartup.Reports.Review;

/// <summary>One value of a job as a row of a table: every one that was heard, and every result that counts.</summary>
/// <param name="JobId">Name of the job.</param>
/// <param name="Technician">Who worked.</param>
/// <param name="At">When, UTC.</param>
/// <param name="StepId">In which step.</param>
/// <param name="Scope">Stage or room, or empty.</param>
/// <param name="Quantity">Id of the field or the result.</param>
/// <param name="Value">As spoken with its decimals, "over" the end of the range where more was read, or unrounded where it was worked out; empty where it cannot be told.</param>
/// <param name="Unit">Unit of value, uncertainty and limits.</param>
/// <param name="ExpandedUncertainty">k = 2; empty where none is stated.</param>
/// <param name="Lower">Lower limit, or empty.</param>
/// <param name="Upper">Upper limit, or empty.</param>
/// <param name="LimitSource">Who sets the limit.</param>
/// <param name="Verdict">Verdict, or empty where nothing was judged.</param>
/// <param name="State">What became of it: final, provisional, disregarded, replaced, void, refused, unanswered, early; "result" where it was worked out.</param>
/// <param name="Heard">voice, keys or, where it was worked out, its formula.</param>
/// <param name="Certainty">green or amber; empty for a result.</param>
/// <param name="Clip">Recording, or empty.</param>
public sealed record ReadingRow(
    string JobId, string Technician, DateTimeOffset At, string StepId, string Scope, string Quantity, string Value, string Unit, string ExpandedUncertainty,
    string Lower, string Upper, string LimitSource, string Verdict, string State, string Heard, string Certainty, string Clip)
{
    /// <summary>The rows of a job, in the order of time.</summary>
    public static IReadOnlyList<ReadingRow> Of(StartupPlan plan, IReadOnlyList<StartupEvent> events)
    {
        StartupFacts facts = StartupFacts.Of(plan, events);
        (string jobId, string technician) = (facts.Job?.JobId ?? "", facts.Job?.Technician ?? "");
        return
        [
            .. facts.Readings.Select(fate => Of(jobId, technician, fate))
                .Concat(facts.Results.Select(fate => Of(jobId, technician, fate)))
                .OrderBy(row => row.At),
        ];
    }

    static ReadingRow Of(string jobId, string technician, ReadingFate fate) => new(
        jobId, technician, fate.At, fate.StepId, fate.Reading.Key.Scope, fate.Reading.Key.FieldId, ShownValue.Of(fate.Reading).Number, fate.Reading.UnitSymbol,
        fate.Reading.IsOver ? "" : Text(fate.Reading.ExpandedUncertainty), Text(fate.Reading.Limit?.Lower), Text(fate.Reading.Limit?.Upper), fate.Reading.Limit?.Source ?? "", Word(fate.Reading.Verdict),
        fate.End.ToString().ToLowerInvariant(), fate.Reading.Evidence.Channel == Channel.Voice ? "voice" : "keys",
        fate.Reading.Evidence.Certainty.ToString().ToLowerInvariant(), fate.Reading.Evidence.Clip ?? "");

    static ReadingRow Of(string jobId, string technician, ResultFate fate) => new(
        jobId, technician, fate.At, fate.StepId, fate.Scope, fate.Result.Id, Text(fate.Result.Value), fate.Result.UnitSymbol,
        Text(fate.Result.ExpandedUncertainty), Text(fate.Result.Limit?.Lower), Text(fate.Result.Limit?.Upper), fate.Result.Limit?.Source ?? "", Word(fate.Result.Verdict),
        "result", fate.Result.Formula, "", "");

    static string Text(IFormattable? number) => number?.ToString(null, System.Globalization.CultureInfo.InvariantCulture) ?? "";

    static string Word(Verdict? verdict) => VerdictWords.Of(verdict).ToLowerInvariant();
}
