namespace HandsFreeStartup.Fleet.Figures;

/// <summary>How a technician treats the wait of a step.</summary>
/// <param name="Technician">Who.</param>
/// <param name="Step">Id of the step.</param>
/// <param name="Count">Waits that were begun.</param>
/// <param name="Short">Of these, cut short.</param>
/// <param name="MedianShare">Median of the share that was waited in those cut short, 0 to 1; null where no end is told.</param>
public sealed record WaitHabit(string Technician, string Step, int Count, int Short, double? MedianShare)
{
    /// <summary>Whether it is a habit: three or more, and a quarter or more of all (common practice, no source).</summary>
    public bool IsHabit => Short >= 3 && 4 * Short >= Count;
}
