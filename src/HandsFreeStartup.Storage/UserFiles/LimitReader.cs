using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Storage.UserFiles;

/// <summary>A limit with the entry it was read from.</summary>
sealed record LimitEntry(DeclaredLimit Limit, EntryReader Entry)
{
    public string BaseName => Limit.Name.Split('/')[0];

    public string? Scope => Limit.Name.Contains('/', StringComparison.Ordinal) ? Limit.Name.Split('/', 2)[1] : null;
}

/// <summary>Reads limits, on an appliance sheet as in a checklist.</summary>
sealed class LimitReader(Findings findings)
{
    public ImmutableArray<LimitEntry> Read(EntryReader file, bool isRequired)
    {
        ImmutableArray<LimitEntry> limits = file.Each("limits", isRequired, Limit);
        foreach (IGrouping<string, LimitEntry> same in limits.Where(limit => limit.Limit.Name.Length > 0).GroupBy(limit => limit.Limit.Name))
        {
            foreach (LimitEntry repeated in same.Skip(1))
            {
                repeated.Entry.Report("name", $"The limit '{same.Key}' stands here a second time. Keep one.");
            }
        }
        return limits;
    }

    LimitEntry Limit(YamlValue value)
    {
        EntryReader entry = new(value, findings, "a limit", "name", "lower", "upper", "unit", "source", "safety", "weight", "unusual");
        LimitEntry limit = new(new DeclaredLimit(
            entry.Text("name"),
            entry.Number("lower"),
            entry.Number("upper"),
            Unit(entry),
            entry.Text("source", " Name who sets the limit: rating plate, maker's instructions, a standard with its section, or 'common practice, no source'."),
            entry.Flag("safety"))
        {
            Weight = entry.Has("weight") ? entry.Choice("weight", ["must", "ought"]) == "ought" ? LimitWeight.Ought : LimitWeight.Must : null,
            Unusual = entry.TextOrNull("unusual"),
        }, entry);
        if (entry.IsMap)
        {
            CheckBounds(limit);
            CheckName(limit);
            CheckWeight(limit);
        }
        return limit;
    }

    /// <summary>The unit may be empty in quotes: a pure number.</summary>
    static string Unit(EntryReader entry) =>
        entry.RawTextOrNull("unit") is "" ? "" : entry.Text("unit", " Write the unit of lower and upper, such as 'in. w.c.'.");

    static void CheckBounds(LimitEntry limit)
    {
        EntryReader entry = limit.Entry;
        if (!entry.Has("lower") && !entry.Has("upper"))
        {
            entry.Report("name", "The limit bounds nothing. Expected 'lower', 'upper' or both.");
        }

        if (limit.Limit is { Lower: { } lower, Upper: { } upper } && lower > upper)
        {
            entry.Report("lower", FormattableString.Invariant($"lower {lower} is above upper {upper}. Exchange them."));
        }
    }

    static void CheckWeight(LimitEntry limit)
    {
        if (limit.Limit is { Weight: LimitWeight.Ought, IsAlwaysMust: true })
        {
            limit.Entry.Report("weight", $"{limit.BaseName} can hurt people: its limit is always a must. Remove 'weight'.");
        }
    }

    static void CheckName(LimitEntry limit)
    {
        string name = limit.BaseName;
        if (limit.Limit.Name.Length == 0)
        {
            return;
        }

        if (limit.Limit.Name.Count(letter => letter == '/') > 1 || limit.Scope is "")
        {
            limit.Entry.Report("name", $"'{limit.Limit.Name}' is no name of a limit. Expected a name, or a name and a stage such as manifold_pressure/high.");
        }

        if (LimitNames.UnitOf(name) is not { } unit)
        {
            limit.Entry.Report("name", $"'{name}' is neither a field nor a result that can be limited.{Nearest.Hint(name, [.. LimitNames.All.Select(known => known.Name)])}");
            return;
        }

        CheckUnit(limit, unit);
        if (limit.Limit.UnitSymbol == unit || OtherUnits.IsSpelling(limit.Limit.UnitSymbol, unit))
        {
            CheckPossible(limit, "lower", limit.Limit.Lower, unit);
            CheckPossible(limit, "upper", limit.Limit.Upper, unit);
        }
    }

    static void CheckUnit(LimitEntry limit, string unit)
    {
        string written = limit.Limit.UnitSymbol;
        if (!limit.Entry.Has("unit") || written == unit)
        {
            return;
        }

        string converted = string.Join(", ", Converted("lower", limit.Limit.Lower).Concat(Converted("upper", limit.Limit.Upper)));
        limit.Entry.Report("unit", TextLines.EndedOnce($"The unit '{written}' does not fit {limit.BaseName}. Write {(unit.Length == 0 ? "\"\", it is a pure number"
            : converted.Length == 0 ? unit
            : $"{converted}, unit: {unit}")}."));

        IEnumerable<string> Converted(string key, decimal? bound) =>
            bound is { } value && OtherUnits.Convert(value, written, unit, limit.BaseName == ResultId.TemperatureRise) is { } other ? [FormattableString.Invariant($"{key}: {other}")] : [];
    }

    static void CheckPossible(LimitEntry limit, string key, decimal? bound, string unit)
    {
        string name = limit.BaseName == LimitNames.ReplaceValve ? FieldId.ManifoldPressure : limit.BaseName;
        (decimal Lowest, decimal Highest) possible = Fields.Find(name) is { } field ? (field.Lowest, field.Highest)
            : ResultKind.Find(name) is { } kind ? (kind.Lowest, kind.Highest) : (decimal.MinValue, decimal.MaxValue);
        if (bound is { } value && (value < possible.Lowest || value > possible.Highest))
        {
            string label = Fields.Find(name)?.Label ?? ResultKind.Find(name)!.Label;
            limit.Entry.Report(key, FormattableString.Invariant(
                $"{value} {unit} is no possible {label.ToLowerInvariant()}. Expected {possible.Lowest} to {possible.Highest}; look at the decimal point."));
        }
    }
}
