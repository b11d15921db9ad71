using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;
using HandsFreeStartup.Procedure.Wording;
using HandsFreeStartup.Reports.Facts;

namespace HandsFreeStartup.Reports.Summary;

/// <summary>The plain text at the end of a job: verdict, open questions, every step, reading, result, timer, opened thing, note and refusal.</summary>
public static class StartupSummary
{
    const int Width = 72;

    /// <summary>The text, 72 columns wide; for an unfinished job too.</summary>
    /// <param name="plan">What the job was led by.</param>
    /// <param name="events">All events of the job, first to last.</param>
    /// <param name="checkpoint">Count and last hash of the log as people write it, or null where there is none.</param>
    /// <param name="language">In which it is written; null for English. What was said and dictated stands as it was recorded.</param>
    public static string Of(StartupPlan plan, IReadOnlyList<StartupEvent> events, string? checkpoint, Language? language = null)
    {
        language ??= Language.English;
        JobRecord facts = JobRecord.Of(plan, events);
        PlainPage page = new(Width);
        IReadOnlyList<string> questions = OpenQuestions.Of(facts, language);
        Head(page, facts, questions.Count, language);
        List(page, language.Text("To be looked at"), questions, Sentences.NothingElse(facts.Exceptions.Length, language));
        if (Sentences.CarriedOver(facts, language) is { Count: > 0 } carried)
        {
            List(page, language.Text("From the returned job"), carried, "");
        }

        if (Sentences.Beside(facts, language) is { Count: > 0 } beside)
        {
            List(page, language.Text("At the same address"), beside, "");
        }

        Steps(page, facts, language);
        new ReadingSection(page, facts, language).Write();
        Timers(page, facts, language);
        List(page, language.Text("Opened and closed"), facts.Things.Select(thing => Sentences.Of(thing, facts.Times, language)), language.Text("Nothing was opened."));
        Happenings(page, facts, language);
        Foot(page, facts, events.Count, checkpoint, language);
        return OutOfServiceNotice.Of(plan, events, language) is { } notice ? $"{page}\n{notice}" : page.ToString();
    }

    static void Head(PlainPage page, JobRecord facts, int questions, Language language)
    {
        StartupPlan plan = facts.Plan;
        ImmutableArray<JobException> exceptions = facts.Exceptions;
        page.Rule('=');
        page.Line(language.Shown($"RECORD OF A START-UP: {plan.Title}"));
        if (facts.Job is { Mark: { } mark } job)
        {
            page.Line(job.Rehearsal is null
                ? language.Text("DEMONSTRATION. Timers were shortened or recordings played; no furnace was started. This is no record of a start-up.")
                : language.Shown($"{mark}. {job.MarkReason} This is no record of a start-up."));
        }
        page.Rule('=');
        if (!exceptions.IsEmpty)
        {
            List(page, Sentences.ExceptionsTitle(exceptions.Length, language), exceptions.Select(exception => Sentences.Of(exception, facts.Times, language)), "");
            page.Blank();
        }

        CopyVerdict verdict = CopyVerdict.Of(facts, questions, language);
        page.Line(verdict.Word.ToUpperInvariant());
        page.Line(verdict.Sentence);
        page.Blank();
        page.Pair(language.Text("Job"), facts.Job?.JobId ?? language.Text("unknown"));
        page.Pair(language.Text("Appliance"), plan.Appliance.Title);
        page.Pair(language.Text("Site"), $"{plan.Site.Title}; {plan.Site.Address}");
        page.Pair(language.Text("Customer"), plan.Site.Customer);
        page.Pair(language.Text("Technician"), facts.Job?.Technician ?? language.Text("unknown"));
        if (facts is { Began: { } began, LastAt: { } last })
        {
            page.Pair(language.Text("Begun"), facts.Times.Stamp(began));
            page.Pair(language.Text("Last event"), facts.Times.Stamp(last));
            page.Pair(language.Text("All times"), language.Name(facts.Times.Zone));
        }

        if (!language.IsEnglish)
        {
            page.Line(language.Text(Sentences.Recorded));
        }
    }

    static void Steps(PlainPage page, JobRecord facts, Language language)
    {
        page.Heading(language.Text("Steps"));
        int number = 0;
        foreach (StepFate step in facts.Steps)
        {
            Message end = step.End switch
            {
                StepEnd.Done when step.From.Length > 0 => (Message)$"done in job {new MessagePart.Form(step.From)}, {facts.Times.Stamp(step.Left!.Value)}",
                StepEnd.Done when step.EndedByItself => $"done by itself, nothing to do {facts.Times.Time(step.Left!.Value)}",
                StepEnd.Done when step.Entered is { } entered => $"done {facts.Times.Time(entered)} to {facts.Times.Time(step.Left!.Value)}",
                StepEnd.Done => $"done {facts.Times.Time(step.Left!.Value)}",
                StepEnd.Skipped => $"SKIPPED {facts.Times.Time(step.Left!.Value)}: {new MessagePart.Form(step.Reason)}",
                StepEnd.UnderWay => $"UNDER WAY since {facts.Times.Time(step.Entered!.Value)}",
                _ => "not reached",
            };
            page.Pair(FormattableString.Invariant($"{++number}"), $"{language.Name(step.Step.Title)}: {language.Shown(end)}", 4);
        }
    }

    static void Timers(PlainPage page, JobRecord facts, Language language) => List(page, language.Text("Timers"), facts.Timers.Select(timer =>
        language.Shown($"{Title(facts, timer.StepId)}: {timer.Duration} from {facts.Times.Time(timer.Started)}")
        + language.Shown(timer.Ended is { } ended ? (Message)$", ended {facts.Times.Time(ended)}" : ", DID NOT END")
        + (timer.Starts > 1 ? language.Shown($", started {timer.Starts} times") : "")
        + (facts.StepOf(timer.StepId)?.Step.Timer is { } planned ? $" [{language.Name(planned.Source)}]" : "")), language.Text("None was started."));

    static void Happenings(PlainPage page, JobRecord facts, Language language)
    {
        List(page, language.Text("Adjustments"), Sentences.Adjustments(facts, language), language.Text("None."));
        List(page, language.Text("Questions answered"), facts.Answers.Select(answer =>
            $"{facts.Times.Time(answer.At)} {(facts.StepOf(answer.StepId)?.Step.Question is { } question ? language.Shown(question.Text) : answer.StepId)} {language.Text(Labels.YesNo(answer.Answer))}"), language.Text("None."));
        List(page, language.Text("Notes"), facts.Notes.Select(note => $"{facts.Times.Time(note.At)} {language.Name(Title(facts, note.StepId))}: {note.Text}"), language.Text("None."));
        int recordings = facts.Attachments.Count(one => !one.IsPhoto);
        string[] photos =
        [
            .. recordings == 0 ? Array.Empty<string>() : [language.Shown(recordings == 1 ? (Message)"1 recording beside the record; the office copy lists it" : $"{recordings} recordings beside the record; the office copy lists them")],
            .. facts.Photos.Select(photo => $"{facts.Times.Time(photo.At)} {language.Name(Title(facts, photo.StepId))}: {photo.Name} sha256 {photo.Sha256}"),
        ];
        if (photos.Length > 0)
        {
            List(page, language.Text("Recordings and photos"), photos, "");
        }
        string[] stops = [.. Interruptions.Of(facts, language)];
        if (stops.Length > 0)
        {
            List(page, language.Text("Safety and stops"), stops, "");
        }
        List(page, language.Text("Understood, but not carried out"), facts.Refusals.Select(refused =>
            $"{facts.Times.Time(refused.At)} \"{refused.Said}\": {language.Shown(refused.Reason)}"), language.Text("Nothing."));
    }

    static void Foot(PlainPage page, JobRecord facts, int events, string? checkpoint, Language language)
    {
        page.Heading(language.Text("Origin"));
        if (facts.Job is { } job)
        {
            page.Pair(language.Text("Checklist"), language.Shown($"{As(facts.Plan.Checklist.Id)} version {As(facts.Plan.Checklist.Version)}, file {As(job.Checklist.Name)}, sha256 {Short(job.Checklist)}"));
            page.Pair(language.Text("Appliance"), language.Shown($"file {As(job.Appliance.Name)}, sha256 {Short(job.Appliance)}"));
            page.Pair(language.Text("Site"), language.Shown($"file {As(job.Site.Name)}, sha256 {Short(job.Site)}"));
            page.Pair(language.Text("Program"), language.Shown($"version {As(job.ProgramVersion)}; heard by {As(job.Recogniser)}"));
        }
        page.Pair(language.Text("Checkpoint"), checkpoint ?? language.Shown($"none ({events} events)"));
        page.Blank();
        page.Line(language.Text("Uncertainties are expanded (k = 2). This record says what was said and done and what followed from it. Local codes, the maker's instructions and the licensed person decide."));
    }

    static void List(PlainPage page, string heading, IEnumerable<string> lines, string ifNone)
    {
        string[] all = [.. lines];
        page.Heading(heading);
        foreach (string line in all)
        {
            page.Line($"- {line}", 0, 2);
        }

        if (all.Length == 0)
        {
            page.Line(ifNone);
        }
    }

    static string Title(JobRecord facts, string stepId) => StepTitles.Of(facts.Plan, stepId);

    /// <summary>What was named: it stands as it was recorded in every language.</summary>
    static MessagePart As(string recorded) => new MessagePart.Form(recorded);

    static MessagePart Short(FileCopy file) => As(file.Sha256[..Math.Min(16, file.Sha256.Length)]);
}
