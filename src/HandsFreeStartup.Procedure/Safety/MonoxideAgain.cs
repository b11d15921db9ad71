namespace HandsFreeStartup.Procedure.Safety;

/// <summary>
/// The wait after a value of carbon monoxide that asked to shut the furnace off, before another value proves anything: who measures 40 ppm and one second later 1 ppm
/// has not aired the room. It stands among the timers of the steps.
/// </summary>
static class MonoxideAgain
{
    const string Prefix = "monoxide-again/";

    /// <summary>How long (common practice, no source).</summary>
    public static TimeSpan Duration { get; } = TimeSpan.FromMinutes(5);

    /// <summary>Its name among the timers.</summary>
    public static string IdOf(string stepId) => Prefix + stepId;

    /// <summary>The step that measures again; null for another timer.</summary>
    public static string? StepOf(string timerId) => timerId.StartsWith(Prefix, StringComparison.Ordinal) ? timerId[Prefix.Length..] : null;
}
