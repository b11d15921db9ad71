using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Reports.Facts;

namespace HandsFreeStartup.Reports.Summary;

/// <summary>Every value that was heard, by step, with what became of it, and the results that followed.</summary>
sealed class ReadingSection(PlainPage page, StartupFacts facts)
{
    public void Write()
    {
        page.Heading("Readings and results");
        foreach (StepFate step in facts.Steps)
        {
            ReadingFate[] readings = [.. facts.Readings.Where(fate => fate.StepId == step.Step.Id)];
            ResultFate[] results = [.. facts.Results.Where(fate => fate.StepId == step.Step.Id)];
            if (readings.Length + results.Length > 0)
            {
                page.Line(step.Step.Title);
            }

            foreach (ReadingFate fate in readings)
            {
                Write(fate);
            }

            foreach (ResultFate fate in results)
            {
                page.Line($"= {fate.Result.Label}{Words.In(fate.Scope)}: {Words.Value(fate.Result)}{Remark(fate.Result)}{Judgement(fate.Result.Verdict, fate.Result.Limit)}", 2, 6);
                Limit(fate.Result.Limit);
                page.Line($"formula {fate.Result.Formula}", 6);
            }
        }

        if (facts.Readings.Count == 0)
        {
            page.Line("None.");
        }
    }

    void Write(ReadingFate fate)
    {
        string state = fate.End switch
        {
            ReadingEnd.Final => "",
            ReadingEnd.Provisional => " (provisional)",
            ReadingEnd.Disregarded => " DISREGARDED, does not count",
            ReadingEnd.Replaced => " REPLACED by a later value, does not count",
            ReadingEnd.Void => $" VOID, does not count: {fate.Because}",
            ReadingEnd.Early => " EARLY, before its time was over: not judged, does not count",
            ReadingEnd.Refused => " NOT CONFIRMED, not in the record",
            _ => " NEVER CONFIRMED, not in the record",
        };
        string judgement = fate.Counts ? Judgement(fate.Reading.Verdict, fate.Reading.Limit) : "";
        string once = fate.End is ReadingEnd.Replaced or ReadingEnd.Void ? Judgement(fate.Reading.Verdict, fate.Reading.Limit).Replace(" - ", "; was ", StringComparison.Ordinal) : "";
        page.Line($"{Words.Label(fate.Reading.Key)}: {Words.WithUncertainty(fate.Reading)}{judgement}{state}{once}", 2, 6);
        page.Line($"{Words.Time(fate.At)} {Words.Heard(fate.Reading.Evidence, fate.WasReadBack && fate.End is not (ReadingEnd.Refused or ReadingEnd.Unanswered))}", 6, 8);
        Limit(fate.Reading.Limit);
    }

    void Limit(DeclaredLimit? limit)
    {
        if (limit is not null)
        {
            page.Line($"limit {limit.Text.TrimEnd()}{(limit.IsSafety ? ", safety" : "")} [{limit.Source}]", 6, 8);
        }
    }

    static string Remark(Procedure.Events.CalculatedResult result) => result.Value is null || result.Remark.Length == 0 ? "" : $", {result.Remark}";

    static string Judgement(Calculations.Judgement.Verdict? verdict, DeclaredLimit? limit) =>
        verdict is { } value && limit is not null ? $" - {Words.Verdict(value, limit)}" : "";
}
