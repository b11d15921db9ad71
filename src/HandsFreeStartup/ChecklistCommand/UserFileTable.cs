using System.Collections.Immutable;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.ChecklistCommand;

/// <summary>Prints an appliance sheet, a site or settings as a table.</summary>
public static class UserFileTable
{
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
        output.WriteLine(site is { MeterDialCubicFeet: { } dial, HeatingValue: { } heating }
            ? FormattableString.Invariant($"meter dial {dial} ft³, heating value {heating} Btu/ft³ ± {site.HeatingValuePercent} %")
            : "no meter dial or no heating value: the input rate cannot be told");
        output.WriteLine($"rooms: {string.Join(", ", site.Rooms)}");
        output.WriteLine();
        output.WriteLine("Expanded uncertainty of the instruments (k = 2)");
        foreach (InstrumentUncertainty instrument in site.Instruments)
        {
            output.WriteLine($"  {instrument.FieldId,-24} {Text(instrument),-34} [{instrument.Source}]");
        }

        WriteMissing(MonoxideProof.Missing(site)?.Shown, output);
    }

    /// <summary>Settings.</summary>
    public static void Write(Settings settings, TextWriter output)
    {
        output.WriteLine($"stage order: {settings.StageOrder switch { StageOrder.LowFirst => "low fire first", StageOrder.HighFirst => "high fire first", _ => "as the checklist has it" }}");
        output.WriteLine($"emergency number: {settings.EmergencyNumber ?? "not set"}; gas supplier: {settings.GasSupplier ?? "not set"}");
        output.WriteLine($"units: {settings.Pressure.Symbol}, {settings.Temperature.Symbol}, {settings.Heat.Symbol}");
    }

    /// <summary>Limits, one a line, each with its source.</summary>
    public static void Write(ImmutableArray<DeclaredLimit> limits, TextWriter output)
    {
        if (!limits.IsEmpty)
        {
            output.WriteLine();
            output.WriteLine("Limits");
        }

        foreach (DeclaredLimit limit in limits)
        {
            output.WriteLine($"  {limit.Name,-24} {limit.Text.TrimEnd() + (limit.IsSafety ? ", safety" : ""),-34} [{limit.Source}]");
        }
    }

    /// <summary>What is missing, as a sentence; nothing where nothing is.</summary>
    public static void WriteMissing(string? missing, TextWriter output)
    {
        if (missing is not null)
        {
            output.WriteLine();
            output.WriteLine(missing);
        }
    }

    static string Text(InstrumentUncertainty instrument)
    {
        string unit = Fields.Find(instrument.FieldId)!.Unit.Symbol;
        return (instrument.Expanded, instrument.ExpandedPercent) switch
        {
            ( > 0, > 0) => FormattableString.Invariant($"{instrument.Expanded} {unit} or {instrument.ExpandedPercent} % of it"),
            ( > 0, _) => FormattableString.Invariant($"{instrument.Expanded} {unit}"),
            _ => FormattableString.Invariant($"{instrument.ExpandedPercent} % of the reading"),
        };
    }
}
