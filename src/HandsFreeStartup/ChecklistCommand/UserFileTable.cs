using System.Collections.Immutable;
using System.Globalization;
using HandsFreeStartup.Procedure.Checklists;

namespace HandsFreeStartup.ChecklistCommand;

/// <summary>Prints a file of the user as a table.</summary>
public static class UserFileTable
{
    /// <summary>A checklist: every step with what it asks for.</summary>
    public static void Write(Checklist checklist, TextWriter output)
    {
        output.WriteLine($"{checklist.Title} ({checklist.Id}, version {checklist.Version})");
        int number = 0;
        foreach (IGrouping<string, Step> section in checklist.Steps.GroupBy(step => step.Section))
        {
            output.WriteLine();
            output.WriteLine(section.Key);
            foreach (Step step in section)
            {
                output.WriteLine(FormattableString.Invariant($"{++number,4}  {step.Kind.ToString().ToLowerInvariant(),-7} {step.Id,-20} {step.Title}{Details(step)}"));
            }
        }
        Write(checklist.Limits, output);
    }

    /// <summary>An appliance sheet.</summary>
    public static void Write(ApplianceSheet sheet, TextWriter output)
    {
        output.WriteLine($"{sheet.Title} ({sheet.Id})");
        output.WriteLine(FormattableString.Invariant($"fuel {sheet.FuelId}, stages {Condition.Word(sheet.Branch.Firing)}, turn {sheet.TurnToRaise} to raise, seal with {sheet.SealFor}"));
        output.WriteLine($"category {sheet.Venting?.ToString() ?? "not stated"}, {sheet.IsCondensing switch { true => "condensing", false => "not condensing", _ => "condensing or not: not stated" }}");
        Write(sheet.Limits, output);
    }

    /// <summary>A site.</summary>
    public static void Write(Site site, TextWriter output)
    {
        output.WriteLine($"{site.Title} ({site.Id})");
        output.WriteLine(FormattableString.Invariant($"{site.Customer}, {site.Address}, {site.AltitudeFeet} feet above sea level"));
        output.WriteLine($"rooms: {string.Join(", ", site.Rooms)}");
        foreach (InstrumentUncertainty instrument in site.Instruments)
        {
            output.WriteLine(FormattableString.Invariant(
                $"  {instrument.FieldId,-24} U = {instrument.Expanded} or {instrument.ExpandedPercent} % of the reading, k = 2   [{instrument.Source}]"));
        }
    }

    /// <summary>Settings.</summary>
    public static void Write(Settings settings, TextWriter output)
    {
        output.WriteLine($"stage order: {settings.StageOrder switch { StageOrder.LowFirst => "low fire first", StageOrder.HighFirst => "high fire first", _ => "as the checklist has it" }}");
        output.WriteLine($"emergency number: {settings.EmergencyNumber ?? "not set"}; gas supplier: {settings.GasSupplier ?? "not set"}");
        output.WriteLine($"units: {settings.Pressure.Symbol}, {settings.Temperature.Symbol}, {settings.Heat.Symbol}");
    }

    static void Write(ImmutableArray<DeclaredLimit> limits, TextWriter output)
    {
        if (!limits.IsEmpty)
        {
            output.WriteLine();
            output.WriteLine("Limits");
        }

        foreach (DeclaredLimit limit in limits)
        {
            output.WriteLine($"  {limit.Name,-24} {limit.Text.TrimEnd()}{(limit.IsSafety ? ", safety" : "")}   [{limit.Source}]");
        }
    }

    static string Details(Step step)
    {
        string[] details =
        [
            .. step.IsSafetyStop ? ["safety stop"] : Array.Empty<string>(),
            .. step.Scope is { } scope ? [scope] : Array.Empty<string>(),
            .. step.Readings.Select(demand => demand.LimitName is { } limit && limit != demand.FieldId ? $"{demand.FieldId} (limit {limit})" : demand.LimitName is null ? $"{demand.FieldId} (no limit)" : demand.FieldId),
            .. step.Timer is { } timer ? [string.Create(CultureInfo.InvariantCulture, $"{timer.Duration:c}, {timer.Source}")] : Array.Empty<string>(),
            .. step.Question is { } question ? [$"proper answer {(question.Proper ? "yes" : "no")}"] : Array.Empty<string>(),
            .. step.Opens.Select(thing => $"opens {thing.Name}{(thing.IsGasSide ? " (gas side)" : "")}"),
            .. step.Closes.Select(name => $"closes {name}"),
            .. step.Proves.Select(name => $"leak check of {name}"),
            .. step.Voids.Select(id => $"voids {id}"),
            .. step.Starts.Select(id => $"starts {id}"),
            .. step.After is { } after ? [$"judged after {after}"] : Array.Empty<string>(),
            .. step.OnlyFor.Text is { Length: > 0 } only ? [$"only for {only}"] : Array.Empty<string>(),
        ];
        return details.Length == 0 ? "" : $"\n{"",35}{string.Join("; ", details)}";
    }
}
