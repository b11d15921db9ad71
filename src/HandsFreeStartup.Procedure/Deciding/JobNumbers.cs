using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Derivations;
using HandsFreeStartup.Calculations.GasSide;
using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Wording;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>The numbers of a job with where each came from, as the calculation explains itself with them.</summary>
static class JobNumbers
{
    const string SiteFile = "site file";

    /// <summary>How a result of one stage comes about; null while something is missing, or where the calculation refuses the numbers.</summary>
    /// <param name="inputs">The readings of the stage, and the plan.</param>
    /// <param name="resultId">Which result.</param>
    /// <param name="limit">What it is judged by, in the unit of its kind; null for none.</param>
    public static Derivation? Explain(ResultInputs inputs, string resultId, DeclaredLimit? limit = null) =>
        Explanation.Find(resultId) is { } explanation ? explanation.Derive(Of(inputs, explanation), limit?.ToJudge()) : null;

    static GivenInputs Of(ResultInputs inputs, Explanation explanation)
    {
        ImmutableArray<KeyValuePair<string, Given>> measured =
        [
            .. inputs.Readings.Keys.Where(id => Fields.Find(id) is not null).Select(id => KeyValuePair.Create(id, Said(inputs, id))),
            .. OfSite(explanation.Id == ResultId.GasPerHour ? SameGas(inputs.Plan.Site) : inputs.Plan.Site),
            .. OfPlate(inputs.Plan.Appliance),
            .. Stage(inputs, "high", "input_high"),
            .. Stage(inputs, "low", "input_low"),
            .. inputs.Adjusted is { } adjusted ? Adjusted(inputs, adjusted) : [],
        ];
        GivenInputs first = new(measured, inputs.Plan.Fuel) { AnalyzerCorrelation = (double)inputs.Plan.Site.AnalyzerCorrelation };
        return first.With(WorkedOut.Where(id => explanation.Needs.Any(need => need.Name == id)).SelectMany(id => Result(id, first)));
    }

    /// <summary>For what is multiplied by the heating value and divided by it again: its uncertainty cancels.</summary>
    static Site SameGas(Site site) => site with { HeatingValuePercent = 0 };

    /// <summary>Results that others are worked out from.</summary>
    static ImmutableArray<string> WorkedOut { get; } = [ResultId.InputRate, ResultId.Efficiency];

    static IEnumerable<KeyValuePair<string, Given>> Result(string id, GivenInputs measured) =>
        Explanation.Find(id)!.Derive(measured) is { } derivation
            ? [KeyValuePair.Create(id, new Given(derivation.Result.Value, derivation.Result.StandardUncertainty, "worked out"))] : [];

    static IEnumerable<KeyValuePair<string, Given>> OfSite(Site site)
    {
        yield return KeyValuePair.Create("altitude", new Given((double)site.AltitudeFeet, 0, SiteFile, Numbers.Text(site.AltitudeFeet)));
        if (site.BurningHours is { } hours)
        {
            yield return KeyValuePair.Create("burning_hours", new Given((double)hours, 0, "owner, in the site file", Numbers.Text(hours)));
        }

        if (site is { MeterDialCubicFeet: { } dial, HeatingValue: { } heating })
        {
            yield return KeyValuePair.Create("meter_dial", new Given((double)dial, (double)dial * InstrumentError.DialReading, $"{SiteFile}, read to 1/100 turn: common practice, no source", Numbers.Text(dial)));
            yield return KeyValuePair.Create("heating_value", new Given(
                (double)heating, (double)(heating * site.HeatingValuePercent) / 100 / Estimate.CoverageFactor, SiteFile, Numbers.Text(heating)));
        }
    }

    /// <summary>What the altitude leaves of the plate, by the rule for this furnace.</summary>
    static IEnumerable<KeyValuePair<string, Given>> OfPlate(ApplianceSheet appliance)
    {
        if (appliance.SeaLevelInput is { } rated)
        {
            AltitudeDerate rule = Derating.Rule(appliance);
            yield return KeyValuePair.Create("rated_input", new Given((double)rated, 0, "equipment data sheet", Numbers.Text(rated)));
            yield return KeyValuePair.Create("derate_threshold", new Given(rule.Threshold.Feet, 0, rule.Source));
            yield return KeyValuePair.Create("derate_share", new Given(rule.SharePer1000Feet, 0, rule.Source));
        }
    }

    /// <summary>The input of a stage, to be compared with that of another: both burn the same gas, whose heating value does not blur their ratio.</summary>
    static IEnumerable<KeyValuePair<string, Given>> Stage(ResultInputs inputs, string stage, string name)
    {
        if (!inputs.Stages.TryGetValue(stage, out ImmutableSortedDictionary<string, EnteredReading>? readings) || !readings.ContainsKey(FieldId.MeterTime))
        {
            yield break;
        }

        GivenInputs measured = new(
            OfSite(SameGas(inputs.Plan.Site)).Append(KeyValuePair.Create(FieldId.MeterTime, Said(inputs with { Readings = readings }, FieldId.MeterTime))), inputs.Plan.Fuel);
        if (Explanation.Find(ResultId.InputRate)!.Derive(measured) is { } derivation)
        {
            yield return KeyValuePair.Create(name, new Given(derivation.Result.Value, derivation.Result.StandardUncertainty, "by the meter, the same gas in both"));
        }
    }

    /// <summary>What an adjustment was made from, and to which pressure.</summary>
    static IEnumerable<KeyValuePair<string, Given>> Adjusted(ResultInputs inputs, PendingOxygen adjusted)
    {
        yield return KeyValuePair.Create("oxygen_before", new Given(
            (double)adjusted.Oxygen.Value, (double)(adjusted.Oxygen.ExpandedUncertainty ?? 0) / Estimate.CoverageFactor, "measured before the adjustment", Numbers.Text(adjusted.Oxygen.Value)));
        yield return KeyValuePair.Create("manifold_before", Manifold(inputs, adjusted.From, "measured before the adjustment"));
        yield return KeyValuePair.Create("manifold_after", Manifold(inputs, adjusted.To, "set by the adjustment"));
    }

    static Given Manifold(ResultInputs inputs, decimal value, string how)
    {
        Field field = inputs.Plan.FieldOf(FieldId.ManifoldPressure);
        Unit own = Fields.Find(field.Id)!.Unit;
        decimal expanded = inputs.Plan.Site.ExpandedOf(field, value, inputs.Day) ?? 0;
        return new Given(
            field.Unit.Convert((double)value, own), field.Unit.Convert((double)expanded, own, isDifference: true) / Estimate.CoverageFactor,
            field.Unit == own ? how : $"{how} as {Numbers.Text(value)} {field.Unit.Symbol}", field.Unit == own ? Numbers.Text(value) : null);
    }

    static Given Said(ResultInputs inputs, string fieldId)
    {
        EnteredReading reading = inputs.Readings[fieldId];
        Estimate value = inputs.Of(fieldId);
        bool isOwnUnit = reading.UnitSymbol == Fields.Find(fieldId)!.Unit.Symbol;
        string how = inputs.Origins.GetValueOrDefault(fieldId, "measured");
        (ImmutableArray<ErrorPart> further, string also) = Further(inputs, reading, fieldId);
        return new Given(value.Value, value.StandardUncertainty, (isOwnUnit ? how : $"{how} as {Numbers.Text(reading.Value)} {reading.UnitSymbol}") + also, isOwnUnit ? Numbers.Text(reading.Value) : null) { Further = further };
    }

    /// <summary>What comes on top of the instrument: the hand at the watch, and how far two sets of readings that agree lie apart.</summary>
    static (ImmutableArray<ErrorPart> Parts, string Origin) Further(ResultInputs inputs, EnteredReading reading, string fieldId)
    {
        if (fieldId == FieldId.MeterTime)
        {
            return ([new("by hand", InstrumentError.HandTiming.StandardUncertainty(0))], $", watch in the hand, as if over one turn: {InstrumentError.HandTiming.Source}");
        }

        if (!inputs.FirstSets.TryGetValue(fieldId, out decimal first))
        {
            return ([], "");
        }

        Unit own = Fields.Find(fieldId)!.Unit;
        double apart = (Unit.Find(reading.UnitSymbol) ?? own).Convert((double)(reading.Value - first), own, isDifference: true);
        return ([new("scatter", InstrumentError.ScatterOfTwo(apart, 0))], $", the first set {Numbers.Text(first)}");
    }
}
