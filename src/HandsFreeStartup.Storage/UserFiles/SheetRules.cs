using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;

namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>What must hold between the limits of one appliance sheet: a plate that contradicts itself was written down wrongly.</summary>
static class SheetRules
{
    const string Low = "low";
    const string High = "high";

    /// <summary>What is never larger at low fire than at high fire.</summary>
    static readonly ImmutableArray<string> RisesWithFire = [FieldId.ManifoldPressure, ResultId.InputRate];

    /// <summary>A sheet can only make these stricter than the checklist has them; that is looked at when both are read together.</summary>
    static readonly ImmutableArray<string> JudgedByChecklist = [FieldId.RoomCo, ResultId.CoAirFree];

    /// <summary>Whether both can be true: categories II and IV are those with condensate in the vent (definitions of the fuel gas codes).</summary>
    public static bool MayBe(VentCategory? venting, bool? condensing) =>
        venting is not { } category || condensing is not { } condenses || condenses == category is VentCategory.II or VentCategory.IV;

    public static void Check(ApplianceSheet sheet, EntryReader file, ImmutableArray<LimitEntry> limits)
    {
        if (!MayBe(sheet.Venting, sheet.IsCondensing))
        {
            file.Report("condensing", $"Category {sheet.Venting} is one {(sheet.IsCondensing == true ? "without" : "with")} condensate in the vent (I and III without, II and IV with). Correct 'venting' or 'condensing'.");
        }

        if (sheet is { DraftBy: DraftBy.Natural, Venting: VentCategory.III or VentCategory.IV })
        {
            file.Report("draft_by", $"A vent of category {sheet.Venting} is under pressure and has a fan. Write 'draft_by: fan', or correct 'venting'.");
        }

        foreach (LimitEntry limit in limits.Where(limit => limit.Entry.IsMap && !JudgedByChecklist.Contains(limit.BaseName)))
        {
            CheckPlausible(sheet, limit);
        }

        foreach (string name in RisesWithFire)
        {
            CheckStages(limits, name);
        }

        CheckManifoldBelowInlet(limits);
        CheckRiseBelowOutlet(limits);
        foreach (LimitEntry limit in limits.Where(limit => sheet.Stages == 1 && limit.Scope == Low))
        {
            limit.Entry.Report("name", $"A furnace with one stage has no low fire; its readings belong to the stage high. Write {limit.BaseName}/{High}, or correct 'stages'.");
        }
    }

    /// <summary>A limit that cannot be one of this furnace is refused; a strange one stands only with its reason.</summary>
    static void CheckPlausible(ApplianceSheet sheet, LimitEntry limit)
    {
        Plausible plausible = LimitPlausibility.Of(limit.Limit, sheet);
        string key = limit.Limit.Upper is null ? "lower" : "upper";
        if (plausible.Impossible is { } impossible && !(limit.Limit.Lower > limit.Limit.Upper))
        {
            limit.Entry.ReportForNew(key, impossible.Shown);
        }
        else if (plausible.Unusual is { } unusual && limit.Limit.Unusual is null)
        {
            limit.Entry.ReportForNew(key, $"{unusual} Look at the plate again. If it says so, add 'unusual: the reason'.");
        }
    }

    static void CheckStages(ImmutableArray<LimitEntry> limits, string name)
    {
        if (Find(limits, name, Low) is not { } low || Find(limits, name, High) is not { } high)
        {
            return;
        }

        if (low.Limit.Upper > high.Limit.Upper)
        {
            low.Entry.Report("upper", FormattableString.Invariant(
                $"{name} at low fire reaches up to {low.Limit.Upper}, above the {high.Limit.Upper} of high fire (line {high.Entry.Place.Line}). Exchange the two, or correct one."));
        }
        else if (low.Limit.Lower > high.Limit.Lower)
        {
            low.Entry.Report("lower", FormattableString.Invariant(
                $"{name} at low fire begins at {low.Limit.Lower}, above the {high.Limit.Lower} of high fire (line {high.Entry.Place.Line}). Exchange the two, or correct one."));
        }
    }

    /// <summary>A regulator only lowers pressure: where the inlet is at its lowest, the manifold must still be reached.</summary>
    static void CheckManifoldBelowInlet(ImmutableArray<LimitEntry> limits)
    {
        LimitEntry? inlet = limits.Where(limit => limit.BaseName == FieldId.InletPressure && limit.Limit.Lower is not null).MinBy(limit => limit.Limit.Lower);
        foreach (LimitEntry manifold in limits.Where(limit => limit.BaseName == FieldId.ManifoldPressure && inlet is not null && limit.Limit.Upper >= inlet.Limit.Lower))
        {
            manifold.Entry.Report("upper", FormattableString.Invariant(
                $"The manifold pressure reaches {manifold.Limit.Upper} in. w.c., but the inlet may be as low as {inlet!.Limit.Lower} (line {inlet.Entry.Place.Line}), and a regulator only lowers pressure. Look at both on the plate; manifold and inlet may be exchanged."));
        }
    }

    static void CheckRiseBelowOutlet(ImmutableArray<LimitEntry> limits)
    {
        LimitEntry? outlet = limits.FirstOrDefault(limit => limit.BaseName == FieldId.SupplyTemperature && limit.Limit.Upper is not null);
        foreach (LimitEntry rise in limits.Where(limit => limit.BaseName == ResultId.TemperatureRise && limit.Limit.Upper >= outlet?.Limit.Upper))
        {
            rise.Entry.Report("upper", FormattableString.Invariant(
                $"A rise of {rise.Limit.Upper} °F cannot stay below the highest outlet temperature, {outlet!.Limit.Upper} °F (line {outlet.Entry.Place.Line}). Look at both on the plate."));
        }
    }

    static LimitEntry? Find(ImmutableArray<LimitEntry> limits, string name, string scope) =>
        limits.FirstOrDefault(limit => limit.BaseName == name && limit.Scope == scope);
}
