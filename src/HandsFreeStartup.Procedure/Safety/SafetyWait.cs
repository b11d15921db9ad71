using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Events;

namespace HandsFreeStartup.Procedure.Safety;

/// <summary>A wait after an alarm, before anything goes on. It belongs to no step.</summary>
/// <param name="Id">Under this name it stands among the timers of the steps.</param>
/// <param name="Cause">The alarm.</param>
/// <param name="Title">As shown.</param>
/// <param name="Duration">How long.</param>
/// <param name="Meanwhile">What is done meanwhile, as told when it is asked too early.</param>
/// <param name="Source">Who says so.</param>
public sealed record SafetyWait(string Id, StopCause Cause, string Title, TimeSpan Duration, string Meanwhile, string Source)
{
    /// <summary>All of them; an alarm without one has no wait.</summary>
    public static ImmutableArray<SafetyWait> All { get; } =
    [
        new("gas-smell-wait", StopCause.GasSmell, "Wait after a smell of gas", TimeSpan.FromMinutes(5), "with the gas off", "lighting instructions of gas appliances, value from memory"),
        new("monoxide-wait", StopCause.CarbonMonoxide, "Wait after carbon monoxide", TimeSpan.FromMinutes(10), "outside, with doors and windows open", "common practice, no source"),
    ];

    /// <summary>The wait after that alarm, or null.</summary>
    public static SafetyWait? After(StopCause cause) => All.FirstOrDefault(wait => wait.Cause == cause);

    /// <summary>The wait of that id, or null.</summary>
    public static SafetyWait? Find(string id) => All.FirstOrDefault(wait => wait.Id == id);
}
