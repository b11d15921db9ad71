using System.Text;
using HandsFreeStartup.Procedure.Checklists;

namespace HandsFreeStartup.ChecklistCommand;

/// <summary>
/// The steps of a checklist as a Mermaid flowchart: chapters as boxes, branches as the words below a step, returns after an adjustment as dotted arrows,
/// and the endings to which an answer leads.
/// </summary>
public static class StepDrawing
{
    const string Stopped = "stopped";
    const string Unsafe = "unsafe";
    const string Signed = "signed";

    /// <summary>The drawing.</summary>
    public static string Of(Checklist checklist)
    {
        StringBuilder text = new("flowchart TD\n");
        int chapter = 0;
        foreach (IGrouping<string, Step> section in checklist.Steps.GroupBy(step => step.Section))
        {
            text.Append(FormattableString.Invariant($"  subgraph chapter{++chapter}[\"{Quoted(section.Key)}\"]\n"));
            foreach (Step step in section)
            {
                text.Append(FormattableString.Invariant($"    {Node(step)}{Shape(step)}\n"));
            }
            text.Append("  end\n");
        }

        text.Append(FormattableString.Invariant($"  {Signed}([\"signed\"])\n"));
        text.Append(checklist.Steps.Any(step => step.Question is { StopsForGas: true }) ? $"  {Stopped}([\"stopped: gas smell\"])\n" : "");
        text.Append(checklist.Steps.Any(step => step.Question is { UnsafeAfter: not null }) ? $"  {Unsafe}([\"unsafe: not put into service\"])\n" : "");
        foreach ((Step step, Step next) in checklist.Steps.Zip(checklist.Steps.Skip(1)))
        {
            text.Append(FormattableString.Invariant($"  {Node(step)} --> {Node(next)}\n"));
        }

        foreach (Step step in checklist.Steps)
        {
            foreach (string line in Ways(step, checklist))
            {
                text.Append(FormattableString.Invariant($"  {Node(step)} {line}\n"));
            }
        }
        return text.ToString();
    }

    static IEnumerable<string> Ways(Step step, Checklist checklist)
    {
        if (step.Kind == StepKind.Sign)
        {
            yield return $"--> {Signed}";
        }

        if (step.Question is { } question)
        {
            string answer = question.Proper ? "no" : "yes";
            if (question.StopsForGas)
            {
                yield return $"-- {answer} --> {Stopped}";
            }

            if (question.UnsafeAfter is { } times)
            {
                yield return times == 1 ? $"-- {answer} --> {Unsafe}" : FormattableString.Invariant($"-- {answer}, {times} times --> {Unsafe}");
            }
        }

        foreach (string target in step.Kind == StepKind.Adjust ? step.Voids : [])
        {
            yield return $"-. measure again .-> {Node(checklist.Steps.First(other => other.Id == target))}";
        }
    }

    /// <summary>A prefix keeps ids apart from Mermaid's own words, such as "end".</summary>
    static string Node(Step step) => $"step-{step.Id}";

    static string Shape(Step step)
    {
        string only = step.OnlyFor.Text is { Length: > 0 } text ? $"<br/>only for {Quoted(text)}" : "";
        string label = $"\"{Quoted(step.Title)}{(step.IsSafetyStop ? " (safety stop)" : "")}{only}\"";
        return step.Kind switch
        {
            StepKind.Ask => $"{{{{{label}}}}}",
            StepKind.Open or StepKind.Close => $"[/{label}/]",
            StepKind.Wait or StepKind.Sign => $"([{label}])",
            _ => $"[{label}]",
        };
    }

    static string Quoted(string text) => text.Replace("\"", "#quot;", StringComparison.Ordinal);
}
