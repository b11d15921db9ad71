using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Procedure.Checklists;

namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>An appliance sheet with the entries of its limits.</summary>
sealed record ApplianceEntry(ApplianceSheet Sheet, ImmutableArray<LimitEntry> Limits);

/// <summary>Reads an appliance sheet.</summary>
static class ApplianceSheetReader
{
    public static ImmutableArray<string> Fuels { get; } = [.. Fuel.Presets.Select(fuel => fuel.Id)];

    /// <summary>As written for <see cref="Firing"/>.</summary>
    public static ImmutableArray<string> Stages { get; } = [.. Enum.GetValues<Firing>().Select(Condition.Word)];

    public static ImmutableArray<string> Categories { get; } = [.. Enum.GetNames<VentCategory>()];

    /// <summary>As written for <see cref="DraftBy"/>.</summary>
    static readonly ImmutableArray<string> Draws = ["natural", "fan"];

    /// <summary>What moves the exhaust; null for another word.</summary>
    public static DraftBy? DraftOf(string word) => word switch { "natural" => DraftBy.Natural, "fan" => DraftBy.Fan, _ => null };

    public static Firing FiringOf(string word) => Enum.GetValues<Firing>().First(firing => Condition.Word(firing) == word);

    public static ApplianceEntry? Read(string text, Findings findings)
    {
        if (YamlTree.Read(text, findings) is not { } map)
        {
            return null;
        }

        EntryReader file = new(map, findings, "an equipment data sheet", "id", "title", "fuel", "stages", "venting", "condensing", "draft_by", "sea_level_input", "turn_to_raise", "seal", "limits");
        ImmutableArray<LimitEntry> limits = new LimitReader(findings).Read(file, isRequired: false);
        string stages = file.Choice("stages", Stages);
        ApplianceSheet sheet = new(
            file.Id("id"),
            file.Text("title"),
            file.Choice("fuel", Fuels),
            stages == "1" ? 1 : 2,
            file.Choice("turn_to_raise", ["clockwise", "counter-clockwise"]),
            file.Text("seal", " Write what the maker wants the test hole sealed with."),
            [.. limits.Select(limit => limit.Limit)])
        {
            IsModulating = stages == "modulating",
            Venting = file.Has("venting") && Enum.TryParse(file.Choice("venting", Categories), out VentCategory category) ? category : null,
            IsCondensing = file.Has("condensing") ? file.Flag("condensing") : null,
            DraftBy = file.Has("draft_by") ? DraftOf(file.Choice("draft_by", Draws)) : null,
            SeaLevelInput = file.Has("sea_level_input") ? file.Number("sea_level_input", 5_000, 1_000_000) : null,
        };
        SheetRules.Check(sheet, file, limits);
        return new ApplianceEntry(sheet, limits);
    }
}
