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
    public static string Of(StartupPlan plan, IReadOnlyList<StartupEvent> events, string? checkpoint)
    {
        JobRecord facts = JobRecord.Of(plan, events);
        PlainPage page = new(Width);
        IReadOnlyList<string> questions = OpenQuestions.Of(facts);
        Head(page, facts, questions.Count);
        List(page, "To be looked at", questions, Sentences.NothingElse(facts.Exceptions.Length));
        if (Sentences.CarriedOver(facts) is { Count: > 0 } carried)
        {
            List(page, "From the returned job", carried, "");
        }

        if (Sentences.Beside(facts) is { Count: > 0 } beside)
        {
            List(page, "At the same address", beside, "");
        }

        Steps(page, facts);
        new ReadingSection(page, facts).Write();
        Timers(page, facts);
        Things(page, facts);
        Happenings(page, facts);
        Foot(page, facts, events.Count, checkpoint);
        return OutOfServiceNotice.Of(plan, events) is { } notice ? $"{page}\n{notice}" : page.ToString();
    }

    static void Head(PlainPage page, JobRecord facts, int questions)
    {
        StartupPlan plan = facts.Plan;
        ImmutableArray<JobException> exceptions = facts.Exceptions;
        page.Rule('=');
        page.Line($"RECORD OF A START-UP: {plan.Title}");
        if (facts.Job is { Mark: { } mark } job)
        {
            page.Line(job.Rehearsal is null
                ? "DEMONSTRATION. Timers were shortened or recordings played; no furnace was started. This is no record of a start-up."
                : $"{mark}. {job.MarkReason} This is no record of a start-up.");
        }
        page.Rule('=');
        if (!exceptions.IsEmpty)
        {
            List(page, Sentences.ExceptionsTitle(exceptions.Length), exceptions.Select(exception => Sentences.Of(exception, facts.Times)), "");
            page.Blank();
        }

        CopyVerdict verdict = CopyVerdict.Of(facts, questions);
        page.Line(verdict.Word.ToUpperInvariant());
        page.Line(verdict.Sentence);
        page.Blank();
        page.Pair("Job", facts.Job?.JobId ?? "unknown");
        page.Pair("Appliance", plan.Appliance.Title);
        page.Pair("Site", $"{plan.Site.Title}; {plan.Site.Address}");
        page.Pair("Customer", plan.Site.Customer);
        page.Pair("Technician", facts.Job?.Technician ?? "unknown");
        if (facts is { Began: { } began, LastAt: { } last })
        {
            page.Pair("Begun", facts.Times.Stamp(began));
            page.Pair("Last event", facts.Times.Stamp(last));
            page.Pair("All times", facts.Times.Zone);
        }
    }

    static void Steps(PlainPage page, JobRecord facts)
    {
        page.Heading("Steps");
        int number = 0;
        foreach (StepFate step in facts.Steps)
        {
            string end = step.End switch
            {
                StepEnd.Done when step.From.Length > 0 => $"done in job {step.From}, {facts.Times.Stamp(step.Left!.Value)}",
                StepEnd.Done when step.EndedByItself => $"done by itself, nothing to do {facts.Times.Time(step.Left!.Value)}",
                StepEnd.Done => $"done {(step.Entered is { } entered ? $"{facts.Times.Time(entered)} to " : "")}{facts.Times.Time(step.Left!.Value)}",
                StepEnd.Skipped => $"SKIPPED {facts.Times.Time(step.Left!.Value)}: {step.Reason}",
                StepEnd.UnderWay => $"UNDER WAY since {facts.Times.Time(step.Entered!.Value)}",
                _ => "not reached",
            };
            page.Pair(FormattableString.Invariant($"{++number}"), $"{step.Step.Title}: {end}", 4);
        }
    }

    static void Timers(PlainPage page, JobRecord facts) => List(page, "Timers", facts.Timers.Select(timer =>
        $"{Title(facts, timer.StepId)}: {Durations.Text(timer.Duration)} from {facts.Times.Time(timer.Started)}"
        + (timer.Ended is { } ended ? $", ended {facts.Times.Time(ended)}" : ", DID NOT END")
        + (timer.Starts > 1 ? FormattableString.Invariant($", started {timer.Starts} times") : "")
        + Source(facts, timer.StepId)), "None was started.");

    static void Things(PlainPage page, JobRecord facts) => List(page, "Opened and closed", facts.Things.Select(thing => Sentences.Of(thing, facts.Times)), "Nothing was opened.");

    static void Happenings(PlainPage page, JobRecord facts)
    {
        List(page, "Adjustments", Sentences.Adjustments(facts), "None.");
        List(page, "Questions answered", facts.Answers.Select(answer =>
            $"{facts.Times.Time(answer.At)} {facts.Steps.FirstOrDefault(step => step.Step.Id == answer.StepId)?.Step.Question?.Text ?? answer.StepId} {Labels.YesNo(answer.Answer)}"), "None.");
        List(page, "Notes", facts.Notes.Select(note => $"{facts.Times.Time(note.At)} {Title(facts, note.StepId)}: {note.Text}"), "None.");
        int recordings = facts.Attachments.Count(one => !one.IsPhoto);
        string[] photos =
        [
            .. recordings == 0 ? Array.Empty<string>() : [$"{Numbers.Count(recordings, "recording")} beside the record; the office copy lists them"],
            .. facts.Photos.Select(photo => $"{facts.Times.Time(photo.At)} {Title(facts, photo.StepId)}: {photo.Name} sha256 {photo.Sha256}"),
        ];
        if (photos.Length > 0)
        {
            List(page, "Recordings and photos", photos, "");
        }
        string[] stops = [.. Interruptions.Of(facts)];
        if (stops.Length > 0)
        {
            List(page, "Safety and stops", stops, "");
        }
        List(page, "Understood, but not carried out", facts.Refusals.Select(refused =>
            $"{facts.Times.Time(refused.At)} \"{refused.Said}\": {refused.Reason}"), "Nothing.");
    }

    static void Foot(PlainPage page, JobRecord facts, int events, string? checkpoint)
    {
        page.Heading("Origin");
        if (facts.Job is { } job)
        {
            page.Pair("Checklist", $"{facts.Plan.Checklist.Id} version {facts.Plan.Checklist.Version}, file {job.Checklist.Name}, sha256 {Short(job.Checklist)}");
            page.Pair("Appliance", $"file {job.Appliance.Name}, sha256 {Short(job.Appliance)}");
            page.Pair("Site", $"file {job.Site.Name}, sha256 {Short(job.Site)}");
            page.Pair("Program", $"version {job.ProgramVersion}; heard by {job.Recogniser}");
        }
        page.Pair("Checkpoint", checkpoint ?? FormattableString.Invariant($"none ({events} events)"));
        page.Blank();
        page.Line("Uncertainties are expanded (k = 2). This record says what was said and done and what followed from it. "
            + "Local codes, the maker's instructions and the licensed person decide.");
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

    static string Source(JobRecord facts, string stepId) =>
        facts.Steps.FirstOrDefault(step => step.Step.Id == stepId)?.Step.Timer is { } timer ? $" [{timer.Source}]" : "";

    static string Short(FileCopy file) => file.Sha256[..Math.Min(16, file.Sha256.Length)];
}
