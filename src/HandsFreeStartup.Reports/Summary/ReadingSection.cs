using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Reports.Facts;

namespace HandsFreeStartup.Reports.Summary;

/// <summary>Every value that was heard, by step, with what became of it, and the results that followed.</summary>
sealed class ReadingSection(PlainPage page, JobRecord facts, Language language)
{
    public void Write()
    {
        page.Heading(language.Text("Readings and results"));
        foreach (StepFate step in facts.Steps)
        {
            ReadingFate[] readings = [.. facts.Readings.Where(fate => fate.StepId == step.Step.Id)];
            ResultFate[] results = [.. facts.Results.Where(fate => fate.StepId == step.Step.Id)];
            if (readings.Length + results.Length > 0)
            {
                page.Line(language.Name(step.Step.Title));
            }

            foreach (ReadingFate fate in readings)
            {
                Write(fate);
            }

            foreach (ResultFate fate in results)
            {
                page.Line($"= {language.Name(Labels.Of(fate.Result, fate.Scope))}: {language.Shown(ResultWords.Told(fate.Result))}{Judgement(fate.Result.Verdict, fate.Result.Limit)}", 2, 6);
                Limit(fate.Result.Limit);
                page.Line(language.Shown($"formula {new MessagePart.Form(fate.Result.Formula)}"), 6);
            }
        }

        if (facts.Readings.Count == 0)
        {
            page.Line(language.Text("None."));
        }
    }

    void Write(ReadingFate fate)
    {
        string judged = language.Text(VerdictWords.Of(fate.Reading.Verdict, fate.Reading.Limit));
        string verdict = judged.Length == 0 ? "" : fate.Counts ? $" - {judged}" : fate.End is ReadingEnd.Replaced or ReadingEnd.Void ? $"{language.Text("; was ")}{judged}" : "";
        string end = fate.End == ReadingEnd.Final ? "" : $" {language.Shown(Sentences.Of(fate))}";
        page.Line($"{language.Name(Labels.Of(fate.Reading.Key))}: {language.Value(ShownValue.Of(fate.Reading), tellsDoubt: true)}{(fate.Counts ? $"{verdict}{end}" : $"{end}{verdict}")}", 2, 6);
        if (fate.From.Length > 0)
        {
            page.Line(language.Shown(Sentences.Origin(fate, facts.Times)), 6, 8);
        }

        page.Line($"{facts.Times.Time(fate.At)} {language.Shown(EvidenceWords.Of(fate.Reading.Evidence, fate.WasReadBack && fate.End is not (ReadingEnd.Refused or ReadingEnd.Unanswered)))}", 6, 8);
        Limit(fate.Reading.Limit);
    }

    void Limit(DeclaredLimit? limit)
    {
        if (limit is not null)
        {
            page.Line(language.Shown($"limit {limit}{(limit.IsSafety ? ", safety" : "")} [{limit.Source}]"), 6, 8);
        }
    }

    string Judgement(Calculations.Judgement.Verdict? verdict, DeclaredLimit? limit) =>
        VerdictWords.Of(verdict, limit) is { Length: > 0 } words ? $" - {language.Text(words)}" : "";
}
