using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>A limit that the current step needs and no file states: it is read from the rating plate, said, read back, and judges from then on.</summary>
/// <param name="Name">Name of the limit, with its stage or room where it has one.</param>
/// <param name="Label">As shown.</param>
/// <param name="Limited">The field that it limits; range, decimals and unit of the bounds are its own.</param>
sealed record PlateQuestion(string Name, string Label, Field Limited)
{
    /// <summary>Who says so, as kept with the limit.</summary>
    public const string Source = "from rating plate, spoken";

    /// <summary>The question of the current step, or null where nothing is missing.</summary>
    public static PlateQuestion? Of(StartupState state)
    {
        Step step = state.Step;
        return step.Readings.Select(demand => demand.LimitName).OfType<string>().Concat(step.Limited)
            .Where(name => state.Limit(name, step.Scope) is null && FieldOf(state.Plan, name) is not null)
            .Select(name => new PlateQuestion(
                step.Scope is null ? name : $"{name}/{step.Scope}",
                $"{Labels.Within(FieldOf(state.Plan, name)!.Label)}{(step.Scope is null ? "" : $" ({step.Scope})")}",
                FieldOf(state.Plan, name)!))
            .FirstOrDefault();
    }

    static Field? FieldOf(StartupPlan plan, string name) =>
        Fields.Find(name) is not null ? plan.FieldOf(name) : ResultKind.Find(name)?.AsField(plan.Settings);

    /// <summary>Both bounds, as they may be said.</summary>
    public ImmutableArray<Field> Bounds =>
    [
        .. Fields.PlateBounds.Select(bound => Limited with { Id = bound.Id, Label = bound.Label, SpokenNames = bound.SpokenNames }),
    ];

    /// <summary>What is asked.</summary>
    public string Text => $"The sheet states no limits of {Label}. Read them from the rating plate: say lowest, or highest, and the number, each that it states; then next.";

    /// <summary>Whether a reading is a bound and no measured value.</summary>
    public static bool IsBound(ReadingKey key) => Fields.PlateBounds.Any(bound => bound.Id == key.FieldId);

    /// <summary>The limit that was said so far; null before any bound.</summary>
    public DeclaredLimit? Said(StartupState state)
    {
        decimal?[] bounds = [.. Fields.PlateBounds.Select(bound => state.Reading(bound.Id, Name) is { Counts: true } kept ? kept.Reading.Value : (decimal?)null)];
        return bounds is [null, null] ? null : new DeclaredLimit(Name, bounds[0], bounds[1], Limited.Unit.Symbol, Source, IsSafety: Limited.Id == FieldId.Draft);
    }
}
