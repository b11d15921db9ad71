namespace HandsFreeStartup.Procedure.Safety;

/// <summary>What must happen after a smell of gas before anything goes on.</summary>
static class GasSmell
{
    /// <summary>Under this name the wait stands among the timers of the steps.</summary>
    public const string WaitId = "gas-smell-wait";

    /// <summary>As shown.</summary>
    public const string WaitTitle = "Wait after a smell of gas";

    /// <summary>The fresh question before the reason is heard.</summary>
    public const string Question = "Smell again, also near the floor: do you smell gas now?";

    /// <summary>Five minutes with the gas off, then smell near the floor (lighting instructions of gas appliances, second-hand).</summary>
    public static TimeSpan Wait { get; } = TimeSpan.FromMinutes(5);
}
