using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Tests.Support;
using HandsFreeStartup.Calculations.Uncertainties;
using Row = HandsFreeStartup.Calculations.Tests.Support.ReferenceTable.Row;

namespace HandsFreeStartup.Calculations.Tests.Uncertainties;

/// <summary>Source: Reference/air_free_uncertainty.csv and siegert_uncertainty.csv (Monte Carlo after JCGM 101, NumPy).</summary>
public sealed class PropagationTableTests
{
    const int Draws = 100_000;

    [Fact]
    public void Every_row_of_the_air_free_table_is_met()
    {
        Differences differences = new();
        foreach (Row row in ReferenceTable.Rows("air_free_uncertainty"))
        {
            RandomInput monoxide = Input(row, "carbon_monoxide_ppm", "carbon_monoxide_standard_uncertainty_ppm", "carbon_monoxide_distribution");
            RandomInput oxygen = Input(row, "oxygen_dry_percent", "oxygen_standard_uncertainty_percent", "oxygen_distribution");
            Uncertain first = AirFree.FromOxygen(
                Uncertain.Input(monoxide.Value, monoxide.StandardUncertainty, 0), Uncertain.Input(oxygen.Value, oxygen.StandardUncertainty, 1));
            PropagatedDistribution drawn = MonteCarlo.Propagate(x => AirFree.OfDraw(x[0], x[1]), [monoxide, oxygen], seed: 1, Draws);
            Compare(differences, row, first.Estimate, drawn);
        }
        differences.AssertNone(atLeast: 48 * 10);
    }

    [Fact]
    public void Every_row_of_the_Siegert_table_is_met()
    {
        Differences differences = new();
        foreach (Row row in ReferenceTable.Rows("siegert_uncertainty"))
        {
            Siegert siegert = new(row.Number("coefficient_A2"), row.Number("coefficient_B"));
            RandomInput oxygen = Input(row, "oxygen_dry_percent", "oxygen_standard_uncertainty_percent", "oxygen_distribution");
            RandomInput flue = Input(row, "flue_temperature_C", "flue_temperature_standard_uncertainty_K", "flue_temperature_distribution");
            RandomInput air = Input(row, "combustion_air_temperature_C", "combustion_air_temperature_standard_uncertainty_K", "combustion_air_temperature_distribution");
            Uncertain first = siegert.LossPercent(
                Uncertain.Input(oxygen.Value, oxygen.StandardUncertainty, 0),
                Uncertain.Input(flue.Value, flue.StandardUncertainty, 1),
                Uncertain.Input(air.Value, air.StandardUncertainty, 2));
            PropagatedDistribution drawn = MonteCarlo.Propagate(x => siegert.OfDraw(x[0], x[1], x[2]), [oxygen, flue, air], seed: 2, Draws);
            Compare(differences, row, first.Estimate, drawn);
        }
        differences.AssertNone(atLeast: 40 * 10);
    }

    static RandomInput Input(Row row, string value, string uncertainty, string distribution) => new(
        row.Number(value), row.Number(uncertainty), row.Text(distribution) == "normal" ? Distribution.Normal : Distribution.Rectangular);

    static void Compare(Differences differences, Row row, Estimate first, PropagatedDistribution drawn)
    {
        (double low, double high) = FirstOrderValidity.Interval(first);
        differences.Compare(row, "estimate_at_nominal", first.Value, 0, 1e-9);
        differences.Compare(row, "first_order_standard_uncertainty", first.StandardUncertainty, 0, 1e-9);
        differences.Compare(row, "first_order_interval_low", low, 1e-9, 1e-9);
        differences.Compare(row, "first_order_interval_high", high, 1e-9, 1e-9);

        // Standard errors go with the root of the number of draws; the table has 2 000 000.
        double errors = 4 * Math.Sqrt(1 + row.Number("mc_draws") / Draws);
        differences.Compare(row, "mc_mean", drawn.Mean, errors * row.Number("mc_standard_error_mean"), 0);
        differences.Compare(row, "mc_standard_deviation", drawn.StandardDeviation, errors * row.Number("mc_standard_error_standard_deviation"), 0);
        differences.Compare(row, "mc_interval_2.5", drawn.Low, errors * row.Number("mc_standard_error_2.5"), 0);
        differences.Compare(row, "mc_interval_97.5", drawn.High, errors * row.Number("mc_standard_error_97.5"), 0);

        // The criterion is judged on the table's own percentiles, so that it is exact.
        double tableLow = row.Number("mc_interval_2.5");
        double tableHigh = row.Number("mc_interval_97.5");
        differences.Compare(row, "first_order_valid_one_digit", FirstOrderValidity.Holds(first, tableLow, tableHigh, 1) ? 1 : 0, 0, 0);
        differences.Compare(row, "first_order_valid_two_digits", FirstOrderValidity.Holds(first, tableLow, tableHigh, 2) ? 1 : 0, 0, 0);
    }

    [Fact]
    public void The_model_of_a_draw_is_the_formula()
    {
        Assert.Equal(AirFree.FromOxygen(120, 8.3).Value, AirFree.OfDraw(120, 8.3));
        Assert.Equal(Siegert.NaturalGas.LossPercent(5.1, 180, 20).Value, Siegert.NaturalGas.OfDraw(5.1, 180, 20));
    }

    [Fact]
    public void The_same_seed_gives_the_same_draws_and_another_seed_others()
    {
        RandomInput input = new(10, 1, Distribution.Normal);

        Assert.Equal(MonteCarlo.Propagate(x => x[0], [input], 5, 5000), MonteCarlo.Propagate(x => x[0], [input], 5, 5000));
        Assert.NotEqual(MonteCarlo.Propagate(x => x[0], [input], 5, 5000), MonteCarlo.Propagate(x => x[0], [input], 6, 5000));
    }
}
