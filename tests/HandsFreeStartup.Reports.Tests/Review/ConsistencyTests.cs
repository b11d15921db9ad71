using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Reports.Review;
using HandsFreeStartup.Reports.Tests.Support;

namespace HandsFreeStartup.Reports.Tests.Review;

/// <summary>Values that are possible each by itself. The readings are invented; where a number decides, its source stands beside it.</summary>
[Trait("Speed", "Fast")]
public sealed class ConsistencyTests
{
    static readonly DateTimeOffset At = new(2026, 3, 14, 9, 0, 0, TimeSpan.Zero);

    /// <summary>By hand: Fo = (20.9 - O2) / CO2. Methane in dry air at 7.6 % O2 makes 7.5 % CO2, Fo 1.77; 11 % CO2 makes 1.21, below EPA Method 3B's 1.600.</summary>
    [Theory]
    [InlineData("7.6", "7.5", false)]
    [InlineData("7.6", "11.0", true)]
    [InlineData("7.6", "5.0", true)]
    public void Oxygen_and_carbon_dioxide_must_fit_the_fuel(string oxygen, string dioxide, bool isFound) =>
        Assert.Equal(isFound, Rules(Reading("oxygen", "high", oxygen), Reading("carbon_dioxide", "high", dioxide)).Contains("fuel-factor"));

    /// <summary>The combustion core gives the reference: what it does not give is found.</summary>
    [Fact]
    public void An_efficiency_that_does_not_follow_from_its_readings_is_found()
    {
        StartupEvent[] readings = [Reading("oxygen", "high", "7.6"), Reading("flue_co", "high", "17"), Reading("flue_temperature", "high", "340"), Reading("air_temperature", "high", "70")];
        double true_ = Calculations.Combustion.CombustionEvaluation.Of(
            new Calculations.Combustion.FlueReading(
                new(0.076), new(17e-6), Calculations.Quantities.Temperature.FromFahrenheit(340), Calculations.Quantities.Temperature.FromFahrenheit(70))
            {
                Pressure = Calculations.AirSide.StandardAtmosphere.Pressure(Calculations.Quantities.Altitude.FromFeet(650)),
            },
            Calculations.Fuels.Fuel.Find("natural-gas")!).EfficiencyPercent.Value;

        Assert.DoesNotContain("efficiency", Rules([.. readings, Result("efficiency", "high", true_, ("oxygen", 7.6m))]));
        Assert.Contains("efficiency", Rules([.. readings, Result("efficiency", "high", true_ + 3, ("oxygen", 7.6m))]));
    }

    [Theory]
    [InlineData("110", "68", false)]
    [InlineData("68", "68", true)]
    [InlineData("60", "68", true)]
    public void Flue_gas_is_never_cooler_than_the_air_that_cools_it(string flue, string returned, bool isFound) =>
        Assert.Equal(isFound, Rules(Reading("flue_temperature", "high", flue), Reading("return_temperature", "high", returned)).Contains("flue-cooler-than-air"));

    [Theory]
    [InlineData(true, "110", false)]
    [InlineData(true, "320", true)]
    [InlineData(false, "320", false)]
    [InlineData(false, "110", true)]
    [InlineData(null, "110", false)]
    public void A_flue_temperature_tells_whether_a_furnace_condenses(bool? condenses, string flue, bool isFound) => Assert.Equal(isFound, Of(
        ScriptedJob.Plan.Appliance with { IsCondensing = condenses },
        Reading("flue_temperature", "high", flue), Result("dew_point", "high", 128, ("oxygen", 7.6m))).Contains("condensing"));

    /// <summary>By hand: the square root of 1.7 / 3.5 is 0.697; 60 s for 42 s of one turn makes 0.700, 60 s for 55 s makes 0.917.</summary>
    [Theory]
    [InlineData("42", false)]
    [InlineData("55", true)]
    public void The_meter_and_the_manifold_must_tell_the_same_of_two_stages(string highTime, bool isFound) => Assert.Equal(isFound, Rules(
        Reading("meter_time", "low", "60"), Reading("meter_time", "high", highTime),
        Reading("manifold_pressure", "low", "1.70"), Reading("manifold_pressure", "high", "3.50")).Contains("input-against-manifold"));

    [Theory]
    [InlineData("340", "3.5", true)]
    [InlineData("340", "1.7", true)]
    [InlineData("296", "1.7", false)]
    public void Two_stages_with_the_same_readings_are_found(string lowFlue, string lowManifold, bool isFound) => Assert.Equal(isFound, Rules(
        Reading("oxygen", "low", "7.6"), Reading("flue_temperature", "low", lowFlue), Reading("manifold_pressure", "low", lowManifold),
        Reading("oxygen", "high", "7.6"), Reading("flue_temperature", "high", "340"), Reading("manifold_pressure", "high", "3.5")).Contains("identical-stages"));

    [Theory]
    [InlineData(55, Verdict.Pass, 0.4, Verdict.Pass, false)]
    [InlineData(55, Verdict.Pass, -0.4, Verdict.Pass, true)]
    [InlineData(30, Verdict.Fail, 0.9, Verdict.Fail, true)]
    [InlineData(30, Verdict.Fail, 0.4, Verdict.Pass, false)]
    [InlineData(90, Verdict.Fail, 0.9, Verdict.Fail, false)]
    public void Little_air_does_not_make_a_small_rise(double rise, Verdict riseVerdict, double resistance, Verdict resistanceVerdict, bool isFound) => Assert.Equal(isFound, Rules(
        Judged(Result("temperature_rise", "high", rise, ("supply_temperature", 120m)), new DeclaredLimit("temperature_rise", 40, 70, "°F", "invented", false), riseVerdict),
        Judged(Result("external_static", "high", resistance, ("supply_static", 0.2m)), new DeclaredLimit("external_static", null, 0.5m, "in. w.c.", "invented", false), resistanceVerdict))
        .Contains("rise-against-air"));

    static IReadOnlyList<string> Rules(params StartupEvent[] events) => Of(ScriptedJob.Plan.Appliance, events);

    static IReadOnlyList<string> Of(ApplianceSheet appliance, params StartupEvent[] events) =>
        [.. JobReview.Of(StartupPlan.From(ScriptedJob.Plan.Checklist, appliance, ScriptedJob.Plan.Site), events, RecordState.Sound).Findings.Select(finding => finding.Rule)];

    static ReadingEntered Reading(string fieldId, string scope, string value) => new(At, "combustion-high", new EnteredReading(new ReadingKey(fieldId, scope), decimal.Parse(value, System.Globalization.CultureInfo.InvariantCulture), Fields.Find(fieldId)!.Unit.Symbol, Evidence.Typed(fieldId)));

    static ResultsComputed Result(string id, string scope, double value, params (string FieldId, decimal Value)[] inputs) => new(At, "combustion-high", scope,
        [new CalculatedResult(id, id)
        {
            Value = value,
            ExpandedUncertainty = 0,
            UnitSymbol = "",
            Decimals = 1,
            Formula = "invented/1",
            Inputs = inputs.ToImmutableSortedDictionary(input => input.FieldId, input => input.Value),
            Remark = "",
        }]);

    static ResultsComputed Judged(ResultsComputed computed, DeclaredLimit limit, Verdict verdict) =>
        computed with { Results = [computed.Results[0] with { Limit = limit, Verdict = verdict }] };
}
