using System.Collections.Immutable;
using System.Globalization;
using HandsFreeStartup.Calculations.Derivations;
using HandsFreeStartup.Calculations.Tests.Derivations;
using HandsFreeStartup.Procedure.Checklists;
using HandsFreeStartup.Procedure.Events;
using HandsFreeStartup.Procedure.Hearing;
using HandsFreeStartup.Procedure.Tests.Support;

namespace HandsFreeStartup.Procedure.Tests;

/// <summary>The advice of an adjustment, and what the oxygen does, against the reference table of the calculation tests (computed with Cantera).</summary>
public sealed class AdjustingTests
{
    const double PascalsPerInch = 249.08891;

    /// <summary>Fuel, oxygen before, pressures before and after in in. w.c., oxygen after (empty where the air would not suffice).</summary>
    static readonly ImmutableArray<(string Fuel, decimal Oxygen, decimal From, decimal To, double? After)> Table =
    [
        .. File.ReadLines(Path.Combine(AppContext.BaseDirectory, "Reference", "adjustment.csv")).Skip(1).Select(line => line.Split(','))
            .Select(cells => (cells[0] == "propane" ? "propane" : "natural-gas", decimal.Parse(cells[1], CultureInfo.InvariantCulture),
                InchesOf(cells[2]), InchesOf(cells[3]), cells[8] == "1" ? Number(cells[9]) : (double?)null)),
    ];

    [Fact]
    public void The_oxygen_to_expect_is_that_of_the_reference_table_and_is_told_only_after_it_was_measured()
    {
        // Two of the seventy rows leave the pressure where it was.
        Assert.Equal(68, Table.Count(row => row.From != row.To));
        foreach ((string fuel, decimal oxygen, decimal from, decimal to, double? after) in Table.Where(row => row.From != row.To))
        {
            decimal half = Math.Abs(to - from) * 0.4m;
            LiveJob job = new LiveJob(Plan(fuel, to - half, to + half)).Say("oxygen", oxygen).Say(CommandWord.Next)
                .Say("manifold_pressure", from).Say(CommandWord.Next);
            Assert.Equal("adjust", job.Step);
            job.Say("manifold_pressure", to).Say(CommandWord.Next);
            Assert.Equal("combustion", job.Step);
            Assert.DoesNotContain(job.View.Results, result => result.Label == "Oxygen expected");
            Assert.DoesNotContain(job.Log.OfType<ResultsComputed>(), computed => computed.Results.Any(result => result.Id == "oxygen_expected"));

            decimal measured = Math.Clamp(Math.Round((decimal)(after ?? 0.5), 1), 0m, 20.9m);
            job.Say("oxygen", measured);

            CalculatedResult expected = job.Log.OfType<ResultsComputed>().Last().Results.Single(result => result.Id == "oxygen_expected");
            Assert.Equal(after is null, expected.Value is null);
            if (after is { } known)
            {
                // Pressures are said with three decimals here: their rounding moves the oxygen by less than 0.02 %.
                Assert.Equal(known, expected.Value!.Value, 0.02);
                Assert.Contains("agrees", expected.Remark.Shown, StringComparison.Ordinal);
            }
        }
    }

    [Fact]
    public void An_oxygen_that_does_not_follow_the_pressure_is_to_be_measured_again()
    {
        LiveJob job = new LiveJob(Plan("natural-gas", 3.35m, 3.65m)).Say("oxygen", 8.4m).Say(CommandWord.Next)
            .Say("manifold_pressure", 3.0m).Say(CommandWord.Next).Say("manifold_pressure", 3.5m).Say(CommandWord.Next).Say("oxygen", 11.0m);

        Assert.Contains("does not agree, measure again", job.Procedure.Announce(job.Last, job.Now).Select(said => said.Text).Single(text => text.StartsWith("Oxygen expected", StringComparison.Ordinal)), StringComparison.Ordinal);
    }

    [Fact]
    public void The_advice_brings_the_pressure_into_range_in_three_turns_and_never_past_its_limits()
    {
        Random random = new(20260101);
        int inThree = 0, cases = 0;
        for (int round = 0; round < 20; round++)
        {
            foreach ((string fuel, _, decimal from, decimal to, _) in Table)
            {
                decimal half = 0.10m + (decimal)random.NextDouble() * 0.10m; // +- 0.1 to 0.2 in. w.c. (common practice, no source)
                LiveJob job = new LiveJob(Plan(fuel, Math.Round(to - half, 2), Math.Round(to + half, 2))).Say("oxygen", 9.0m).Say(CommandWord.Next).Say("manifold_pressure", Math.Round(from, 2)).Say(CommandWord.Next);
                if (job.Step != "adjust")
                {
                    continue;
                }

                cases++;
                inThree += Turns(job, Math.Round(from, 2), random) <= 3 ? 1 : 0;
            }
        }

        Assert.InRange(cases, 500, 1400);
        Assert.InRange((double)inThree / cases, 0.95, 1);
    }

    /// <summary>A hand that turns up to three tenths too far or too short, and a gauge that shows hundredths.</summary>
    static int Turns(LiveJob job, decimal pressure, Random random)
    {
        DeclaredLimit limit = job.Log.OfType<ReadingEntered>().Last().Reading.Limit!;
        bool isHigh = pressure > limit.Upper;
        for (int turn = 1; turn <= 20; turn++)
        {
            pressure = Math.Round(pressure + Change(job.View.Do) * (decimal)(0.7 + 0.6 * random.NextDouble()), 2);
            job.Say("manifold_pressure", pressure);
            Assert.True(isHigh ? pressure >= limit.Lower : pressure <= limit.Upper, $"{pressure} is past {limit.Text}");
            if (pressure >= limit.Lower && pressure <= limit.Upper)
            {
                Assert.Contains("stop turning", job.View.Do, StringComparison.Ordinal);
                return turn;
            }
        }

        return 20;
    }

    /// <summary>What the words tell the technician to do; clockwise raises.</summary>
    static decimal Change(string advice)
    {
        string[] words = advice[advice.IndexOf("turn ", StringComparison.Ordinal)..].Split(' ', ',');
        decimal amount = decimal.Parse(words[Array.IndexOf(words, "about") + 1], CultureInfo.InvariantCulture);
        return words[1] == "clockwise" ? amount : -amount;
    }

    [Theory]
    [InlineData(3.1, "turn clockwise, about 0.4 in. w.c. to go. Oxygen will fall.")]
    [InlineData(3.9, "turn counter-clockwise, about 0.4 in. w.c. to go. Oxygen will rise.")]
    [InlineData(2.0, "turn clockwise, about 1.27 of 1.5 in. w.c. first. Oxygen will fall.")]
    public void The_words_say_the_way_the_distance_and_what_the_oxygen_will_do(double pressure, string advice) =>
        Assert.Contains(advice, Adjust((decimal)pressure).View.Do, StringComparison.Ordinal);

    [Fact]
    public void Over_the_pressure_of_the_sheet_the_valve_is_to_be_replaced_and_nothing_turned()
    {
        LiveJob job = Adjust(4.6m);

        Assert.Contains("the valve is to be replaced", job.View.Do, StringComparison.Ordinal);
        Assert.DoesNotContain("turn ", job.View.Do["Do".Length..], StringComparison.Ordinal);
        Assert.Contains("Stop adjusting", Assert.IsType<CommandRefused>(job.Say(CommandWord.Next).Last[^1]).Reason.Shown, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(40, "over-fire")]   // 1 ft3 in 40 s at 1035 Btu/ft3 are 93150 Btu/h (printed clocking row), over 82 000
    [InlineData(55, "under-fire")]  // 67745 Btu/h, under 76 000
    public void Over_fire_and_under_fire_are_named_and_the_meter_has_the_last_word(int seconds, string firing)
    {
        decimal pressure = firing == "over-fire" ? 3.1m : 3.9m;
        LiveJob job = new LiveJob(Plan("natural-gas", 3.35m, 3.65m, clocks: true)).Say("oxygen", 8.4m).Say("meter_time", seconds);
        Assert.Contains(job.Procedure.Announce(job.Last, job.Now), said => said.Text.Contains(firing, StringComparison.Ordinal));

        job.Say(CommandWord.Next).Say("manifold_pressure", pressure).Say(CommandWord.Next);

        Assert.Contains($"The meter says {firing}: do not turn", job.View.Do, StringComparison.Ordinal);
        Assert.IsType<CommandRefused>(job.Say(CommandWord.Next).Last[^1]);
    }

    [Fact]
    public void The_meter_that_agrees_with_the_pressure_stops_no_adjustment()
    {
        LiveJob job = new LiveJob(Plan("natural-gas", 3.35m, 3.65m, clocks: true)).Say("oxygen", 8.4m).Say("meter_time", 55m).Say(CommandWord.Next).Say("manifold_pressure", 3.1m).Say(CommandWord.Next);

        Assert.Contains("turn clockwise", job.View.Do, StringComparison.Ordinal);
    }

    static LiveJob Adjust(decimal pressure) => new LiveJob(Plan("natural-gas", 3.35m, 3.65m))
        .Say("oxygen", 8.4m).Say(CommandWord.Next).Say("manifold_pressure", pressure).Say(CommandWord.Next);

    /// <summary>Combustion, with the meter or without, then pressure and adjustment.</summary>
    static StartupPlan Plan(string fuel, decimal lower, decimal upper, bool clocks = false)
    {
        StartupPlan plan = Some.PlanOf(
        [
            Some.Steps.Single(step => step.Id == "combustion") with { Readings = [new("oxygen", null), .. clocks ? new ReadingDemand[] { new("meter_time", null) } : []] },
            .. Some.Steps.Where(step => step.Id is "manifold" or "adjust" or "sign"),
        ]);
        return StartupPlan.From(
            plan.Checklist,
            plan.Appliance with
            {
                FuelId = fuel,
                Limits =
                [
                    new("manifold_pressure/high", lower, upper, "in. w.c.", "invented", false),
                    new("input_rate/high", 76_000m, 82_000m, "Btu/h", "invented", false),
                    .. fuel == "natural-gas" && upper == 3.65m ? new DeclaredLimit[] { new(LimitNames.ReplaceValve, null, 4.5m, "in. w.c.", "invented", false) } : [],
                ],
            },
            plan.Site with { MeterDialCubicFeet = 1, HeatingValue = 1035 });
    }

    static decimal InchesOf(string pascals) => Math.Round((decimal)(Number(pascals) / PascalsPerInch), 3);

    static double Number(string cell) => double.Parse(cell, CultureInfo.InvariantCulture);

    [Fact]
    public void A_pressure_that_is_outside_is_called_too_high_or_too_low_and_one_that_is_inside_is_left()
    {
        Assert.Contains("3.9 in. w.c. is too high", Adjust(3.9m).View.Do, StringComparison.Ordinal);
        Assert.Contains("3.1 in. w.c. is too low", Adjust(3.1m).View.Do, StringComparison.Ordinal);
        Assert.Contains("stop turning", Adjust(3.9m).Say("manifold_pressure", 3.5m).View.Do, StringComparison.Ordinal);

        // Who comes to the adjustment with a pressure of another step is not told to stop what was not begun.
        LiveJob back = Adjust(3.9m).Say("manifold_pressure", 3.5m).Say(CommandWord.Next).Say("oxygen", 8.0m).Say(CommandWord.Next);
        Assert.DoesNotContain("stop turning", back.View.Do, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("clockwise", 3.9, "turn counter-clockwise")]
    [InlineData("counter-clockwise", 3.9, "turn clockwise")]
    [InlineData("counter-clockwise", 3.1, "turn counter-clockwise")]
    public void The_way_to_turn_is_the_one_that_the_sheet_states(string raises, double pressure, string advice)
    {
        StartupPlan plan = Plan("natural-gas", 3.35m, 3.65m);
        LiveJob job = new LiveJob(StartupPlan.From(plan.Checklist, plan.Appliance with { TurnToRaise = raises }, plan.Site))
            .Say("oxygen", 8.4m).Say(CommandWord.Next).Say("manifold_pressure", (decimal)pressure).Say(CommandWord.Next);

        Assert.Contains($": {advice}, ", job.View.Do, StringComparison.Ordinal);
    }

    [Fact]
    public void Oxygen_is_adjusted_the_other_way_round_and_nothing_is_said_about_itself()
    {
        LiveJob job = AtOxygen(5m, 9.5m, 10.5m);
        Assert.Contains("10.5 % is too high: turn clockwise, ", job.View.Do, StringComparison.Ordinal);
        Assert.DoesNotContain("Oxygen will", job.View.Do, StringComparison.Ordinal);

        Assert.Contains("turn clockwise, about 0.77 of 1 % first", AtOxygen(null, 9.5m, 10.5m).View.Do, StringComparison.Ordinal);
        Assert.Contains("turn counter-clockwise, about 0.77 of 1 % first", AtOxygen(5m, null, 4.0m).View.Do, StringComparison.Ordinal);
    }

    /// <summary>An adjustment by oxygen, where the meter says nothing.</summary>
    static LiveJob AtOxygen(decimal? lower, decimal? upper, decimal oxygen)
    {
        StartupPlan plan = Some.PlanOf([Some.Steps.Single(step => step.Id == "adjust") with { Readings = [new("oxygen", "oxygen")], Voids = [] }, Some.Steps[^1]]);
        return new LiveJob(StartupPlan.From(plan.Checklist, plan.Appliance with { Limits = [new("oxygen", lower, upper, "%", "invented", false)] }, plan.Site)).Say("oxygen", oxygen);
    }

    [Fact]
    public void Two_adjustments_before_the_oxygen_is_measured_again_count_as_one_and_are_compared_once()
    {
        LiveJob Turned(params decimal[] pressures)
        {
            LiveJob job = new LiveJob(Plan("natural-gas", 3.35m, 3.65m)).Say("oxygen", 8.4m).Say(CommandWord.Next).Say("manifold_pressure", 3.0m).Say(CommandWord.Next);
            job.Say("manifold_pressure", pressures[0]).Say(CommandWord.Next);
            for (int turn = 1; turn < pressures.Length; turn++)
            {
                job.Procedure.Apply(new AdjustmentMade(job.Now, "adjust", new ReadingKey("manifold_pressure", "high"), pressures[turn - 1], pressures[turn], "in. w.c."));
            }

            return job.Say("oxygen", 7.0m);
        }

        Assert.Equal(Expected(Turned(3.6m)), Expected(Turned(3.4m, 3.6m)));
        Assert.NotEqual(Expected(Turned(3.4m)), Expected(Turned(3.4m, 3.6m)));
        LiveJob measured = Turned(3.6m).Say(CommandWord.Next).Say(CommandWord.GoBack).Say(CommandWord.GoBack).Say(CommandWord.GoBack).Say("oxygen", 7.2m).Say(AnswerWord.Confirm);
        Assert.Single(measured.Log.OfType<ResultsComputed>().SelectMany(one => one.Results), result => result.Id == "oxygen_expected");
    }

    [Fact]
    public void The_expected_oxygen_is_explained_from_what_was_measured_before_and_set_since()
    {
        LiveJob job = new LiveJob(Plan("natural-gas", 3.35m, 3.65m)).Say("oxygen", 8.4m).Say(CommandWord.Next).Say("manifold_pressure", 3.0m).Say(CommandWord.Next)
            .Say("manifold_pressure", 3.6m).Say(CommandWord.Next).Say("oxygen", 7.0m);
        Derivation[] Explained() => [.. job.Procedure.Derivations().Select(one => one.Derivation).Where(one => one.Head.Id == "oxygen_expected")];

        Derivation measuring = Explained().Single();
        Assert.Equal(Expected(job), measuring.Result.Value, 1e-9);
        Assert.Equal(["8.4", "3.0", "3.6"], measuring.Inputs.Where(input => input.Symbol != "c").Select(input => input.Text));
        Assert.Equal(Expected(job), PrintedFormula.Evaluate(measuring.Numbers), 0.05);
        job.Say(CommandWord.Next);
        Assert.Equal(Expected(job), Explained().Single().Result.Value, 1e-9);
    }

    static double Expected(LiveJob job) => job.Log.OfType<ResultsComputed>().SelectMany(one => one.Results).Last(result => result.Id == "oxygen_expected").Value!.Value;
}
