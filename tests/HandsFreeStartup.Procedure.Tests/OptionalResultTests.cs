using System.Collections.Immutable;
using HandsFreeStartup.Calculations.Derivations;
using HandsFreeStartup.Calculations.Tests.Derivations;
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

    /// <summary>By hand: 1.5 % of 328 °F are 4.92 °F, of 164 °C 2.46 °C; a display of 1 °F is one of 5/9 °C.</summary>
    [Theory]
    [InlineData("°F", 328, 4.92)]
    [InlineData("°C", 164, 2.46)]
    public void Percents_are_those_of_the_number_shown_with_and_without_a_display_step(string unit, int value, double stated)
    {
        InstrumentUncertainty plain = new("flue_temperature", 1m, 1.5m, "data sheet"), stepped = plain with { Resolution = 1m };
        double step = unit == "°C" ? 5 / 9.0 : 1;

        Assert.Equal(stated, (double)plain.ExpandedOf(value, Unit.Find(unit)!, null), 1e-9);
        Assert.Equal(2 * Math.Sqrt(stated * stated / 4 + step * step / 12), (double)stepped.ExpandedOf(value, Unit.Find(unit)!, null), 1e-6);
    }

    /// <summary>By hand, relative u: watch 0.15/37.3, thumb √(0.4²/3 + 0.1²/12)/37.3, dial √2 · 0.01/√12, gas 0.01 (JCGM 100:2008, 5.1.2; value from memory).</summary>
    [Fact]
    public void The_thumb_at_the_watch_and_the_hand_of_the_dial_stand_in_the_budget_of_the_input()
    {
        LiveJob job = new LiveJob(Plan(withKit: false)).Say("meter_time", 37.3m);

        Derivation input = job.Procedure.Derivations().Single(one => one.Derivation.Head.Id == "input_rate").Derivation;
        double watch = 0.15 / 37.3, thumb = Math.Sqrt(0.16 / 3 + 0.01 / 12) / 37.3, dial = Math.Sqrt(2) * 0.01 / Math.Sqrt(12);
        double all = watch * watch + thumb * thumb + dial * dial + 1e-4;

        Assert.Equal(3600 * 1035 / 37.3 * Math.Sqrt(all), input.Result.StandardUncertainty, 1e-6 * input.Result.Value);
        Assert.Equal(thumb * thumb / all, input.Budget.Single(part => part.Name == "t by hand").Share, 1e-9);
        Assert.Equal(dial * dial / all, input.Budget.Single(part => part.Name == "dial").Share, 1e-9);
        Assert.Contains("common practice, no source", string.Join("\n", input.Lines()), StringComparison.Ordinal);
        // What the heating value is off by does not blur a volume.
        Assert.Equal(3600 / 37.3 * Math.Sqrt(all - 1e-4), job.Procedure.Derivations().Single(one => one.Derivation.Head.Id == "gas_per_hour").Derivation.Result.StandardUncertainty, 1e-6);
        Assert.Equal(input.Result.ExpandedUncertainty, job.Log.OfType<ResultsComputed>().SelectMany(one => one.Results).Single(result => result.Id == "input_rate").ExpandedUncertainty!.Value, 1e-6);
    }

    /// <summary>An evaluator that knows nothing of the product works out every printed line of every result that a job can have, but the oxygen that an adjustment lets expect.</summary>
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(9)]
    public void Every_result_of_a_job_comes_out_of_its_printed_lines_alone(int more)
    {
        LiveJob job = WholeJob(more);
        Derivation[] derivations = [.. job.Procedure.Derivations().Select(one => one.Derivation)];

        Assert.Equal(
            ResultKind.All.Select(kind => kind.Id).Except(["oxygen_expected"]).Order(StringComparer.Ordinal),
            derivations.Select(derivation => derivation.Head.Id).Distinct().Order(StringComparer.Ordinal));
        Assert.Empty(job.Log.OfType<ResultsComputed>().SelectMany(one => one.Results).Single(result => result.Id == "air_flow").Remark.Shown);
        foreach (Derivation derivation in derivations)
        {
            foreach (DerivationStep step in derivation.Steps)
            {
                Assert.Equal(Number(step.Text), PrintedFormula.Evaluate(step.Numbers), 2e-4 * Math.Abs(Number(step.Text)) + 1e-7);
            }
            // The evaluator has a steam table of its own.
            double slack = derivation.Numbers.Contains("Tsat", StringComparison.Ordinal) ? 0.01 : 1e-5 * Math.Abs(derivation.Result.Value);
            Assert.Equal(Number(derivation.Text), PrintedFormula.Evaluate(derivation.Numbers), 0.51 * Math.Pow(10, -derivation.Head.Decimals) + slack);
            Assert.Contains(
                job.Log.OfType<ResultsComputed>().SelectMany(one => one.Results),
                result => result.Id == derivation.Head.Id && Math.Abs(result.Value!.Value - derivation.Result.Value) <= 1e-6 * Math.Abs(derivation.Result.Value));
        }
    }

    static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>A modulating furnace with every instrument; invented numbers, condensing in every other job.</summary>
    static LiveJob WholeJob(int more)
    {
        StartupPlan plan = Plan();
        StartupPlan whole = StartupPlan.From(
            plan.Checklist with { Steps = [Read("all", "high", [.. Everything]), Read("zone", null, "zone_baseline", "zone_worst"), Read("low", "low", "meter_time"), Steps[^1]] },
            plan.Appliance,
            plan.Site with { Instruments = [.. plan.Site.Instruments.Where(one => !Everything.Contains(one.FieldId)), .. Everything.Select(field => new InstrumentUncertainty(field, field == "flue_co" ? 10m : 0.3m, 0, "invented"))] });
        LiveJob job = new(whole);
        decimal[] values = [37.3m + more, 5.0m + 0.5m * more, 12m + 20 * more, more % 2 == 0 ? 320m + more : 95m + more, 68m + more, 8.9m - 0.28m * more, 30m + more, 118m + more, 68m, 0.21m, -0.18m];
        foreach ((string field, decimal value) in Everything.Zip(values))
        {
            job.Say(field, value);
            if (job.Procedure.Phase == Phase.Confirming)
            {
                job.Say(AnswerWord.Confirm);
            }
        }
        return job.Say(CommandWord.Next).Say("zone_baseline", -1.0m).Say("zone_worst", -2.5m - 0.1m * more).Say(CommandWord.Next).Say("meter_time", 74.9m + more);
    }

    static readonly ImmutableArray<string> Everything =
        ["meter_time", "oxygen", "flue_co", "flue_temperature", "air_temperature", "carbon_dioxide", "nox", "supply_temperature", "return_temperature", "supply_static", "return_static"];

    [Fact]
    public void A_turndown_belongs_to_no_stage()
    {
        LiveJob job = new LiveJob(Plan(withKit: false)).Say("meter_time", 37.3m).Say(CommandWord.Next).Say("oxygen", 7.0m).Say(CommandWord.Next).Say("meter_time", 74.9m);

        Assert.Equal("", job.Procedure.Derivations().Single(one => one.Derivation.Head.Id == "turndown").Scope);
    }

    /// <summary>By hand: two cells that err together with r = 0.5 change u² of CO air-free by 2 r times the product of their parts, ∂/∂O2 and ∂/∂CO being positive (JCGM 100:2008, 5.2.2; value from memory).</summary>
    [Fact]
    public void What_the_certificate_says_of_the_cells_stands_in_the_budget_and_in_the_record()
    {
        double alone = AirFree(0, out _), together = AirFree(0.5m, out Derivation derivation);
        BudgetShare oxygen = derivation.Budget.Single(part => part.Name == "O2"), monoxide = derivation.Budget.Single(part => part.Name == "CO");

        Assert.Equal(Math.Sqrt(oxygen.Share * monoxide.Share), derivation.Budget.Single(part => part.Name is "CO with O2" or "O2 with CO").Share, 1e-9);
        Assert.Equal(1, derivation.Budget.Sum(part => part.Share), 1e-9);
        Assert.True(together > alone);
        Assert.Equal(derivation.Result.ExpandedUncertainty, together, 1e-9);
    }

    static double AirFree(decimal correlation, out Derivation derivation)
    {
        StartupPlan plan = Some.Plan();
        LiveJob job = new LiveJob(StartupPlan.From(plan.Checklist, plan.Appliance, plan.Site with { AnalyzerCorrelation = correlation }))
            .GoTo("combustion").Say("oxygen", 7.6m).Say("flue_co", 96m).Say(AnswerWord.Confirm);
        derivation = job.Procedure.Derivations().Single(one => one.Derivation.Head.Id == "co_air_free").Derivation;
        return job.Log.OfType<ResultsComputed>().SelectMany(one => one.Results).Last(result => result.Id == "co_air_free").ExpandedUncertainty!.Value;
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
        Assert.All(results, result => Assert.Contains("dilutes too much", result.Remark.Shown, StringComparison.Ordinal));
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
