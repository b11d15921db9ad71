using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Reports.Copies.Layout;
using HandsFreeStartup.Reports.Facts;

namespace HandsFreeStartup.Reports.Copies.Parts;

/// <summary>Everything that the first page leaves out: each value ever heard and its fate, each result, step, timer, answer and refusal, and every event in order.</summary>
sealed class OfficePages(Ruler ruler, CopyFacts copy, double width)
{
    static readonly Style Gone = Table.CellStyle.In(Style.Quiet);
    static readonly Style Standing = Table.CellStyle.AsBold();

    public IEnumerable<Strip> Pages() =>
    [
        .. Section("Every value that was heard", [new("time", 9), new("reading", 20), new("value", 20), new("what became of it", 22), new("how it was heard", 21), new("limit", 20)],
            [.. copy.Facts.Readings.Select(Row)], "No value was heard."),
        .. Section("Every result that was worked out", [new("time", 9), new("result", 19), new("value", 18), new("what became of it", 22), new("formula and what went in", 27), new("limit", 17)],
            [.. copy.Facts.AllResults.Select(Row)], "No result was worked out."),
        Strip.Space(3),
        .. Texts.Paragraph(ruler, copy.Sources.Count == 0 ? "" : $"{copy.T("Limits set by")}: {copy.SourceLegend}.", Style.Small, width),
        .. Section("Steps", [new("", 4), new("step", 36), new("what became of it", 42), new("begun", 9), new("ended", 9)],
            [.. copy.Facts.Steps.Select(Row)], "None."),
        .. Section("Timers", [new("step", 40), new("time and its source", 40), new("started", 10), new("ended", 10)],
            [.. copy.Facts.Timers.Select(Row)], "None was started."),
        .. Section("Questions answered", [new("time", 9), new("question", 75), new("answer", 16)],
            [.. copy.Facts.Answers.Select(Row)], "None."),
        .. Section("Understood, but not carried out", [new("time", 9), new("what was said", 36), new("why not", 55)],
            [.. copy.Facts.Refusals.Select(refused => new Cell[] { copy.Times.Time(refused.At), refused.Said, copy.Told(refused.Reason) })], "Nothing."),
        .. Section("Recordings and photos beside the record", [new("time", 9), new("what", 13), new("name: the SHA-256 of its bytes", 78)],
            [.. copy.Facts.Attachments.Select(one => new Cell[] { copy.Times.Time(one.At), copy.T(one.IsPhoto ? "photo" : "recording"), one.Name })], "None."),
        .. Section("What the job ran with", [new("", 14), new("", 86)], [.. Origin()], ""),
        .. Section("Every event in order", [new("no.", 5), new("date, time and offset", 22), new("what happened", 73)],
            [.. copy.Events.Select((happened, index) => new Cell[] { FormattableString.Invariant($"{index + 1}"), copy.Times.Stamp(happened.At), EventSentence.Of(happened, copy.StepTitle, copy.Language) })], "None."),
    ];

    IEnumerable<Strip> Section(string title, Column[] columns, IReadOnlyList<Cell[]> rows, string ifNone) =>
    [
        .. Texts.Heading(ruler, copy.T(title), width),
        .. rows.Count == 0 ? Texts.Paragraph(ruler, copy.T(ifNone), Style.Body, width) : new Table(ruler, width, [.. columns.Select(column => column with { Title = copy.T(column.Title) })]).Rows(rows),
    ];

    Cell[] Row(ReadingFate fate) =>
    [
        copy.Times.Time(fate.At),
        copy.Language.Name(Labels.Of(fate.Reading.Key)),
        new Cell($"{(fate.Counts ? "" : "(")}{copy.Language.Value(ShownValue.Of(fate.Reading), tellsDoubt: true)}{(fate.Counts ? "" : ")")}", fate.Counts ? Standing : Gone),
        Fate(fate.Counts, $"{copy.Told(Sentences.Of(fate))}{(fate.From.Length == 0 ? "" : $", {copy.Told(Sentences.Origin(fate, copy.Times))}")}", Judgement(fate.Reading.Verdict, fate.Reading.Limit)),
        copy.Told(EvidenceWords.Of(fate.Reading.Evidence, fate.WasReadBack && fate.End is not (ReadingEnd.Refused or ReadingEnd.Unanswered))),
        Limit(fate.Reading.Limit),
    ];

    Cell[] Row(ResultFate fate) =>
    [
        copy.Times.Time(fate.At),
        copy.Language.Name(Labels.Of(fate.Result, fate.Scope)),
        new Cell($"{(fate.Counts ? "" : "(")}{copy.Told(ResultWords.Told(fate.Result))}{(fate.Counts ? "" : ")")}", fate.Counts ? Standing : Gone),
        Fate(fate.Counts, fate.Counts ? copy.T("stands") : copy.Told($"DOES NOT COUNT: {Message.Recorded(fate.NoLonger)}"), Judgement(fate.Result.Verdict, fate.Result.Limit)),
        $"{fate.Result.Formula}: {string.Join(", ", fate.Result.Inputs.Select(input => $"{copy.Language.Name(Labels.Of(new ReadingKey(input.Key, "")))} {copy.Language.Number(ResultWords.Input(fate.Result, input.Key))}"))}",
        Limit(fate.Result.Limit),
    ];

    Cell[] Row(StepFate step, int index)
    {
        Message end = step.End switch
        {
            StepEnd.Done when step.From.Length > 0 => (Message)$"done in job {new MessagePart.Form(step.From)}, {copy.Times.Stamp(step.Left!.Value)}",
            StepEnd.Done => step.EndedByItself ? "done by itself, nothing to do" : "done",
            StepEnd.Skipped => $"SKIPPED: {new MessagePart.Form(step.Reason)}",
            StepEnd.UnderWay => "UNDER WAY",
            _ => "NOT REACHED",
        };
        return
        [
            FormattableString.Invariant($"{index + 1}"), copy.Language.Name(step.Step.Title), new Cell(copy.Told(end), step.End == StepEnd.Done ? Table.CellStyle : Standing.In(Style.Alarm)),
            step.Entered is { } entered ? copy.Times.Time(entered) : "–", step.Left is { } left ? copy.Times.Time(left) : "–",
        ];
    }

    Cell[] Row(TimerFate timer) =>
    [
        copy.StepTitle(timer.StepId),
        $"{Durations.Text(timer.Duration)}{(timer.Starts > 1 ? copy.Told($", started {timer.Starts} times") : "")}"
            + (copy.Facts.Steps.FirstOrDefault(step => step.Step.Id == timer.StepId)?.Step.Timer is { } planned ? $" ({copy.Language.Name(planned.Source)})" : ""),
        copy.Times.Time(timer.Started),
        timer.Ended is { } ended ? copy.Times.Time(ended) : new Cell(copy.T("DID NOT END"), Standing.In(Style.Alarm)),
    ];

    Cell[] Row(AnswerGiven answer) =>
    [
        copy.Times.Time(answer.At),
        copy.Facts.Steps.FirstOrDefault(step => step.Step.Id == answer.StepId)?.Step.Question is { } question ? copy.Told(question.Text) : answer.StepId,
        copy.T(Labels.YesNo(answer.Answer)),
    ];

    IEnumerable<Cell[]> Origin()
    {
        if (copy.Facts.Job is { } job)
        {
            yield return [copy.T("Checklist"), copy.Told($"{new MessagePart.Name(copy.Plan.Checklist.Title)}: {As(copy.Plan.Checklist.Id)} version {As(copy.Plan.Checklist.Version)}, file {As(job.Checklist.Name)}, SHA-256 {As(job.Checklist.Sha256)}")];
            yield return [copy.T("Appliance"), copy.Told($"file {As(job.Appliance.Name)}, SHA-256 {As(job.Appliance.Sha256)}")];
            yield return [copy.T("Site"), copy.Told($"file {As(job.Site.Name)}, SHA-256 {As(job.Site.Sha256)}, {copy.Plan.Site.AltitudeFeet} ft above sea level")];
            yield return [copy.T("Program"), copy.Told($"HandsFree Startup {As(job.ProgramVersion)}; heard by {As(job.Recogniser)}")];
        }
        yield return [copy.T("Checkpoint"), copy.Source.WholeCheckpoint ?? copy.T("none that could be believed")];
        foreach (string finding in copy.Source.Findings)
        {
            yield return [new Cell(copy.T("Wrong"), Standing.In(Style.Alarm)), finding];
        }
    }

    /// <summary>What was named: it stands as it was recorded in every language.</summary>
    static MessagePart As(string recorded) => new MessagePart.Form(recorded);

    Cell Fate(bool counts, string fate, string judgment) =>
        new($"{fate}{(judgment.Length == 0 ? "" : $"{(counts ? ", " : copy.T("; was "))}{judgment}")}", counts ? Table.CellStyle : Gone);

    string Judgement(Verdict? verdict, DeclaredLimit? limit) => copy.T(VerdictWords.Of(verdict, limit));

    string Limit(DeclaredLimit? limit) => limit is null ? "" : $"{copy.Told($"{limit}")} [{copy.Mark(limit)}]";
}
