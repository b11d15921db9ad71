using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Messages;
using HandsFreeStartup.Procedure.Record;

namespace HandsFreeStartup.Reports.Summary;

/// <summary>What the owner is told in writing when a furnace is not put into service.</summary>
public static class OutOfServiceNotice
{
    const int Width = 72;

    /// <summary>The notice as plain text, 72 columns wide; null where the job did not end that way.</summary>
    /// <param name="plan">What the job was led by.</param>
    /// <param name="events">All events of the job, first to last.</param>
    /// <param name="language">Of the owner; null for English.</param>
    public static string? Of(StartupPlan plan, IReadOnlyList<StartupEvent> events, Language? language = null)
    {
        language ??= Language.English;
        JobRecord facts = JobRecord.Of(plan, events);
        if (facts.OutOfService is not { } ended)
        {
            return null;
        }

        UnsafeFound? found = facts.Unsafe.LastOrDefault();
        PlainPage page = new(Width);
        page.Rule('=');
        EndKind kind = found is not null ? EndKind.Unsafe : facts.Decided?.Kind ?? EndKind.NotInOrder;
        page.Line(language.Text(kind switch
        {
            EndKind.Unsafe => "NOTICE TO THE OWNER: UNSAFE FURNACE, NOT IN SERVICE",
            EndKind.OwnersWish => "NOTICE TO THE OWNER: FURNACE NOT PUT INTO SERVICE, BY YOUR WISH",
            _ => "NOTICE TO THE OWNER: FURNACE NOT PUT INTO SERVICE",
        }));
        if (facts.Job is { Mark: { } mark })
        {
            page.Line($"{language.Text(mark)}. {language.Text("No furnace was looked at. This is no notice.")}");
        }

        page.Rule('=');
        page.Pair(language.Text("Furnace"), plan.Appliance.Title);
        page.Pair(language.Text("Where"), $"{plan.Site.Title}; {plan.Site.Address}");
        page.Pair(language.Text("For"), plan.Site.Customer);
        page.Pair(language.Text("Found"), language.Shown($"{facts.Times.Stamp(ended.At)} by {facts.Job?.Technician ?? "unknown"}"));
        page.Pair(language.Text("Because"), (found is null ? null : language.Shown(found.Condition)) ?? facts.Decided?.Reason ?? ended.Reason);
        page.Blank();
        page.Line($"{language.Text("Do not use this furnace. It is to be shut off, with its gas closed, and tagged.")} {language.Text(kind == EndKind.OwnersWish
            ? "It may be used only after a licensed person has started it up anew."
            : "It may be used again only after a licensed person has corrected the cause and has started it up anew.")}");
        page.Line(language.Text("Local codes, the maker's instructions and the licensed person decide, also over whom else to tell."));
        foreach (StepFate step in facts.Steps.Skip(plan.Steps.Length).Where(step => step.End is not StepEnd.NotReached))
        {
            page.Line($"- {language.Name(step.Step.Title)}: {language.Text(step.End == StepEnd.Done ? "done" : "NOT DONE")}", 0, 2);
        }

        foreach (ThingFate thing in facts.Things.Where(thing => facts.Decided is { } decided && thing.Closed >= decided.At && !thing.IsOpen))
        {
            page.Line($"- {language.Text(thing.Proved is null ? "Closed" : "Closed and checked for leaks")}: {language.Name(thing.Thing.Name)}", 0, 2);
        }

        foreach (ThingFate thing in facts.Things.Where(thing => thing.IsOpen))
        {
            page.Line($"- {language.Text(thing.Closed is null ? "Still open" : "Closed, but not checked for leaks")}: {language.Name(thing.Thing.Name)}", 0, 2);
        }

        page.Blank();
        page.Line($"{language.Text("Signature of the technician")}: ____________________________");
        page.Blank();
        page.Line($"{language.Text("Received by the owner, date")}: ____________________________");
        return page.ToString();
    }
}
