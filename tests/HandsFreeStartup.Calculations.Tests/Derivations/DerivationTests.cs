using System.Globalization;
using HandsFreeStartup.Calculations.AirSide;
using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Derivations;
using HandsFreeStartup.Calculations.GasSide;
using HandsFreeStartup.Calculations.Judgement;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Tests.Derivations;

public sealed class DerivationTests
{
    public static TheoryData<string, int> EveryResultOfTenJobs()
    {
        TheoryData<string, int> data = [];
        foreach (Explanation explanation in Explanation.All)
        {
            foreach (int job in Jobs.Numbers)
            {
                data.Add(explanation.Id, job);
            }
        }

        return data;
    }

    [Theory]
    [MemberData(nameof(EveryResultOfTenJobs))]
    public void The_printed_formula_with_the_printed_numbers_gives_the_printed_result(string id, int job)
    {
        Derivation derivation = Derive(id, Jobs.Of(job));

        // A step shows seven digits of what its own line gives, from numbers of seven digits.
        foreach (DerivationStep step in derivation.Steps)
        {
            double shown = Number(step.Text);
            Assert.Equal(shown, PrintedFormula.Evaluate(step.Numbers), 2e-4 * Math.Abs(shown) + 1e-7);
        }

        double half = 0.5 * Math.Pow(10, -derivation.Head.Decimals);
        double slack = derivation.Numbers.Contains("Tsat", StringComparison.Ordinal) ? 0.01 : 1e-5 * Math.Abs(derivation.Result.Value) + 1e-4 * half;
        Assert.Equal(Number(derivation.Text), PrintedFormula.Evaluate(derivation.Numbers), half + slack);
    }

    [Theory]
    [MemberData(nameof(EveryResultOfTenJobs))]
    public void Every_symbol_of_a_formula_is_an_input_or_a_step_and_stands_for_its_number(string id, int job)
    {
        Derivation derivation = Derive(id, Jobs.Of(job));
        Dictionary<string, string> printed = new(StringComparer.Ordinal);
        foreach (DerivationInput input in derivation.Inputs)
        {
            printed[input.Symbol] = input.Text;
        }
        foreach (DerivationStep step in derivation.Steps)
        {
            printed[step.Symbol] = step.Text;
        }
        Assert.Equal(derivation.Inputs.Length + derivation.Steps.Length, printed.Count);

        foreach ((string symbols, string numbers) in derivation.Steps.Select(step => (step.Formula, step.Numbers)).Append((derivation.Formula, derivation.Numbers)))
        {
            string[] left = Words(symbols), right = Words(numbers);
            Assert.Equal(left.Length, right.Length);
            for (int i = 0; i < left.Length; i++)
            {
                Assert.Equal(printed.GetValueOrDefault(left[i], left[i]), right[i]);
            }
        }
    }

    [Theory]
    [MemberData(nameof(EveryResultOfTenJobs))]
    public void It_fits_six_lines_and_one_sentence_and_its_shares_add_up(string id, int job)
    {
        Derivation derivation = Derive(id, Jobs.Of(job), new Limit(null, 1e6, "example", IsSafety: false));

        Assert.InRange(derivation.Lines().Length, 5, 6);
        Assert.DoesNotContain(derivation.Lines(), line => FormattableString.Invariant(line).Contains('\n'));
        Assert.EndsWith(".", FormattableString.Invariant(derivation.Sentence()));
        if (derivation.Result.StandardUncertainty > 0)
        {
            Assert.Equal(1, derivation.Budget.Sum(part => part.Share), 1e-9);
        }
        Assert.True(!derivation.Head.CannotBeNegative || derivation.Interval.Low >= 0);
    }

    [Fact]
    public void The_derivation_of_the_flue_is_the_evaluation_of_the_core()
    {
        foreach (int job in Jobs.Numbers)
        {
            GivenInputs given = Jobs.Of(job);
            GivenInputs inputs = new(Explanation.Find("efficiency")!.Needs.Select(need => KeyValuePair.Create(need.Name, given[need.Name])), given.Fuel);
            CombustionEvaluation core = Evaluate(inputs);

            Same(core.ExcessAirPercent, Derive("excess_air", inputs));
            Same(core.CarbonDioxidePercent, Derive("carbon_dioxide_calculated", inputs));
            Same(new(core.DewPointCelsius.Value * 1.8 + 32, core.DewPointCelsius.StandardUncertainty * 1.8), Derive("dew_point", inputs));
            Same(core.EfficiencyPercent, Derive("efficiency", inputs));
            Same(core.EfficiencyLowerPercent, Derive("efficiency_net", inputs));
            Same(core.EfficiencyFirstLawPercent, Derive("efficiency_first_law", inputs));
            Same(core.CarbonMonoxideAirFreePpm!.Value, Derive("co_air_free", inputs));
        }
        Assert.Contains(Jobs.Numbers, job => Evaluate(Jobs.Of(job)).IsCondensing);
        Assert.Contains(Jobs.Numbers, job => !Evaluate(Jobs.Of(job)).IsCondensing);
    }

    [Fact]
    public void The_oxygen_after_an_adjustment_is_explained_as_it_is_worked_out()
    {
        foreach (GivenInputs inputs in Jobs.Numbers.Select(Jobs.Of))
        {
            Uncertain In(string name, int number) => Uncertain.Input(inputs[name].Value, inputs[name].StandardUncertainty, number);
            Same(Adjustment.OxygenAfterPercent(inputs.Fuel, In("oxygen_before", 0), ManifoldPressure.FlowRatio(In("manifold_before", 1), In("manifold_after", 2)))!.Value.Estimate, Derive("oxygen_expected", inputs));
        }

        Assert.Null(Explanation.Find("oxygen_expected")!.Derive(new(new Dictionary<string, Given>
        {
            ["oxygen_before"] = new(1, 0, "said"),
            ["manifold_before"] = new(2, 0, "said"),
            ["manifold_after"] = new(3.5, 0, "said"),
        })));
    }

    [Fact]
    public void Monoxide_air_free_reads_as_a_technician_would_write_it()
    {
        GivenInputs given = new(new Dictionary<string, Given>
        {
            ["oxygen"] = new(8, 0.15, "said at 10:42", "8.0"),
            ["flue_co"] = new(100, 10, "said at 10:43", "100"),
        });

        Derivation derivation = Derive("co_air_free", given, new Limit(null, 400, "ANSI Z21.47", IsSafety: true));

        Assert.Equal("CO × 20.9 / (20.9 − O2)", derivation.Formula);
        Assert.Equal("100 × 20.9 / (20.9 − 8.0)", derivation.Numbers);
        Assert.Equal("162 ± 40 ppm", derivation.TextWithUncertainty);
        Assert.Equal(["CO", "O2"], derivation.Budget.Select(part => part.Name));
        Assert.Equal(0.987, derivation.Budget[0].Share, 0.001);
        Assert.Equal(
            "CO air-free, as it would read without excess air is 162 ppm, between 129 and 195; 99 % of the doubt comes from the CO; "
            + "passes by more than the guard band, because allowed is at most 400 ppm.", FormattableString.Invariant(derivation.Sentence()));
        Assert.Equal(Verdict.Pass, derivation.Verdict);
    }

    [Fact]
    public void An_interval_of_what_cannot_be_negative_ends_at_zero()
    {
        GivenInputs given = new(new Dictionary<string, Given> { ["oxygen"] = new(9, 0.15, "said"), ["flue_co"] = new(8, 10, "said") });

        Assert.Equal("14 ppm (0 to 49)", Derive("co_air_free", given).TextWithUncertainty);
    }

    [Fact]
    public void Cells_that_err_together_move_the_uncertainty()
    {
        GivenInputs apart = new(new Dictionary<string, Given> { ["oxygen"] = new(8, 0.5, "said"), ["flue_co"] = new(300, 15, "said") });
        GivenInputs together = new(new Dictionary<string, Given> { ["oxygen"] = new(8, 0.5, "said"), ["flue_co"] = new(300, 15, "said") }) { AnalyzerCorrelation = 1 };
        Derivation alone = Derive("co_air_free", apart), joint = Derive("co_air_free", together);

        // Fully correlated contributions add like lengths in line: u = |c1 u1 + c2 u2|.
        double first = 15 * 20.9 / 12.9, second = 0.5 * 300 * 20.9 / (12.9 * 12.9);
        Assert.Equal(Math.Sqrt(first * first + second * second), alone.Result.StandardUncertainty, 1e-9);
        Assert.Equal(first + second, joint.Result.StandardUncertainty, 1e-9);
        Assert.Contains(joint.Budget, part => part.Name == "CO with O2");
    }

    /// <summary>By hand: U = 2 √2 u.</summary>
    [Theory]
    [InlineData(0.05, "54.00 ± 0.15 °F")]
    [InlineData(1.0, "54.0 ± 2.9 °F")]
    [InlineData(2.0, "54 ± 6 °F")]
    public void A_result_has_the_decimals_of_its_doubt(double u, string text)
    {
        GivenInputs given = new(new Dictionary<string, Given> { ["supply_temperature"] = new(122, u, "said", "122"), ["return_temperature"] = new(68, u, "said", "68") });

        Assert.Equal(text, Derive("temperature_rise", given).TextWithUncertainty);
    }

    [Fact]
    public void What_was_assumed_is_said()
    {
        GivenInputs given = new(new Dictionary<string, Given> { ["oxygen"] = new(8, 0.15, "said"), ["flue_co"] = new(30, 10, "said"), ["air_temperature"] = new(70, 1, "said") });

        Assert.Contains("RH 50 % (assumed, not measured)", string.Join("\n", Derive("dew_point", given).Lines()));
    }

    [Fact]
    public void Nothing_is_explained_from_numbers_that_are_missing_or_impossible()
    {
        Assert.Null(Explanation.Find("co_air_free")!.Derive(new(new Dictionary<string, Given> { ["oxygen"] = new(8, 0, "said") })));
        Assert.Null(Explanation.Find("co_air_free")!.Derive(new(new Dictionary<string, Given> { ["oxygen"] = new(16, 0, "said"), ["flue_co"] = new(8, 0, "said") })));
        Assert.Null(Explanation.Find("excess_air")!.Derive(new(new Dictionary<string, Given> { ["oxygen"] = new(20.95, 0, "said"), ["flue_co"] = new(8, 0, "said") })));
        Assert.Null(Explanation.Find("no_such_result"));
    }

    /// <summary>Monte Carlo as a check of first order that runs: every result of two jobs, cells apart and erring together, by the criterion of JCGM 101:2008 where nothing is cut at zero.</summary>
    [Theory]
    [InlineData(3, 0)]
    [InlineData(3, 0.7)]
    [InlineData(8, -0.5)]
    public void First_order_agrees_with_drawing(int job, double correlation)
    {
        foreach (Explanation explanation in Explanation.All)
        {
            GivenInputs given = new(
                explanation.Needs.Where(need => Jobs.Of(job).Has(need.Name)).Select(need => KeyValuePair.Create(need.Name, Jobs.Of(job)[need.Name])), Jobs.Of(job).Fuel)
            { AnalyzerCorrelation = correlation };
            Derivation derivation = Derive(explanation.Id, given);
            PropagatedDistribution drawn = explanation.Draw(given, seed: 5, draws: 2000)!.Value;

            // Of 2000 draws the standard deviation is known to 1.6 %, the mean to u/45; five of these, and 1 % for what bends.
            double u = derivation.Result.StandardUncertainty;
            Assert.Equal(derivation.Result.Value, drawn.Mean, 0.11 * u + 1e-9 * Math.Abs(derivation.Result.Value));
            Assert.Equal(u, drawn.StandardDeviation, 0.09 * u + 1e-9 * Math.Abs(derivation.Result.Value));
        }
    }

    /// <summary>With one sign both errors add up like lengths in line, with the other they cancel: a draw that forgot the correlation would miss both.</summary>
    [Theory]
    [InlineData(1, 1)]
    [InlineData(-1, -1)]
    [InlineData(0, 0)]
    public void Draws_of_one_analyzer_err_together(double correlation, int sign)
    {
        GivenInputs given = new(new Dictionary<string, Given> { ["oxygen"] = new(8, 0.5, "said"), ["flue_co"] = new(300, 15, "said") }) { AnalyzerCorrelation = correlation };
        double first = 15 * 20.9 / 12.9, second = 0.5 * 300 * 20.9 / (12.9 * 12.9);

        PropagatedDistribution drawn = Explanation.Find("co_air_free")!.Draw(given, seed: 3, draws: 4000)!.Value;

        Assert.Equal(sign == 0 ? Math.Sqrt(first * first + second * second) : Math.Abs(first + sign * second), drawn.StandardDeviation, 0.06 * (first + second));
    }

    [Fact]
    public void A_draw_of_what_cannot_be_negative_is_not_negative()
    {
        GivenInputs given = new(new Dictionary<string, Given> { ["oxygen"] = new(9, 0.15, "said"), ["flue_co"] = new(4, 10, "said") });

        Assert.Equal(0, Explanation.Find("co_air_free")!.Draw(given, seed: 1, draws: 2000)!.Value.Low);
    }

    static Derivation Derive(string id, GivenInputs given, Limit? limit = null) => Explanation.Find(id)!.Derive(given, limit)!;

    static void Same(Estimate core, Derivation derivation)
    {
        Assert.Equal(core.Value, derivation.Result.Value, 1e-8 * Math.Abs(core.Value));
        Assert.Equal(core.StandardUncertainty, derivation.Result.StandardUncertainty, 1e-6 * core.StandardUncertainty);
    }

    static CombustionEvaluation Evaluate(GivenInputs given)
    {
        TemperatureDifference Degrees(string name) => TemperatureDifference.FromFahrenheit(given[name].Combined);
        FlueReading reading = new(
            Fraction.FromPercent(given["oxygen"].Value), Fraction.FromPartsPerMillion(given["flue_co"].Value),
            Temperature.FromFahrenheit(given["flue_temperature"].Value), Temperature.FromFahrenheit(given["air_temperature"].Value))
        {
            Pressure = StandardAtmosphere.Pressure(Altitude.FromFeet(given["altitude"].Value)),
            AirRelativeHumidity = Fraction.FromPercent(given["air_humidity"].Value),
            Uncertainty = new(
                Fraction.FromPercent(given["oxygen"].Combined), Fraction.FromPartsPerMillion(given["flue_co"].StandardUncertainty),
                Degrees("flue_temperature"), Degrees("air_temperature"), default, Fraction.FromPercent(given["air_humidity"].StandardUncertainty)),
        };
        return CombustionEvaluation.Of(reading, given.Fuel);
    }

    static string[] Words(string formula) => formula.Replace("(−", "-", StringComparison.Ordinal).Replace("Tsat(", "", StringComparison.Ordinal)
        .Split([' ', '(', ')', '√'], StringSplitOptions.RemoveEmptyEntries);

    static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
