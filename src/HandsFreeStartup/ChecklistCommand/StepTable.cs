using System.Collections.Immutable;
using System.Globalization;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.ChecklistCommand;

/// <summary>Prints the steps of a checklist, or of the plan that it becomes for one furnace, as a table.</summary>
public static class StepTable
{
    const int Width = 110;
    const int DetailColumn = 13;

    /// <summary>Every step of a checklist, with the furnaces and occasions that it is for.</summary>
    public static void Write(Checklist checklist, TextWriter output)
    {
        output.WriteLine($"{checklist.Title} ({checklist.Id}, version {checklist.Version})");
        if (!checklist.Occasions.IsEmpty)
        {
            output.WriteLine($"service types: {string.Join(", ", checklist.Occasions.Select(occasion => $"{occasion.Id} ({occasion.Title})"))}");
        }

        Write(checklist.Steps, output);
        UserFileTable.Write(checklist.Limits, output);
    }

    /// <summary>The steps that apply to one furnace at one site, with the limits that judge them.</summary>
    public static void Write(StartupPlan plan, TextWriter output)
    {
        output.WriteLine(FormattableString.Invariant($"{plan.Title} ({plan.Checklist.Id}, version {plan.Checklist.Version}): {plan.Steps.Length} steps"));
        output.WriteLine($"for {plan.Appliance.Title}");
        output.WriteLine($"at {plan.Site.Title}");
        Write([.. plan.Steps.Select(step => step with { OnlyFor = Condition.Always })], output);
        UserFileTable.Write([.. plan.Checklist.Limits.Concat(plan.Appliance.Limits).GroupBy(limit => limit.Name).Select(same => same.Last())], output);
        UserFileTable.WriteMissing(MonoxideProof.Missing(plan)?.Shown, output);
    }

    static void Write(ImmutableArray<Step> steps, TextWriter output)
    {
        int id = steps.Max(step => step.Id.Length);
        int number = 0;
        foreach (IGrouping<string, Step> section in steps.GroupBy(step => step.Section))
        {
            output.WriteLine();
            output.WriteLine(section.Key);
            foreach (Step step in section)
            {
                output.WriteLine($"{++number,4}  {Kind(step),-6} {step.Id.PadRight(id)}  {step.Title}");
                foreach (string line in TextLines.Wrap(string.Join("; ", Details(step)), Width - DetailColumn))
                {
                    output.WriteLine($"{new string(' ', DetailColumn)}{line}");
                }
            }
        }
    }

    static string Kind(Step step) => step.Kind.ToString().ToLowerInvariant();

    static IEnumerable<string> Details(Step step) =>
    [
        .. When(step.IsSafetyStop, "safety stop"),
        .. When(step.Scope is not null, step.Scope),
        .. step.Readings.Select(Reading),
        .. step.Timer is { } timer ? [$"{string.Create(CultureInfo.InvariantCulture, $"{timer.Duration:m\\:ss}")} minutes ({timer.Source})"] : Array.Empty<string>(),
        .. step.Question is { } question ? Answers(question) : [],
        .. step.Opens.Select(thing => $"opens {thing.Name}{(thing.IsGasSide ? " (gas side)" : "")}"),
        .. step.Closes.Select(name => $"closes {name}"),
        .. step.Proves.Select(name => $"leak check of {name}"),
        .. When(!step.Voids.IsEmpty, $"voids {string.Join(", ", step.Voids)}"),
        .. step.Starts.Select(id => $"starts {id}"),
        .. When(step.After is not null, $"judged after {step.After}"),
        .. When(step.OnlyFor.Text.Length > 0, $"only for {step.OnlyFor.Text}"),
    ];

    static string Reading(ReadingDemand demand) =>
        demand.LimitName is null ? $"{demand.FieldId} (no limit)" : demand.LimitName == demand.FieldId ? demand.FieldId : $"{demand.FieldId} (limit {demand.LimitName})";

    static IEnumerable<string> Answers(Question question)
    {
        yield return $"proper answer {(question.Proper ? "yes" : "no")}";
        if (question.StopsForGas)
        {
            yield return "the other one stops as gas smell does";
        }

        if (question.UnsafeAfter is { } times)
        {
            yield return FormattableString.Invariant($"unsafe after {times} other {(times == 1 ? "answer" : "answers")}");
        }
    }

    static IEnumerable<string> When(bool holds, string? text) => holds ? [text!] : [];
}
