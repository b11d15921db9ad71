using System.Collections.Immutable;

namespace HandsFreeStartup.Procedure.Checklists;

/// <summary>How a furnace fires.</summary>
public enum Firing
{
    /// <summary>One input; its readings belong to the stage <c>high</c>.</summary>
    SingleStage,
    /// <summary>Two inputs, <c>low</c> and <c>high</c>.</summary>
    TwoStage,
    /// <summary>Any input between its lowest (<c>low</c>) and its highest (<c>high</c>).</summary>
    Modulating,
}

/// <summary>Category of the vented appliance, as the rating plate states it (pressure in the vent, condensate in the vent).</summary>
public enum VentCategory
{
    /// <summary>Non-positive pressure, no condensate.</summary>
    I,
    /// <summary>Non-positive pressure, condensate.</summary>
    II,
    /// <summary>Positive pressure, no condensate.</summary>
    III,
    /// <summary>Positive pressure, condensate.</summary>
    IV,
}

/// <summary>What moves the exhaust through the vent.</summary>
public enum DraftBy
{
    /// <summary>Warm exhaust alone; a draft hood, no fan.</summary>
    Natural,
    /// <summary>A fan in the furnace.</summary>
    Fan,
}

/// <summary>What decides over the branches of a checklist; null is what nobody has stated yet.</summary>
/// <param name="Firing">How it fires.</param>
/// <param name="FuelId">What it burns.</param>
/// <param name="Venting">Its category, or null.</param>
/// <param name="IsCondensing">Whether it condenses, or null.</param>
/// <param name="Occasion">Id of the occasion, or null.</param>
public sealed record Branch(Firing Firing, string FuelId, VentCategory? Venting, bool? IsCondensing, string? Occasion = null)
{
    /// <summary>What moves the exhaust, or null.</summary>
    public DraftBy? DraftBy { get; init; }
}

/// <summary>For which furnaces a step is part of the procedure. An empty list or null is no condition.</summary>
public sealed record Condition
{
    /// <summary>No condition.</summary>
    public static Condition Always { get; } = new();

    /// <summary>Ways of firing.</summary>
    public ImmutableArray<Firing> Firings { get; init; } = [];

    /// <summary>Fuel ids.</summary>
    public ImmutableArray<string> Fuels { get; init; } = [];

    /// <summary>Categories of venting.</summary>
    public ImmutableArray<VentCategory> Venting { get; init; } = [];

    /// <summary>Condensing, or not.</summary>
    public bool? Condensing { get; init; }

    /// <summary>What moves the exhaust; null for no condition.</summary>
    public DraftBy? DraftBy { get; init; }

    /// <summary>The step is there only where nobody has stated what moves the exhaust.</summary>
    public bool WhereDraftIsUnknown { get; init; }

    /// <summary>Ids of <see cref="Checklist.Occasions"/>.</summary>
    public ImmutableArray<string> Occasions { get; init; } = [];

    /// <summary>Whether the step belongs to <paramref name="branch"/>. What is not stated there leaves nothing out: a step too many is better than one too few.</summary>
    public bool Holds(Branch branch) =>
        (Firings.IsEmpty || Firings.Contains(branch.Firing))
        && (Fuels.IsEmpty || Fuels.Contains(branch.FuelId))
        && (Venting.IsEmpty || branch.Venting is not { } category || Venting.Contains(category))
        && (Condensing is not { } wanted || branch.IsCondensing is not { } condensing || wanted == condensing)
        && (DraftBy is not { } drawn || branch.DraftBy is not { } draws || drawn == draws)
        && (!WhereDraftIsUnknown || branch.DraftBy is null)
        && (Occasions.IsEmpty || branch.Occasion is not { } occasion || Occasions.Contains(occasion));

    /// <summary>As shown: "stages 2 or modulating, propane, category I, condensing"; empty for no condition.</summary>
    public string Text => string.Join(", ", ((string[])
    [
        Firings.IsEmpty ? "" : $"stages {string.Join(" or ", Firings.Select(Word))}",
        string.Join(" or ", Fuels),
        Venting.IsEmpty ? "" : $"category {string.Join(" or ", Venting)}",
        Condensing switch { true => "condensing", false => "not condensing", _ => "" },
        WhereDraftIsUnknown ? "draft not stated" : DraftBy switch { Checklists.DraftBy.Natural => "natural draft", Checklists.DraftBy.Fan => "fan-assisted", _ => "" },
        string.Join(" or ", Occasions),
    ]).Where(part => part.Length > 0));

    /// <summary>As written in the files: <c>1</c>, <c>2</c> or <c>modulating</c>.</summary>
    public static string Word(Firing firing) => firing switch
    {
        Firing.SingleStage => "1",
        Firing.TwoStage => "2",
        _ => "modulating",
    };
}
