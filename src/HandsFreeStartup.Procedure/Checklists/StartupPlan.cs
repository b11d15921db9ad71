using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Checklists;

/// <summary>A checklist made ready for one appliance at one site: branches chosen, rooms walked one by one, limits found.</summary>
public sealed class StartupPlan
{
    readonly ImmutableDictionary<string, DeclaredLimit> _limits;
    readonly ImmutableDictionary<string, int> _indices;

    StartupPlan(Checklist checklist, ApplianceSheet appliance, Site site, Settings settings, double timerFactor, string? occasion, ImmutableArray<string> others)
    {
        Checklist = checklist;
        Appliance = appliance;
        Site = site;
        Settings = settings;
        TimerFactor = timerFactor;
        Occasion = checklist.Occasions.FirstOrDefault(known => occasion is null || known.Id == occasion);
        Branch branch = appliance.Branch with { Occasion = Occasion?.Id };
        ImmutableArray<Step> steps = [.. OthersRunning.Before(InOrder(checklist.Steps.Where(step => step.OnlyFor.Holds(branch)).Select(Measurable).OfType<Step>(), settings.StageOrder), others)];
        ILookup<string, string> walks = steps.Where(step => step.Kind == StepKind.Walk)
            .SelectMany(walk => RoomByRoom(walk, site).Select(room => (walk.Id, Room: room.Id)))
            .ToLookup(room => room.Id, room => room.Room);
        HashSet<string> known = [.. steps.Select(step => step.Id)];
        Steps = [.. steps
            .SelectMany(step => step.Kind == StepKind.Walk ? RoomByRoom(step, site) : [step])
            .Select(step => Ready(step) with
            {
                Voids = [.. step.Voids.Where(known.Contains).SelectMany(id => walks.Contains(id) ? walks[id] : [id])],
                Starts = [.. step.Starts.Where(known.Contains)],
                After = step.After is { } wait && known.Contains(wait) ? wait : null,
                Question = step.Question is { } question ? question with { Repeats = [.. question.Repeats.Where(known.Contains)] } : null,
            })];
        MakingSafe = Checklists.MakingSafe.Of(Steps.SelectMany(step => step.Opens));
        All = [.. Steps, .. MakingSafe];
        SpokenSteps = SpokenStep.Of(Steps.Select(step => (step.Id, step.Title)));
        _indices = All.Select((step, index) => (step.Id, Index: index)).DistinctBy(step => step.Id).ToImmutableDictionary(step => step.Id, step => step.Index);
        _limits = checklist.Limits.Concat(appliance.Limits)
            .GroupBy(limit => limit.Name)
            .ToImmutableDictionary(same => same.Key, same => same.Last());
    }

    /// <summary>The checklist it came from.</summary>
    public Checklist Checklist { get; }

    /// <summary>The appliance it is for.</summary>
    public ApplianceSheet Appliance { get; }

    /// <summary>What the appliance burns.</summary>
    /// <exception cref="InvalidOperationException">No fuel of that id is known; the reader of sheets refuses such a sheet.</exception>
    public Fuel Fuel => Fuel.Find(Appliance.FuelId) ?? throw new InvalidOperationException($"No fuel '{Appliance.FuelId}'.");

    /// <summary>The site it is for.</summary>
    public Site Site { get; }

    /// <summary>What the lead technician has set.</summary>
    public Settings Settings { get; }

    /// <summary>1 for a real start-up; less shortens every timer for a demonstration.</summary>
    public double TimerFactor { get; }

    /// <summary>What brings the technician to the furnace; null where the checklist knows no occasions.</summary>
    public Occasion? Occasion { get; }

    /// <summary>As shown: title of the checklist and of the occasion.</summary>
    public string Title => Occasion is null ? Checklist.Title : $"{Checklist.Title}, {Occasion.Title}";

    /// <summary>The steps that apply, in order; no step of kind <see cref="StepKind.Walk"/> is left.</summary>
    public ImmutableArray<Step> Steps { get; }

    /// <summary>The steps of the start-up as they are named after "go to".</summary>
    public ImmutableArray<SpokenStep> SpokenSteps { get; }

    /// <summary>The steps that make a furnace safe that is not put into service, in order.</summary>
    public ImmutableArray<Step> MakingSafe { get; }

    /// <summary>The steps of the start-up, then those of making safe: what <see cref="IndexOf"/> counts through.</summary>
    public ImmutableArray<Step> All { get; }

    /// <summary>Makes the plan.</summary>
    /// <param name="checklist">The procedure.</param>
    /// <param name="appliance">The furnace.</param>
    /// <param name="site">The place.</param>
    /// <param name="timerFactor">1 for a real start-up; less shortens every timer for a demonstration.</param>
    /// <param name="settings">What the lead technician has set, or null for nothing.</param>
    /// <param name="occasion">Id of one of the checklist's occasions; null for its first, or where it has none.</param>
    /// <param name="others">Titles of the other appliances that run while the rooms are walked; none where only this one was started up at the place.</param>
    public static StartupPlan From(
        Checklist checklist, ApplianceSheet appliance, Site site, double timerFactor = 1, Settings? settings = null, string? occasion = null, ImmutableArray<string> others = default) =>
        new(checklist, appliance, site, settings ?? Settings.Default, timerFactor, occasion, others);

    /// <summary>The limit of that name for <paramref name="scope"/> (<c>name/scope</c> before <c>name</c>), or null. The appliance's own limit wins.</summary>
    public DeclaredLimit? Limit(string? name, string? scope) =>
        name is null ? null
        : scope is not null && _limits.TryGetValue($"{name}/{scope}", out DeclaredLimit? scoped) ? scoped
        : _limits.GetValueOrDefault(name);

    /// <summary>The field as it is said under the settings, with what is usual for this furnace in <paramref name="scope"/>.</summary>
    public Field FieldOf(string id, string? scope = null)
    {
        Field field = UsualReadings.Of(Fields.Find(id) ?? throw new InvalidOperationException($"There is no field '{id}'."), Appliance, scope);
        return FieldUnits.In(field, Settings.In(field.Unit));
    }

    /// <summary>Position of the step of that id; an internal error if there is none.</summary>
    public int IndexOf(string stepId) =>
        _indices.TryGetValue(stepId, out int index) ? index : throw new InvalidOperationException($"The checklist has no step '{stepId}'.");

    /// <summary>Puts neighboring blocks of the firing stages in the order of the settings; nothing else moves.</summary>
    static IEnumerable<Step> InOrder(IEnumerable<Step> steps, StageOrder order)
    {
        List<Step> blocks = [];
        foreach (Step? step in steps.Append(null))
        {
            if (step?.FireBlock is null)
            {
                foreach (Step ordered in order switch
                {
                    StageOrder.LowFirst => blocks.OrderBy(block => block.FireBlock != "low"),
                    StageOrder.HighFirst => blocks.OrderBy(block => block.FireBlock != "high"),
                    _ => blocks.AsEnumerable(),
                })
                {
                    yield return ordered;
                }

                blocks.Clear();
                if (step is not null)
                {
                    yield return step;
                }
            }
            else
            {
                blocks.Add(step);
            }
        }
    }

    /// <summary>The step without readings that no instrument of the site gives; null where nothing of it is left to read.</summary>
    Step? Measurable(Step step)
    {
        ImmutableArray<ReadingDemand> given = [.. step.Readings.Where(demand =>
            Fields.Find(demand.FieldId) is not { NeedsInstrument: true } || Site.Instruments.Any(instrument => instrument.FieldId == demand.FieldId))];
        return given.IsEmpty && !step.Readings.IsEmpty ? null : step with { Readings = given };
    }

    Step Ready(Step step) => step with
    {
        Do = step.Do.With("{seal}", Appliance.SealFor).With("{derate}", Derating.Text(Appliance, Site)),
        Timer = step.Timer is { } timer ? timer with { Duration = timer.Duration * TimerFactor } : null,
        Readings = [.. step.Readings.Select(demand => demand.Settles is { } settles ? demand with { Settles = settles with { Window = settles.Window * TimerFactor } } : demand)],
    };

    static IEnumerable<Step> RoomByRoom(Step walk, Site site) => site.Rooms.Select(room => walk with
    {
        Id = $"{walk.Id}/{room.Replace(' ', '-')}",
        Kind = StepKind.Read,
        Title = $"{walk.Title}: {room}",
        Do = walk.Do.With("{room}", room),
        Prompt = walk.Prompt?.With("{room}", room),
        Scope = room,
    });
}
