using System.Collections.Immutable;

namespace HandsFreeStartup.Procedure.Checklists;

/// <summary>A checklist made ready for one appliance at one site: branches chosen, rooms walked one by one, limits found.</summary>
public sealed class StartupPlan
{
    readonly ImmutableDictionary<string, DeclaredLimit> _limits;

    StartupPlan(Checklist checklist, ApplianceSheet appliance, Site site, double timerFactor)
    {
        Checklist = checklist;
        Appliance = appliance;
        Site = site;
        Steps = [.. checklist.Steps
            .Where(step => step.OnlyForStages is null || step.OnlyForStages == appliance.Stages)
            .Where(step => step.OnlyForFuel is null || step.OnlyForFuel == appliance.FuelId)
            .SelectMany(step => step.Kind == StepKind.Walk ? RoomByRoom(step, site) : [step])
            .Select(step => step.Timer is null ? step : step with { Timer = step.Timer with { Duration = step.Timer.Duration * timerFactor } })];
        _limits = checklist.Limits.Concat(appliance.Limits)
            .GroupBy(limit => limit.Name)
            .ToImmutableDictionary(same => same.Key, same => same.Last());
    }

    /// <summary>The checklist it came from.</summary>
    public Checklist Checklist { get; }

    /// <summary>The appliance it is for.</summary>
    public ApplianceSheet Appliance { get; }

    /// <summary>The site it is for.</summary>
    public Site Site { get; }

    /// <summary>The steps that apply, in order; no step of kind <see cref="StepKind.Walk"/> is left.</summary>
    public ImmutableArray<Step> Steps { get; }

    /// <summary>Makes the plan.</summary>
    /// <param name="checklist">The procedure.</param>
    /// <param name="appliance">The furnace.</param>
    /// <param name="site">The place.</param>
    /// <param name="timerFactor">1 for a real start-up; less shortens every timer for a demonstration.</param>
    public static StartupPlan From(Checklist checklist, ApplianceSheet appliance, Site site, double timerFactor = 1) =>
        new(checklist, appliance, site, timerFactor);

    /// <summary>The limit of that name for <paramref name="scope"/> (<c>name/scope</c> before <c>name</c>), or null. The appliance's own limit wins.</summary>
    public DeclaredLimit? Limit(string? name, string? scope) =>
        name is null ? null
        : scope is not null && _limits.TryGetValue($"{name}/{scope}", out DeclaredLimit? scoped) ? scoped
        : _limits.GetValueOrDefault(name);

    /// <summary>Position of the step of that id; an internal error if there is none.</summary>
    public int IndexOf(string stepId)
    {
        int index = Steps.Select(step => step.Id).ToList().IndexOf(stepId);
        return index >= 0 ? index : throw new InvalidOperationException($"The checklist has no step '{stepId}'.");
    }

    static IEnumerable<Step> RoomByRoom(Step walk, Site site) => site.Rooms.Select(room => walk with
    {
        Id = $"{walk.Id}/{room.Replace(' ', '-')}",
        Kind = StepKind.Read,
        Title = $"{walk.Title}: {room}",
        Do = walk.Do.Replace("{room}", room, StringComparison.Ordinal),
        Scope = room,
    });
}
