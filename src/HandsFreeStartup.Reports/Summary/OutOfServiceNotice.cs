using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Record;

namespace HandsFreeStartup.Reports.Summary;

/// <summary>What the owner is told in writing when a furnace is not put into service.</summary>
public static class OutOfServiceNotice
{
    const int Width = 72;

    /// <summary>The notice as plain text, 72 columns wide; null where the job did not end that way.</summary>
    /// <param name="plan">What the job was led by.</param>
    /// <param name="events">All events of the job, first to last.</param>
    public static string? Of(StartupPlan plan, IReadOnlyList<StartupEvent> events)
    {
        JobRecord facts = JobRecord.Of(plan, events);
        if (facts.OutOfService is not { } ended)
        {
            return null;
        }

        UnsafeFound? found = facts.Unsafe.LastOrDefault();
        PlainPage page = new(Width);
        page.Rule('=');
        EndKind kind = found is not null ? EndKind.Unsafe : facts.Decided?.Kind ?? EndKind.NotInOrder;
        page.Line(kind switch
        {
            EndKind.Unsafe => "NOTICE TO THE OWNER: UNSAFE FURNACE, NOT IN SERVICE",
            EndKind.OwnersWish => "NOTICE TO THE OWNER: FURNACE NOT PUT INTO SERVICE, BY YOUR WISH",
            _ => "NOTICE TO THE OWNER: FURNACE NOT PUT INTO SERVICE",
        });
        if (facts.Job is { Mark: { } mark })
        {
            page.Line($"{mark}. No furnace was looked at. This is no notice.");
        }

        page.Rule('=');
        page.Pair("Furnace", plan.Appliance.Title);
        page.Pair("Where", $"{plan.Site.Title}; {plan.Site.Address}");
        page.Pair("For", plan.Site.Customer);
        page.Pair("Found", $"{facts.Times.Stamp(ended.At)} by {facts.Job?.Technician ?? "unknown"}");
        page.Pair("Because", found?.Condition.Shown ?? facts.Decided?.Reason ?? ended.Reason);
        page.Blank();
        page.Line($"Do not use this furnace. It is to be shut off, with its gas closed, and tagged. {(kind == EndKind.OwnersWish
            ? "It may be used only after a licensed person has started it up anew."
            : "It may be used again only after a licensed person has corrected the cause and has started it up anew.")}");
        page.Line("Local codes, the maker's instructions and the licensed person decide, also over whom else to tell.");
        foreach (StepFate step in facts.Steps.Skip(plan.Steps.Length).Where(step => step.End is not StepEnd.NotReached))
        {
            page.Line($"- {step.Step.Title}: {(step.End == StepEnd.Done ? "done" : "NOT DONE")}", 0, 2);
        }

        foreach (ThingFate thing in facts.Things.Where(thing => facts.Decided is { } decided && thing.Closed >= decided.At && !thing.IsOpen))
        {
            page.Line($"- Closed{(thing.Proved is null ? "" : " and checked for leaks")}: {thing.Thing.Name}", 0, 2);
        }

        foreach (ThingFate thing in facts.Things.Where(thing => thing.IsOpen))
        {
            page.Line($"- {(thing.Closed is null ? "Still open" : "Closed, but not checked for leaks")}: {thing.Thing.Name}", 0, 2);
        }

        page.Blank();
        page.Line("Signature of the technician: ____________________________");
        page.Blank();
        page.Line("Received by the owner, date: ____________________________");
        return page.ToString();
    }
}
