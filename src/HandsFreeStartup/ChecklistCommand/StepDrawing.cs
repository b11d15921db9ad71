using System.Text;
using HandsFreeStartup.Procedure.Checklists;

namespace HandsFreeStartup.ChecklistCommand;

/// <summary>The steps of a checklist as a Mermaid flowchart: chapters as boxes, returns after an adjustment as dotted arrows.</summary>
public static class StepDrawing
{
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

        foreach ((Step step, Step next) in checklist.Steps.Zip(checklist.Steps.Skip(1)))
        {
            text.Append(FormattableString.Invariant($"  {Node(step)} --> {Node(next)}\n"));
        }

        foreach (Step step in checklist.Steps)
        {
            foreach (string target in step.Voids)
            {
                text.Append(FormattableString.Invariant($"  {Node(step)} -. measure again .-> {Node(checklist.Steps.First(other => other.Id == target))}\n"));
            }
        }
        return text.ToString();
    }

    /// <summary>A prefix keeps ids apart from Mermaid's own words, such as "end".</summary>
    static string Node(Step step) => $"step-{step.Id}";

    static string Shape(Step step)
    {
        string label = $"\"{Quoted(step.Title)}{(step.IsSafetyStop ? " (safety stop)" : "")}\"";
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
