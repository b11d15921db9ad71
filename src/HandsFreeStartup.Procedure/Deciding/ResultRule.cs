using System.Collections.Immutable;
using HandsFreeStartup.Calculations.AirSide;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Calculations.Vocabulary;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Messages;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>What a rule works with: the readings of one stage by field id, and the plan.</summary>
sealed record ResultInputs(ImmutableSortedDictionary<string, EnteredReading> Readings, StartupPlan Plan)
{
    /// <summary>The stage or room; empty for none.</summary>
    public string Scope { get; init; } = "";

    /// <summary>By stage or room: what counts there.</summary>
    public ImmutableDictionary<string, ImmutableSortedDictionary<string, EnteredReading>> Stages { get; init; } =
        ImmutableDictionary<string, ImmutableSortedDictionary<string, EnteredReading>>.Empty;

    /// <summary>By field id: what the first of two sets that agree had, in the unit of the reading.</summary>
    public ImmutableDictionary<string, decimal> FirstSets { get; init; } = ImmutableDictionary<string, decimal>.Empty;

    /// <summary>What the oxygen after an adjustment is worked out from; null where there was none.</summary>
    public PendingOxygen? Adjusted { get; init; }

    /// <summary>The day of the job, for what an instrument has drifted; null where it is not known.</summary>
    public DateOnly? Day { get; init; }

    /// <summary>Where each reading came from, by field id, where that is to be told.</summary>
    public ImmutableDictionary<string, string> Origins { get; init; } = ImmutableDictionary<string, string>.Empty;

    /// <summary>The reading in the unit of the table of fields, whatever it was said in, with its standard uncertainty; zero where the instrument's is not stated.</summary>
    public Estimate Of(string fieldId)
    {
        EnteredReading reading = Readings[fieldId];
        Unit own = Fields.Find(fieldId)!.Unit;
        Unit said = Unit.Find(reading.UnitSymbol) ?? own;
        return new Estimate(
            said.Convert((double)reading.Value, own),
            said.Convert((double)(reading.ExpandedUncertainty ?? 0), own, isDifference: true) / Estimate.CoverageFactor);
    }

    /// <summary>The reading in its own unit as one of up to eight independent inputs of a formula.</summary>
    public Uncertain Input(string fieldId, int number) => Uncertain.Input(Of(fieldId).Value, Of(fieldId).StandardUncertainty, number);

    /// <summary>The reading in SI with its standard uncertainty.</summary>
    public Estimate InSi(string fieldId)
    {
        Unit unit = Fields.Find(fieldId)!.Unit;
        return new Estimate(Of(fieldId).Value * unit.Scale + unit.Offset, Of(fieldId).StandardUncertainty * unit.Scale);
    }
}

/// <summary>One number that a rule yields, in the unit of its kind.</summary>
sealed record Calculated(ResultKind Kind, Estimate Estimate, Message Remark)
{
    public Calculated(string kindId, Estimate estimate, Message? remark = null)
        : this(ResultKind.Find(kindId) ?? throw new InvalidOperationException($"No kind of result '{kindId}'."), estimate, remark ?? "")
    {
    }
}

/// <summary>Which readings lead to which results. A new formula of the start-up is one entry in <see cref="All"/>.</summary>
/// <param name="Formula">Id and version, kept with each result.</param>
/// <param name="Needs">Field ids.</param>
/// <param name="Yields">Ids of the results.</param>
/// <param name="Calculate">From the readings to the results, in the units shown; nothing where the files do not state what it takes.</param>
/// <param name="With">The reading with which it is worked out though it does not go in; null where <paramref name="Needs"/> tells.</param>
sealed record ResultRule(
    string Formula, ImmutableArray<string> Needs, ImmutableArray<string> Yields, Func<ResultInputs, IEnumerable<Calculated>> Calculate, string? With = null)
{
    const string Low = "low", High = "high";

    /// <summary>Whether that reading brings it about, as soon as everything else is there.</summary>
    public bool FollowsFrom(string fieldId) => Needs.Contains(fieldId) || With == fieldId;

    public static ImmutableArray<ResultRule> All { get; } =
    [
        new("co-air-free/2", [FieldId.Oxygen, FieldId.FlueCo], [ResultId.CoAirFree], inputs =>
            [OrUnknown(inputs, ResultId.CoAirFree, TooDilute(AirFree.LargestOxygenPercent))]),
        new("combustion-above-air-hhv/3", [FieldId.Oxygen, FieldId.FlueCo, FieldId.FlueTemperature, FieldId.AirTemperature],
            [ResultId.ExcessAir, ResultId.Efficiency, ResultId.EfficiencyNet, ResultId.EfficiencyFirstLaw, ResultId.CarbonDioxideCalculated, ResultId.DewPoint], Combustion),
        new("fuel-factor/2", [FieldId.Oxygen, FieldId.CarbonDioxide, FieldId.FlueCo], [ResultId.FuelFactor], inputs => Explained(inputs, ResultId.FuelFactor)),
        new("temperature-rise/1", [FieldId.SupplyTemperature, FieldId.ReturnTemperature], [ResultId.TemperatureRise], inputs =>
            [new(ResultId.TemperatureRise, TemperatureRise.Of(inputs.Input(FieldId.SupplyTemperature, 0), inputs.Input(FieldId.ReturnTemperature, 1)).Estimate)]),
        new("external-static/1", [FieldId.SupplyStatic, FieldId.ReturnStatic], [ResultId.ExternalStatic], inputs =>
            [new(ResultId.ExternalStatic, ExternalStatic.Total(inputs.Input(FieldId.SupplyStatic, 0), inputs.Input(FieldId.ReturnStatic, 1)).Estimate)]),
        new("input-rate-by-meter/2", [FieldId.MeterTime], [ResultId.InputRate, ResultId.GasPerHour], InputRate),
        new("gas-per-year/2", [FieldId.MeterTime], [ResultId.GasPerYear], inputs => inputs.Scope == Low ? [] : Explained(inputs, ResultId.GasPerYear)),
        new("largest-input-at-altitude/1", [], [ResultId.AltitudeInput], inputs => inputs.Scope == Low ? [] : Explained(inputs, ResultId.AltitudeInput), With: FieldId.MeterTime),
        new("turndown/2", [FieldId.MeterTime], [ResultId.Turndown], inputs =>
            inputs.Plan.Appliance.IsModulating && inputs.Scope is Low or High ? Explained(inputs, ResultId.Turndown) : []),
        new("nox-by-oxygen/2", [FieldId.Oxygen, FieldId.Nox], [ResultId.NoxReference, ResultId.NoxPerHeat], inputs =>
            [OrUnknown(inputs, ResultId.NoxReference, TooDilute(Calculations.Emissions.EmissionRate.LargestOxygenPercent)), OrUnknown(inputs, ResultId.NoxPerHeat, TooDilute(Calculations.Emissions.EmissionRate.LargestOxygenPercent))]),
        new("depressurization/1", [FieldId.ZoneWorst, FieldId.ZoneBaseline], [ResultId.Depressurization], inputs => Explained(inputs, ResultId.Depressurization)),
        new("air-flow-by-rise/2", [FieldId.MeterTime, FieldId.Oxygen, FieldId.FlueCo, FieldId.FlueTemperature, FieldId.AirTemperature, FieldId.SupplyTemperature, FieldId.ReturnTemperature], [ResultId.AirFlow], inputs =>
            [OrUnknown(inputs, ResultId.AirFlow, "it takes an input by the meter and a rise above zero")]),
    ];

    static Message TooDilute(double percent) => $"oxygen above {ShownValue.Alone((decimal)percent, Unit.Percent.Symbol)} dilutes too much";

    /// <summary>What explains itself, or nothing.</summary>
    static IEnumerable<Calculated> Explained(ResultInputs inputs, string id) =>
        JobNumbers.Explain(inputs, id) is { } derivation ? [new(id, derivation.Result)] : [];

    static Calculated OrUnknown(ResultInputs inputs, string id, Message why) =>
        JobNumbers.Explain(inputs, id) is { } derivation ? new(id, derivation.Result) : new(id, Estimate.Unknown, why);

    static IEnumerable<Calculated> Combustion(ResultInputs inputs)
    {
        Estimate oxygen = inputs.InSi(FieldId.Oxygen), monoxide = inputs.InSi(FieldId.FlueCo), flue = inputs.InSi(FieldId.FlueTemperature), air = inputs.InSi(FieldId.AirTemperature);
        CombustionEvaluation evaluation = CombustionEvaluation.Of(
            new FlueReading(new Fraction(oxygen.Value), new Fraction(monoxide.Value), new Temperature(flue.Value), new Temperature(air.Value))
            {
                Pressure = StandardAtmosphere.Pressure(Altitude.FromFeet((double)inputs.Plan.Site.AltitudeFeet)),
                AirRelativeHumidity = FlueReading.AssumedHumidity,
                Uncertainty = new FlueUncertainty(
                    new Fraction(oxygen.StandardUncertainty), new Fraction(monoxide.StandardUncertainty),
                    new TemperatureDifference(flue.StandardUncertainty), new TemperatureDifference(air.StandardUncertainty))
                {
                    AirRelativeHumidity = FlueReading.AssumedHumidityUncertainty,
                },
            },
            inputs.Plan.Fuel);
        Message remark = evaluation.Refusal is { } refusal ? Message.Written(refusal) : "";
        return
        [
            OrUnknown(inputs, ResultId.ExcessAir, remark),
            OrUnknown(inputs, ResultId.Efficiency, remark),
            OrUnknown(inputs, ResultId.EfficiencyNet, remark),
            OrUnknown(inputs, ResultId.EfficiencyFirstLaw, remark),
            OrUnknown(inputs, ResultId.CarbonDioxideCalculated, remark),
            OrUnknown(inputs, ResultId.DewPoint, remark) is { Estimate.IsKnown: true } dewPoint ? dewPoint with { Remark = "for air that is half saturated, not measured" } : new(ResultId.DewPoint, Estimate.Unknown, remark),
        ];
    }

    /// <summary>One turn of the test dial, with the heating value of the gas as it is metered at the site.</summary>
    static IEnumerable<Calculated> InputRate(ResultInputs inputs)
    {
        if (inputs.Plan.Site is not { MeterDialCubicFeet: not null, HeatingValue: not null })
        {
            const string why = "the site file states no meter dial or no heating value of the gas";
            return [new(ResultId.InputRate, Estimate.Unknown, why), new(ResultId.GasPerHour, Estimate.Unknown, why)];
        }

        return [.. Explained(inputs, ResultId.InputRate), .. Explained(inputs, ResultId.GasPerHour)];
    }
}
