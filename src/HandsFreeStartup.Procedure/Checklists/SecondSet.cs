namespace HandsFreeStartup.Procedure.Checklists;

/// <summary>The time between two sets of readings that must agree. It stands among the timers of the steps.</summary>
static class SecondSet
{
    const string Prefix = "second-set/";

    /// <summary>Its name among the timers.</summary>
    public static string IdOf(string stepId) => Prefix + stepId;

    /// <summary>The step that measures the sets; null for another timer.</summary>
    public static string? StepOf(string timerId) => timerId.StartsWith(Prefix, StringComparison.Ordinal) ? timerId[Prefix.Length..] : null;
}
