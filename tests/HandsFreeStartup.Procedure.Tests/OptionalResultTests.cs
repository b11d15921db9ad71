using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Derivations;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>Results that take what not every kit, site or sheet has: there with it, and no line at all without it.</summary>
public sealed class OptionalResultTests
{
    static readonly ImmutableArray<Step> Steps =
    [
        Read("zone", null, "zone_baseline"), Read("worst", null, "zone_worst"),
        Read("meter-high", "high", "meter_time"), Read("combustion", "high", "oxygen", "nox"), Read("meter-low", "low", "meter_time"),
        new() { Id = "sign", Section = "End", Title = "Sign", Kind = StepKind.Sign, Do = "Sign." },
    ];

    [Fact]
    public void With_everything_stated_each_result_stands_with_its_derivation()
    {
        LiveJob job = new LiveJob(Plan()).Say("zone_baseline", -1.0m).Say(CommandWord.Next).Say("zone_worst", -5.5m).Say(CommandWord.Next)
            .Say("meter_time", 37.3m).Say(CommandWord.Next).Say("oxygen", 7.0m).Say("nox", 40m).Say(CommandWord.Next).Say("meter_time", 74.9m);

        // By hand: 3600 · 1 · 1035/37.3 = 99893 Btu/h; · 1200 h/100000; 100000 · (1 − 0.02 · 5); 74.9/37.3; 40 · 17.9/13.9; −5.5 + 1.0.
        Assert.Equal(1198.7, Standing(job, "gas_per_year"), 0.1);
        Assert.Equal(90_000, Standing(job, "altitude_input"), 1e-6);
        Assert.Equal(74.9 / 37.3, Standing(job, "turndown"), 1e-9);
        Assert.Equal(40 * 17.9 / 13.9, Standing(job, "nox_reference"), 1e-9);
        // EPA Method 19: 1.194e-7 · 8710 · 20.9/13.9 · 40 lb per million Btu; one of them is 429.923 ng/J, and 3.6 times that mg/kWh.
        Assert.Equal(1.194e-7 * 8710 * 20.9 / 13.9 * 40 * 429.923 * 3.6, Standing(job, "nox_per_heat"), 0.01);
        Assert.Equal(-4.5, Standing(job, "depressurization"), 1e-9);
        Dictionary<string, Derivation> explained = job.Procedure.Derivations().GroupBy(one => one.Derivation.Head.Id).ToDictionary(same => same.Key, same => same.Last().Derivation);
        Assert.All(["gas_per_year", "altitude_input", "turndown", "nox_reference", "nox_per_heat", "depressurization"], id =>
            Assert.Equal(Standing(job, id), explained[id].Result.Value, 1e-6 * Math.Abs(Standing(job, id))));
        Assert.Contains("hours 1200 h/year (owner, in the site file)", string.Join("\n", explained["gas_per_year"].Lines()), StringComparison.Ordinal);
    }

    [Fact]
    public void A_depressurization_beyond_its_limit_is_judged_by_it()
    {
        LiveJob job = new LiveJob(Plan()).Say("zone_baseline", -1.0m).Say(CommandWord.Next).Say("zone_worst", -9.0m);

        Assert.Equal(Calculations.Judgement.Verdict.Fail, job.Log.OfType<ResultsComputed>().SelectMany(one => one.Results).Single(result => result.Id == "depressurization").Verdict);
    }

    [Fact]
    public void A_turndown_falls_with_the_meter_of_either_stage_and_is_made_anew()
    {
        LiveJob job = new LiveJob(Plan(withKit: false)).Say("meter_time", 37.3m).Say(CommandWord.Next).Say("oxygen", 7.0m).Say(CommandWord.Next).Say("meter_time", 74.9m);
        double first = Standing(job, "turndown");

        job.Say(CommandWord.GoBack).Say(CommandWord.GoBack).Say("meter_time", 40.0m).Say(AnswerWord.Confirm);

        Assert.Equal(74.9 / 37.3, first, 1e-9);
        Assert.Equal(74.9 / 40.0, Standing(job, "turndown"), 1e-9);
        Assert.Single(job.Procedure.Derivations(), one => one.Derivation.Head.Id == "turndown");
    }

    [Fact]
    public void Without_instruments_hours_sea_level_input_and_modulation_nothing_is_asked_and_nothing_is_stated()
    {
        StartupPlan plan = Plan(withKit: false);
        StartupPlan bare = StartupPlan.From(
            plan.Checklist, plan.Appliance with { IsModulating = false, SeaLevelInput = null }, plan.Site with { BurningHours = null });
        LiveJob job = new LiveJob(bare).Say("meter_time", 37.3m).Say(CommandWord.Next).Say("oxygen", 7.0m).Say(CommandWord.Next).Say("meter_time", 74.9m);

        Assert.Equal(["meter-high", "combustion", "meter-low", "sign"], bare.Steps.Select(step => step.Id));
        Assert.DoesNotContain(bare.Steps.SelectMany(step => step.Readings), demand => Fields.Find(demand.FieldId)!.NeedsInstrument);
        Assert.Equal(["gas_per_hour", "input_rate"], job.Log.OfType<ResultsComputed>().SelectMany(one => one.Results).Select(result => result.Id).Distinct().Order(StringComparer.Ordinal));
    }

    /// <summary>By hand: U = 2 √((0.3/2)² + 0.1²/12 + (0.2 · 2 years/√3)²), JCGM 100:2008, 4.3.7 (value from memory).</summary>
    [Fact]
    public void Display_and_drift_since_the_calibration_widen_a_reading_and_nothing_changes_without_them()
    {
        StartupPlan plan = Some.Plan();
        StartupPlan drifting = StartupPlan.From(plan.Checklist, plan.Appliance, plan.Site with
        {
            Instruments = [new InstrumentUncertainty("oxygen", 0.3m, 0, "data sheet") { Resolution = 0.1m, DriftPerYear = 0.2m, Calibrated = new(2029, 3, 4) }],
        });

        decimal stated = Oxygen(plan), wider = Oxygen(drifting);

        Assert.Equal(0.3m, stated);
        double years = 730 / 365.25;
        Assert.Equal(2 * Math.Sqrt(0.0225 + 0.01 / 12 + Math.Pow(0.2 * years, 2) / 3), (double)wider, 1e-6);
    }

    static decimal Oxygen(StartupPlan plan) =>
        new LiveJob(plan).GoTo("combustion").Say("oxygen", 7.6m).Log.OfType<ReadingEntered>().Last().Reading.ExpandedUncertainty!.Value;

    [Fact]
    public void Above_the_oxygen_where_a_rate_says_nothing_no_nitrogen_oxides_are_stated()
    {
        LiveJob job = new LiveJob(Plan()).Say("zone_baseline", -1.0m).Say(CommandWord.Next).Say("zone_worst", -2.0m).Say(CommandWord.Next)
            .Say("meter_time", 37.3m).Say(CommandWord.Next).Say("nox", 40m).Say("oxygen", 14.5m, Certainty.Amber).Say(AnswerWord.Confirm);

        CalculatedResult[] results = [.. job.Log.OfType<ResultsComputed>().SelectMany(one => one.Results).Where(result => result.Id.StartsWith("nox", StringComparison.Ordinal))];
        Assert.Equal(2, results.Length);
        Assert.All(results, result => Assert.Null(result.Value));
        Assert.All(results, result => Assert.Contains("dilutes too much", result.Remark, StringComparison.Ordinal));
    }

    static double Standing(LiveJob job, string id) => job.Log.OfType<ResultsComputed>().SelectMany(one => one.Results).Last(result => result.Id == id).Value!.Value;

    static StartupPlan Plan(bool withKit = true)
    {
        StartupPlan plan = Some.PlanOf(Steps);
        ImmutableArray<InstrumentUncertainty> kit = [new("nox", 5m, 0, "invented"), new("zone_baseline", 0.5m, 0, "invented"), new("zone_worst", 0.5m, 0, "invented")];
        return StartupPlan.From(
            plan.Checklist with { Limits = [.. plan.Checklist.Limits, new("depressurization", -5m, null, "Pa", "invented", false)] },
            plan.Appliance with { IsModulating = true, SeaLevelInput = 100_000m, DraftBy = DraftBy.Fan },
            plan.Site with
            {
                AltitudeFeet = 5000,
                MeterDialCubicFeet = 1,
                HeatingValue = 1035,
                BurningHours = 1200,
                Instruments = [.. plan.Site.Instruments, new("meter_time", 0.3m, 0, "invented"), .. withKit ? kit : []],
            });
    }

    static Step Read(string id, string? scope, params string[] fields) => new()
    {
        Id = id,
        Section = "Section",
        Title = $"Title of {id}",
        Kind = StepKind.Read,
        Do = $"Do {id}.",
        Scope = scope,
        Readings = [.. fields.Select(field => new ReadingDemand(field, null))],
    };
}
