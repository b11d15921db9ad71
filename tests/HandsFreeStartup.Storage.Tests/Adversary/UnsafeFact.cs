using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Storage.Tests.Adversary;

/// <summary>Something about the furnace, the house or the work that must not end in a signature as it is.</summary>
/// <param name="Name">In plain words.</param>
sealed record UnsafeFact(string Name)
{
    /// <summary>Readings that are so, by field and scope.</summary>
    public IReadOnlyDictionary<(string FieldId, string Scope), decimal> Readings { get; init; } = new Dictionary<(string, string), decimal>();

    /// <summary>The step whose question has the improper answer; null for none.</summary>
    public string? AskedIn { get; init; }

    /// <summary>The step at which the alarm goes off; null for none.</summary>
    public string? AlarmAt { get; init; }

    /// <summary>What is called out there.</summary>
    public CommandWord Alarm { get; init; }

    /// <summary>The step, which asks for no such thing, at which the CO alarm on the belt shows <see cref="InTheRoom"/>; null for none.</summary>
    public string? ShownAt { get; init; }

    /// <summary>What it shows, ppm.</summary>
    public decimal InTheRoom { get; init; }

    /// <summary>A wait that nobody wants to sit through; null for none.</summary>
    public string? Unwaited { get; init; }

    /// <summary>A step that nobody wants to do; null for none.</summary>
    public string? Undone { get; init; }

    /// <summary>The field whose instrument the site states nothing about; null where it states all.</summary>
    public string? Unstated { get; init; }

    /// <summary>Every fact that a plan gives occasion to.</summary>
    public static IReadOnlyList<UnsafeFact> Of(StartupPlan plan) =>
    [
        .. plan.Steps.SelectMany(step => step.Readings.SelectMany(demand => Outside(plan, step, demand))),
        .. plan.Steps.SelectMany(step => Results(plan, step)),
        .. plan.Steps.Where(step => step.Readings.Any(demand => demand.FieldId == "flue_co")).SelectMany(Flue),
        .. plan.Steps.Where(step => step.Readings.Any(demand => demand.FieldId == "room_co")).SelectMany(Rooms),
        .. new[] { "room_co", "flue_co", "oxygen" }.Where(id => plan.Steps.Any(step => step.Readings.Any(demand => demand.FieldId == id))).Select(id => new UnsafeFact($"nobody states how well {id} is read") { Unstated = id }),
        .. plan.Steps.Where(step => step is { Kind: StepKind.Ask, Question.Choices.IsEmpty: true }).Select(step => new UnsafeFact($"{step.Id} answered improperly") { AskedIn = step.Id }),
        .. plan.Steps.Where(step => step.Kind == StepKind.Wait).Select(step => new UnsafeFact($"{step.Id} not waited for") { Unwaited = step.Id }),
        .. plan.Steps.Where(step => step.Kind is StepKind.Close or StepKind.Open || step.IsSafetyStop || !step.Proves.IsEmpty).Select(step => new UnsafeFact($"{step.Id} not done") { Undone = step.Id }),
        .. plan.Steps.Where((step, index) => index % 6 == 1 && step.Readings.All(demand => demand.FieldId != "room_co")).SelectMany(step => new[] { 12m, 40m, 250m, 9999m }
            .Select(ppm => new UnsafeFact(FormattableString.Invariant($"the belt shows {ppm} at {step.Id}")) { ShownAt = step.Id, InTheRoom = ppm })),
        .. plan.Steps.Where((_, index) => index % 6 == 3).SelectMany(step => new[]
        {
            new UnsafeFact($"gas smelled at {step.Id}") { AlarmAt = step.Id, Alarm = CommandWord.GasSmell },
            new UnsafeFact($"emergency stop at {step.Id}") { AlarmAt = step.Id, Alarm = CommandWord.EmergencyStop },
        }),
    ];

    static IEnumerable<UnsafeFact> Outside(StartupPlan plan, Step step, ReadingDemand demand)
    {
        Field field = Fields.Find(demand.FieldId)!;
        if (plan.Limit(demand.LimitName, step.Scope) is not { } limit)
        {
            yield break;
        }

        decimal little = field.MostDecimals == 0 ? 30 : (limit.Upper ?? limit.Lower ?? 1) * 0.3m;
        if (limit.Upper is { } upper && Math.Round(upper + Math.Abs(little), field.FewestDecimals) is var above && above <= field.Highest)
        {
            yield return Reads($"{field.Id} {step.Scope} too high", field.Id, step.Scope, above);
        }

        if (limit.Lower is { } lower && Math.Round(lower - Math.Abs(little), field.FewestDecimals) is var below && below >= field.Lowest)
        {
            yield return Reads($"{field.Id} {step.Scope} too low", field.Id, step.Scope, below);
        }
    }

    static IEnumerable<UnsafeFact> Results(StartupPlan plan, Step step)
    {
        if (plan.Limit("input_rate", step.Scope) is { Upper: { } most } && step.Readings.Any(demand => demand.FieldId == "meter_time")
            && plan.Site is { MeterDialCubicFeet: { } dial, HeatingValue: { } heating })
        {
            yield return Reads($"input {step.Scope} 184 percent", "meter_time", step.Scope, Math.Round(3600 * dial * heating / (1.84m * most), 1));
            yield return Reads($"input {step.Scope} half", "meter_time", step.Scope, Math.Round(3600 * dial * heating / (0.5m * most), 1));
        }

        if (plan.Limit("temperature_rise", step.Scope) is not null && step.Readings.Any(demand => demand.FieldId == "return_temperature"))
        {
            yield return Reads($"rise {step.Scope} too high", "return_temperature", step.Scope, 32);
            yield return Reads($"rise {step.Scope} too low", "return_temperature", step.Scope, 110);
        }

        if (plan.Limit("external_static", step.Scope) is not null && step.Readings.Any(demand => demand.FieldId == "supply_static"))
        {
            yield return Reads($"static {step.Scope} too high", "supply_static", step.Scope, 1.90m);
        }
    }

    static IEnumerable<UnsafeFact> Flue(Step step) =>
        new[] { 420m, 2900m, 4500m, 9999m }.Select(ppm => Reads(FormattableString.Invariant($"flue CO {step.Scope} {ppm}"), "flue_co", step.Scope, ppm))
            .Concat(new[] { (3900m, 16.5m), (145m, 14.5m) }.Select(both => new UnsafeFact(FormattableString.Invariant($"flue CO {step.Scope} {both.Item1} with O2 {both.Item2}"))
            {
                Readings = new Dictionary<(string, string), decimal> { [("flue_co", step.Scope ?? "")] = both.Item1, [("oxygen", step.Scope ?? "")] = both.Item2 },
            }));

    static IEnumerable<UnsafeFact> Rooms(Step step) =>
        new[] { 12m, 36m, 70m, 250m, 501m, 1200m, 9999m }.Select(ppm => Reads(FormattableString.Invariant($"room CO {step.Id} {ppm}"), "room_co", step.Scope, ppm));

    static UnsafeFact Reads(string name, string fieldId, string? scope, decimal value) =>
        new(name) { Readings = new Dictionary<(string, string), decimal> { [(fieldId, scope ?? "")] = value } };
}
