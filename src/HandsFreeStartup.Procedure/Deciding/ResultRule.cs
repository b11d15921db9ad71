using System.Collections.Immutable;
using HandsFreeStartup.Calculations.AirSide;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.GasSide;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Uncertainties;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;

namespace HandsFreeStartup.Procedure.Deciding;

/// <summary>What a rule works with: the readings of one stage by field id, and the plan.</summary>
sealed record ResultInputs(ImmutableSortedDictionary<string, EnteredReading> Readings, StartupPlan Plan)
{
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
sealed record Calculated(ResultKind Kind, Estimate Estimate, string Remark = "")
{
    public Calculated(string kindId, Estimate estimate, string remark = "")
        : this(ResultKind.Find(kindId) ?? throw new InvalidOperationException($"No kind of result '{kindId}'."), estimate, remark)
    {
    }
}

/// <summary>Which readings lead to which results. A new formula of the start-up is one entry in <see cref="All"/>.</summary>
/// <param name="Formula">Id and version, kept with each result.</param>
/// <param name="Needs">Field ids.</param>
/// <param name="Yields">Ids of the results.</param>
/// <param name="Calculate">From the readings to the results, in the units shown.</param>
sealed record ResultRule(string Formula, ImmutableArray<string> Needs, ImmutableArray<string> Yields, Func<ResultInputs, IEnumerable<Calculated>> Calculate)
{
    public static ImmutableArray<ResultRule> All { get; } =
    [
        new("co-air-free/1", ["oxygen", "flue_co"], ["co_air_free"], AirFreeMonoxide),
        new("combustion-above-air-hhv/1", ["oxygen", "flue_co", "flue_temperature", "air_temperature"], ["excess_air", "efficiency", "dew_point"], Combustion),
        new("fuel-factor/1", ["oxygen", "carbon_dioxide", "flue_co"], ["fuel_factor"], inputs =>
            [new("fuel_factor", FuelFactor.Of(inputs.Input("oxygen", 0), inputs.Input("carbon_dioxide", 1), inputs.Input("flue_co", 2) / 10_000).Estimate)]),
        new("temperature-rise/1", ["supply_temperature", "return_temperature"], ["temperature_rise"], inputs =>
            [new("temperature_rise", TemperatureRise.Of(inputs.Input("supply_temperature", 0), inputs.Input("return_temperature", 1)).Estimate)]),
        new("external-static/1", ["supply_static", "return_static"], ["external_static"], inputs =>
            [new("external_static", ExternalStatic.Total(inputs.Input("supply_static", 0), inputs.Input("return_static", 1)).Estimate)]),
        new("input-rate-by-meter/1", ["meter_time"], ["input_rate"], InputRate),
    ];

    static IEnumerable<Calculated> AirFreeMonoxide(ResultInputs inputs)
    {
        Estimate? airFree = AirFree.Guarded(inputs.Input("flue_co", 0), inputs.Input("oxygen", 1));
        yield return new Calculated("co_air_free", airFree ?? Estimate.Unknown,
            airFree is null ? FormattableString.Invariant($"oxygen above {AirFree.LargestOxygenPercent} % dilutes too much") : "");
    }

    static IEnumerable<Calculated> Combustion(ResultInputs inputs)
    {
        Fuel fuel = Fuel.Find(inputs.Plan.Appliance.FuelId) ?? throw new InvalidOperationException($"No fuel '{inputs.Plan.Appliance.FuelId}'.");
        Estimate oxygen = inputs.InSi("oxygen"), monoxide = inputs.InSi("flue_co"), flue = inputs.InSi("flue_temperature"), air = inputs.InSi("air_temperature");
        CombustionEvaluation evaluation = CombustionEvaluation.Of(
            new FlueReading(new Fraction(oxygen.Value), new Fraction(monoxide.Value), new Temperature(flue.Value), new Temperature(air.Value))
            {
                Pressure = StandardAtmosphere.Pressure(Altitude.FromFeet((double)inputs.Plan.Site.AltitudeFeet)),
                Uncertainty = new FlueUncertainty(
                    new Fraction(oxygen.StandardUncertainty), new Fraction(monoxide.StandardUncertainty),
                    new TemperatureDifference(flue.StandardUncertainty), new TemperatureDifference(air.StandardUncertainty)),
            },
            fuel);
        string remark = evaluation.Refusal ?? "";
        return
        [
            new("excess_air", evaluation.ExcessAirPercent, remark),
            new("efficiency", evaluation.EfficiencyPercent, remark),
            new("dew_point", InFahrenheit(evaluation.DewPointCelsius), remark),
        ];
    }

    /// <summary>One turn of the test dial, with the heating value of the gas as it is metered at the site.</summary>
    static IEnumerable<Calculated> InputRate(ResultInputs inputs)
    {
        if (inputs.Plan.Site is not { MeterDialCubicFeet: { } dial, HeatingValue: { } heating } site)
        {
            return [new("input_rate", Estimate.Unknown, "the site file states no meter dial or no heating value of the gas")];
        }

        double joules = Calculations.Quantities.HeatingValue.FromBtuPerCubicFoot((double)heating).JoulesPerCubicMetre;
        Uncertain flow = MeterClocking.Flow(Volume.FromCubicFeet((double)dial).CubicMetres, 1, inputs.Input("meter_time", 0));
        Uncertain watts = MeterClocking.Input(flow, 1, Uncertain.Input(joules, joules * (double)site.HeatingValuePercent / 100 / Estimate.CoverageFactor, 1));
        return [new("input_rate", (watts / HeatRate.FromBtuPerHour(1).Watts).Estimate)];
    }

    static Estimate InFahrenheit(Estimate celsius) => new(Temperature.FromCelsius(celsius.Value).Fahrenheit, 1.8 * celsius.StandardUncertainty);
}
