using HandsFreeStartup.Calculations.Combustion;
using HandsFreeStartup.Calculations.Fuels;
using HandsFreeStartup.Calculations.Quantities;
using HandsFreeStartup.Calculations.Uncertainties;

namespace HandsFreeStartup.Calculations.Tests.Combustion;

public sealed class CombustionEvaluationTests
{
    static readonly FlueReading Usual = new(
        Fraction.FromPercent(7.6), Fraction.FromPartsPerMillion(12), Temperature.FromFahrenheit(328), Temperature.FromFahrenheit(70));

    static readonly FlueReading Condensing = Usual with { FlueTemperature = Temperature.FromFahrenheit(100), AirRelativeHumidity = new(0.4) };

    /// <summary>First order by the program against central differences over each input: two ways to the same derivative.</summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Propagated_uncertainty_is_the_root_of_the_summed_squared_differences(bool condensing)
    {
        FlueReading reading = condensing ? Condensing : Usual;
        FlueUncertainty u = new(new(0.002), new(4e-6), new(1.2), new(0.6), new(300), new(0.05));
        CombustionEvaluation evaluation = CombustionEvaluation.Of(reading with { Uncertainty = u }, Fuel.NaturalGas);
        (string Name, Func<CombustionEvaluation, double> Value, Estimate Actual)[] results =
        [
            ("lambda", x => x.Lambda.Value, evaluation.Lambda),
            ("excess air", x => x.ExcessAirPercent.Value, evaluation.ExcessAirPercent),
            ("CO2", x => x.CarbonDioxidePercent.Value, evaluation.CarbonDioxidePercent),
            ("air-free", x => x.CarbonMonoxideAirFreePpm!.Value.Value, evaluation.CarbonMonoxideAirFreePpm!.Value),
            ("dew point", x => x.DewPointCelsius.Value, evaluation.DewPointCelsius),
            ("sensible", x => x.SensibleLossPercent.Value, evaluation.SensibleLossPercent),
            ("monoxide loss", x => x.CarbonMonoxideLossPercent.Value, evaluation.CarbonMonoxideLossPercent),
            ("condensate", x => x.CondensateMassRatio.Value, evaluation.CondensateMassRatio),
            ("efficiency", x => x.EfficiencyPercent.Value, evaluation.EfficiencyPercent),
            ("hot condensate", x => x.EfficiencyHotCondensatePercent.Value, evaluation.EfficiencyHotCondensatePercent),
            ("first law", x => x.EfficiencyFirstLawPercent.Value, evaluation.EfficiencyFirstLawPercent),
        ];

        Assert.Equal(condensing, evaluation.IsCondensing);
        foreach ((string name, Func<CombustionEvaluation, double> value, Estimate actual) in results)
        {
            double expected = ByDifferences(reading, u, value);
            Assert.True(Math.Abs(actual.StandardUncertainty - expected) <= 1e-6 * expected + 1e-12, $"{name}: {actual.StandardUncertainty} instead of {expected}");
        }
    }

    static double ByDifferences(FlueReading at, FlueUncertainty u, Func<CombustionEvaluation, double> value)
    {
        const double Step = 1e-3;
        Func<double, FlueReading>[] moved =
        [
            s => at with { Oxygen = new(at.Oxygen.Value + s * u.Oxygen.Value) },
            s => at with { CarbonMonoxide = new(at.CarbonMonoxide.Value + s * u.CarbonMonoxide.Value) },
            s => at with { FlueTemperature = new(at.FlueTemperature.Kelvin + s * u.FlueTemperature.Kelvin) },
            s => at with { AirTemperature = new(at.AirTemperature.Kelvin + s * u.AirTemperature.Kelvin) },
            s => at with { Pressure = new(at.Pressure.Pascals + s * u.Pressure.Pascals) },
            s => at with { AirRelativeHumidity = new(Math.Abs(at.AirRelativeHumidity.Value + s * u.AirRelativeHumidity.Value)) },
        ];
        // Humidity cannot go below zero, so the dry reading is differenced one-sidedly.
        double squares = 0;
        for (int i = 0; i < moved.Length; i++)
        {
            bool oneSided = i == 5 && at.AirRelativeHumidity.Value == 0;
            double after = value(CombustionEvaluation.Of(moved[i](Step), Fuel.NaturalGas));
            double before = value(CombustionEvaluation.Of(oneSided ? at : moved[i](-Step), Fuel.NaturalGas));
            double slope = (after - before) / (oneSided ? Step : 2 * Step);
            squares += slope * slope;
        }
        return Math.Sqrt(squares);
    }

    public static TheoryData<string, FlueReading> Impossible() => new()
    {
        { "O2", Usual with { Oxygen = Fraction.FromPercent(20.9) } },
        { "O2", Usual with { Oxygen = Fraction.FromPercent(-0.1) } },
        { "O2", Usual with { Oxygen = new(double.NaN) } },
        { "CO", Usual with { CarbonMonoxide = Fraction.FromPartsPerMillion(-1) } },
        { "CO", Usual with { CarbonMonoxide = new(double.NaN) } },
        { "flue", Usual with { FlueTemperature = new(double.NaN) } },
        { "flue", Usual with { FlueTemperature = Temperature.FromCelsius(900) } },
        { "air", Usual with { AirTemperature = Temperature.FromCelsius(-80) } },
        { "pressure", Usual with { Pressure = new(900) } },
        { "humidity", Usual with { AirRelativeHumidity = new(1.2) } },
        { "water", Usual with { AirTemperature = Temperature.FromCelsius(150), AirRelativeHumidity = new(1) } },
    };

    [Theory]
    [MemberData(nameof(Impossible))]
    public void A_reading_that_cannot_be_true_is_refused_with_a_sentence_and_has_no_numbers(string subject, FlueReading reading)
    {
        CombustionEvaluation evaluation = CombustionEvaluation.Of(reading, Fuel.NaturalGas);

        Assert.Contains(subject, evaluation.Refusal);
        Assert.False(evaluation.EfficiencyPercent.IsKnown);
        Assert.False(evaluation.ExcessAirPercent.IsKnown);
        Assert.False(evaluation.DewPointCelsius.IsKnown);
        Assert.Null(evaluation.CarbonMonoxideAirFreePpm);
    }

    [Fact]
    public void Monoxide_from_a_fuel_without_carbon_is_refused() =>
        Assert.Contains("carbon", CombustionEvaluation.Of(Usual, Fuel.Find("hydrogen")!).Refusal);

    [Fact]
    public void Above_the_oxygen_guard_there_is_everything_but_the_air_free_value()
    {
        CombustionEvaluation evaluation = CombustionEvaluation.Of(Usual with { Oxygen = Fraction.FromPercent(16) }, Fuel.NaturalGas);

        Assert.Null(evaluation.Refusal);
        Assert.Null(evaluation.CarbonMonoxideAirFreePpm);
        Assert.True(evaluation.EfficiencyPercent.IsKnown);
    }

    [Fact]
    public void One_evaluation_allocates_nothing()
    {
        FlueReading reading = Condensing with { Uncertainty = FlueUncertainty.OfErrorLimits(Condensing.CarbonMonoxide, Condensing.FlueTemperature) };
        double sum = 0;
        for (int i = 0; i < 100; i++)
        {
            sum += CombustionEvaluation.Of(reading, Fuel.NaturalGas).Lambda.Value;
        }
        long before = GC.GetAllocatedBytesForCurrentThread();
        for (int i = 0; i < 1000; i++)
        {
            sum += CombustionEvaluation.Of(reading, Fuel.NaturalGas).Lambda.Value;
        }

        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
        Assert.True(sum > 0);
    }

    /// <summary>Source: EN 50379-2 error limits (value from memory, low confidence) as half widths of rectangular distributions.</summary>
    [Fact]
    public void Error_limits_become_standard_uncertainties()
    {
        FlueUncertainty u = FlueUncertainty.OfErrorLimits(Fraction.FromPartsPerMillion(1000), Temperature.FromCelsius(300));

        Assert.Equal(0.3 / Math.Sqrt(3), u.Oxygen.Percent, 1e-12);
        Assert.Equal(50 / Math.Sqrt(3), u.CarbonMonoxide.PartsPerMillion, 1e-9);
        Assert.Equal(4.5 / Math.Sqrt(3), u.FlueTemperature.Kelvin, 1e-12);
    }
}
