using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Safety;

namespace HandsFreeStartup.Procedure.Record;

/// <summary>Titles of steps and waits for whoever reads a record.</summary>
public static class StepTitles
{
    /// <summary>Title of the step or wait of that id; the id itself where the plan does not know it, as in a record that does not verify.</summary>
    public static string Of(StartupPlan plan, string id)
    {
        (string what, string stepId) = SecondSet.StepOf(id) is { } measured ? ("Second set: ", measured)
            : MonoxideAgain.StepOf(id) is { } again ? ("Carbon monoxide again: ", again)
            : ("", id);
        string? title = plan.All.FirstOrDefault(step => step.Id == stepId)?.Title;
        return SafetyWait.Find(id)?.Title ?? (title is null ? id : $"{what}{title}");
    }
}
